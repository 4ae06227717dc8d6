import { joinBoxes } from '../../geom/ring.ts';
import { filledHeights, fitsBin, packShelves, type Size2 } from '../../geom/shelf-pack.ts';
import { moveBoxTo } from '../../geom/turn-and-move.ts';
import type { Template } from '../../model/template.ts';
import { placeTemplate, sizeOf, type Block } from './block.ts';
import type { Lattice } from './lattice.ts';
import type { PaperFrame } from './paper-frame.ts';
import { tileTemplate } from './tile-template.ts';
import { drawnBox } from './words-box.ts';

/** Between two templates on a shared page, mm: scissors pass. */
const TEMPLATE_GAP_MM = 6;

/**
 * Puts templates on paper: those that fit a page share pages, each larger one is parted into tiles.
 * @returns blocks in the order in which their first template comes.
 */
export function makeBlocks(templates: readonly Template[], frame: PaperFrame): readonly Block[] {
  const page: Size2 = { width: frame.tileWidthMm, height: frame.tileHeightMm };
  const boxes = templates.map((template) => joinBoxes(template.box, drawnBox(template.drawing)));
  const isSmall = boxes.map((box) => fitsBin(sizeOf(box), page));
  const found: { first: number; block: Block }[] = [];
  for (const [i, template] of templates.entries()) {
    if (!isSmall[i]) found.push({ first: i, block: tileTemplate(template, boxes[i], frame) });
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
    found.push({
      first: here[0].template,
      block: { lattice: onePage(page.width, height), templates: placed, isPrinted: [true] },
    });
  }
  return found.sort((a, b) => a.first - b.first).map(({ block }) => block);
}

function onePage(tileWidthMm: number, tileHeightMm: number): Lattice {
  return { columns: 1, rows: 1, tileWidthMm, tileHeightMm, stepXMm: tileWidthMm, stepYMm: tileHeightMm };
}
