import { readJson } from '../base/read-json.ts';
import { fail, ok, type Result } from '../base/result.ts';
import { orient2d } from '../geom/predicates.ts';
import { boxOfPoints, ringArea, type Ring } from '../geom/ring.ts';
import { doesRingCross } from '../geom/ring-cross.ts';

/** One kind of piece of a strip task, in the task's own unit. */
export interface StripKind {
  /** How the file numbers it. */
  readonly id: number;
  /** Outline and holes, packed x y, without a repeated last point. */
  readonly rings: readonly Ring[];
  readonly quantity: number;
  /** Turns it may have, degrees, at least one. */
  readonly turnsDeg: readonly number[];
}

/** Pieces for a strip of fixed height that is to be as short as possible. */
export interface StripTask {
  readonly name: string;
  readonly height: number;
  readonly kinds: readonly StripKind[];
}

/** So many pieces at most: every pair has a weight. */
export const MOST_PIECES = 2000;
const MOST_CORNERS = 5000;
/** Turns tried where a task names none: any turn is allowed. */
const ANY_TURN_STEP_DEG = 15;

/**
 * Reads a strip packing task: `strip_height` and `items`, each with `demand`, `allowed_orientations` (degrees; left out: any) and
 * `shape.data` (corners of a ring; the first may be repeated).
 */
export function readStripTask(text: string): Result<StripTask> {
  const read = readJson(text, 'the task', () => wrong('is no JSON: write a task with "strip_height" and "items".'));
  if (!read.ok) return read;
  const json = read.value;
  if (!isRecord(json)) return wrong('holds no object: write a task with "strip_height" and "items".');
  const height = json['strip_height'];
  if (!isLength(height)) return wrong('needs "strip_height", a number over 0.');
  const items = json['items'];
  if (!Array.isArray(items) || items.length === 0) return wrong('needs "items", a list of at least one piece.');
  const kinds: StripKind[] = [];
  for (const [i, item] of items.entries()) {
    const kind = readKind(item, i);
    if (!kind.ok) return kind;
    kinds.push(kind.value);
  }
  const count = kinds.reduce((sum, { quantity }) => sum + quantity, 0);
  if (count > MOST_PIECES) return wrong(`asks for ${count} pieces; ${MOST_PIECES} are the most.`);
  const wide = kinds.find((kind) => !kind.turnsDeg.some((turn) => acrossOf(kind.rings[0], turn) <= height));
  if (wide !== undefined) return wrong(`piece ${wide.id} is higher than the strip however it may be turned: part it.`);
  const lengths = kinds.reduce((sum, { rings, quantity }) => sum + quantity * Math.abs(ringArea(rings[0])), 0) / height;
  const least = Math.max(height, lengths) * LEAST_BREADTH;
  const small = kinds.find(({ rings }) => rings.some((ring) => breadthOf(ring) < least));
  if (small !== undefined)
    return wrong(`piece ${small.id} or a hole in it is too small or too thin beside so large a strip: leave it out.`);
  return ok({ name: typeof json['name'] === 'string' ? json['name'] : 'strip', height, kinds });
}

function readKind(item: unknown, index: number): Result<StripKind> {
  if (!isRecord(item)) return wrong(`item ${index + 1} is no object.`);
  const { id = index, demand = 1, allowed_orientations: turns = null, shape } = item;
  if (typeof id !== 'number' || !Number.isSafeInteger(id))
    return wrong(`item ${index + 1} needs a whole number as "id".`);
  if (typeof demand !== 'number' || !Number.isSafeInteger(demand) || demand < 1)
    return wrong(`item ${id} needs "demand", a whole number from 1 on.`);
  const turnsDeg = turnsFrom(turns);
  if (turnsDeg === null) return wrong(`item ${id} needs "allowed_orientations", a list of degrees.`);
  const rings = ringsFrom(shape);
  if (rings === null) return wrong(`item ${id} needs "shape" with "data", a list of at least three corners [x, y].`);
  if (rings.some((ring) => ring.length > 2 * MOST_CORNERS))
    return wrong(`item ${id} has more than ${MOST_CORNERS} corners: simplify it.`);
  if (rings.some((ring) => ringArea(ring) === 0)) return wrong(`item ${id} has no area.`);
  if (rings.some(doesRingCross)) return wrong(`item ${id} crosses itself: draw its outline without a loop.`);
  if (rings.some((hole, i) => i > 0 && !liesInside(hole, rings[0])))
    return wrong(`item ${id} has a hole that reaches out of its outline: keep holes inside.`);
  return ok({ id, rings, quantity: demand, turnsDeg });
}

function turnsFrom(turns: unknown): readonly number[] | null {
  if (turns === null) return Array.from({ length: 360 / ANY_TURN_STEP_DEG }, (_, i) => i * ANY_TURN_STEP_DEG);
  if (!Array.isArray(turns) || turns.length === 0 || turns.length > 360) return null;
  const list: readonly unknown[] = turns;
  const degrees = list.filter((turn): turn is number => typeof turn === 'number' && Number.isFinite(turn));
  return degrees.length === list.length ? [...new Set(degrees)] : null;
}

/** An outline alone, or an outline with holes. */
function ringsFrom(shape: unknown): readonly Ring[] | null {
  if (!isRecord(shape)) return null;
  const { data } = shape;
  const lists: readonly unknown[] = isRecord(data)
    ? [data['outer'], ...(Array.isArray(data['inner']) ? (data['inner'] as readonly unknown[]) : [])]
    : [data];
  const rings = lists.map(ringFrom);
  return rings.every((ring) => ring !== null) ? rings : null;
}

function ringFrom(list: unknown): Ring | null {
  if (!Array.isArray(list)) return null;
  const points = list as readonly unknown[];
  const xy: number[] = [];
  for (const point of points) {
    if (!Array.isArray(point) || point.length !== 2) return null;
    const [x, y] = point as readonly unknown[];
    if (typeof x !== 'number' || typeof y !== 'number' || !(Math.abs(x) < MOST_LENGTH) || !(Math.abs(y) < MOST_LENGTH))
      return null;
    xy.push(x, y);
  }
  const n = xy.length;
  if (n >= 4 && xy[0] === xy[n - 2] && xy[1] === xy[n - 1]) xy.length = n - 2;
  return xy.length >= 6 ? Float64Array.from(xy) : null;
}

/** Larger numbers are no lengths. */
const MOST_LENGTH = 1e9;

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isLength = (value: unknown): value is number => typeof value === 'number' && value > 0 && value < MOST_LENGTH;

/** Thinner pieces, as a share of the strip's height or length, vanish where numbers are rounded to whole steps. */
const LEAST_BREADTH = 1e-5;

/** About how broad a ring is where it is thin: its area over the longer side of its box. */
function breadthOf(ring: Ring): number {
  const { minX, minY, maxX, maxY } = boxOfPoints(ring);
  return Math.abs(ringArea(ring)) / Math.max(maxX - minX, maxY - minY);
}

/** True where each corner of a ring lies inside another ring, or on it. */
function liesInside(ring: Ring, outer: Ring): boolean {
  for (let i = 0; i < ring.length; i += 2) if (!holdsPoint(outer, ring[i], ring[i + 1])) return false;
  return true;
}

/** By how often a line to the right crosses the ring; on the ring counts as inside. */
function holdsPoint(ring: Ring, x: number, y: number): boolean {
  let isInside = false;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const [ax, ay, bx, by] = [ring[j], ring[j + 1], ring[i], ring[i + 1]];
    const side = orient2d(ax, ay, bx, by, x, y);
    if (side === 0 && Math.min(ax, bx) <= x && x <= Math.max(ax, bx) && Math.min(ay, by) <= y && y <= Math.max(ay, by))
      return true;
    if (ay > y !== by > y && side > 0 === by > ay) isInside = !isInside;
  }
  return isInside;
}

/** How high an outline stands when it is turned. */
function acrossOf(ring: Ring, turnDeg: number): number {
  const [cos, sin] = [Math.cos((turnDeg * Math.PI) / 180), Math.sin((turnDeg * Math.PI) / 180)];
  let [low, high] = [Infinity, -Infinity];
  for (let i = 0; i < ring.length; i += 2) {
    const y = sin * ring[i] + cos * ring[i + 1];
    low = Math.min(low, y);
    high = Math.max(high, y);
  }
  // A hair for the rounding of a turn.
  return (high - low) * (1 - 1e-12);
}

const wrong = (text: string): Result<never> => fail('nest/instance', text);
