import type { Region } from '../../geom/polygon-boolean.ts';
import { coveredRegions, grownRegions } from '../../geom/polygon-boolean.ts';
import { boxOfPoints, type Box2, type Ring } from '../../geom/ring.ts';
import { restOfWhole } from '../../geom/whole-union.ts';
import type { FoamSheet } from '../../model/foam-stock.ts';
import type { FillRule, SheetName, StockSheet } from '../../model/stock.ts';
import { boxRing } from './foam-area.ts';

/**
 * A sheet as it is laid on: turned so that its length, and with it the grain, runs along x. Its nought is the corner from which it is filled.
 *
 *     a tall sheet            its room
 *     ┌────┐ y                ┌──────────┐
 *     │    │                  │          │ across
 *     │    │          →       └──────────┘
 *     └────┘ x                0  along
 */
export interface FoamRoom {
  readonly name: SheetName;
  /** What is in hand; null for a sheet that is bought. */
  readonly stock: StockSheet | null;
  /** Size of its box along its length and across, mm. */
  readonly alongMm: number;
  readonly acrossMm: number;
  /** True where its length runs up the sheet (y). */
  readonly isTall: boolean;
  /** Where pieces may be, without its borders. */
  readonly free: Box2;
  /** What within `free` may not be cut from: places kept clear, and what is outside a traced outline less its border. */
  readonly blocked: readonly Region[];
}

/** The name of sheets that are bought. */
const BOUGHT = 'buy';

/** The `nth` sheet of a foam that is bought. */
export function boughtRoom(foam: FoamSheet, { borderMm }: FillRule, nth: number): FoamRoom {
  const isTall = foam.sheetHeightMm >= foam.sheetWidthMm;
  const [alongMm, acrossMm] = isTall
    ? [foam.sheetHeightMm, foam.sheetWidthMm]
    : [foam.sheetWidthMm, foam.sheetHeightMm];
  return {
    name: { stock: BOUGHT, nth },
    stock: null,
    alongMm,
    acrossMm,
    isTall,
    free: { minX: borderMm, minY: borderMm, maxX: alongMm - borderMm, maxY: acrossMm - borderMm },
    blocked: [],
  };
}

/** The `nth` of some equal sheets in hand; null where its border leaves nothing. */
export function stockRoom(sheet: StockSheet, { borderMm }: FillRule, nth: number): FoamRoom | null {
  const { shape, keepOut = [] } = sheet;
  const box = shape.kind === 'rectangle' ? null : boxOfPoints(shape.points);
  const [width, height] =
    shape.kind === 'rectangle' ? [shape.widthMm, shape.heightMm] : [box?.maxX ?? 0, box?.maxY ?? 0];
  const isTall = (sheet.grain ?? (height >= width ? 'y' : 'x')) === 'y';
  const inRoom = (ring: ArrayLike<number>): Ring => ringInRoom({ isTall, acrossMm: isTall ? width : height }, ring);
  const [alongMm, acrossMm] = isTall ? [height, width] : [width, height];
  const traced = shape.kind === 'outline' ? inRoom(shape.points) : null;
  const left = traced === null ? null : grownRegions([traced], -borderMm);
  if (left !== null && left.length === 0) return null;
  const free =
    left === null
      ? { minX: borderMm, minY: borderMm, maxX: alongMm - borderMm, maxY: acrossMm - borderMm }
      : boxOfPoints(left.flatMap(({ outer }) => [...outer]));
  if (!(free.maxX > free.minX && free.maxY > free.minY)) return null;
  const zones = keepOut.map(inRoom).map(asOuter);
  const outside = left === null ? [] : boxLess(free, left);
  const blocked = coveredRegions([...outside, ...zones]).filter(({ outer }) => reachesInto(outer, free));
  return { name: { stock: sheet.id, nth }, stock: sheet, alongMm, acrossMm, isTall, free, blocked };
}

/** A place or ring of the sheet in the numbers of its room. */
export const ringInRoom = (
  { isTall, acrossMm }: Pick<FoamRoom, 'isTall' | 'acrossMm'>,
  ring: ArrayLike<number>,
): Ring =>
  Float64Array.from({ length: ring.length }, (_, k) =>
    !isTall ? ring[k] : (k & 1) === 0 ? ring[k + 1] : acrossMm - ring[k - 1],
  );

/** Where a template lies, its stance told by `turnRad` and `isFlipped`. */
export interface RoomMove {
  readonly x: number;
  readonly y: number;
  readonly turnRad: number;
  readonly isFlipped: boolean;
}

/** A place in a room as it is on the sheet. */
export const moveOnSheet = ({ isTall, acrossMm }: FoamRoom, move: RoomMove): RoomMove =>
  isTall
    ? { ...move, x: acrossMm - move.y, y: move.x, turnRad: nearTurn(move.turnRad + Math.PI / 2) }
    : { ...move, turnRad: nearTurn(move.turnRad) };

/** A place on a sheet as it is in its room. */
export const moveInRoom = ({ isTall, acrossMm }: FoamRoom, move: RoomMove): RoomMove =>
  isTall ? { ...move, x: move.y, y: acrossMm - move.x, turnRad: move.turnRad - Math.PI / 2 } : move;

/** The same turn within half a turn either way; a hair off a quarter turn is one. */
function nearTurn(turnRad: number): number {
  const turn = turnRad - 2 * Math.PI * Math.round(turnRad / (2 * Math.PI));
  const quarters = Math.round(turn / (Math.PI / 2));
  if (Math.abs(turn - (quarters * Math.PI) / 2) >= SAME_TURN_RAD) return turn;
  return quarters === 0 ? 0 : ((quarters === -2 ? 2 : quarters) * Math.PI) / 2;
}

/** Turns nearer than this are one, radians: less than a hair over the length of a sheet. */
const SAME_TURN_RAD = 1e-9;

/** Steps of the lattice that outlines of sheets are subtracted on, per mm. */
const PER_MM = 1e3;

function boxLess(box: Box2, regions: readonly Region[]): readonly Ring[] {
  const steps = (ring: Ring): Ring => ring.map((value) => Math.round(value * PER_MM));
  const rings = regions.flatMap(({ outer, holes }) => [outer, ...holes]).map(steps);
  return restOfWhole([steps(boxRing(box))], rings).map((ring) => ring.map((value) => value / PER_MM));
}

/** Zones are given any way round. */
function asOuter(ring: Ring): Ring {
  let twice = 0;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2)
    twice += ring[j] * ring[i + 1] - ring[i] * ring[j + 1];
  return twice >= 0 ? ring : ring.map((_, k) => ring[ring.length - 2 - 2 * (k >> 1) + (k & 1)]);
}

function reachesInto(ring: Ring, { minX, minY, maxX, maxY }: Box2): boolean {
  const box = boxOfPoints(ring);
  return box.minX < maxX && box.maxX > minX && box.minY < maxY && box.maxY > minY;
}
