import { orient2d, orient3d, orient3dOfSides, turnOfSides } from '../../geom/predicates.ts';
import type { Surface } from '../../mesh/surface.ts';
import { nextHalfedge } from '../../mesh/topology.ts';

/*
 * Two surfaces are held against each other as if the second had been moved by an endlessly small way, e along x, e² along y, e³ along z (after
 * H. Edelsbrunner and E. P. Mücke, "Simulation of Simplicity", 1990, with one move for all corners). Then no corner lies in a plane of the other
 * surface and no edge goes through another, so every edge pierces a triangle or clearly misses it, two triangles meet in nothing or in one stretch with
 * two ends, and stretches join to lines that end only at open edges. Which way a sign falls that is exactly 0 follows from the move:
 *
 *   a corner of the first over a plane of the second:  its height changes by  - n2 . move
 *   a corner of the second over a plane of the first:                         + n1 . move
 *   an edge u of the first past an edge v of the second:                      + (v x u) . move
 *
 * and the first part of these that is not 0, in the order x, y, z, decides. All signs are exact, so all triangles round an edge say the same.
 */

type Sign = -1 | 0 | 1;

/** An end of a stretch: an edge of one surface runs through a triangle of the other. */
export interface Piercing {
  /** Surface whose edge it is. */
  readonly of: 0 | 1;
  /** Half-edge of that surface, as it runs round the triangle of the pair. */
  readonly halfedge: number;
  /** Share of the way along the half-edge, 0 to 1. */
  readonly share: number;
  /** Weights on the corners of the other surface's triangle, sum 1. */
  readonly weights: readonly [number, number, number];
}

/** The stretch in which two triangles meet, in the direction normal of the first x normal of the second. */
export interface Stretch {
  readonly from: Piercing;
  readonly to: Piercing;
}

/** Two surfaces whose triangles are held against each other pair by pair; what is known of a triangle's plane is kept. */
export class TriangleMeeting {
  readonly #surfaces: readonly [Surface, Surface];
  /** Per surface and triangle what {@link leanOf} says, once it was asked for. */
  readonly #leans: readonly [Int8Array, Int8Array];
  readonly #heights: readonly [Float64Array, Float64Array] = [new Float64Array(3), new Float64Array(3)];
  readonly #signs: readonly [Int8Array, Int8Array] = [new Int8Array(3), new Int8Array(3)];

  constructor(first: Surface, second: Surface) {
    this.#surfaces = [first, second];
    this.#leans = [new Int8Array(first.triangles.length / 3), new Int8Array(second.triangles.length / 3)];
  }

  /** Where triangle `t` of the first surface and `u` of the second meet; null where they do not. */
  stretchOf(t: number, u: number): Stretch | null {
    if (!this.#findSides(0, t, u) || !this.#findSides(1, u, t)) return null;
    let from: Piercing | null = null;
    let to: Piercing | null = null;
    for (const of of [0, 1] as const) {
      const signs = this.#signs[of];
      const [own, other] = of === 0 ? [t, u] : [u, t];
      for (let k = 0; k < 3; k += 1) {
        const isDown = signs[k] > signs[(k + 1) % 3];
        if (signs[k] === signs[(k + 1) % 3]) continue;
        const piercing = this.#piercing(of, 3 * own + k, other);
        if (piercing === null) continue;
        // On the first surface the inside of the second lies left of the line, on the second the outside of the first.
        if (isDown === (of === 0)) to = piercing;
        else from = piercing;
      }
    }
    if (from === null && to === null) return null;
    if (from === null || to === null) throw new Error(`triangles ${t} and ${u} meet in a stretch with one end`);
    return { from, to };
  }

  /** Whether two triangles lie in one plane, exactly, and cover a common spot. */
  isFlatOn(t: number, u: number): boolean {
    if (!this.#findHeights(0, t, u)) return false;
    if (this.#heights[0].some((height) => height !== 0)) return false;
    const [first, second] = this.#surfaces;
    const corners = (surface: Surface, of: number): number[] =>
      [0, 1, 2].flatMap((k) => [0, 1, 2].map((axis) => surface.positions[3 * surface.triangles[3 * of + k] + axis]));
    const [a, b] = [corners(first, t), corners(second, u)];
    // Seen along an axis from which neither is a line.
    const axes = (
      [
        [0, 1],
        [1, 2],
        [2, 0],
      ] as const
    ).find(([x, y]) => turnSeen(a, x, y) !== 0);
    if (axes === undefined) return false;
    return !isBeside(a, b, axes) && !isBeside(b, a, axes);
  }

  /** Fills the heights and signs of one triangle's corners over the other's plane; false where all are on one side or the other has no plane. */
  #findSides(of: 0 | 1, own: number, other: number): boolean {
    if (!this.#findHeights(of, own, other)) return false;
    const [heights, signs] = [this.#heights[of], this.#signs[of]];
    const lean = this.#leans[1 - of][other];
    const decided = of === 0 ? -lean : lean;
    for (let k = 0; k < 3; k += 1) signs[k] = heights[k] > 0 ? 1 : heights[k] < 0 ? -1 : decided;
    return signs[0] !== signs[1] || signs[1] !== signs[2];
  }

  #findHeights(of: 0 | 1, own: number, other: number): boolean {
    const surface = this.#surfaces[of];
    const { positions, triangles } = this.#surfaces[1 - of];
    const leans = this.#leans[1 - of];
    if (leans[other] === UNKNOWN) leans[other] = leanOf(positions, triangles, other);
    if (leans[other] === NO_PLANE) return false;
    const [a, b, c] = [3 * triangles[3 * other], 3 * triangles[3 * other + 1], 3 * triangles[3 * other + 2]];
    const heights = this.#heights[of];
    for (let k = 0; k < 3; k += 1)
      heights[k] = orient3d(positions, a, b, c, surface.positions, 3 * surface.triangles[3 * own + k]);
    return true;
  }

  /** Where a half-edge whose ends are on both sides of a triangle's plane goes through the triangle; null where it passes beside. */
  #piercing(of: 0 | 1, halfedge: number, other: number): Piercing | null {
    const { positions, triangles } = this.#surfaces[of];
    const { positions: others, triangles: otherTriangles } = this.#surfaces[1 - of];
    const k = halfedge % 3;
    const [p, q] = [3 * triangles[halfedge], 3 * triangles[nextHalfedge(halfedge)]];
    const past: [number, number, number] = [0, 0, 0];
    let turn: Sign = 0;
    for (let i = 0; i < 3; i += 1) {
      const [a, b] = [3 * otherTriangles[3 * other + i], 3 * otherTriangles[3 * other + ((i + 1) % 3)]];
      const volume = orient3dOfSides(positions, p, q, others, a, b);
      let sign: Sign = volume > 0 ? 1 : volume < 0 ? -1 : 0;
      if (sign === 0) sign = of === 0 ? passing(positions, p, q, others, a, b) : passing(others, a, b, positions, p, q);
      if (i > 0 && sign !== turn) return null;
      turn = sign;
      // The side across from corner i + 2.
      past[(i + 2) % 3] = volume;
    }
    const heights = this.#heights[of];
    const [down, up] = [heights[k], heights[(k + 1) % 3]];
    const sum = past[0] + past[1] + past[2];
    return { of, halfedge, share: down / (down - up), weights: [past[0] / sum, past[1] / sum, past[2] / sum] };
  }
}

const UNKNOWN = 0;
const NO_PLANE = 2;

/** The sign of the first part of a triangle's normal that is not 0, 1 or -1; {@link NO_PLANE} for an empty triangle. */
function leanOf(positions: Float64Array, triangles: Uint32Array, t: number): number {
  const corners = [0, 1, 2].flatMap((k) => [0, 1, 2].map((axis) => positions[3 * triangles[3 * t + k] + axis]));
  for (let axis = 0; axis < 3; axis += 1) {
    const part = turnSeen(corners, (axis + 1) % 3, (axis + 2) % 3);
    if (part !== 0) return part > 0 ? 1 : -1;
  }
  return NO_PLANE;
}

/** Twice the signed area of a triangle as it is seen along an axis. */
const turnSeen = (c: readonly number[], x: number, y: number): number =>
  orient2d(c[x], c[y], c[3 + x], c[3 + y], c[6 + x], c[6 + y]);

/** Sign that decides where edge p q of the first surface and a b of the second lie in one plane: of the first part of (b - a) x (q - p) that is not 0. */
function passing(
  first: ArrayLike<number>,
  p: number,
  q: number,
  second: ArrayLike<number>,
  a: number,
  b: number,
): Sign {
  for (let axis = 0; axis < 3; axis += 1) {
    const [x, y] = [(axis + 1) % 3, (axis + 2) % 3];
    const sign = turnOfSides(
      second[a + x],
      second[a + y],
      second[b + x],
      second[b + y],
      first[p + x],
      first[p + y],
      first[q + x],
      first[q + y],
    );
    if (sign !== 0) return sign;
  }
  // Only edges that run alike come here, and none of these goes through the plane of the other's triangle.
  throw new Error('an edge that lies along a side pierces no triangle');
}

/** Whether a side of triangle `a` has all of `b` on its outside or on its line, seen along an axis. */
function isBeside(a: readonly number[], b: readonly number[], [x, y]: readonly [number, number]): boolean {
  const way = Math.sign(turnSeen(a, x, y));
  return [0, 1, 2].some((k) => {
    const [p, q] = [3 * k, 3 * ((k + 1) % 3)];
    return [0, 3, 6].every((r) => way * orient2d(a[p + x], a[p + y], a[q + x], a[q + y], b[r + x], b[r + y]) <= 0);
  });
}
