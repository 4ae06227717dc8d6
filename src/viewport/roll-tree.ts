import { MinHeap } from '../base/min-heap.ts';
import type { Work } from '../base/work.ts';
import { cornerAfter, cornerBefore, cornersAtVertices } from '../mesh/corners-at-vertices.ts';

/**
 * For each half-edge `3 t + k` (from corner `k` to the next) of packed triangles the half-edge across, or -1 where there is none.
 */
export async function halfedgesAcross(triangles: Uint32Array, vertexCount: number, work: Work): Promise<Int32Array> {
  const around = cornersAtVertices(triangles, vertexCount);
  const across = new Int32Array(triangles.length).fill(-1);
  for (let h = 0; h < triangles.length; h += 1) {
    if (h % 12288 === 0) await work.pause(0);
    const [from, to] = [triangles[h], triangles[cornerAfter(h)]];
    for (let i = around.starts[to]; i < around.starts[to + 1]; i += 1) {
      const other = around.corners[i];
      if (triangles[cornerAfter(other)] === from) across[h] = other;
    }
  }
  return across;
}

/**
 * How the triangles of a patch hang on each other: every triangle but the first is hinged to one that comes before it.
 * Bending all hinges by a share of their fold bends the whole patch.
 */
export interface RollTree {
  /** Triangles, each after the one it hangs on; the first lies in the middle of the flat piece. */
  readonly order: Uint32Array;
  /** Half-edge of each triangle where it is hinged, or -1 for the first one; and the half-edge across. */
  readonly hinge: Int32Array;
  readonly across: Int32Array;
  /** Signed fold at that hinge, radians; convex > 0. */
  readonly foldRad: Float64Array;
  /** Length of each half-edge on the finished shape and on the flat piece, mm. */
  readonly shapeLength: Float64Array;
  readonly flatLength: Float64Array;
}

/**
 * Hangs the triangles on each other by shortest ways from the middle, so that no way round is longer than it need be.
 * @param shape  packed xyz per vertex of the finished shape, mm.
 * @param flat   packed xy per vertex of the flat piece, mm.
 * @param across the half-edge across each half-edge, or -1.
 */
export async function rollTree(
  triangles: Uint32Array,
  shape: Float32Array,
  flat: ArrayLike<number>,
  across: Int32Array,
  work: Work,
): Promise<RollTree> {
  const count = triangles.length / 3;
  const shapeLength = new Float64Array(triangles.length);
  const flatLength = new Float64Array(triangles.length);
  for (let h = 0; h < triangles.length; h += 1) {
    if (h % 12288 === 0) await work.pause(0);
    const [v, w] = [triangles[h], triangles[cornerAfter(h)]];
    shapeLength[h] = Math.hypot(
      shape[3 * w] - shape[3 * v],
      shape[3 * w + 1] - shape[3 * v + 1],
      shape[3 * w + 2] - shape[3 * v + 2],
    );
    flatLength[h] = Math.hypot(flat[2 * w] - flat[2 * v], flat[2 * w + 1] - flat[2 * v + 1]);
  }
  const centres = flatCentres(triangles, flat);
  await work.pause(0);
  const hinge = new Int32Array(count).fill(-1);
  const order: number[] = [];
  const way = new Float64Array(count).fill(Infinity);
  const isDone = new Uint8Array(count);
  const queue = new MinHeap();
  const first = middleTriangle(triangles, flat, centres);
  way[first] = 0;
  queue.push(0, first);
  while (queue.size > 0) {
    const { item: t } = queue.pop();
    if (isDone[t] === 1) continue;
    isDone[t] = 1;
    order.push(t);
    if (order.length % 256 === 0) await work.pause(0);
    for (let h = 3 * t; h < 3 * t + 3; h += 1) {
      if (across[h] < 0) continue;
      const s = Math.floor(across[h] / 3);
      const next = way[t] + Math.hypot(centres[2 * s] - centres[2 * t], centres[2 * s + 1] - centres[2 * t + 1]);
      if (isDone[s] === 1 || next >= way[s]) continue;
      way[s] = next;
      hinge[s] = across[h];
      queue.push(next, s);
    }
  }
  await work.pause(0);
  const foldRad = Float64Array.from(hinge, (h) => (h < 0 ? 0 : foldAt(triangles, shape, h, across[h])));
  return { order: Uint32Array.from(order), hinge, across, foldRad, shapeLength, flatLength };
}

function flatCentres(triangles: Uint32Array, flat: ArrayLike<number>): Float64Array {
  const centres = new Float64Array((2 * triangles.length) / 3);
  for (let c = 0; c < triangles.length; c += 1) {
    const t = Math.floor(c / 3);
    centres[2 * t] += flat[2 * triangles[c]] / 3;
    centres[2 * t + 1] += flat[2 * triangles[c] + 1] / 3;
  }
  return centres;
}

/** The triangle nearest to the centre of area of the flat piece. */
function middleTriangle(triangles: Uint32Array, flat: ArrayLike<number>, centres: Float64Array): number {
  let [sum, x, y] = [0, 0, 0];
  for (let t = 0; t < triangles.length / 3; t += 1) {
    const [a, b, c] = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]];
    const area = Math.abs(
      (flat[2 * b] - flat[2 * a]) * (flat[2 * c + 1] - flat[2 * a + 1]) -
        (flat[2 * b + 1] - flat[2 * a + 1]) * (flat[2 * c] - flat[2 * a]),
    );
    sum += area;
    x += area * centres[2 * t];
    y += area * centres[2 * t + 1];
  }
  let [best, least] = [0, Infinity];
  for (let t = 0; t < triangles.length / 3; t += 1) {
    const distance = Math.hypot(centres[2 * t] - x / sum, centres[2 * t + 1] - y / sum);
    if (distance >= least) continue;
    least = distance;
    best = t;
  }
  return best;
}

/** Signed turn from the triangle of half-edge `g` to that of `h` across their common edge, radians; convex > 0. */
function foldAt(triangles: Uint32Array, p: Float32Array, h: number, g: number): number {
  const from = 3 * triangles[g];
  const to = 3 * triangles[cornerAfter(g)];
  const near = 3 * triangles[cornerBefore(g)];
  const far = 3 * triangles[cornerBefore(h)];
  const e = [p[to] - p[from], p[to + 1] - p[from + 1], p[to + 2] - p[from + 2]];
  const u = [p[near] - p[from], p[near + 1] - p[from + 1], p[near + 2] - p[from + 2]];
  const v = [p[far] - p[from], p[far + 1] - p[from + 1], p[far + 2] - p[from + 2]];
  const n = cross(e, u);
  const m = cross(v, e);
  const length = Math.hypot(e[0], e[1], e[2]) || 1;
  return Math.atan2(dot(cross(n, m), e) / length, dot(n, m));
}

const cross = (a: readonly number[], b: readonly number[]): number[] => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const dot = (a: readonly number[], b: readonly number[]): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
