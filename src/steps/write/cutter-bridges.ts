import { ringLength, type Ring } from '../../geom/ring.ts';
import type { PlainLine } from '../../geom/taken-lines.ts';

/** Places tried to either side of the even one, and how far apart the outermost lie, as a share of the way from bridge to bridge. */
const TRIES = 12;
const REACH_SHARE = 1 / 3;

/** A bridge stands on so much of the way round at most, as a share: a small piece gets fewer. */
const MOST_SHARE = 1 / 4;

/**
 * Where the cut round a piece is left out. Bridges stand evenly round it, each moved along to where the line is straightest: there the stub
 * is trimmed with one stroke of a knife.
 * @param ring  middle of the cut.
 * @param gapMm length of the line that is left out, mm.
 * @returns stretches of the ring; fewer than `count` where a quarter of the ring would be bridges.
 */
export function bridgeGaps(ring: Ring, count: number, gapMm: number): readonly PlainLine[] {
  const around = ringLength(ring);
  const fitting = Math.min(count, Math.floor((MOST_SHARE * around) / gapMm));
  const way = around / fitting;
  return Array.from({ length: fitting }, (_, i) => {
    const middle = straightestNear(ring, (i + 0.5) * way, gapMm, (REACH_SHARE * way) / TRIES);
    return { points: stretch(ring, middle - gapMm / 2, middle + gapMm / 2), closed: false };
  });
}

function straightestNear(ring: Ring, even: number, gapMm: number, stepMm: number): number {
  let best = { at: even, turn: Infinity };
  for (let k = 0; k <= 2 * TRIES; k += 1) {
    // The even place first, then farther and farther to both sides.
    const at = even + (k % 2 === 0 ? -1 : 1) * Math.ceil(k / 2) * stepMm;
    const turn = turnOf(stretch(ring, at - gapMm, at + gapMm));
    if (turn < best.turn - SAME_TURN_RAD) best = { at, turn };
  }
  return best.at;
}

/** Differences in turning under this are none, radians. */
const SAME_TURN_RAD = 1e-6;

/** How far a line turns in all, radians. */
function turnOf(line: Float64Array): number {
  let sum = 0;
  for (let i = 2; i + 3 < line.length; i += 2) {
    const [ux, uy] = [line[i] - line[i - 2], line[i + 1] - line[i - 1]];
    const [vx, vy] = [line[i + 2] - line[i], line[i + 3] - line[i + 1]];
    sum += Math.abs(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy));
  }
  return sum;
}

/** The part of a ring between two places along it, mm from its first point; either may lie before that point or past the end. */
function stretch(ring: Ring, from: number, to: number): Float64Array {
  const count = ring.length / 2;
  const around = ringLength(ring);
  const start = ((from % around) + around) % around;
  const end = start + (to - from);
  const points: number[] = [];
  let at = 0;
  for (let i = 0; at < end && i < 3 * count; i += 1) {
    const [a, b] = [2 * (i % count), 2 * ((i + 1) % count)];
    const length = Math.hypot(ring[b] - ring[a], ring[b + 1] - ring[a + 1]);
    const [s, e] = [Math.max(start, at), Math.min(end, at + length)];
    if (e > s) {
      if (points.length === 0) points.push(...between(ring, a, b, (s - at) / length));
      points.push(...between(ring, a, b, (e - at) / length));
    }
    at += length;
  }
  return Float64Array.from(points);
}

const between = (ring: Ring, a: number, b: number, share: number): [number, number] =>
  share === 1
    ? [ring[b], ring[b + 1]]
    : [ring[a] + share * (ring[b] - ring[a]), ring[a + 1] + share * (ring[b + 1] - ring[a + 1])];
