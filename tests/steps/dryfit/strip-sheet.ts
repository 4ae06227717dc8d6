import { shellSheet, type ShellSheet } from '../../../src/steps/dryfit/shell-sheet.ts';

/** A strip on the table from x = 0 to `length`, y = 0 to `width`. */
export interface Strip {
  readonly sheet: ShellSheet;
  readonly uv: Float64Array;
}

/**
 * @param shear  by how many mm in x each row of vertices stands farther than the one below, drawn in at the ends: no line of the mesh then
 *               runs across the strip.
 * @param wobble how far inner vertices stand off their places, in shares of a cell.
 */
export function stripSheet(length: number, width: number, columns: number, rows: number, shear = 0, wobble = 0): Strip {
  const uv: number[] = [];
  for (let j = 0; j <= rows; j += 1)
    for (let i = 0; i <= columns; i += 1) {
      const [s, r] = [i / columns, j / rows];
      const isInside = i > 0 && i < columns && j > 0 && j < rows;
      const off = isInside ? wobble : 0;
      const pulled = Math.min(1, 3 * s, 3 * (1 - s)) * shear * (r - 0.5);
      uv.push(
        length * s + pulled + (off * length * Math.sin(7 * i + 3 * j)) / columns,
        width * r + (off * width * Math.cos(5 * i - 4 * j)) / rows,
      );
    }
  const triangles: number[] = [];
  for (let j = 0; j < rows; j += 1)
    for (let i = 0; i < columns; i += 1) {
      const a = j * (columns + 1) + i;
      const [b, c, d] = [a + 1, a + columns + 2, a + columns + 1];
      triangles.push(a, b, c, a, c, d);
    }
  const flat = Float64Array.from(uv);
  return { sheet: shellSheet(Uint32Array.from(triangles), flat), uv: flat };
}
