import type { FlowItem } from './flow.ts';
import { LEADING, TYPE_MM, type Pen } from './pen.ts';

/** Between two cells of a row, mm. */
export const CELL_GAP_MM = 2;

/**
 * A row of a table with a line under it.
 * @param cells   lines of words of each column.
 * @param widths  of the columns, mm.
 */
export function rowItem(
  cells: readonly (readonly string[])[],
  widths: readonly number[],
  isHeading: boolean,
): FlowItem {
  const pitch = TYPE_MM.body * LEADING;
  const lines = Math.max(1, ...cells.map((cell) => cell.length));
  const heightMm = lines * pitch + 0.8;
  return {
    heightMm,
    gapMm: 0.4,
    draw: (pen: Pen, left: number, top: number) => {
      let x = left;
      for (const [i, cell] of cells.entries()) {
        for (const [k, text] of cell.entries()) {
          pen.write(text, { x, y: top - k * pitch - TYPE_MM.body * 1.3 }, { bold: isHeading });
        }
        x += widths[i] + CELL_GAP_MM;
      }
      pen.line('frame', left, top - heightMm, x - CELL_GAP_MM, top - heightMm);
    },
  };
}
