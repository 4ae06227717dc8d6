import { MinHeap } from '../base/min-heap.ts';
import { runAtOnce, type Stepwise } from '../base/stepwise.ts';
import type { SurfaceTree } from '../geom/bvh.ts';
import { distanceToTriangle } from '../geom/distance-to-triangle.ts';
import { add3, cross3, dot3, length3, pointAt3, scale3, sub3, unit3, type Vec3 } from '../geom/vec.ts';
import { diagonalOf } from './measure.ts';
import type { Mesh } from './mesh.ts';
import { surfaceTreeOf } from './surface-tree.ts';

/** The greatest distance of a surface's points from another surface, mm: between these two. */
export interface Deviation {
  /** Measured at {@link place}. */
  readonly atLeast: number;
  /** Proven for every point. */
  readonly atMost: number;
  readonly place: Vec3;
}

/** How far the two bounds may be apart, as a share of the lower. */
const CLOSE_ENOUGH = 0.05;

/** The same as a share of the size, where surfaces agree. */
const NOTHING = 1e-7;

/** Pieces of triangles looked at before the upper bound is told as it is. */
const MOST_PIECES = 60_000;

/** Triangles remembered as near a piece. */
const MOST_NEAR = 6;

/** Nearest places asked for in one stretch: a few milliseconds. */
const STRETCH = 512;

/**
 * How far the points of one surface lie from another at most. Over a triangle the distance from one other triangle, which is convex, is greatest at
 * a corner (the distance from a convex set is a convex function), so that the corners' distances from any one triangle bound it from above; what is
 * bounded too coarsely is parted by the walls on the nearest triangle's sides, or halved within them, the coarsest first.
 */
export function* deviationSteps(from: Mesh, to: Mesh): Stepwise<Deviation> {
  const tree = surfaceTreeOf(to);
  yield;
  const search = new Search(to, tree);
  const heap = new MinHeap();
  const pieces: { readonly corners: readonly Vec3[]; readonly near: readonly number[] }[] = [];
  const put = (corners: readonly Vec3[], candidates: readonly number[]): void => {
    const { bound, near } = search.boundOf(corners, candidates);
    if (bound <= search.least * (1 + CLOSE_ENOUGH) + still) return;
    pieces.push({ corners, near });
    heap.push(-bound, pieces.length - 1);
  };
  const still = NOTHING * diagonalOf(from);
  const nearest = new Int32Array(from.positions.length / 3).fill(-1);
  for (let v = 0; v < nearest.length; v += 1) {
    if (v % STRETCH === STRETCH - 1) yield;
    nearest[v] = search.nearest(pointAt3(from.positions, v));
  }
  for (let t = 0; t < from.triangles.length / 3; t += 1) {
    if (t % STRETCH === STRETCH - 1) yield;
    const own = [0, 1, 2].map((k) => from.triangles[3 * t + k]);
    put(
      own.map((v) => pointAt3(from.positions, v)),
      own.map((v) => nearest[v]),
    );
  }
  let atMost = 0;
  for (let n = 0; heap.size > 0; n += 1) {
    if (n % STRETCH === STRETCH - 1) yield;
    const { key, item } = heap.pop();
    atMost = -key;
    if (atMost <= search.least * (1 + CLOSE_ENOUGH) + still || n >= MOST_PIECES) break;
    const { corners, near } = pieces[item];
    const below = search.nearest(middleOf(corners));
    const parts = partedBy(to, below, corners) ?? halves(corners);
    for (const part of parts) put(part, [below, ...near]);
    atMost = 0;
  }
  return {
    atLeast: search.least,
    atMost: Math.max(atMost, search.least * (1 + CLOSE_ENOUGH) + still),
    place: search.place,
  };
}

export const surfaceDeviation = (from: Mesh, to: Mesh): Deviation => runAtOnce(deviationSteps(from, to));

class Search {
  least = 0;
  place: Vec3 = { x: 0, y: 0, z: 0 };
  readonly #to: Mesh;
  readonly #tree: SurfaceTree;

  constructor(to: Mesh, tree: SurfaceTree) {
    this.#to = to;
    this.#tree = tree;
  }

  /** The triangle nearest to a point of the surface; its distance counts. */
  nearest(p: Vec3): number {
    const hit = this.#tree.nearest(p);
    if (hit === null) throw new Error('surfaceDeviation: no surface to measure to');
    if (hit.distance > this.least) [this.least, this.place] = [hit.distance, p];
    return hit.triangle;
  }

  /**
   * Upper bound of the distance of all points of a triangle.
   * @param known triangles near it.
   * @returns the bound, and of the triangles near it those that may be nearest to a part of it.
   */
  boundOf(
    corners: readonly Vec3[],
    known: readonly number[],
  ): { readonly bound: number; readonly near: readonly number[] } {
    const bounds = [...new Set([this.nearest(middleOf(corners)), ...known])].map((t) => ({
      t,
      bound: Math.max(...corners.map((p) => distanceToTriangle(this.#to.positions, this.#to.triangles, t, p))),
    }));
    bounds.sort((a, b) => a.bound - b.bound);
    return { bound: bounds[0].bound, near: bounds.slice(0, MOST_NEAR).map(({ t }) => t) };
  }
}

/** Times its longest side. */
const MOST_LONGER = 2;

const longestOf = ([a, b, c]: readonly Vec3[]): number =>
  Math.max(length3(sub3(b, a)), length3(sub3(c, b)), length3(sub3(a, c)));

const middleOf = ([a, b, c]: readonly Vec3[]): Vec3 => scale3(add3(a, add3(b, c)), 1 / 3);

/** Share of a piece's size within which a corner counts as on the plane that parts it: else slivers without end would be parted off. */
const ON_PLANE = 1e-9;

/**
 * Parts a piece by the walls that stand on the sides of triangle `t`: what lies within them has its distance from that triangle's plane. Triangles again;
 * null where the piece lies within all walls, or is much longer than the triangle.
 */
function partedBy(
  { positions, triangles }: Mesh,
  t: number,
  corners: readonly Vec3[],
): readonly (readonly Vec3[])[] | null {
  const own = [0, 1, 2].map((k) => pointAt3(positions, triangles[3 * t + k]));
  // Long pieces parted by the walls of a small triangle would leave long slivers.
  if (longestOf(corners) > MOST_LONGER * longestOf(own)) return null;
  const normal = cross3(sub3(own[1], own[0]), sub3(own[2], own[0]));
  const size = length3(sub3(corners[1], corners[0])) + length3(sub3(corners[2], corners[0]));
  let inside: readonly Vec3[] = corners;
  const outside: (readonly Vec3[])[] = [];
  for (let k = 0; k < 3; k += 1) {
    const outward = unit3(cross3(sub3(own[(k + 1) % 3], own[k]), normal));
    const heights = inside.map((p) => dot3(outward, sub3(p, own[k])));
    if (heights.every((height) => height <= ON_PLANE * size)) continue;
    // Round a ridge the nearest place is on the triangle's side, and the whole piece beyond it.
    if (heights.every((height) => height >= -ON_PLANE * size)) return null;
    outside.push(clipped(inside, heights));
    inside = clipped(
      inside,
      heights.map((height) => -height),
    );
  }
  return outside.length === 0 ? null : [inside, ...outside].flatMap(fan);
}

/** The part of a convex polygon whose corners have heights over 0. */
function clipped(polygon: readonly Vec3[], heights: readonly number[]): readonly Vec3[] {
  return polygon.flatMap((p, i) => {
    const next = (i + 1) % polygon.length;
    const [h, g] = [heights[i], heights[next]];
    const kept = h >= 0 ? [p] : [];
    if (h * g >= 0) return kept;
    return [...kept, add3(p, scale3(sub3(polygon[next], p), h / (h - g)))];
  });
}

const fan = (polygon: readonly Vec3[]): readonly (readonly Vec3[])[] =>
  polygon.slice(2).map((p, i) => [polygon[0], polygon[i + 1], p]);

/** Two triangles by the middle of the longest side. */
function halves(corners: readonly Vec3[]): readonly [readonly Vec3[], readonly Vec3[]] {
  const lengths = [0, 1, 2].map((k) => length3(sub3(corners[(k + 1) % 3], corners[k])));
  const k = lengths.indexOf(Math.max(...lengths));
  const [a, b, c] = [corners[k], corners[(k + 1) % 3], corners[(k + 2) % 3]];
  const middle = scale3(add3(a, b), 0.5);
  return [
    [a, middle, c],
    [middle, b, c],
  ];
}
