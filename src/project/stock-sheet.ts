import { fail, ok, type Fail, type Result } from '../base/result.ts';
import { isSimpleArea } from '../geom/ring-simple.ts';
import { boxOfPoints, ringArea } from '../geom/ring.ts';
import type { StockChoices, StockSheet } from '../model/stock.ts';

/** What a sheet in hand may be: the same for the project's file, the window and the command line. Lengths in mm. */
export const STOCK_LIMITS = { leastMm: 10, mostMm: 20_000, mostCount: 999, mostCorners: 2000, mostZones: 200 } as const;

/** The name of sheets that are bought (`SheetName.stock`): no sheet in hand has it. */
export const BOUGHT = 'buy';

/** An id that no sheet of the stock has. */
export function newStockId({ sheets = [] }: StockChoices = {}): string {
  const taken = new Set(sheets.map(({ id }) => id));
  for (let n = 1; ; n += 1) if (!taken.has(`stock-${n}`)) return `stock-${n}`;
}

/**
 * A sheet as it may be kept: its outline runs counter-clockwise from the nought of its box, and what is to be kept out moves along; corners on one
 * spot are one. Fails with `stock/name`, `stock/count`, `stock/size`, `stock/outline` or `stock/keep-out`.
 */
export function cleanStockSheet(sheet: StockSheet): Result<StockSheet> {
  const name = sheet.name.trim();
  if (name === '') return fail('stock/name', 'Give the sheet a name, so that it can be found on the shelf.');
  const { leastMm, mostMm, mostCount, mostZones } = STOCK_LIMITS;
  if (sheet.id === '' || sheet.id === BOUGHT)
    return fail('stock/name', `The sheet ${name} needs an id of its own, other than ${BOUGHT}.`);
  if (!(Number.isInteger(sheet.count) && sheet.count >= 1 && sheet.count <= mostCount))
    return fail('stock/count', `Say how many of ${name} are in hand: a whole number from 1 to ${mostCount}.`);
  const { shape, keepOut = [] } = sheet;
  const size = shape.kind === 'rectangle' ? [shape.widthMm, shape.heightMm] : sizeOf(shape.points);
  if (!size.every((mm) => mm >= leastMm && mm <= mostMm))
    return fail('stock/size', `The sheet ${name} must measure ${leastMm} to ${mostMm} mm each way.`);
  if (keepOut.length > mostZones)
    return fail('stock/keep-out', `The sheet ${name} has more than ${mostZones} places to keep clear of: join some.`);
  const traced = shape.kind === 'outline' ? cleanRing(shape.points) : null;
  if (shape.kind === 'outline' && traced === null) return badRing('stock/outline', `The outline of ${name}`);
  const { minX, minY } = traced === null ? { minX: 0, minY: 0 } : boxOfPoints(traced);
  const moved = (ring: readonly number[]): readonly number[] =>
    ring.map((value, i) => value - ((i & 1) === 0 ? minX : minY));
  const zones = keepOut.map(cleanRing);
  const clear = zones.filter((zone) => zone !== null);
  if (clear.length < zones.length) return badRing('stock/keep-out', `A place to keep clear of on ${name}`);
  return ok({
    ...sheet,
    name,
    shape: traced === null ? shape : { kind: 'outline', points: moved(traced) },
    ...(keepOut.length === 0 ? {} : { keepOut: clear.map(moved) }),
  });
}

/** True where a sheet is as {@link cleanStockSheet} leaves it, but for what rounding moves. */
export function isCleanStockSheet(sheet: StockSheet): boolean {
  const clean = cleanStockSheet(sheet);
  if (!clean.ok || clean.value.name !== sheet.name) return false;
  const { shape } = clean.value;
  return shape.kind === 'rectangle' || (sheet.shape.kind === 'outline' && isNear(shape.points, sheet.shape.points));
}

/** Rounding of a move to nought and back, mm. */
const NEAR_MM = 1e-6;

const isNear = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a.every((value, i) => Math.abs(value - b[i]) < NEAR_MM);

/** How far from its origin a sheet may be drawn, mm: beyond it corners of one sheet can no longer be told apart. */
const REACH_MM = 1e6;
const isInReach = (mm: number): boolean => Math.abs(mm) <= REACH_MM;

/** Counter-clockwise, without doubled corners; null where it is no clean ring. */
function cleanRing(points: readonly number[]): readonly number[] | null {
  if (points.length % 2 !== 0 || points.length > 2 * STOCK_LIMITS.mostCorners || !points.every(isInReach)) return null;
  const kept: number[] = [];
  for (let i = 0; i < points.length; i += 2) {
    const j = (i + 2) % points.length;
    if (points[i] !== points[j] || points[i + 1] !== points[j + 1]) kept.push(points[i], points[i + 1]);
  }
  const ring = ringArea(kept) < 0 ? turnedRound(kept) : kept;
  return isSimpleArea([Float64Array.from(ring)]) ? ring : null;
}

/** The same corners the other way round, from the same first one. */
const turnedRound = (ring: readonly number[]): readonly number[] =>
  Array.from({ length: ring.length }, (_, i) => ring[((ring.length - 2 * (i >> 1)) % ring.length) + (i & 1)]);

function sizeOf(points: readonly number[]): readonly [number, number] {
  const { minX, minY, maxX, maxY } = boxOfPoints(points);
  return [maxX - minX, maxY - minY];
}

const badRing = (code: string, what: string): Fail =>
  fail(
    code,
    `${what} is no clean ring: give 3 to ${STOCK_LIMITS.mostCorners} corners, in order, so that no side crosses or touches another.`,
  );
