import type { Ring } from '../../geom/ring.ts';
import { edgeCount, neutralRing, ringPoint, type FitSide } from './fit-side.ts';

/**
 * Where the finished cut runs beside one edge of the neutral line, as seen along that edge in the seam's direction:
 *
 *        o0 +-----------cut-----------+ o1        shares f of the edge, 0 at its start and 1 at its end; beyond them at corners that
 *    -------|----->edge----------->---|----       reach past the edge. o: distance outward, mm; inward negative.
 *          f0                        f1
 */
export interface CutEdge {
  readonly f0: number;
  readonly o0: number;
  readonly f1: number;
  readonly o1: number;
}

export type Skin = 'face' | 'back';

/** A cut turns against the neutral edge it was moved from by less than this: cosine of 60 degrees. */
const ALIKE_COSINE = 0.5;

/** Cuts are looked for within this many thicknesses of the neutral line: as far as a bevel of 75 degrees leans, and an allowance. */
const REACH_THICKNESSES = 6;

/**
 * Finds the finished cut of one side of a seam on one skin of the foam: from the middle of each neutral edge straight out (or in) to the
 * nearest line of the outline that runs the same way. That line's ends are the ends of the cut there, corners and all. Where none does,
 * because crossings were cleaned away, what stands nearest is all there is: a cut of one point.
 * @returns one for each edge of the seam.
 */
export function cutEdges(side: FitSide, skin: Skin): readonly CutEdge[] {
  const { piece } = side;
  const lines = piece.tracedSide === skin ? [piece.outline, ...piece.holes] : [piece.otherOutline, ...piece.otherHoles];
  const reach = REACH_THICKNESSES * piece.thicknessMm + side.edge.allowanceMm;
  const neutral = neutralRing(side);
  return Array.from({ length: edgeCount(side) }, (_, i) => {
    const [p, q] = [2 * ringPoint(side, i, 0), 2 * ringPoint(side, i, 1)];
    return cutBeside(neutral, p, q, side.edge.reversed ? -1 : 1, lines, reach);
  });
}

/** @param turn 1 where outward lies to the right of the way from `p` to `q`, else -1. */
function cutBeside(neutral: Ring, p: number, q: number, turn: 1 | -1, lines: readonly Ring[], reach: number): CutEdge {
  const [px, py] = [neutral[p], neutral[p + 1]];
  const [dx, dy] = [neutral[q] - px, neutral[q + 1] - py];
  const length = Math.hypot(dx, dy);
  const [ex, ey] = length > 0 ? [dx / length, dy / length] : [1, 0];
  // Along and outward from the start of the edge, mm.
  const along = (x: number, y: number): number => ex * (x - px) + ey * (y - py);
  const outward = (x: number, y: number): number => turn * (ey * (x - px) - ex * (y - py));
  let best: CutEdge | null = null;
  let nearest = reach;
  for (const ring of length > 0 ? lines : []) {
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      // Rings run with outward on their right.
      const [s, e] = turn === 1 ? [i, j] : [j, i];
      const [s0, s1] = [along(ring[s], ring[s + 1]), along(ring[e], ring[e + 1])];
      if (s0 > length / 2 || s1 < length / 2 || s1 <= s0) continue;
      const [o0, o1] = [outward(ring[s], ring[s + 1]), outward(ring[e], ring[e + 1])];
      if (s1 - s0 < ALIKE_COSINE * Math.hypot(s1 - s0, o1 - o0)) continue;
      const away = Math.abs(o0 + ((length / 2 - s0) / (s1 - s0)) * (o1 - o0));
      if (away < nearest) [best, nearest] = [{ f0: s0 / length, o0, f1: s1 / length, o1 }, away];
    }
  }
  return best ?? nearestPoint(lines, length, along, outward);
}

type Measure = (x: number, y: number) => number;

/** The point of the outline nearest to the middle of an edge. */
function nearestPoint(lines: readonly Ring[], length: number, along: Measure, outward: Measure): CutEdge {
  let [alongMm, outMm, least] = [length / 2, 0, Infinity];
  for (const ring of lines) {
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      const [s, o] = [along(ring[i], ring[i + 1]) - length / 2, outward(ring[i], ring[i + 1])];
      const [ds, d] = [along(ring[j], ring[j + 1]) - length / 2 - s, outward(ring[j], ring[j + 1]) - o];
      const square = ds * ds + d * d;
      const share = square > 0 ? Math.min(1, Math.max(0, -(s * ds + o * d) / square)) : 0;
      const away = Math.hypot(s + share * ds, o + share * d);
      if (away < least) [alongMm, outMm, least] = [length / 2 + s + share * ds, o + share * d, away];
    }
  }
  const f = length > 0 ? alongMm / length : 0;
  return { f0: f, o0: outMm, f1: f, o1: outMm };
}

/** Distance outward of a cut at share `f` of its neutral edge, mm. */
export function offsetAt({ f0, o0, f1, o1 }: CutEdge, f: number): number {
  return f1 > f0 ? o0 + ((f - f0) / (f1 - f0)) * (o1 - o0) : o0;
}
