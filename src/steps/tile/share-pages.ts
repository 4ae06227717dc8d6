import type { Stepwise } from '../../base/stepwise.ts';
import { ringArea, type Ring } from '../../geom/ring.ts';
import { filledHeights, packShelves, type Size2 } from '../../geom/shelf-pack.ts';
import { moveBoxTo, type Move2 } from '../../geom/turn-and-move.ts';
import type { Template } from '../../model/template.ts';
import { placeTemplate, sizeOf, type Block, type PlacedTemplate } from './block.ts';
import { drawnOutline, drawnOutlines } from './drawn-outline.ts';
import { neighbourOf, oneTile } from './lattice.ts';
import type { PaperFrame } from './paper-frame.ts';
import type { NestedPlace, PaperNester, PartlyTaken } from './paper-nester.ts';
import { visibleCell } from './visible-cell.ts';
import { fullBox } from './words-box.ts';

/** Between two templates on a shared page, mm: scissors pass. */
export const TEMPLATE_GAP_MM = 4;

/** A corner of a page smaller than this holds no template worth looking for, mm. */
const LEAST_ROOM_MM = 20;

/** Which templates, by their number, go on a page, and how. */
interface PagePlan {
  readonly places: readonly { readonly index: number; readonly move: Move2 }[];
  readonly heightMm: number;
}

/**
 * Puts templates that fit a page on as few pages as are found: on shelves, or nested, or some of them beside what is on pages already. Among ways
 * that take as many pages the plainer is kept.
 * @param blocks what is on paper already.
 * @returns those blocks, with what was put beside their templates, and one for each new page.
 */
export function* sharedPages(
  templates: readonly Template[],
  blocks: readonly Block[],
  frame: PaperFrame,
  nester: PaperNester | undefined,
): Stepwise<readonly Block[]> {
  if (templates.length === 0) return blocks;
  const page: Size2 = { width: frame.tileWidthMm, height: frame.tileHeightMm };
  let plans = onShelves(
    templates.map((_, i) => i),
    templates,
    frame,
  );
  let beside = blocks;
  if (nester !== undefined && plans.length + blocks.length > 1) {
    const outlines: Ring[] = [];
    for (const { drawing } of templates) {
      yield;
      outlines.push(drawnOutline(drawing));
    }
    if (plans.length > leastPages(outlines, page)) {
      const nested = yield* nestedPlans(outlines, page, nester);
      if (nested !== null && nested.length < plans.length) plans = nested;
    }
    yield;
    const filled = yield* besideOthers(templates, outlines, blocks, nester);
    yield;
    const rest = filled.rest.length === 0 ? [] : yield* fewest(filled.rest, templates, outlines, frame, nester);
    if (rest.length < plans.length) [plans, beside] = [rest, filled.blocks];
  }
  const pages = plans.map(({ places, heightMm }): Block => ({
    lattice: oneTile(page.width, heightMm),
    templates: places.map(({ index, move }) => placeTemplate(templates[index], move)),
    isPrinted: [true],
  }));
  return [...beside, ...pages];
}

/** No layout takes fewer: so many pages have the area. */
function leastPages(outlines: readonly Ring[], { width, height }: Size2): number {
  const area = outlines.reduce((sum, ring) => sum + ringArea(ring), 0);
  return Math.max(1, Math.ceil(area / (width * height)));
}

function* fewest(
  some: readonly number[],
  templates: readonly Template[],
  outlines: readonly Ring[],
  frame: PaperFrame,
  nester: PaperNester,
): Stepwise<readonly PagePlan[]> {
  const shelves = onShelves(some, templates, frame);
  const own = some.map((i) => outlines[i]);
  const page: Size2 = { width: frame.tileWidthMm, height: frame.tileHeightMm };
  if (shelves.length <= leastPages(own, page)) return shelves;
  const nested = yield* nestedPlans(own, page, nester);
  if (nested === null || nested.length >= shelves.length) return shelves;
  return nested.map((plan) => ({
    ...plan,
    places: plan.places.map(({ index, move }) => ({ index: some[index], move })),
  }));
}

function onShelves(
  some: readonly number[],
  templates: readonly Template[],
  { tileWidthMm, tileHeightMm, roll }: PaperFrame,
): readonly PagePlan[] {
  const boxes = some.map((i) => fullBox(templates[i]));
  const sizes = boxes.map(sizeOf);
  const packed = packShelves(sizes, { width: tileWidthMm, height: tileHeightMm }, TEMPLATE_GAP_MM);
  return filledHeights(sizes, packed).map((filled, bin) => {
    const heightMm = roll ? filled : tileHeightMm;
    // Shelves are filled from the bottom; on paper the first shelf belongs at the top, where reading begins.
    const lift = heightMm - filled;
    const places = some.flatMap((index, k) => {
      const { bin: own, x, y, turned } = packed[k];
      return own === bin ? [{ index, move: moveBoxTo(boxes[k], turned, x, y + lift) }] : [];
    });
    return { places, heightMm };
  });
}

function* nestedPlans(
  outlines: readonly Ring[],
  page: Size2,
  nester: PaperNester,
): Stepwise<readonly PagePlan[] | null> {
  const places = yield* nester.onSheets(outlines, page, TEMPLATE_GAP_MM);
  if (places === null) return null;
  const count = places.reduce((most, { room }) => Math.max(most, room + 1), 0);
  return Array.from({ length: count }, (_, room) => ({
    places: places.filter((place) => place.room === room),
    heightMm: page.height,
  })).filter((plan) => plan.places.length > 0);
}

/** Puts what fits beside the templates of blocks; what does not is named. */
function* besideOthers(
  templates: readonly Template[],
  outlines: readonly Ring[],
  blocks: readonly Block[],
  nester: PaperNester,
): Stepwise<{ readonly blocks: readonly Block[]; readonly rest: readonly number[] }> {
  const rooms = blocks.flatMap((block, b) => roomsOf(block).map((room) => ({ ...room, block: b })));
  const places = yield* nester.inRooms(outlines, rooms, TEMPLATE_GAP_MM);
  const added = new Map<number, PlacedTemplate[]>();
  for (const { index, room, move } of places) {
    const { block, corner } = rooms[room];
    const own = placeTemplate(templates[index], { ...move, x: move.x + corner.x, y: move.y + corner.y });
    added.set(block, [...(added.get(block) ?? []), own]);
  }
  const isLaid = new Set(places.map(({ index }: NestedPlace) => index));
  return {
    blocks: blocks.map((block, b) => ({ ...block, templates: [...block.templates, ...(added.get(b) ?? [])] })),
    rest: templates.map((_, i) => i).filter((i) => !isLaid.has(i)),
  };
}

/** What of each printed tile no other page shows, less what its templates take. */
function roomsOf(block: Block): readonly (PartlyTaken & { readonly corner: { x: number; y: number } })[] {
  const { lattice, isPrinted, templates } = block;
  const outlines = templates.flatMap(({ drawing }) => drawnOutlines(drawing));
  const overlapX = lattice.tileWidthMm - lattice.stepXMm;
  const overlapY = lattice.tileHeightMm - lattice.stepYMm;
  return isPrinted.flatMap((is, tile) => {
    if (!is) return [];
    const cell = visibleCell(lattice, isPrinted, tile);
    const isLeft = isPrinted[neighbourOf(lattice, tile, 'left')] === true;
    const isBelow = isPrinted[neighbourOf(lattice, tile, 'below')] === true;
    const corner = { x: cell.minX + (isLeft ? overlapX : 0), y: cell.minY + (isBelow ? overlapY : 0) };
    const [width, height] = [cell.maxX - corner.x, cell.maxY - corner.y];
    if (Math.min(width, height) < LEAST_ROOM_MM) return [];
    const taken = outlines.map((ring) => ring.map((value, k) => value - (k % 2 === 0 ? corner.x : corner.y)));
    return [{ width, height, taken, corner }];
  });
}
