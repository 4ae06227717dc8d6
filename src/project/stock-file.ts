import * as v from 'valibot';
import { readJson } from '../base/read-json.ts';
import { fail, ok, type Result } from '../base/result.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import type { StockSheet } from '../model/stock.ts';
import { brokenPlace } from './broken-place.ts';
import { rawStockSheetSchema } from './stock-schema.ts';
import { cleanStockSheet } from './stock-sheet.ts';

const list = v.array(rawStockSheetSchema);

/**
 * Reads a list of sheets in hand (shared/stock.schema.json). What another project left over is there by now, so that `leftBy` is forgotten.
 * Fails with `stock/not-json`, `stock/broken`, `stock/foam`, or as `cleanStockSheet`.
 */
export function readStockFile(
  text: string,
  fileName: string,
  foams: readonly FoamSheet[],
): Result<readonly StockSheet[]> {
  const raw = readJson(text, fileName, () =>
    fail(
      'stock/not-json',
      `${fileName} is not valid JSON: a list of sheets looks like [{"id":"a","name":"whole sheets","foam":"${foams[0]?.id ?? 'eva'}","shape":{"kind":"rectangle","widthMm":600,"heightMm":900},"count":2}].`,
    ),
  );
  if (!raw.ok) return raw;
  const parsed = v.safeParse(list, raw.value, { abortEarly: true });
  if (!parsed.success)
    return fail('stock/broken', `${fileName} is not a list of sheets: ${brokenPlace(parsed.issues[0])}.`);
  const sheets: StockSheet[] = [];
  const ids = new Set<string>();
  for (const one of parsed.output as unknown as readonly StockSheet[]) {
    if (!foams.some(({ id }) => id === one.foam))
      return fail(
        'stock/foam',
        `In ${fileName} the sheet ${one.name} is of the foam ${one.foam}, which the project does not know: take one of ${foams.map(({ id }) => id).join(', ')}.`,
      );
    if (ids.has(one.id))
      return fail('stock/broken', `In ${fileName} two sheets have the id ${one.id}: give each one of its own.`);
    const { leftBy: _, ...rest } = one;
    const clean = cleanStockSheet(rest);
    if (!clean.ok) return fail(clean.problem.code, `${fileName}: ${clean.problem.text}`);
    ids.add(one.id);
    sheets.push(clean.value);
  }
  return ok(sheets);
}
