import { inStretches, runAtOnce, type Stepwise } from '../base/stepwise.ts';
import { pointAt3, sub3 } from '../geom/vec.ts';
import { foldBetween, triangleNormal } from './measure.ts';
import type { Mesh } from './mesh.ts';
import { originOf, targetOf, topologyOf, topologySteps, triangleOfHalfedge, type Topology } from './topology.ts';

/** Edges measured in one stretch: a few milliseconds. */
const STRETCH_EDGES = 1 << 14;

const known = new WeakMap<Mesh, Float64Array>();

/**
 * Signed turn between the outward normals at every edge of the mesh, radians; convex > 0, open edges 0. Those of the mesh itself
 * are found once and kept as long as it lives: they must not be written to.
 * @param positions usually the mesh's own; another surface of the foam with the same triangles is welcome.
 */
export function edgeFolds(mesh: Mesh, positions: Float64Array = mesh.positions): Float64Array {
  return runAtOnce(positions === mesh.positions ? edgeFoldSteps(mesh) : foldsOnSteps(mesh, positions));
}

/** Those of the mesh itself in stretches: whoever goes first pays for those who come after. */
export function* edgeFoldSteps(mesh: Mesh): Stepwise<Float64Array> {
  let folds = known.get(mesh);
  if (folds === undefined) {
    folds = yield* foldsOnSteps(mesh, mesh.positions);
    known.set(mesh, folds);
  }
  return folds;
}

function* foldsOnSteps(mesh: Mesh, positions: Float64Array): Stepwise<Float64Array> {
  const topology = yield* topologySteps(mesh);
  const folds = new Float64Array(topology.edgeCount);
  yield* inStretches(topology.edgeCount, STRETCH_EDGES, (from, to) => {
    for (let e = from; e < to; e += 1) folds[e] = foldOf(mesh, topology, positions, e);
  });
  return folds;
}

function foldOf(mesh: Mesh, topology: Topology, positions: Float64Array, e: number): number {
  const h = topology.halfedgeOfEdge[e];
  const across = topology.twin[h];
  if (across < 0) return 0;
  const along = sub3(
    pointAt3(positions, targetOf(mesh.triangles, h)),
    pointAt3(positions, originOf(mesh.triangles, h)),
  );
  const left = triangleNormal(positions, mesh.triangles, triangleOfHalfedge(h));
  const right = triangleNormal(positions, mesh.triangles, triangleOfHalfedge(across));
  return foldBetween(left, right, along);
}

/** 1 for every edge that lies inside one polygon of the file: triangulation made it, the maker never sees it. */
export function diagonalEdges(mesh: Mesh): Uint8Array {
  const topology = topologyOf(mesh);
  const diagonal = new Uint8Array(topology.edgeCount);
  for (let e = 0; e < topology.edgeCount; e += 1) {
    const h = topology.halfedgeOfEdge[e];
    const across = topology.twin[h];
    if (across < 0) continue;
    const same = mesh.faceOfTriangle[triangleOfHalfedge(h)] === mesh.faceOfTriangle[triangleOfHalfedge(across)];
    if (same) diagonal[e] = 1;
  }
  return diagonal;
}

/** Length of every edge, mm. */
export function edgeLengths(mesh: Mesh, positions: Float64Array = mesh.positions): Float64Array {
  const { edgeCount, edgeVertices } = topologyOf(mesh);
  const lengths = new Float64Array(edgeCount);
  for (let e = 0; e < edgeCount; e += 1) {
    const v = 3 * edgeVertices[2 * e];
    const w = 3 * edgeVertices[2 * e + 1];
    lengths[e] = Math.hypot(
      positions[w] - positions[v],
      positions[w + 1] - positions[v + 1],
      positions[w + 2] - positions[v + 2],
    );
  }
  return lengths;
}
