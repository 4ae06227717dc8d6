import type { SheetLayout } from '../model/sheet.ts';
import type { KeptSheet } from '../model/stock.ts';

/** A layout as the project keeps it. */
export const keptOfLayout = ({ sheets }: SheetLayout): readonly KeptSheet[] =>
  sheets.map(({ foam, name, placements }) => ({
    foam,
    sheet: name,
    places: placements.map(({ piece, copy, x, y, turnRad, isFlipped }) => ({
      piece,
      copy,
      x,
      y,
      turnRad,
      ...(isFlipped === true ? { isFlipped } : {}),
    })),
  }));
