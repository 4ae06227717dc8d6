import { isInRings } from '../geom/in-rings.ts';
import type { Vec2 } from '../geom/vec.ts';
import type { FreeBlock, FreePlaces } from '../model/free-places.ts';

/** A place that a piece may have, beside one that was wished for. */
export interface NearPlace extends Vec2 {
  /** From the wished place, mm. */
  readonly awayMm: number;
}

/** What is in the way at a place: a piece, a place kept clear (null), or the edge of the sheet. */
export type InTheWay = FreeBlock | 'edge';

/** True where a piece may be. */
export const isFree = ({ free }: FreePlaces, { x, y }: Vec2): boolean => isInRings(free, x, y);

/** What a piece would lie over at a place; the edge of the sheet where it is none of the others; null where it is free. */
export function inTheWay(places: FreePlaces, { x, y }: Vec2): InTheWay | null {
  if (isInRings(places.free, x, y)) return null;
  return places.blocks.find(({ rings }) => isInRings(rings, x, y)) ?? 'edge';
}

/** The nearest place on a border of where a piece may be: there it touches. Null where there is no place at all. */
export function nearestTouch({ free }: FreePlaces, { x, y }: Vec2): NearPlace | null {
  let best: NearPlace | null = null;
  for (const ring of free) {
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const [ux, uy] = [ring[i] - ring[j], ring[i + 1] - ring[j + 1]];
      const square = ux * ux + uy * uy;
      const along = square === 0 ? 0 : ((x - ring[j]) * ux + (y - ring[j + 1]) * uy) / square;
      const t = Math.max(0, Math.min(1, along));
      const [px, py] = [ring[j] + t * ux, ring[j + 1] + t * uy];
      const awayMm = Math.hypot(px - x, py - y);
      if (best === null || awayMm < best.awayMm) best = { x: px, y: py, awayMm };
    }
  }
  return best;
}

/** Nearer than this to where it began a step came to nothing, mm. */
const LEAST_STEP_MM = 0.05;
/** A piece may begin so far within what is in the way, mm: a search follows outlines less closely, in either direction. */
const WITHIN_MM = 0.7;
/** Along a border a step runs so far beside it, mm: little where it runs between two. */
const BESIDE_MM = [0, 0.02, -0.02, 0.001, -0.001];

/**
 * Where a step in one direction ends: as far as it goes before something is in the way; where something is in the way at once, the next free place past
 * it.
 * @param step      the whole step, mm; its direction is that in which places past what is in the way are sought.
 * @param isCoarse  false: it never goes past anything.
 */
export function stepTo(places: FreePlaces, from: Vec2, step: Vec2, isCoarse: boolean): NearPlace | null {
  const length = Math.hypot(step.x, step.y);
  const [dx, dy] = [step.x / length, step.y / length];
  for (const start of startsAt(places, from, dx, dy)) {
    const here = freeSpans(places.free, start, dx, dy).find(([begin, end]) => begin <= 0 && end > LEAST_STEP_MM);
    if (here !== undefined) return along(start, dx, dy, Math.min(length, here[1]));
  }
  if (!isCoarse) return null;
  const next = freeSpans(places.free, from, dx, dy).find(([begin]) => begin > LEAST_STEP_MM);
  return next === undefined ? null : along(from, dx, dy, Math.max(next[0], Math.min(length, next[1])));
}

const along = (from: Vec2, dx: number, dy: number, t: number): NearPlace => ({
  x: from.x + t * dx,
  y: from.y + t * dy,
  awayMm: t,
});

/** Where a step may begin: where the piece is, or where it is free at once beside that. */
function startsAt(places: FreePlaces, from: Vec2, dx: number, dy: number): readonly Vec2[] {
  const beside = (at: Vec2): readonly Vec2[] => BESIDE_MM.map((mm) => ({ x: at.x - mm * dy, y: at.y + mm * dx }));
  if (isFree(places, from)) return beside(from);
  const touch = nearestTouch(places, from);
  return touch !== null && touch.awayMm <= WITHIN_MM ? beside(touch) : [from];
}

/** Stretches of a line from a place that are free, as distances from it, nearest first. */
function freeSpans(rings: readonly Float64Array[], from: Vec2, dx: number, dy: number): (readonly [number, number])[] {
  const crossings: number[] = [];
  // Turned so that the line is an axis.
  const ahead = (x: number, y: number): number => (x - from.x) * dx + (y - from.y) * dy;
  const aside = (x: number, y: number): number => (y - from.y) * dx - (x - from.x) * dy;
  for (const ring of rings) {
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const [a, b] = [aside(ring[j], ring[j + 1]), aside(ring[i], ring[i + 1])];
      if (a > 0 === b > 0) continue;
      const [s, t] = [ahead(ring[j], ring[j + 1]), ahead(ring[i], ring[i + 1])];
      crossings.push(s + ((t - s) * a) / (a - b));
    }
  }
  crossings.sort((one, other) => one - other);
  const spans: (readonly [number, number])[] = [];
  for (let i = 0; i + 1 < crossings.length; i += 2)
    if (crossings[i + 1] > 0) spans.push([Math.max(0, crossings[i]), crossings[i + 1]]);
  return spans;
}
