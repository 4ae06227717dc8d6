import type { SheetShape } from '../model/stock.ts';

/** The outline of a sheet, packed x, y, mm, counter-clockwise. */
export const outlineOf = (shape: SheetShape): readonly number[] =>
  shape.kind === 'outline' ? shape.points : [0, 0, shape.widthMm, 0, shape.widthMm, shape.heightMm, 0, shape.heightMm];

/** How large a sheet is over all, mm. */
export function sizeOfShape(shape: SheetShape): { readonly widthMm: number; readonly heightMm: number } {
  if (shape.kind === 'rectangle') return shape;
  let [widthMm, heightMm] = [0, 0];
  for (let i = 0; i + 1 < shape.points.length; i += 2) {
    widthMm = Math.max(widthMm, shape.points[i]);
    heightMm = Math.max(heightMm, shape.points[i + 1]);
  }
  return { widthMm, heightMm };
}
