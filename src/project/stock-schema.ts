import * as v from 'valibot';
import type { StockSheet } from '../model/stock.ts';
import { FILL_LIMITS, TURN_RULES } from './fill-rule.ts';
import { isCleanStockSheet, STOCK_LIMITS } from './stock-sheet.ts';
import { firstBy } from './first-by.ts';

const finite = v.pipe(v.number(), v.finite());
const whole = v.pipe(v.number(), v.integer(), v.minValue(0));
const named = v.pipe(v.string(), v.minLength(1));
const size = v.pipe(finite, v.minValue(STOCK_LIMITS.leastMm), v.maxValue(STOCK_LIMITS.mostMm));
const ring = v.pipe(v.array(finite), v.minLength(6), v.maxLength(2 * STOCK_LIMITS.mostCorners));
const sheetName = v.object({ stock: named, nth: whole });

/** One sheet in hand, as a hand may write it: its outline drawn anywhere, either way round. */
export const rawStockSheetSchema = v.object({
  id: named,
  name: named,
  foam: v.string(),
  shape: v.variant('kind', [
    v.object({ kind: v.literal('rectangle'), widthMm: size, heightMm: size }),
    v.object({ kind: v.literal('outline'), points: ring }),
  ]),
  count: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(STOCK_LIMITS.mostCount)),
  keepOut: v.optional(v.pipe(v.array(ring), v.maxLength(STOCK_LIMITS.mostZones))),
  grain: v.optional(v.picklist(['x', 'y'])),
  leftBy: v.optional(sheetName),
});

/** The same as the project's file keeps it. */
const stockSheetSchema = v.pipe(
  rawStockSheetSchema,
  v.check(
    (sheet) => isCleanStockSheet(sheet as unknown as StockSheet),
    'a sheet with a name, an id other than buy, and an outline and places to keep clear of whose sides do not cross, the outline counter-clockwise from 0, 0',
  ),
);

const place = { copy: whole, x: finite, y: finite, turnRad: finite, isFlipped: v.optional(v.boolean()) };

/** The first entry alone of those with one key. */
function unlike<T>(list: v.GenericSchema<T[]>, key: (entry: T) => string, what: string) {
  const isFirst = firstBy(key);
  return v.pipe(
    list,
    v.checkItems((entry, index, all) => isFirst(entry, index, all), what),
  );
}

/** What the maker said of the foam in hand (`StockChoices`). */
export const stockSchema = v.object({
  sheets: v.optional(unlike(v.array(stockSheetSchema), ({ id }) => id, 'a sheet with an id of its own')),
  fills: v.optional(
    unlike(
      v.array(
        v.object({
          foam: v.string(),
          borderMm: v.pipe(finite, v.minValue(0), v.maxValue(FILL_LIMITS.borderMm)),
          spacingMm: v.pipe(finite, v.minValue(0), v.maxValue(FILL_LIMITS.spacingMm)),
          turns: v.picklist(TURN_RULES),
          turnOver: v.boolean(),
          buys: v.boolean(),
        }),
      ),
      ({ foam }) => foam,
      'one rule for each foam',
    ),
  ),
  pieces: v.optional(
    unlike(
      v.array(
        v.object({
          piece: named,
          group: v.optional(named),
          held: v.optional(
            unlike(
              v.array(v.object({ ...place, sheet: sheetName })),
              ({ copy }) => String(copy),
              'one place for each copy',
            ),
          ),
        }),
      ),
      ({ piece }) => piece,
      'one entry for each piece',
    ),
  ),
  kept: v.optional(
    v.array(v.object({ foam: v.string(), sheet: sheetName, places: v.array(v.object({ ...place, piece: named })) })),
  ),
});
