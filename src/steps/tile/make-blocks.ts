import { Memo } from '../../base/memo.ts';
import type { Stepwise } from '../../base/stepwise.ts';
import type { Box2 } from '../../geom/ring.ts';
import { fitsBin, type Size2 } from '../../geom/shelf-pack.ts';
import { moveBoxTo, type Move2 } from '../../geom/turn-and-move.ts';
import type { Template } from '../../model/template.ts';
import { moveDrawing, placeTemplate, sizeOf, type Block } from './block.ts';
import { oneTile } from './lattice.ts';
import type { PaperFrame } from './paper-frame.ts';
import type { PaperNester } from './paper-nester.ts';
import { settled } from './settle-labels.ts';
import { sharedPages } from './share-pages.ts';
import { fixedPart, tileTemplate } from './tile-template.ts';
import { tiledBlocks, type TiledAlone } from './tile-together.ts';
import { drawnBox, fullBox } from './words-box.ts';

/** Turns tried to get a template onto one page, degrees: as it is, a quarter, then more and more. */
const TURNS_DEG = [0, 90, ...Array.from({ length: 17 }, (_, i) => [5 * (i + 1), -5 * (i + 1)]).flat()];

/**
 * Puts templates on paper: those that fit a page share pages; one that fits a page turned, or but for words beside it, has a page to
 * itself; larger ones are parted into tiles, alone or several together.
 * @param nester finds fewer pages where there are; without one templates that share a page stand on shelves, and larger ones are by themselves.
 * @returns blocks in the order in which their first template comes, every label where it stays whole.
 */
export function* blockSteps(
  templates: readonly Template[],
  frame: PaperFrame,
  nester?: PaperNester,
): Stepwise<readonly Block[]> {
  const { tileWidthMm, tileHeightMm, overlapMm, roll } = frame;
  const key = [tileWidthMm, tileHeightMm, overlapMm, roll, nester, ...templates];
  return LAID.get(key) ?? LAID.set(key, yield* layBlocks(templates, frame, nester));
}

/** What was laid of the same templates: another date or revision moves nothing. */
const LAID = new Memo<unknown[], readonly Block[]>(4);

function* layBlocks(
  templates: readonly Template[],
  frame: PaperFrame,
  nester: PaperNester | undefined,
): Stepwise<readonly Block[]> {
  const page: Size2 = { width: frame.tileWidthMm, height: frame.tileHeightMm };
  const boxes = templates.map(fullBox);
  const isSmall = boxes.map((box) => fitsBin(sizeOf(box), page));
  const whole: Block[] = [];
  const tiled: TiledAlone[] = [];
  for (const [i, template] of templates.entries()) {
    if (isSmall[i]) continue;
    yield;
    const onOne = yield* onOnePage(template, boxes[i], frame);
    if (onOne === null) tiled.push({ template, ...(yield* leastCrowded(tileTemplate(template, frame))) });
    else whole.push(onOne);
  }
  // A roll is cut where a block ends: pages are not what is to be saved there.
  const finder = frame.roll ? undefined : nester;
  const large = [...whole, ...(yield* tiledBlocks(tiled, frame, finder))];
  const small = templates.filter((_, i) => isSmall[i]);
  const blocks = yield* sharedPages(small, large, frame, finder);
  const first = new Map(templates.map(({ piece }, i) => [piece, i]));
  const firstOf = (block: Block): number =>
    block.templates.reduce((least, { piece }) => Math.min(least, first.get(piece) ?? Infinity), Infinity);
  return [...blocks].sort((a, b) => firstOf(a) - firstOf(b));
}

/** The first way in which all labels find room, or the one in which most do. */
function* leastCrowded(ways: readonly Block[]): Stepwise<ReturnType<typeof settled>> {
  let best: ReturnType<typeof settled> | null = null;
  for (const way of ways) {
    yield;
    const found = settled(way);
    if (best === null || found.crowded < best.crowded) best = found;
    if (best.crowded === 0) break;
  }
  if (best === null) throw new Error('leastCrowded: no way');
  return best;
}

/** A page with this template alone, turned as little as it takes, words beside it moved in; null when no turn leaves them all room. */
function* onOnePage(template: Template, full: Box2, frame: PaperFrame): Stepwise<Block | null> {
  const height = frame.roll ? Math.min(frame.tileHeightMm, sizeOf(full).height) : frame.tileHeightMm;
  const lattice = oneTile(frame.tileWidthMm, height);
  const fixed = fixedPart(template.drawing);
  for (const turnDeg of TURNS_DEG) {
    yield;
    const turn: Move2 = { x: 0, y: 0, turnRad: (turnDeg * Math.PI) / 180 };
    const box = drawnBox(moveDrawing(fixed, turn));
    const { width, height: high } = sizeOf(box);
    if (width > lattice.tileWidthMm || high > lattice.tileHeightMm) continue;
    const { x, y } = moveBoxTo(box, false, (lattice.tileWidthMm - width) / 2, (lattice.tileHeightMm - high) / 2);
    const templates = [placeTemplate(template, { ...turn, x, y })];
    const { block, crowded } = settled({ lattice, templates, isPrinted: [true] });
    if (crowded === 0) return block;
  }
  return null;
}
