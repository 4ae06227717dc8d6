import { placeOf, pointAtPlace } from '../../mesh/lines/mesh-point.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { surfaceOf } from '../../mesh/surface.ts';
import { topologyOf, triangleOfHalfedge } from '../../mesh/topology.ts';
import type { SurfacePoint } from '../../model/seams.ts';
import type { SourceModel } from '../../model/source-model.ts';
import type { MeshPoint } from '../../model/surface-line.ts';
import { length3, sub3, type Vec3 } from '../../geom/vec.ts';

/** The polygons of a file and the triangles they were cut into, by their number in the file. */
export interface FacePolygons {
  /** Vertices of the mesh round a polygon, in the order of the file; none for a number without a polygon. */
  cornersOf(face: number): Uint32Array;
  /** Its triangles in the mesh. */
  trianglesOf(face: number): Uint32Array;
}

const known = new WeakMap<SourceModel, FacePolygons>();

/** The polygons of a model; found once for each model. */
export function facePolygons(model: SourceModel): FacePolygons {
  let polygons = known.get(model);
  if (polygons === undefined) {
    polygons = findPolygons(model);
    known.set(model, polygons);
  }
  return polygons;
}

function findPolygons({
  faceStarts,
  faceVertices,
  faceNumber,
  faceOfTriangle,
  fileFaceCount,
}: SourceModel): FacePolygons {
  const row = new Int32Array(fileFaceCount).fill(-1);
  faceNumber.forEach((number, f) => (row[number] = f));
  const starts = new Uint32Array(faceNumber.length + 1);
  for (const f of faceOfTriangle) starts[f + 1] += 1;
  for (let f = 0; f < faceNumber.length; f += 1) starts[f + 1] += starts[f];
  const next = starts.slice();
  const triangles = new Uint32Array(faceOfTriangle.length);
  faceOfTriangle.forEach((f, t) => (triangles[next[f]++] = t));
  const none = new Uint32Array(0);
  const rowOf = (face: number): number => row[face] ?? -1;
  return {
    cornersOf(face) {
      const f = rowOf(face);
      return f < 0 ? none : faceVertices.subarray(faceStarts[f], faceStarts[f + 1]);
    },
    trianglesOf(face) {
      const f = rowOf(face);
      return f < 0 ? none : triangles.subarray(starts[f], starts[f + 1]);
    },
  };
}

/**
 * A place of the mesh in the words of the file. A place on an edge is told on the polygon left of the edge's first triangle, one in a triangle with
 * weights on the three corners of that triangle and 0 on the polygon's others. {@link meshPointOf} leads back to the very same place.
 */
export function surfacePointOf(mesh: Mesh, polygons: FacePolygons, p: MeshPoint): SurfacePoint {
  if (p.at === 'vertex') return { vertex: mesh.fileVertex[p.vertex] };
  const { halfedgeOfEdge, edgeVertices } = topologyOf(mesh);
  const triangle = p.at === 'edge' ? triangleOfHalfedge(halfedgeOfEdge[p.edge]) : p.triangle;
  const weights =
    p.at === 'edge'
      ? new Map([
          [edgeVertices[2 * p.edge], 1 - p.share],
          [edgeVertices[2 * p.edge + 1], p.share],
        ])
      : new Map(p.bary.map((weight, k) => [mesh.triangles[3 * triangle + k], weight]));
  const face = mesh.faceOfTriangle[triangle];
  const bary = Array.from(polygons.cornersOf(face), (v) => {
    const weight = weights.get(v) ?? 0;
    weights.delete(v); // a corner that the polygon comes by twice carries its weight once
    return weight;
  });
  return { face, bary };
}

/** How far the weights of a place may be from 1 in sum: what a program that writes six digits leaves. */
const WEIGHT_ROOM = 1e-4;

/**
 * A place of the file on the mesh: exact where its weights stand on one, two or three corners of one triangle; else, as in a polygon of more
 * corners, the place of the polygon's triangles that is nearest to the weighted middle of its corners.
 * @returns null where the file's vertex or polygon is not part of the sculpt, or the weights are not >= 0 and of sum 1.
 */
export function meshPointOf(mesh: Mesh, polygons: FacePolygons, p: SurfacePoint): MeshPoint | null {
  if ('vertex' in p) {
    const vertex = mesh.vertexOfFile[p.vertex] ?? -1;
    return vertex < 0 ? null : { at: 'vertex', vertex };
  }
  const corners = polygons.cornersOf(p.face);
  const sum = p.bary.reduce((all, weight) => all + weight, 0);
  if (corners.length === 0 || corners.length !== p.bary.length) return null;
  if (!(Math.abs(sum - 1) <= WEIGHT_ROOM && p.bary.every((weight) => weight >= 0))) return null;
  const weights = new Map<number, number>();
  corners.forEach((v, k) => {
    if (p.bary[k] > 0) weights.set(v, (weights.get(v) ?? 0) + p.bary[k]);
  });
  // Weights that came from here are good to rounding and stay as they are.
  if (Math.abs(sum - 1) > 1e-12) for (const [v, weight] of weights) weights.set(v, weight / sum);
  const used = [...weights.keys()];
  if (used.length === 1) return { at: 'vertex', vertex: used[0] };
  if (used.length === 2) {
    const topology = topologyOf(mesh);
    const edge = topology.edgeBetween(used[0], used[1]);
    if (edge >= 0) return { at: 'edge', edge, share: weights.get(topology.edgeVertices[2 * edge + 1]) as number };
  }
  const own = polygons.trianglesOf(p.face);
  const cornerOf = (t: number, k: number): number => mesh.triangles[3 * t + k];
  if (used.length === 3) {
    const triangle = own.find((t) => [0, 1, 2].every((k) => weights.has(cornerOf(t, k))));
    if (triangle !== undefined) {
      const [a, b, c] = [0, 1, 2].map((k) => weights.get(cornerOf(triangle, k)) as number);
      return { at: 'triangle', triangle, bary: [a, b, c] };
    }
  }
  return nearestOf(mesh, own, weightedMiddle(mesh, weights));
}

function weightedMiddle({ positions }: Mesh, weights: ReadonlyMap<number, number>): Vec3 {
  const [x, y, z] = [0, 1, 2].map((axis) => {
    let total = 0;
    for (const [v, weight] of weights) total += weight * positions[3 * v + axis];
    return total;
  });
  return { x, y, z };
}

function nearestOf(mesh: Mesh, triangles: Uint32Array, place: Vec3): MeshPoint | null {
  const surface = surfaceOf(mesh);
  let best: MeshPoint | null = null;
  let least = Infinity;
  for (const t of triangles) {
    const point = pointAtPlace(surface, t, place);
    const distance = length3(sub3(placeOf(surface, point), place));
    if (distance < least) [best, least] = [point, distance];
  }
  return best;
}
