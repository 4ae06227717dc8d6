import { MinHeap } from '../../base/min-heap.ts';
import { topologyOf } from '../../mesh/topology.ts';
import { areaVector } from '../../mesh/measure.ts';
import type { SeamGraph } from './propose-graph.ts';

/** Rounds of growing and fitting. */
const ROUNDS = 4;

/**
 * Parts a surface into areas that are each nearly flat, by growing them from one triangle each, fitting a direction to each, and growing
 * again from the triangle nearest to it (Cohen-Steiner, Alliez and Desbrun, "Variational shape approximation", 2004, with the metric of
 * normals). Areas never grow across seams there are.
 * @param count  areas wished for; each closed-off part of the surface has one at least.
 * @returns number of its area for each triangle.
 */
export function nearlyFlatAreas(
  { mesh }: SeamGraph,
  positions: Float64Array,
  isSeam: Uint8Array,
  count: number,
): Int32Array {
  const triangles = mesh.triangles.length / 3;
  const normals = new Float64Array(3 * triangles);
  const areas = new Float64Array(triangles);
  for (let t = 0; t < triangles; t += 1) {
    const { x, y, z } = areaVector(positions, mesh.triangles, t);
    const size = Math.hypot(x, y, z);
    areas[t] = size;
    if (size > 0) normals.set([x / size, y / size, z / size], 3 * t);
  }
  const { twin, edgeOfHalfedge } = topologyOf(mesh);
  const across = twin.map((other, h) => (other >= 0 && isSeam[edgeOfHalfedge[h]] === 0 ? other : -1));
  const growth = new Growth(normals, areas, across);
  // Evenly over the numbers: neighbours in a file are mostly neighbours on the surface.
  let seeds = Array.from({ length: Math.min(count, triangles) }, (_, i) => Math.floor(((i + 0.5) * triangles) / count));
  let proxies: Float64Array[] = seeds.map((t) => normals.slice(3 * t, 3 * t + 3));
  let areaOf = growth.grow(seeds, proxies);
  for (let round = 1; round < ROUNDS; round += 1) {
    proxies = growth.fitted(areaOf);
    seeds = growth.nearest(areaOf, proxies);
    areaOf = growth.grow(seeds, proxies);
  }
  return areaOf;
}

class Growth {
  readonly #normals: Float64Array;
  readonly #areas: Float64Array;
  readonly #across: Int32Array;

  constructor(normals: Float64Array, areas: Float64Array, across: Int32Array) {
    this.#normals = normals;
    this.#areas = areas;
    this.#across = across;
  }

  /** Triangles go to the area that takes them at the least cost; what no seed reaches begins areas of its own. */
  grow(seeds: readonly number[], proxies: readonly Float64Array[]): Int32Array {
    const areaOf = new Int32Array(this.#areas.length).fill(-1);
    const heap = new MinHeap();
    const count = this.#areas.length;
    const own = [...proxies];
    const spread = (): void => {
      while (heap.size > 0) {
        const { item } = heap.pop();
        const t = item % count;
        const area = Math.floor(item / count);
        if (areaOf[t] >= 0) continue;
        areaOf[t] = area;
        for (let h = 3 * t; h < 3 * t + 3; h += 1) {
          const other = this.#across[h] < 0 ? -1 : Math.floor(this.#across[h] / 3);
          if (other >= 0 && areaOf[other] < 0) heap.push(this.#error(other, own[area]), area * count + other);
        }
      }
    };
    seeds.forEach((t, area) => heap.push(-1, area * count + t));
    spread();
    for (let t = 0; t < count; t += 1) {
      if (areaOf[t] >= 0) continue;
      own.push(this.#normals.slice(3 * t, 3 * t + 3));
      heap.push(-1, (own.length - 1) * count + t);
      spread();
    }
    return areaOf;
  }

  /** Mean direction of each area. */
  fitted(areaOf: Int32Array): Float64Array[] {
    const count = areaOf.reduce((most, area) => Math.max(most, area + 1), 0);
    const sums = Array.from({ length: count }, () => new Float64Array(3));
    areaOf.forEach((area, t) => {
      for (let i = 0; i < 3; i += 1) sums[area][i] += this.#areas[t] * this.#normals[3 * t + i];
    });
    return sums.map((sum) => {
      const size = Math.hypot(...sum);
      return size > 0 ? sum.map((x) => x / size) : sum;
    });
  }

  /** The triangle of each area that fits its direction best. */
  nearest(areaOf: Int32Array, proxies: readonly Float64Array[]): number[] {
    const best = proxies.map(() => -1);
    const least = proxies.map(() => Infinity);
    areaOf.forEach((area, t) => {
      const error = this.#error(t, proxies[area]);
      if (best[area] >= 0 && error >= least[area]) return;
      best[area] = t;
      least[area] = error;
    });
    return best.map((t) => Math.max(0, t));
  }

  #error(t: number, proxy: Float64Array): number {
    let sum = 0;
    for (let i = 0; i < 3; i += 1) sum += (this.#normals[3 * t + i] - proxy[i]) ** 2;
    return this.#areas[t] * sum;
  }
}

/** Edges between triangles of different areas. */
export function edgesBetweenAreas({ mesh, edgeCount }: SeamGraph, areaOf: Int32Array): number[] {
  const { halfedgeOfEdge, twin } = topologyOf(mesh);
  const found: number[] = [];
  for (let e = 0; e < edgeCount; e += 1) {
    const h = halfedgeOfEdge[e];
    if (twin[h] >= 0 && areaOf[Math.floor(h / 3)] !== areaOf[Math.floor(twin[h] / 3)]) found.push(e);
  }
  return found;
}
