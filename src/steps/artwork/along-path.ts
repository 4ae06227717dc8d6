import type { Vec2 } from '../../geom/vec.ts';
import type { ArtPath, ArtSegment } from '../../model/artwork.ts';
import { segmentLength } from './segments.ts';
import { splitSegment } from './split-segment.ts';

/** A place on a line: where, and which way it runs there, radians counter-clockwise from +x. */
export interface PathPlace {
  readonly at: Vec2;
  readonly turnRad: number;
  /** Its segment, and the share of that one's parameter. */
  readonly segment: number;
  readonly share: number;
}

/** Places are right to this share of their segment's length. */
const SETTLED = 1e-11;
const MOST_ROUNDS = 80;

/**
 * The places of a line at true lengths from its start.
 * @param distancesMm  0 to the line's length; of a closed line any.
 */
export function placesAlong({ segments, isClosed }: ArtPath, distancesMm: readonly number[]): readonly PathPlace[] {
  const lengths = segments.map(segmentLength);
  const whole = lengths.reduce((sum, one) => sum + one, 0);
  return distancesMm.map((distance) => {
    let left = isClosed ? ((distance % whole) + whole) % whole : Math.min(whole, Math.max(0, distance));
    let i = 0;
    while (i + 1 < segments.length && left > lengths[i]) {
      left -= lengths[i];
      i += 1;
    }
    const share = shareAt(segments[i], Math.min(left, lengths[i]), lengths[i]);
    const [before, after] = splitSegment(segments[i], share);
    return { at: before.to, turnRad: share < 1 ? startTurn(after) : endTurn(before), segment: i, share };
  });
}

/** The share of a segment's parameter at a length from its start: regula falsi held in halves (Illinois). */
function shareAt(segment: ArtSegment, length: number, whole: number): number {
  if (length <= 0) return 0;
  if (length >= whole) return 1;
  if (segment.kind === 'line') return length / whole;
  let [low, high, fLow, fHigh] = [0, 1, -length, whole - length];
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const share = low - (fLow * (high - low)) / (fHigh - fLow);
    const miss = segmentLength(splitSegment(segment, share)[0]) - length;
    if (Math.abs(miss) <= SETTLED * whole) return share;
    if (miss > 0) {
      [high, fHigh] = [share, miss];
      fLow /= 2;
    } else {
      [low, fLow] = [share, miss];
      fHigh /= 2;
    }
  }
  return (low + high) / 2;
}

/** Which way a segment leaves its start, radians; where handles lie on it, by the first point that does not. */
function startTurn(segment: ArtSegment): number {
  const { from } = segment;
  if (segment.kind === 'arc') {
    const [c, s, sign] = [Math.cos(segment.start), Math.sin(segment.start), Math.sign(segment.turn)];
    const { u, v } = segment;
    return Math.atan2(sign * (c * v.y - s * u.y), sign * (c * v.x - s * u.x));
  }
  const ahead = segment.kind === 'cubic' ? [...segment.handles, segment.to] : [segment.to];
  const size = Math.max(...ahead.map((p) => Math.hypot(p.x - from.x, p.y - from.y)));
  const p = ahead.find((one) => Math.hypot(one.x - from.x, one.y - from.y) > 1e-9 * size) ?? segment.to;
  return Math.atan2(p.y - from.y, p.x - from.x);
}

function endTurn(segment: ArtSegment): number {
  const back: ArtSegment =
    segment.kind === 'cubic'
      ? { kind: 'cubic', from: segment.to, handles: [segment.handles[1], segment.handles[0]], to: segment.from }
      : segment.kind === 'line'
        ? { kind: 'line', from: segment.to, to: segment.from }
        : { ...segment, from: segment.to, to: segment.from, start: segment.start + segment.turn, turn: -segment.turn };
  const turn = startTurn(back);
  return turn > 0 ? turn - Math.PI : turn + Math.PI;
}
