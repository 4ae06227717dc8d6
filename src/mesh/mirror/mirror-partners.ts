import type { Stepwise } from '../../base/stepwise.ts';
import { eigen3 } from '../../geom/symmetric-3x3.ts';
import { pointAt3, vec3, type Vec3 } from '../../geom/vec.ts';
import { boxOfPoints3 } from '../measure.ts';
import type { Mesh } from '../mesh.ts';
import { topologySteps } from '../topology.ts';
import { mirrorPlane, reflect, type MirrorPlane } from './mirror-plane.ts';

/** Vertices looked up in one stretch: a few milliseconds. */
const STRETCH_VERTICES = 1 << 12;

/** What lies opposite, in numbers of the mesh: the other one, itself on the plane, -1 where nothing does. */
export interface Partners {
  readonly ofVertex: Int32Array;
  /** Per edge of the topology. */
  readonly ofEdge: Int32Array;
  /** The triangle with the partners of the three corners, seen from the same side of the surface. */
  readonly ofTriangle: Int32Array;
}

/** The corners of a surface laid into cells, so that the one nearest to a place is found at once. */
export class CornerCells {
  readonly #positions: Float64Array;
  readonly #cell: number;
  readonly #low: Vec3;
  readonly #across: readonly [number, number, number];
  readonly #starts: Map<number, number[]>;

  /** @param cell side of a cell, mm, > 0: about as far as is looked. */
  constructor(positions: Float64Array, cell: number) {
    this.#positions = positions;
    this.#cell = cell;
    const { min, max } = boxOfPoints3(positions);
    this.#low = min;
    const count = (from: number, to: number): number => Math.floor((to - from) / cell) + 1;
    this.#across = [count(min.x, max.x), count(min.y, max.y), count(min.z, max.z)];
    this.#starts = new Map();
    for (let v = 0; v < positions.length / 3; v += 1) {
      const key = this.#keyOf(this.#cellsOf(pointAt3(positions, v)));
      const list = this.#starts.get(key);
      if (list === undefined) this.#starts.set(key, [v]);
      else list.push(v);
    }
  }

  /** The corner nearest to `p` no farther than `most`, or -1; of several the lowest. */
  nearest(p: Vec3, most: number): number {
    const low = this.#cellsOf({ x: p.x - most, y: p.y - most, z: p.z - most });
    const high = this.#cellsOf({ x: p.x + most, y: p.y + most, z: p.z + most });
    let best = -1;
    let least = most * most;
    for (let x = low[0]; x <= high[0]; x += 1) {
      for (let y = low[1]; y <= high[1]; y += 1) {
        for (let z = low[2]; z <= high[2]; z += 1) {
          for (const v of this.#starts.get(this.#keyOf([x, y, z])) ?? []) {
            const [dx, dy, dz] = [
              this.#positions[3 * v] - p.x,
              this.#positions[3 * v + 1] - p.y,
              this.#positions[3 * v + 2] - p.z,
            ];
            const away = dx * dx + dy * dy + dz * dz;
            if (away < least || (away === least && (best < 0 || v < best))) [least, best] = [away, v];
          }
        }
      }
    }
    return best;
  }

  #cellsOf(p: Vec3): [number, number, number] {
    const { x, y, z } = this.#low;
    return [Math.floor((p.x - x) / this.#cell), Math.floor((p.y - y) / this.#cell), Math.floor((p.z - z) / this.#cell)];
  }

  /** -1 outside of the box, where no corner is. */
  #keyOf([i, j, k]: readonly [number, number, number]): number {
    const [a, b, c] = this.#across;
    return i < 0 || j < 0 || k < 0 || i >= a || j >= b || k >= c ? -1 : i + a * (j + b * k);
  }
}

/**
 * For each vertex the one that lies where its mirror image does: nearest within the tolerance, and each the other's.
 * @param tolerance mm.
 */
export function* vertexPartnerSteps(
  positions: Float64Array,
  cells: CornerCells,
  plane: MirrorPlane,
  tolerance: number,
): Stepwise<Int32Array> {
  const count = positions.length / 3;
  const nearest = new Int32Array(count);
  for (let v = 0; v < count; v += 1) {
    if (v % STRETCH_VERTICES === STRETCH_VERTICES - 1) yield;
    nearest[v] = cells.nearest(reflect(plane, pointAt3(positions, v)), tolerance);
  }
  return nearest.map((w, v) => (w >= 0 && nearest[w] === v ? w : -1));
}

/** The same of edges and triangles, from those of the vertices. */
export function* partnerSteps(mesh: Mesh, ofVertex: Int32Array): Stepwise<Partners> {
  const { triangles } = mesh;
  const topology = yield* topologySteps(mesh);
  const { edgeCount, edgeVertices, edgeOfHalfedge } = topology;
  const ofEdge = new Int32Array(edgeCount).fill(-1);
  for (let e = 0; e < edgeCount; e += 1) {
    const [v, w] = [ofVertex[edgeVertices[2 * e]], ofVertex[edgeVertices[2 * e + 1]]];
    if (v >= 0 && w >= 0 && v !== w) ofEdge[e] = topology.edgeBetween(v, w);
  }
  yield;
  const ofTriangle = new Int32Array(triangles.length / 3).fill(-1);
  const byLeastEdge = new Map<number, number[]>();
  const leastEdge = (t: number): number =>
    Math.min(edgeOfHalfedge[3 * t], edgeOfHalfedge[3 * t + 1], edgeOfHalfedge[3 * t + 2]);
  for (let t = 0; t < ofTriangle.length; t += 1) {
    const e = leastEdge(t);
    const list = byLeastEdge.get(e);
    if (list === undefined) byLeastEdge.set(e, [t]);
    else list.push(t);
  }
  yield;
  for (let t = 0; t < ofTriangle.length; t += 1) {
    const mirrored = [0, 1, 2].map((k) => ofEdge[edgeOfHalfedge[3 * t + k]]);
    if (mirrored.some((e) => e < 0)) continue;
    const [a, b, c] = [0, 1, 2].map((k) => ofVertex[triangles[3 * t + k]]);
    const found = byLeastEdge.get(Math.min(...mirrored))?.find((s) => isTriangle(triangles, s, c, b, a));
    if (found !== undefined) ofTriangle[t] = found;
  }
  return { ofVertex, ofEdge, ofTriangle };
}

/** Whether triangle `t` runs round these three corners in this direction. */
function isTriangle(triangles: Uint32Array, t: number, a: number, b: number, c: number): boolean {
  const k = [0, 1, 2].find((corner) => triangles[3 * t + corner] === a);
  return k !== undefined && triangles[3 * t + ((k + 1) % 3)] === b && triangles[3 * t + ((k + 2) % 3)] === c;
}

/**
 * The plane that mirrors each vertex onto its partner best (least sum of squared distances), in closed form. With d the difference of the
 * middles of all p and all q and S the sum of (p - mid p)(q - mid q)^T made symmetric, the error is 4 n.S n - N (n.d)^2 plus what n does
 * not change, so that n is the direction of the least eigenvalue of 4 S - N d d^T.
 * @returns null where fewer than three vertices have a partner.
 */
export function planeOfPartners(positions: Float64Array, ofVertex: Int32Array): MirrorPlane | null {
  const own = [0, 0, 0];
  const other = [0, 0, 0];
  let count = 0;
  ofVertex.forEach((w, v) => {
    if (w < 0) return;
    count += 1;
    for (let i = 0; i < 3; i += 1) {
      own[i] += positions[3 * v + i];
      other[i] += positions[3 * w + i];
    }
  });
  if (count < 3) return null;
  for (let i = 0; i < 3; i += 1) {
    own[i] /= count;
    other[i] /= count;
  }
  const m = new Float64Array(6);
  ofVertex.forEach((w, v) => {
    if (w < 0) return;
    const p = [0, 1, 2].map((i) => positions[3 * v + i] - own[i]);
    const q = [0, 1, 2].map((i) => positions[3 * w + i] - other[i]);
    SIX.forEach(([i, j], at) => (m[at] += 2 * (p[i] * q[j] + p[j] * q[i])));
  });
  const d = own.map((x, i) => x - other[i]);
  SIX.forEach(([i, j], at) => (m[at] -= count * d[i] * d[j]));
  const [x, y, z] = eigen3(m).vectors[2];
  const at = (x * (own[0] + other[0]) + y * (own[1] + other[1]) + z * (own[2] + other[2])) / 2;
  return mirrorPlane(vec3(x, y, z), at);
}

/** Rows and columns of the six values of a symmetric matrix, as `eigen3` takes them. */
const SIX = [
  [0, 0],
  [0, 1],
  [0, 2],
  [1, 1],
  [1, 2],
  [2, 2],
] as const;
