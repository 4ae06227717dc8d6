import type { TriedPiece } from '../worker/parts-api.ts';

/** Extent of a flat piece in its own frame, mm. */
interface Extent {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** A piece with its upper left corner in the picture, mm, y down. */
export interface LaidPiece {
  readonly piece: TriedPiece;
  readonly box: Extent;
  readonly x: number;
  readonly y: number;
}

export interface LaidRows {
  readonly laid: readonly LaidPiece[];
  readonly width: number;
  readonly height: number;
  /** Size of the words under each piece, mm. */
  readonly textMm: number;
}

/** Words are this share of the picture's width, or of its height where that is what it is fitted by. */
const TEXT_SHARE = 1 / 26;
const TEXT_OF_HEIGHT = 1 / 15;
/** A word of this many letters is as wide as this many of its height. */
const LETTER = 0.56;

/** Lays pieces in rows, all to one scale, so that the picture is rather wider than high. */
export function laidInRows(pieces: readonly TriedPiece[]): LaidRows {
  const boxes = pieces.map(({ rings }) => extentOf(rings[0] ?? []));
  const sizes = boxes.map(({ minX, minY, maxX, maxY }) => ({ wide: maxX - minX, high: maxY - minY }));
  const area = sizes.reduce((sum, { wide, high }) => sum + wide * high, 0);
  const most = Math.max(...sizes.map(({ wide }) => wide), 1.5 * Math.sqrt(area));
  const first = rowsOf(pieces, sizes, most, TEXT_SHARE * most);
  // Words follow the size that comes out.
  const textMm = Math.max(TEXT_SHARE * first.width, TEXT_OF_HEIGHT * first.height);
  const rows = rowsOf(pieces, sizes, most, textMm);
  return {
    laid: pieces.map((piece, i) => ({ piece, box: boxes[i], ...rows.corners[i] })),
    width: rows.width,
    height: rows.height,
    textMm,
  };
}

function rowsOf(
  pieces: readonly TriedPiece[],
  sizes: readonly { readonly wide: number; readonly high: number }[],
  most: number,
  textMm: number,
): { corners: { x: number; y: number }[]; width: number; height: number } {
  const gap = textMm;
  const corners: { x: number; y: number }[] = [];
  let [x, y, deep, width] = [0, 0, 0, 0];
  pieces.forEach(({ name, quantity }, i) => {
    const { wide, high } = sizes[i];
    const letters = name.length + (quantity === 1 ? 0 : 5);
    const cell = Math.max(wide, LETTER * letters * textMm);
    if (x > 0 && x + cell > most + 1e-6) {
      y += deep + gap;
      x = deep = 0;
    }
    corners.push({ x: x + (cell - wide) / 2, y });
    x += cell + gap;
    deep = Math.max(deep, high + 1.4 * textMm);
    width = Math.max(width, x - gap);
  });
  return { corners, width, height: y + deep };
}

function extentOf(ring: ArrayLike<number>): Extent {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i + 1 < ring.length; i += 2) {
    [minX, maxX] = [Math.min(minX, ring[i]), Math.max(maxX, ring[i])];
    [minY, maxY] = [Math.min(minY, ring[i + 1]), Math.max(maxY, ring[i + 1])];
  }
  return { minX, minY, maxX, maxY };
}
