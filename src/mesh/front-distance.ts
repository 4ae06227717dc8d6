import { MinHeap } from '../base/min-heap.ts';
import type { Stepwise } from '../base/stepwise.ts';

/** Vertices settled in one stretch: a few milliseconds. */
const STRETCH_VERTICES = 1 << 13;
/** Share by which a value must fall to be handed on: less is rounding. */
const LEAST_GAIN = 1e-12;
/** Share of a side by which a straight way back may pass its end: rounding, where the way runs along another side. */
const PAST_END = 1e-9;

/**
 * Distances along a surface from a line of sides, by marching with straight fronts (Kimmel and Sethian, "Computing geodesic paths on
 * manifolds", 1998): over each side the distance rises as over a plane. Exact where the line is straight and the surface can be rolled out
 * before it; round the ends and bends of a line the error is of the order of a side's length, and never makes the distance short of the
 * next vertex of the line by more than that.
 * @param triangles  three vertices each, counter-clockwise.
 * @param positions  x y z per vertex, mm.
 * @param sources    vertices of the line.
 * @returns mm per vertex; Infinity where no way leads.
 */
export function* frontDistanceSteps(
  triangles: Uint32Array,
  positions: Float64Array,
  sources: Iterable<number>,
): Stepwise<Float64Array> {
  const value = new Float64Array(positions.length / 3).fill(Infinity);
  const { starts, places } = placesOfVertices(triangles, value.length);
  const queue = new MinHeap();
  const offer = (v: number, distance: number): void => {
    if (!(distance < value[v] * (1 - LEAST_GAIN))) return;
    value[v] = distance;
    queue.push(distance, v);
  };
  for (const v of sources) offer(v, 0);
  for (let settled = 1; queue.size > 0; settled += 1) {
    if (settled % STRETCH_VERTICES === 0) yield;
    const { key, item: v } = queue.pop();
    if (key > value[v]) continue;
    for (let i = starts[v]; i < starts[v + 1]; i += 1) {
      const t = 3 * Math.floor(places[i] / 3);
      const p = triangles[t + ((places[i] + 1) % 3)];
      const q = triangles[t + ((places[i] + 2) % 3)];
      const [toP, toQ, across] = [length(positions, v, p), length(positions, v, q), length(positions, p, q)];
      offer(p, key + toP);
      offer(q, key + toQ);
      offer(p, overSide(key, value[q], toQ, toP, across));
      offer(q, overSide(key, value[p], toP, toQ, across));
    }
  }
  return value;
}

/**
 * Distance at a triangle's corner where a straight front comes over the opposite side; Infinity where its way does not cross the side.
 * @param a     value at one end of the side, `b` at the other.
 * @param side  its length; `ca` and `cb` those from the corner to its ends.
 */
function overSide(a: number, b: number, side: number, ca: number, cb: number): number {
  const along = (b - a) / side;
  if (!(Math.abs(along) < 1)) return Infinity;
  const up = Math.sqrt(1 - along * along);
  const x = (ca * ca - cb * cb + side * side) / (2 * side);
  const y = Math.sqrt(Math.max(0, ca * ca - x * x));
  const crossing = x - (along * y) / up;
  if (crossing < -PAST_END * side || crossing > (1 + PAST_END) * side) return Infinity;
  return a + along * x + up * y;
}

function length(positions: Float64Array, v: number, w: number): number {
  const dx = positions[3 * w] - positions[3 * v];
  const dy = positions[3 * w + 1] - positions[3 * v + 1];
  const dz = positions[3 * w + 2] - positions[3 * v + 2];
  return Math.sqrt(dx * dx + dy * dy + dz * dz);
}

/** The places in `triangles` at which each vertex stands. */
function placesOfVertices(triangles: Uint32Array, count: number): { starts: Int32Array; places: Int32Array } {
  const starts = new Int32Array(count + 1);
  for (const v of triangles) starts[v + 1] += 1;
  for (let v = 0; v < count; v += 1) starts[v + 1] += starts[v];
  const fill = starts.slice();
  const places = new Int32Array(triangles.length);
  triangles.forEach((v, h) => (places[fill[v]++] = h));
  return { starts, places };
}
