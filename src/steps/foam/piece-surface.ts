import { inStretches, runAtOnce, type Stepwise } from '../../base/stepwise.ts';
import { pointAt3, sub3, type Vec3 } from '../../geom/vec.ts';
import { foldBetween, triangleArea, triangleNormal } from '../../mesh/measure.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { nextHalfedge, topologyOf, triangleOfHalfedge } from '../../mesh/topology.ts';
import type { Patch } from '../../model/patch.ts';
import type { SeamSide } from '../../model/seams.ts';

/** Facets measured in one stretch: a few milliseconds. */
const STRETCH_FACETS = 1 << 13;

/** One patch with the directions of the sculpt on it and who touches whom inside it. Numbers are local to the patch; half-edge `3 t + k` as in the mesh. */
export interface PieceSurface {
  readonly patch: Patch;
  /** x y z per triangle: outward normal of the sculpt's facet, length 1 (zero where it is empty). */
  readonly normals: Float64Array;
  /** Area of each facet of the sculpt, mm². */
  readonly areas: Float64Array;
  /** Triangle across each half-edge where the foam stays joined, or -1 at the border of the patch. */
  readonly across: Int32Array;
  /** Signed turn at each half-edge, radians, convex > 0; 0 at the border. */
  readonly foldRad: Float64Array;
  /** Triangles at each vertex: `trianglesAt[starts[v] .. starts[v + 1])`. */
  readonly starts: Uint32Array;
  readonly trianglesAt: Uint32Array;
  /** The vertex before and after each vertex of the border on its loop; -1 inside. */
  readonly beforeOnBorder: Int32Array;
  readonly afterOnBorder: Int32Array;
  /** The triangle beside a border edge that runs from `from` to `to`, or -1. */
  borderTriangle(from: number, to: number): number;
}

/** Gathers what the foam step asks of a patch again and again. */
export const pieceSurface = (mesh: Mesh, patch: Patch): PieceSurface => runAtOnce(surfaceSteps(mesh, patch));

/** The same in stretches. */
export function* surfaceSteps(mesh: Mesh, patch: Patch): Stepwise<PieceSurface> {
  const count = patch.meshTriangles.length;
  const normals = new Float64Array(3 * count);
  const areas = new Float64Array(count);
  yield* inStretches(count, STRETCH_FACETS, (from, to) => {
    for (let t = from; t < to; t += 1) {
      const normal = triangleNormal(mesh.positions, mesh.triangles, patch.meshTriangles[t]);
      normals.set([normal.x, normal.y, normal.z], 3 * t);
      areas[t] = triangleArea(mesh.positions, mesh.triangles, patch.meshTriangles[t]);
    }
  });
  const borders = bordersOf(patch);
  const { afterOnBorder } = borders;
  const border = borderEdges(patch, afterOnBorder);
  yield;
  const across = joinedTriangles(mesh, patch, afterOnBorder);
  yield;
  const { starts, trianglesAt } = trianglesOfVertices(patch);
  const foldRad = new Float64Array(across.length);
  yield* inStretches(count, STRETCH_FACETS, (from, to) => {
    for (let h = 3 * from; h < 3 * to; h += 1) if (across[h] >= 0) foldRad[h] = foldAt(mesh, patch, normals, across, h);
  });
  return {
    patch,
    normals,
    areas,
    across,
    foldRad,
    starts,
    trianglesAt,
    ...borders,
    borderTriangle: (from, to) => border.get(edgeKey(patch, from, to)) ?? -1,
  };
}

export const normalAt = (surface: PieceSurface, t: number): Vec3 => pointAt3(surface.normals, t);

/**
 * The triangle beside mesh edge `i` of a seam on one of its sides, or -1. Side 0 lies to the left of the chain and has the edge in the chain's
 * direction on its border, side 1 against it.
 */
export function triangleBeside(surface: PieceSurface, side: SeamSide, which: 0 | 1, i: number): number {
  const [v, w] = [side.localVertices[i], side.localVertices[i + 1]];
  return which === 0 ? surface.borderTriangle(v, w) : surface.borderTriangle(w, v);
}

const edgeKey = (patch: Patch, from: number, to: number): number => from * patch.meshVertices.length + to;

/** The triangle inside, for each directed edge of the loops. */
function borderEdges(patch: Patch, afterOnBorder: Int32Array): ReadonlyMap<number, number> {
  const border = new Map<number, number>();
  for (let h = 0; h < patch.triangles.length; h += 1) {
    const [from, to] = endsOf(patch, h);
    if (afterOnBorder[from] === to) border.set(edgeKey(patch, from, to), triangleOfHalfedge(h));
  }
  return border;
}

/** The vertices a half-edge leaves and arrives at. */
const endsOf = ({ triangles }: Patch, h: number): readonly [number, number] => [
  triangles[h],
  triangles[nextHalfedge(h)],
];

function bordersOf(patch: Patch): { beforeOnBorder: Int32Array; afterOnBorder: Int32Array } {
  const beforeOnBorder = new Int32Array(patch.meshVertices.length).fill(-1);
  const afterOnBorder = new Int32Array(patch.meshVertices.length).fill(-1);
  for (const loop of patch.loops) {
    loop.forEach((v, i) => {
      const next = loop[(i + 1) % loop.length];
      afterOnBorder[v] = next;
      beforeOnBorder[next] = v;
    });
  }
  return { beforeOnBorder, afterOnBorder };
}

function joinedTriangles(mesh: Mesh, patch: Patch, afterOnBorder: Int32Array): Int32Array {
  const { twin } = topologyOf(mesh);
  const localOf = new Int32Array(mesh.triangles.length / 3).fill(-1);
  patch.meshTriangles.forEach((t, i) => (localOf[t] = i));
  const across = new Int32Array(patch.triangles.length).fill(-1);
  for (let h = 0; h < across.length; h += 1) {
    const [from, to] = endsOf(patch, h);
    if (afterOnBorder[from] === to) continue;
    const other = twin[3 * patch.meshTriangles[triangleOfHalfedge(h)] + (h % 3)];
    if (other >= 0) across[h] = localOf[triangleOfHalfedge(other)];
  }
  return across;
}

function foldAt(mesh: Mesh, patch: Patch, normals: Float64Array, across: Int32Array, h: number): number {
  const [from, to] = endsOf(patch, h).map((v) => pointAt3(mesh.positions, patch.meshVertices[v]));
  return foldBetween(pointAt3(normals, triangleOfHalfedge(h)), pointAt3(normals, across[h]), sub3(to, from));
}

function trianglesOfVertices(patch: Patch): { starts: Uint32Array; trianglesAt: Uint32Array } {
  const starts = new Uint32Array(patch.meshVertices.length + 1);
  for (const v of patch.triangles) starts[v + 1] += 1;
  for (let v = 0; v < patch.meshVertices.length; v += 1) starts[v + 1] += starts[v];
  const fill = starts.slice();
  const trianglesAt = new Uint32Array(patch.triangles.length);
  for (let h = 0; h < patch.triangles.length; h += 1) trianglesAt[fill[patch.triangles[h]]++] = triangleOfHalfedge(h);
  return { starts, trianglesAt };
}
