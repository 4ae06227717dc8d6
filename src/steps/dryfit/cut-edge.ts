import type { Ring } from '../../geom/ring.ts';
import { endedAtFolds } from './groove-walls.ts';
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
 * Finds the finished cut of one side of a seam on one skin of the foam: beside each neutral edge the line of the outline that runs the same
 * way with its ends nearest to the edge's. Those ends are the ends of the cut there, corners and all. Where there is none, because crossings
 * were cleaned away, the nearest point of the outline is all there is: a cut of one point. Beside a fold of a grooved piece it ends with the panel.
 * @returns one for each edge of the seam.
 */
export function cutEdges(side: FitSide, skin: Skin): readonly CutEdge[] {
  const { piece } = side;
  const lines = piece.tracedSide === skin ? [piece.outline, ...piece.holes] : [piece.otherOutline, ...piece.otherHoles];
  const { edge } = side;
  const reachMm = REACH_THICKNESSES * piece.thicknessMm + edge.allowanceMm;
  const neutral = neutralRing(side);
  return Array.from({ length: edgeCount(side) }, (_, i) => {
    const [p, q] = [2 * ringPoint(side, i, 0), 2 * ringPoint(side, i, 1)];
    const sight: Sight = { turn: edge.reversed ? -1 : 1, lines, reachMm, meantMm: meantOffsets(side, skin, i) };
    return endedAtFolds(side, skin, i, cutBeside(neutral, p, q, sight));
  });
}

/**
 * Least and greatest distance outward at which the cut beside an edge is looked for: where its bevel and allowance put it, give or take a
 * thickness. Beyond that it is the cut of another edge, as where a slit closes under its bevels and nothing is left of this one. A point of the
 * seam tells the mean of both its edges, so an edge may lie as far beyond its points as those round it differ.
 */
function meantOffsets({ edge, piece }: FitSide, skin: Skin, i: number): readonly [number, number] {
  const offsets = skin === 'face' ? edge.faceOffsetMm : edge.backOffsetMm;
  const n = edge.reversed ? offsets.length - 2 - i : i;
  const near = offsets.subarray(Math.max(0, n - 1), n + 3);
  const [least, most] = [Math.min(...near), Math.max(...near)];
  const room = most - least + piece.thicknessMm;
  return [least - room - edge.allowanceMm, most + room + edge.allowanceMm];
}

/** One line of the outline beside an edge, in mm along and outward from the edge's start. */
interface Line {
  readonly s0: number;
  readonly o0: number;
  readonly s1: number;
  readonly o1: number;
}

/** Where a cut is looked for. */
interface Sight {
  /** 1 where outward lies to the right of the way along the edge, else -1. */
  readonly turn: 1 | -1;
  readonly lines: readonly Ring[];
  /** How far its ends may lie from those of the edge. */
  readonly reachMm: number;
  /** Least and greatest distance outward. */
  readonly meantMm: readonly [number, number];
}

function cutBeside(neutral: Ring, p: number, q: number, { turn, lines, reachMm, meantMm }: Sight): CutEdge {
  const length = Math.hypot(neutral[q] - neutral[p], neutral[q + 1] - neutral[p + 1]);
  const beside = linesBeside(neutral, p, q, turn, lines);
  let best: Line | null = null;
  let least = 2 * reachMm;
  for (const line of beside) {
    // A short edge may be carried past its own ends by its corners, on a miter as far as it is moved outward.
    if (!isAlike(line) || line.s1 < -Math.abs(line.o1) || line.s0 > length + Math.abs(line.o0)) continue;
    const out = outwardNear(line, length);
    if (out < meantMm[0] || out > meantMm[1]) continue;
    const away = Math.hypot(line.s0, line.o0) + Math.hypot(line.s1 - length, line.o1);
    if (away < least) [best, least] = [line, away];
  }
  const { s0, o0, s1, o1 } = best ?? nearestPoint(beside, length);
  const share = (s: number): number => (length > 0 ? s / length : 0);
  return { f0: share(s0), o0, f1: share(s1), o1 };
}

/** Distance outward of a line where it is nearest to the middle of an edge, along it. */
function outwardNear({ s0, o0, s1, o1 }: Line, length: number): number {
  const share = Math.min(1, Math.max(0, (length / 2 - s0) / (s1 - s0)));
  return o0 + share * (o1 - o0);
}

const isAlike = ({ s0, o0, s1, o1 }: Line): boolean =>
  s1 > s0 && s1 - s0 >= ALIKE_COSINE * Math.hypot(s1 - s0, o1 - o0);

/** All lines of the outline as an edge sees them; lines that run its way have `s1 > s0`. */
function linesBeside(neutral: Ring, p: number, q: number, turn: 1 | -1, lines: readonly Ring[]): readonly Line[] {
  const [px, py] = [neutral[p], neutral[p + 1]];
  const [dx, dy] = [neutral[q] - px, neutral[q + 1] - py];
  const length = Math.hypot(dx, dy);
  const [ex, ey] = length > 0 ? [dx / length, dy / length] : [1, 0];
  const found: Line[] = [];
  for (const ring of lines) {
    let [s, o] = [0, 0];
    for (let i = 0; i <= ring.length; i += 2) {
      const [x, y] = [ring[i % ring.length] - px, ring[(i + 1) % ring.length] - py];
      const [sNext, oNext] = [ex * x + ey * y, turn * (ey * x - ex * y)];
      // Rings run with outward on their right.
      if (i > 0)
        found.push(turn === 1 ? { s0: s, o0: o, s1: sNext, o1: oNext } : { s0: sNext, o0: oNext, s1: s, o1: o });
      [s, o] = [sNext, oNext];
    }
  }
  return found;
}

/**
 * The point of the outline nearest to the middle of an edge, brought across from that middle: how far along it lies is no gap between the edges,
 * and straight on along one edge is nowhere on a seam that turns.
 */
function nearestPoint(beside: readonly Line[], length: number): Line {
  let [out, least] = [0, Infinity];
  for (const { s0, o0, s1, o1 } of beside) {
    const [s, ds, d] = [s0 - length / 2, s1 - s0, o1 - o0];
    const square = ds * ds + d * d;
    const share = square > 0 ? Math.min(1, Math.max(0, -(s * ds + o0 * d) / square)) : 0;
    const away = Math.hypot(s + share * ds, o0 + share * d);
    if (away < least) [out, least] = [o0 + share * d, away];
  }
  return { s0: length / 2, o0: out, s1: length / 2, o1: out };
}

/** Distance outward of a cut at share `f` of its neutral edge, mm; before its start and after its end that of the end. */
export function offsetAt({ f0, o0, f1, o1 }: CutEdge, f: number): number {
  if (f <= f0) return o0;
  return f >= f1 ? o1 : o0 + ((f - f0) / (f1 - f0)) * (o1 - o0);
}
