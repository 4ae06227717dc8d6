import type { FoamSheet } from '../../src/model/foam-stock.ts';
import type { SheetLayout } from '../../src/model/sheet.ts';
import { fillOf } from '../../src/project/fill-rule.ts';
import { layOnSheets, type SheetItem } from '../../src/steps/nest/lay-on-sheets.ts';

/** On sheets that are bought and filled as usual. */
export const layAsUsual = (items: readonly SheetItem[], foams: readonly FoamSheet[]): SheetLayout =>
  layOnSheets({ items, foams, fills: foams.map(({ id }) => fillOf(undefined, id)), stock: {} });
