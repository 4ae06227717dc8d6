import { add3, dot3, scale3, sub3, vec3, type Vec3 } from '../geom/vec.ts';
import type { MeshPoint } from '../mesh/lines/mesh-line.ts';
import { pointAtPlace } from '../mesh/lines/mesh-point.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { surfaceOf } from '../mesh/surface.ts';
import { topologyOf } from '../mesh/topology.ts';
import type { CutSculpt, Outcome } from '../pipeline/outcome.ts';
import type { Spot } from './drawing-api.ts';

/** A picked place on the sculpt itself. What is on show may be cut finer than it. */
export function placeAt({ cut, drawn }: Outcome, mesh: Mesh, spot: Spot): MeshPoint {
  const surface = surfaceOf(mesh);
  const shown = cut?.mesh ?? mesh;
  if ('corner' in spot) {
    const { corner } = spot;
    if (corner < mesh.positions.length / 3) return { at: 'vertex', vertex: corner };
    return drawn?.cut.added[corner - mesh.positions.length / 3] ?? { at: 'vertex', vertex: 0 };
  }
  const triangle = drawn !== null && drawn.mesh === shown ? drawn.sourceOfTriangle[spot.triangle] : spot.triangle;
  const place = onEdge(shown, cut, spot.edge, vec3(...spot.point));
  return pointAtPlace(surface, triangle, place);
}

/** Of an edge this share at each end counts as its corner. */
const END_SHARE = 0.12;

/** A place beside an open edge or a seam is meant to lie on it, so that the line meets it. */
function onEdge(mesh: Mesh, cut: CutSculpt | null, edge: number | undefined, place: Vec3): Vec3 {
  if (edge === undefined || !isBorder(mesh, cut, edge)) return place;
  const { edgeVertices } = topologyOf(mesh);
  const [a, b] = [0, 1].map((end) => pointOf(mesh, edgeVertices[2 * edge + end]));
  const way = sub3(b, a);
  const square = dot3(way, way);
  const share = square === 0 ? 0 : dot3(sub3(place, a), way) / square;
  if (share < END_SHARE) return a;
  return share > 1 - END_SHARE ? b : add3(a, scale3(way, share));
}

function isBorder(mesh: Mesh, cut: CutSculpt | null, edge: number): boolean {
  const topology = topologyOf(mesh);
  if (topology.twin[topology.halfedgeOfEdge[edge]] < 0) return true;
  const [v, w] = [topology.edgeVertices[2 * edge], topology.edgeVertices[2 * edge + 1]];
  return (cut?.chains ?? []).some(({ vertices }) =>
    vertices.some((u, i) => i > 0 && ((u === v && vertices[i - 1] === w) || (u === w && vertices[i - 1] === v))),
  );
}

const pointOf = ({ positions }: Mesh, v: number): Vec3 =>
  vec3(positions[3 * v], positions[3 * v + 1], positions[3 * v + 2]);
