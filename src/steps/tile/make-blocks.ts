import type { Stepwise } from '../../base/stepwise.ts';
import { joinBoxes, type Box2 } from '../../geom/ring.ts';
import { filledHeights, fitsBin, packShelves, type Size2 } from '../../geom/shelf-pack.ts';
import { moveBoxTo, type Move2 } from '../../geom/turn-and-move.ts';
import type { Template } from '../../model/template.ts';
import { moveDrawing, placeTemplate, sizeOf, type Block } from './block.ts';
import { drawingOf, labelsOf } from './labels.ts';
import type { Lattice } from './lattice.ts';
import type { PaperFrame } from './paper-frame.ts';
import { settleLabels } from './settle-labels.ts';
import { tileTemplate } from './tile-template.ts';
import { drawnBox } from './words-box.ts';

/** Between two templates on a shared page, mm: scissors pass. */
const TEMPLATE_GAP_MM = 4;

/** Turns tried to get a template onto one page, degrees: as it is, a quarter, then more and more. */
const TURNS_DEG = [0, 90, ...Array.from({ length: 17 }, (_, i) => [5 * (i + 1), -5 * (i + 1)]).flat()];

/**
 * Puts templates on paper: those that fit a page share pages; one that fits a page turned, or but for words beside it, has a page to
 * itself; each larger one is parted into tiles.
 * @returns blocks in the order in which their first template comes, every label where it stays whole.
 */
export function* blockSteps(templates: readonly Template[], frame: PaperFrame): Stepwise<readonly Block[]> {
  const page: Size2 = { width: frame.tileWidthMm, height: frame.tileHeightMm };
  const boxes = templates.map(fullBox);
  const isSmall = boxes.map((box) => fitsBin(sizeOf(box), page));
  const found: { first: number; block: Block }[] = [];
  for (const [i, template] of templates.entries()) {
    if (isSmall[i]) continue;
    yield;
    const block = (yield* onOnePage(template, boxes[i], frame)) ?? settled(tileTemplate(template, frame)).block;
    found.push({ first: i, block });
  }
  const small = templates.map((_, i) => i).filter((i) => isSmall[i]);
  const sizes = small.map((i) => sizeOf(boxes[i]));
  const packed = packShelves(sizes, page, TEMPLATE_GAP_MM);
  for (const [bin, filled] of filledHeights(sizes, packed).entries()) {
    const here = small.map((template, k) => ({ template, place: packed[k] })).filter(({ place }) => place.bin === bin);
    const height = frame.roll ? filled : page.height;
    // Shelves are filled from the bottom; on paper the first shelf belongs at the top, where reading begins.
    const lift = height - filled;
    const placed = here.map(({ template, place }) =>
      placeTemplate(templates[template], moveBoxTo(boxes[template], place.turned, place.x, place.y + lift)),
    );
    const block = { lattice: oneTile(page.width, height), templates: placed, isPrinted: [true] };
    found.push({ first: here[0].template, block });
  }
  return found.sort((a, b) => a.first - b.first).map(({ block }) => block);
}

/** Round everything drawn, template space: the record's box, or more where words stick out of it. */
export function fullBox({ box, drawing }: Template): Box2 {
  return joinBoxes(box, drawnBox(drawing));
}

/** A page with this template alone, turned as little as it takes, words beside it moved in; null when no turn leaves them all room. */
function* onOnePage(template: Template, full: Box2, frame: PaperFrame): Stepwise<Block | null> {
  const height = frame.roll ? Math.min(frame.tileHeightMm, sizeOf(full).height) : frame.tileHeightMm;
  const lattice = oneTile(frame.tileWidthMm, height);
  const { strokes, labels } = labelsOf(template.drawing);
  const fixed = drawingOf({ strokes, labels: labels.filter(({ leader }) => leader === null) });
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

function settled(block: Block): { block: Block; crowded: number } {
  const { templates, crowded } = settleLabels(block);
  return { block: { ...block, templates }, crowded };
}

function oneTile(tileWidthMm: number, tileHeightMm: number): Lattice {
  return { columns: 1, rows: 1, tileWidthMm, tileHeightMm, stepXMm: tileWidthMm, stepYMm: tileHeightMm };
}
