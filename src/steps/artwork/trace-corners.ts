/** How lines of a picture are looked at, in px: soft edges are known far better than edges of two tones alone. */
export interface EdgeManner {
  /** Within this way of a corner the picture rounds it off. */
  readonly gapPx: number;
  /** How far along a side it is looked at, longest first. */
  readonly reachesPx: readonly number[];
  /** Root mean square of places from a side up to which it is one. */
  readonly sidePx: number;
  /** Least turn at a corner, radians. */
  readonly turn: number;
  /** Farthest that a straight part is from its places. */
  readonly straightPx: number;
}

const rad = (deg: number): number => (deg * Math.PI) / 180;

export const SOFT_EDGES: EdgeManner = {
  gapPx: 1.25,
  reachesPx: [8, 5.5, 4],
  sidePx: 0.12,
  turn: rad(28),
  straightPx: 0.2,
};

export const TWO_TONE_EDGES: EdgeManner = {
  gapPx: 1.25,
  reachesPx: [16, 11],
  sidePx: 0.4,
  turn: rad(40),
  straightPx: 0.6,
};

/** A line so many times as long as the shortest reach may have corners; a smaller one is a dot. */
const LEAST_REACHES = 6;
/** Fewest places that settle a side. */
const LEAST_PLACES = 4;

/** Way along a closed line from its first place to each, and to the first again. */
export function waysAlong(points: Float64Array): Float64Array {
  const n = points.length / 2;
  const ways = new Float64Array(n + 1);
  for (let i = 0; i < n; i += 1) {
    const j = (i + 1) % n;
    ways[i + 1] = ways[i] + Math.hypot(points[2 * j] - points[2 * i], points[2 * j + 1] - points[2 * i + 1]);
  }
  return ways;
}

/** A corner of a line of places: the number of its place, and within which way of it the picture rounds it off. */
export interface FoundCorner {
  readonly index: number;
  readonly gapPx: number;
}

/** A tip sharper than a right angle is rounded off so many times farther. */
const SHARP_GAPS = 2;

/**
 * Corners of a closed line of places, px: where the tangents of its two sides, each a parabola through the places from `gapPx` (twice that at tips) to the
 * longest reach along which they are one, brought to the place between them, turn by `turn` or more; of several within reach of each other the
 * sharpest. On a smooth line both tangents agree however tight it bends. A corner's place is the one nearest to where the tangents meet.
 * @returns in order along the line.
 */
export function findCorners(points: Float64Array, ways: Float64Array, manner: EdgeManner): readonly FoundCorner[] {
  const n = points.length / 2;
  const total = ways[n];
  if (total < LEAST_REACHES * reachPx(manner)) return [];
  const found: { index: number; gapPx: number; turn: number; back: number; ahead: number }[] = [];
  for (let i = 0; i < n; i += 1) {
    for (const gapPx of [manner.gapPx, SHARP_GAPS * manner.gapPx]) {
      const back = sideTangent(points, ways, i, -1, gapPx, manner);
      const ahead = back === null ? null : sideTangent(points, ways, i, 1, gapPx, manner);
      if (back === null || ahead === null) continue;
      // Both point away from the place: on a straight line they are opposite.
      const cross = back.x * ahead.y - back.y * ahead.x;
      const turn = Math.PI - Math.abs(Math.atan2(cross, back.x * ahead.x + back.y * ahead.y));
      // Only a tip is rounded off so far.
      if (turn < (gapPx > manner.gapPx ? Math.PI / 2 : manner.turn)) continue;
      const share = ((ahead.atX - back.atX) * ahead.y - (ahead.atY - back.atY) * ahead.x) / cross;
      const meeting = {
        x: points[2 * i] + back.atX + share * back.x,
        y: points[2 * i + 1] + back.atY + share * back.y,
      };
      const index = nearestPlace(points, ways, i, meeting, reachPx(manner));
      found.push({
        index,
        gapPx: turn > Math.PI / 2 ? SHARP_GAPS * manner.gapPx : manner.gapPx,
        turn,
        back: back.reach,
        ahead: ahead.reach,
      });
      break;
    }
  }
  found.sort((a, b) => b.turn - a.turn || a.index - b.index);
  const corners: FoundCorner[] = [];
  for (const { index, gapPx, back, ahead } of found) {
    // A side that holds a sharper corner is no side.
    const isFree = corners.every((other) => {
      const on = (ways[other.index] - ways[index] + total) % total;
      return on > ahead + other.gapPx && total - on > back + other.gapPx;
    });
    if (isFree) corners.push({ index, gapPx });
  }
  return corners.sort((a, b) => a.index - b.index);
}

const reachPx = ({ reachesPx }: EdgeManner): number => reachesPx[reachesPx.length - 1];

/** The place nearest to a point, of those within a way of another place. */
function nearestPlace(
  points: Float64Array,
  ways: Float64Array,
  i: number,
  { x, y }: { x: number; y: number },
  withinPx: number,
): number {
  const n = points.length / 2;
  const total = ways[n];
  let [best, least] = [i, Math.hypot(points[2 * i] - x, points[2 * i + 1] - y)];
  for (const step of [1, -1]) {
    for (let k = 1; k < n / 2; k += 1) {
      const j = (i + step * k + n) % n;
      if ((step * (ways[j] - ways[i]) + 2 * total) % total > withinPx) break;
      const distance = Math.hypot(points[2 * j] - x, points[2 * j + 1] - y);
      if (distance < least) [best, least] = [j, distance];
    }
  }
  return best;
}

/** Direction at a place away into one of its sides, of length 1, and where that passes it; null where places beyond the gap are on no smooth line. */
function sideTangent(
  points: Float64Array,
  ways: Float64Array,
  i: number,
  step: 1 | -1,
  gapPx: number,
  { reachesPx, sidePx }: EdgeManner,
): { x: number; y: number; atX: number; atY: number; reach: number } | null {
  const n = points.length / 2;
  const total = ways[n];
  const s: number[] = [];
  const x: number[] = [];
  const y: number[] = [];
  for (let k = 1; k < n / 2; k += 1) {
    const j = (i + step * k + n) % n;
    const way = (step * (ways[j] - ways[i]) + 2 * total) % total;
    if (way > reachesPx[0]) break;
    if (way < gapPx) continue;
    s.push(way);
    x.push(points[2 * j] - points[2 * i]);
    y.push(points[2 * j + 1] - points[2 * i + 1]);
  }
  for (const reach of reachesPx) {
    let count = s.length;
    while (count > 0 && s[count - 1] > reach) count -= 1;
    if (count < LEAST_PLACES) return null;
    const [a, b] = [parabola(s, x, count), parabola(s, y, count)];
    if (a === null || b === null) return null;
    // Three figures of each are settled by the places themselves.
    if (Math.sqrt((a.squares + b.squares) / (2 * count - 6)) <= sidePx) {
      const length = Math.hypot(a.slope, b.slope);
      return { x: a.slope / length, y: b.slope / length, atX: a.value, atY: b.value, reach };
    }
  }
  return null;
}

/** The parabola of least squares through values over ways: its value and slope at way 0, and the squares left over. */
export function parabola(
  s: readonly number[],
  v: readonly number[],
  count: number,
): { value: number; slope: number; squares: number } | null {
  let mean = 0;
  for (let i = 0; i < count; i += 1) mean += s[i] / count;
  let [m2, m3, m4, v0, v1, v2] = [0, 0, 0, 0, 0, 0];
  for (let i = 0; i < count; i += 1) {
    const d = s[i] - mean;
    [m2, m3, m4] = [m2 + d * d, m3 + d ** 3, m4 + d ** 4];
    [v0, v1, v2] = [v0 + v[i], v1 + v[i] * d, v2 + v[i] * d * d];
  }
  // v = p + q d + r (d² - m2 / n - (m3 / m2) d): each part square to the others.
  const lean = m3 / m2;
  const bottom = m4 - (m2 * m2) / count - lean * m3;
  if (!(bottom > 0)) return null;
  const p = v0 / count;
  const q = v1 / m2;
  const r = (v2 - (m2 * v0) / count - lean * v1) / bottom;
  let squares = 0;
  for (let i = 0; i < count; i += 1) {
    const d = s[i] - mean;
    squares += (v[i] - p - q * d - r * (d * d - m2 / count - lean * d)) ** 2;
  }
  return {
    value: p - q * mean + r * (mean * mean - m2 / count + lean * mean),
    slope: q + r * (-2 * mean - lean),
    squares,
  };
}
