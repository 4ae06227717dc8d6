import { offsetRing, type EdgeOffsets, type OffsetRing } from '../../geom/offset-ring.ts';
import { coveredRegions } from '../../geom/polygon-boolean.ts';
import { ringArea, type Ring } from '../../geom/ring.ts';
import { isSimpleArea } from '../../geom/ring-simple.ts';
import type { Vec2 } from '../../geom/vec.ts';
import type { CornerPoints } from './corner-points.ts';

/** The lines of one side of the foam. */
export interface CutLines {
  readonly outline: Ring;
  readonly holes: readonly Ring[];
  /** The rings as they were moved, before crossings were cleaned away: edge by edge the neutral ones. */
  readonly moved: readonly OffsetRing[];
  /** What cleaning did that the maker must know: `gone`, nothing is left of this side; `parted`, it fell into more than one area. */
  readonly loss: 'none' | 'gone' | 'parted';
}

/**
 * Before crossings are cleaned away every edge is drawn in by this much, mm, so that the two sides of a cut without width stay apart; the
 * corners come back where they were. Five steps of the cleaning's grid.
 */
const EASE_MM = 5e-4;

/** An area smaller than this that came off is a crumb and not worth a word, mm². */
const CRUMB_MM2 = 1;

/**
 * Moves the neutral rings outward by their offsets and cleans away what crosses. Nothing is touched that need not be: rings that are
 * moved nowhere come back as they are, and moved ones that do not cross keep their exact corners.
 * @param neutral   outer ring first, then holes.
 * @param corners   for each ring, those that stand elsewhere than where their edges meet.
 * @param isFolded  true for a piece that lies over itself: its lines cross by right and are left alone.
 */
export function cutLines(
  neutral: readonly Ring[],
  offsets: readonly EdgeOffsets[],
  isFolded: boolean,
  corners: readonly CornerPoints[] = [],
): CutLines {
  const moved = neutral.map((ring, i) => offsetRing(ring, offsets[i], corners[i]));
  const rings = moved.map(({ ring }) => ring);
  const asMoved: CutLines = { outline: rings[0], holes: rings.slice(1), moved, loss: 'none' };
  const isStill = offsets.every(({ atStart, atEnd }) => atStart.every((o) => o === 0) && atEnd.every((o) => o === 0));
  if (isStill || isFolded) return asMoved;
  // A cut of two points inside the piece has no area to clean; it stays as it is.
  const slits = rings.filter((ring) => ring.length < 6);
  const closed = rings.filter((ring) => ring.length >= 6);
  if (isSimpleArea(closed)) return asMoved;
  const regions = cleaned(moved.filter(({ ring }) => ring.length >= 6));
  if (regions.length === 0) return { outline: neutral[0], holes: neutral.slice(1), moved, loss: 'gone' };
  const [largest, ...rest] = regions;
  const lost = rest.some(({ outer }) => ringArea(outer) > CRUMB_MM2);
  return { outline: largest.outer, holes: [...largest.holes, ...slits], moved, loss: lost ? 'parted' : 'none' };
}

function cleaned(moved: readonly OffsetRing[]): readonly { outer: Ring; holes: readonly Ring[] }[] {
  const original = new Map<string, readonly [number, number]>();
  const eased = moved.map(({ ring, outward }) => {
    const inner = ring.slice();
    for (let i = 0; i < ring.length; i += 2) {
      const length = Math.hypot(outward[i], outward[i + 1]);
      // Where the sum of both normals vanishes, at the end of a cut without width, the point stays.
      if (length > 0) {
        inner[i] -= (EASE_MM * outward[i]) / length;
        inner[i + 1] -= (EASE_MM * outward[i + 1]) / length;
      }
      original.set(`${inner[i]} ${inner[i + 1]}`, [ring[i], ring[i + 1]]);
    }
    return inner;
  });
  const back = (ring: Ring): Ring => {
    const points: number[] = [];
    for (let i = 0; i < ring.length; i += 2) {
      const [x, y] = original.get(`${ring[i]} ${ring[i + 1]}`) ?? [ring[i], ring[i + 1]];
      points.push(x, y);
    }
    return Float64Array.from(points);
  };
  return coveredRegions(eased).map(({ outer, holes }) => ({ outer: back(outer), holes: holes.map(back) }));
}

/** Length of the moved edges of a run with the steps between them, mm. */
export function movedLength(moved: OffsetRing, sourceCount: number, from: number, count: number): number {
  const { ring, startOf, endOf } = moved;
  const away = (a: number, b: number): number =>
    Math.hypot(ring[2 * b] - ring[2 * a], ring[2 * b + 1] - ring[2 * a + 1]);
  let length = 0;
  for (let j = 0; j < count; j += 1) {
    const e = (from + j) % sourceCount;
    length += away(startOf[e], endOf[e]);
    if (j > 0) length += away(endOf[(e + sourceCount - 1) % sourceCount], startOf[e]);
  }
  return length;
}

/** A place on a moved edge, straight out from a share `f` of the neutral edge `e`, and the way outward there, length 1. */
export function pointOnMoved(neutral: Ring, offsets: EdgeOffsets, e: number, f: number): { at: Vec2; outward: Vec2 } {
  const next = (e + 1) % (neutral.length / 2);
  const [dx, dy] = [neutral[2 * next] - neutral[2 * e], neutral[2 * next + 1] - neutral[2 * e + 1]];
  const length = Math.hypot(dx, dy);
  const outward = length > 0 ? { x: dy / length, y: -dx / length } : { x: 0, y: -1 };
  const o = offsets.atStart[e] + f * (offsets.atEnd[e] - offsets.atStart[e]);
  return {
    at: { x: neutral[2 * e] + f * dx + o * outward.x, y: neutral[2 * e + 1] + f * dy + o * outward.y },
    outward,
  };
}

/** The point of some rings nearest to `p`. */
export function nearestOnRings(rings: readonly Ring[], p: Vec2): Vec2 {
  let best = p;
  let least = Infinity;
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      const [dx, dy] = [ring[j] - ring[i], ring[j + 1] - ring[i + 1]];
      const square = dx * dx + dy * dy;
      const f = square > 0 ? Math.min(1, Math.max(0, ((p.x - ring[i]) * dx + (p.y - ring[i + 1]) * dy) / square)) : 0;
      const q = { x: ring[i] + f * dx, y: ring[i + 1] + f * dy };
      const away = Math.hypot(q.x - p.x, q.y - p.y);
      if (away < least) [least, best] = [away, q];
    }
  }
  return best;
}
