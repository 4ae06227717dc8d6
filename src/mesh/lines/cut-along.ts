import { runAtOnce, type Stepwise } from '../../base/stepwise.ts';
import { triangleCount, vertexCount, type Mesh } from '../mesh.ts';
import { surfaceOf } from '../surface.ts';
import { topologyOf, topologySteps, triangleOfHalfedge } from '../topology.ts';
import { fillTriangle } from './fill-triangle.ts';
import { LineNet } from './line-net.ts';
import type { MeshLine, MeshPoint } from './mesh-line.ts';
import { placeOf } from './mesh-point.ts';

/** A mesh cut finer, so that lines drawn on it run along edges. */
export interface CutMesh {
  /**
   * Vertices of the mesh it was made of keep their numbers and places, new ones follow and have file numbers behind the file's own.
   * Triangles without a line keep their numbers; of one that was cut the first part has it, the others follow.
   */
  readonly mesh: Mesh;
  /** Triangle of the earlier mesh, per triangle. */
  readonly sourceOfTriangle: Int32Array;
  /** Where each new vertex lies on the earlier mesh. */
  readonly added: readonly MeshPoint[];
  /** For each line its vertices in the finer mesh; a closed line ends with its first. One that shrank to a point is empty. */
  readonly lines: readonly Uint32Array[];
  /** For each edge of the earlier mesh that was cut: its vertices from its first end to its second, both included. */
  readonly partsOfEdge: ReadonlyMap<number, Uint32Array>;
}

/** Triangles filled in one stretch: a few milliseconds. */
const STRETCH_TRIANGLES = 256;

/** {@link cutAlongSteps} at once. */
export const cutAlong = (mesh: Mesh, lines: readonly MeshLine[]): CutMesh => runAtOnce(cutAlongSteps(mesh, lines));

/**
 * Cuts triangles along lines. The surface stays where it is: new vertices lie on its edges and in its triangles, area and borders are the same.
 * Points and lines nearer to each other, or to a corner or an edge, than `LINE_JOIN_MM` are brought together, so a line may stray by that much.
 * Where lines cross, both run through one vertex; where they run on each other they are one. The order of the lines gives the numbers: a
 * line put behind the others leaves theirs alone, except in triangles and on edges that it shares with them.
 */
export function* cutAlongSteps(mesh: Mesh, lines: readonly MeshLine[]): Stepwise<CutMesh> {
  yield* topologySteps(mesh);
  const surface = surfaceOf(mesh);
  const net = new LineNet(surface);
  for (const { points, closed } of lines) {
    net.draw(points, closed);
    yield;
  }
  for (const [i, t] of net.crossedTriangles().entries()) {
    net.settle(t);
    if (i % STRETCH_TRIANGLES === STRETCH_TRIANGLES - 1) yield;
  }
  const before = vertexCount(mesh);
  // New vertices in the order of the lines that brought them.
  const order = [...net.points.list.keys()].sort((p, q) => net.points.list[p].line - net.points.list[q].line || p - q);
  const added = order.map((p) => net.points.list[p].place);
  const numberOf = new Uint32Array(net.points.list.length);
  order.forEach((p, i) => (numberOf[p] = before + i));
  const named = (p: number): number => (p < before ? p : numberOf[p - before]);
  const { triangles, sourceOfTriangle } = yield* filled(mesh, net, named);
  const positions = new Float64Array(3 * (before + added.length));
  positions.set(mesh.positions);
  added.forEach((place, i) => {
    const { x, y, z } = placeOf(surface, place);
    positions.set([x, y, z], 3 * (before + i));
  });
  const files = mesh.vertexOfFile.length;
  const fileVertex = new Uint32Array(before + added.length);
  fileVertex.set(mesh.fileVertex);
  const vertexOfFile = new Int32Array(files + added.length);
  vertexOfFile.set(mesh.vertexOfFile);
  for (let i = 0; i < added.length; i += 1) {
    fileVertex[before + i] = files + i;
    vertexOfFile[files + i] = before + i;
  }
  return {
    mesh: {
      ...mesh,
      positions,
      triangles,
      faceOfTriangle: Uint32Array.from(sourceOfTriangle, (t) => mesh.faceOfTriangle[t]),
      fileVertex,
      vertexOfFile,
    },
    sourceOfTriangle,
    added,
    lines: net.chains().map((chain) => Uint32Array.from(chain, named)),
    partsOfEdge: new Map(
      net.points.partedEdges().map((edge) => [edge, Uint32Array.from(net.points.pointsOnEdge(edge), named)] as const),
    ),
  };
}

/** Triangles with those that lines run through cut: their first part in place, the others behind, by the last line in each. */
function* filled(
  mesh: Mesh,
  net: LineNet,
  named: (point: number) => number,
): Stepwise<{ triangles: Uint32Array; sourceOfTriangle: Int32Array }> {
  const { edgeOfHalfedge } = topologyOf(mesh);
  const parted = new Set(net.points.partedEdges());
  const touched = new Set(net.crossedTriangles());
  // All triangles at an edge, also where more than two meet.
  edgeOfHalfedge.forEach((edge, h) => {
    if (parted.has(edge)) touched.add(triangleOfHalfedge(h));
  });
  const parts: { readonly t: number; readonly line: number; readonly corners: readonly number[] }[] = [];
  let count = triangleCount(mesh);
  for (const t of [...touched].sort((p, q) => p - q)) {
    const points = net.points.pointsOf(t);
    if (points.length === 3 && net.linksIn(t).length === 0) continue;
    const places = points.map((p) => net.points.inPlane(t, p));
    const localOf = new Map(points.map((p, i) => [p, i] as const));
    const local = (p: number): number => localOf.get(p) ?? -1;
    const corners = fillTriangle({
      xy: places.flatMap(({ x, y }) => [x, y]),
      sides: places.map(({ sides }) => sides),
      links: net.linksIn(t).map(([a, b]) => [local(a), local(b)] as const),
    });
    parts.push({ t, line: net.lastLineIn(t), corners: corners.map((i) => named(points[i])) });
    count += corners.length / 3 - 1;
    if (parts.length % STRETCH_TRIANGLES === 0) yield;
  }
  const triangles = new Uint32Array(3 * count);
  triangles.set(mesh.triangles);
  const sourceOfTriangle = new Int32Array(count);
  for (let t = 0; t < triangleCount(mesh); t += 1) sourceOfTriangle[t] = t;
  let next = triangleCount(mesh);
  for (const { t, corners } of parts.sort((p, q) => p.line - q.line || p.t - q.t)) {
    triangles.set(corners.slice(0, 3), 3 * t);
    triangles.set(corners.slice(3), 3 * next);
    sourceOfTriangle.fill(t, next, next + corners.length / 3 - 1);
    next += corners.length / 3 - 1;
  }
  return { triangles, sourceOfTriangle };
}
