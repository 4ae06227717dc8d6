import { MinHeap } from '../base/min-heap.ts';
import type { Work } from '../base/work.ts';

/**
 * Triangles of a surface by their sizes alone, each laid in a plane of its own with its first side along x:
 *
 *            c2
 *           /  \   height        c0 = (0, 0)   c1 = (base, 0)   c2 = (foot, height)
 *         c0----c1
 *          base
 *
 * `base` and `height` are > 0. Place `3 t + k` stands for corner k of triangle t, and for its side from corner k to the next.
 */
export interface OpenedTriangles {
  readonly vertexCount: number;
  readonly count: number;
  /** Three vertices per triangle, counter-clockwise. */
  readonly corners: Uint32Array;
  readonly base: Float64Array;
  readonly foot: Float64Array;
  readonly height: Float64Array;
}

/** What every search over the same triangles needs. */
export interface SurfaceSides {
  readonly opened: OpenedTriangles;
  /** Length of each side, mm, by place. */
  readonly length: Float64Array;
  /** The places at which vertex v stands: `places[starts[v] .. starts[v + 1])`, ascending. */
  readonly starts: Int32Array;
  readonly places: Int32Array;
}

export function surfaceSides(opened: OpenedTriangles): SurfaceSides {
  const { corners, base, foot, height, vertexCount, count } = opened;
  const length = new Float64Array(3 * count);
  for (let t = 0; t < count; t += 1) {
    const beyond = base[t] - foot[t];
    length[3 * t] = base[t];
    length[3 * t + 1] = Math.sqrt(beyond * beyond + height[t] * height[t]);
    length[3 * t + 2] = Math.sqrt(foot[t] * foot[t] + height[t] * height[t]);
  }
  const starts = new Int32Array(vertexCount + 1);
  for (let h = 0; h < corners.length; h += 1) starts[corners[h] + 1] += 1;
  for (let v = 0; v < vertexCount; v += 1) starts[v + 1] += starts[v];
  const fill = starts.slice();
  const places = new Int32Array(corners.length);
  for (let h = 0; h < corners.length; h += 1) places[fill[corners[h]]++] = h;
  return { opened, length, starts, places };
}

/** Distances from some vertices, as far as they were needed. */
export interface SurfaceDistance {
  /** Per vertex, mm; Infinity where the search did not come. */
  readonly value: Float64Array;
  /** Vertices nearer than `reach`. All vertices they share a triangle with have a value too. */
  readonly settled: Int32Array;
  /** Value at which the search came to its end; Infinity where it came everywhere. */
  readonly reach: number;
}

/** Vertices looked at between two breaths. */
const BREATH = 4096;
/** Share by which a value must fall to be handed on: less is rounding. */
const LEAST_GAIN = 1e-12;

/**
 * Distances along a surface from some vertices out to the first vertex that is marked, by marching with round fronts: a value comes over a
 * side from the point that has the side's two values as distances to its ends, where the straight line from it crosses the side (Novotni
 * and Klein, "Computing geodesic distances on triangular meshes", 2002), else along sides. A vertex that a front passes before it has come
 * to both ends of the side behind it, as at a blunt corner, is set right later and handed on again. From one vertex the values are exact
 * as far as straight lines reach over flat triangles; elsewhere the error, relative to the distance, is of the order of side x distance x
 * curvature.
 * @param isEnd  1 for vertices at which the search ends.
 */
export async function distancesFrom(
  sides: SurfaceSides,
  sources: ArrayLike<number>,
  isEnd: Uint8Array,
  work: Work,
): Promise<SurfaceDistance> {
  const { opened, length, starts, places } = sides;
  const { corners, base, height, vertexCount } = opened;
  const value = new Float64Array(vertexCount).fill(Infinity);
  const isKnown = new Uint8Array(vertexCount);
  const known = new Int32Array(vertexCount);
  let count = 0;
  let looks = 0;
  let reach = Infinity;
  const queue = new MinHeap();
  let isBeyond = false;
  const offer = (v: number, distance: number): void => {
    // From beyond the end only what was come near to is brought to its value: the triangles at the rim need it.
    if (!(distance < value[v] * (1 - LEAST_GAIN)) || (isBeyond && value[v] === Infinity)) return;
    value[v] = distance;
    queue.push(distance, v);
  };
  for (let i = 0; i < sources.length; i += 1) {
    value[sources[i]] = 0;
    queue.push(0, sources[i]);
  }
  while (queue.size > 0) {
    const { key, item: v } = queue.pop();
    if (key > value[v]) continue;
    if (isEnd[v] === 1) reach = Math.min(reach, key);
    isBeyond = key >= reach;
    if (isKnown[v] === 0) known[count++] = v;
    isKnown[v] = 1;
    looks += 1;
    if (looks % BREATH === 0) await work.pause(count / vertexCount);
    for (let i = starts[v]; i < starts[v + 1]; i += 1) {
      const here = places[i];
      const t = Math.floor(here / 3);
      const next = here === 3 * t + 2 ? here - 2 : here + 1;
      const last = here === 3 * t ? here + 2 : here - 1;
      const twice = base[t] * height[t];
      const p = corners[next];
      const q = corners[last];
      offer(p, key + length[here]);
      offer(q, key + length[last]);
      if (isKnown[q] === 1) offer(p, overSide(value[q], key, length[last], length[next], length[here], twice));
      if (isKnown[p] === 1) offer(q, overSide(key, value[p], length[here], length[last], length[next], twice));
    }
  }
  return { value, settled: known.subarray(0, count).filter((v) => value[v] < reach), reach };
}

/**
 * Share of its square by which a distance may fall short of lying off a side and still come along it: rounding, where a front runs down a
 * side, would otherwise show as its root.
 */
const IN_LINE = 1e-14;

/**
 * Distance of a triangle's corner c by the straight line from the point that lies `a` from one end of the opposite side and `b` from the
 * other, on the far side of it; Infinity where no such point is or the line misses the side.
 * @param side   length of that side; `ca` and `cb` the lengths from c to its ends.
 * @param twice  twice the triangle's area.
 */
function overSide(a: number, b: number, side: number, ca: number, cb: number, twice: number): number {
  const zx = (a * a - b * b + side * side) / (2 * side);
  const square = a * a - zx * zx;
  if (!(square > -IN_LINE * a * a)) return Infinity;
  const below = Math.sqrt(Math.max(0, square - IN_LINE * a * a));
  const along = (ca * ca - cb * cb + side * side) / (2 * side);
  const above = twice / side;
  const crossing = zx * above + along * below;
  const total = above + below;
  if (crossing < 0 || crossing > side * total) return Infinity;
  return Math.sqrt((along - zx) * (along - zx) + total * total);
}
