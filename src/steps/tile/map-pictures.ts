import type { PieceId } from '../../base/ids.ts';
import type { Say } from '../../base/paper-language.ts';
import { textWidthMm } from '../../geom/text-width.ts';
import type { CutThing } from '../../model/foam-strip.ts';
import { LEADING, TYPE_MM } from './pen.ts';
import type { Block } from './block.ts';
import { drawBlockPicture } from './block-picture.ts';
import type { Flow, FlowItem } from './flow.ts';

/** Largest scale of a picture, and the share of the page's height that all of them should keep to [J]. */
const LARGEST_SCALE = 0.25;
const SHARE_OF_PAGE = 0.38;

/** Between two pictures, mm. */
const GAP_MM = 6;

interface Picture {
  readonly number: number;
  readonly block: Block;
  readonly width: number;
  readonly height: number;
}

/**
 * Small pictures of all blocks at one scale, each with its tiles and their names and its pieces by number.
 * @param heightMm room on a page, mm.
 */
export function putPictures(
  flow: Flow,
  blocks: readonly Block[],
  pieces: ReadonlyMap<PieceId, CutThing>,
  heightMm: number,
): void {
  const { say } = flow;
  const scale = scaleFor(blocks, flow.width, heightMm, say);
  for (const row of rowsOf(blocks, scale, flow.width, say)) {
    const high = Math.max(...row.map((picture) => picture.height));
    const item: FlowItem = {
      heightMm: high + TYPE_MM.body * LEADING,
      gapMm: 4,
      draw: (pen, left, top) => {
        let x = left;
        for (const { block, number, width } of row) {
          drawBlockPicture(pen, block, { left: x, bottom: top - high, scale }, pieces);
          const caption = captionOf(block, number, blocks.length, say);
          pen.write(caption, { x, y: top - high - TYPE_MM.body - 1.2 });
          x += width + GAP_MM;
        }
      },
    };
    flow.put(item);
  }
}

/** The largest scale, in steps of a tenth, at which all pictures keep to their share of the page. */
function scaleFor(blocks: readonly Block[], width: number, heightMm: number, say: Say): number {
  const widest = Math.max(...blocks.map((block) => blockSize(block).width));
  const highest = Math.max(...blocks.map((block) => blockSize(block).height));
  let scale = Math.min(LARGEST_SCALE, width / widest, (SHARE_OF_PAGE * heightMm) / highest);
  for (let tries = 0; tries < 12; tries += 1) {
    const rows = rowsOf(blocks, scale, width, say);
    const total = rows.reduce(
      (sum, row) => sum + Math.max(...row.map((picture) => picture.height)) + GAP_MM + TYPE_MM.body,
      0,
    );
    if (total <= SHARE_OF_PAGE * heightMm || scale < 0.08) break;
    scale *= 0.9;
  }
  return scale;
}

function rowsOf(blocks: readonly Block[], scale: number, width: number, say: Say): readonly (readonly Picture[])[] {
  const rows: Picture[][] = [[]];
  let filled = 0;
  for (const [i, block] of blocks.entries()) {
    const size = blockSize(block);
    const caption = textWidthMm(captionOf(block, i + 1, blocks.length, say), TYPE_MM.body);
    const picture = { number: i + 1, block, width: Math.max(size.width * scale, caption), height: size.height * scale };
    if (filled > 0 && filled + picture.width > width + 1e-9) {
      rows.push([]);
      filled = 0;
    }
    rows[rows.length - 1].push(picture);
    filled += picture.width + GAP_MM;
  }
  return rows;
}

function blockSize({ lattice }: Block): { width: number; height: number } {
  return {
    width: (lattice.columns - 1) * lattice.stepXMm + lattice.tileWidthMm,
    height: (lattice.rows - 1) * lattice.stepYMm + lattice.tileHeightMm,
  };
}

function captionOf(block: Block, number: number, blockCount: number, say: Say): string {
  const printed = block.isPrinted.filter(Boolean).length;
  const name = blockCount === 1 ? '' : `${number}`;
  if (block.isPrinted.length === 1) return blockCount === 1 ? 'A1' : `${number}-A1`;
  return `${name === '' ? '' : `${name}: `}${say(`${printed} pages`)}`;
}
