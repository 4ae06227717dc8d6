import { LINE_SNAP_SHARE } from '../../base/tolerance.ts';
import { length3, sub3, type Vec3 } from '../../geom/vec.ts';
import { cornersAtVertices, type CornersAtVertices } from '../corners-at-vertices.ts';
import type { Surface } from '../surface.ts';
import { nextHalfedge, type Topology } from '../topology.ts';
import type { MeshLine, MeshPoint } from './mesh-line.ts';

/** Weights on the three corners of a triangle, sum 1. */
export type Weights = readonly [number, number, number];

const known = new WeakMap<Uint32Array, CornersAtVertices>();

/** The corners at each vertex of a surface, found once for each list of triangles. */
export function cornersOf({ triangles, positions }: Surface): CornersAtVertices {
  let corners = known.get(triangles);
  if (corners === undefined) {
    corners = cornersAtVertices(triangles, positions.length / 3);
    known.set(triangles, corners);
  }
  return corners;
}

/** Where a point lies, mm. */
export function placeOf({ positions, triangles, topology }: Surface, p: MeshPoint): Vec3 {
  const at = (axis: number): number => {
    if (p.at === 'vertex') return positions[3 * p.vertex + axis];
    if (p.at === 'edge') {
      const from = positions[3 * topology.edgeVertices[2 * p.edge] + axis];
      return from + p.share * (positions[3 * topology.edgeVertices[2 * p.edge + 1] + axis] - from);
    }
    const [a, b, c] = [0, 1, 2].map((k) => positions[3 * triangles[3 * p.triangle + k] + axis]);
    return p.bary[0] * a + p.bary[1] * b + p.bary[2] * c;
  };
  return { x: at(0), y: at(1), z: at(2) };
}

/** The triangles a point lies in or on the border of, ascending. */
export function trianglesAt(surface: Surface, p: MeshPoint): number[] {
  if (p.at === 'triangle') return [p.triangle];
  const { topology, triangles } = surface;
  const { starts, corners } = cornersOf(surface);
  const v = p.at === 'vertex' ? p.vertex : topology.edgeVertices[2 * p.edge];
  const round: number[] = [];
  for (let i = starts[v]; i < starts[v + 1]; i += 1) {
    const t = Math.floor(corners[i] / 3);
    if (p.at === 'vertex' || weightsIn(topology, triangles, p, t) !== null) round.push(t);
  }
  return round;
}

/** The weights of a point on a triangle's corners, as they stand in `triangles`; null where the point does not lie in the triangle or on its border. */
export function weightsIn(topology: Topology, triangles: Uint32Array, p: MeshPoint, t: number): Weights | null {
  if (p.at === 'triangle') return p.triangle === t ? p.bary : null;
  const weights: [number, number, number] = [0, 0, 0];
  let found = 0;
  const put = (v: number, weight: number): void => {
    for (let k = 0; k < 3; k += 1) {
      if (triangles[3 * t + k] !== v) continue;
      weights[k] = weight;
      found += 1;
    }
  };
  if (p.at === 'vertex') put(p.vertex, 1);
  else {
    put(topology.edgeVertices[2 * p.edge], 1 - p.share);
    put(topology.edgeVertices[2 * p.edge + 1], p.share);
  }
  return found === (p.at === 'vertex' ? 1 : 2) ? weights : null;
}

/** The point of a half-edge at a share of its way, on its end where it is within {@link LINE_SNAP_SHARE} of it. */
export function pointOnHalfedge({ triangles, topology }: Surface, h: number, share: number): MeshPoint {
  if (share <= LINE_SNAP_SHARE) return { at: 'vertex', vertex: triangles[h] };
  if (share >= 1 - LINE_SNAP_SHARE) return { at: 'vertex', vertex: triangles[nextHalfedge(h)] };
  const edge = topology.edgeOfHalfedge[h];
  return { at: 'edge', edge, share: topology.edgeVertices[2 * edge] === triangles[h] ? share : 1 - share };
}

/** The point of a triangle with these weights, sum 1; weights under {@link LINE_SNAP_SHARE} are none, and the point lies on a side or a corner. */
export function pointInTriangle(surface: Surface, t: number, weights: Weights): MeshPoint {
  const kept = weights.map((weight) => (weight <= LINE_SNAP_SHARE ? 0 : weight));
  const sum = kept[0] + kept[1] + kept[2];
  for (let k = 0; k < 3; k += 1) {
    // Nothing on corner k: the point lies on the side across, from corner k + 1 to k + 2.
    if (kept[k] === 0) return pointOnHalfedge(surface, 3 * t + ((k + 1) % 3), kept[(k + 2) % 3] / sum);
  }
  return { at: 'triangle', triangle: t, bary: [weights[0], weights[1], weights[2]] };
}

/** The point of a triangle that lies at a place in its plane (or nearest to the place's foot in that plane, brought inside). */
export function pointAtPlace(surface: Surface, t: number, place: Vec3): MeshPoint {
  const { positions, triangles } = surface;
  const [a, b, c] = [0, 1, 2].map((k) => 3 * triangles[3 * t + k]);
  const way = (from: number, axis: number): number => positions[from + axis] - positions[a + axis];
  const dot = (p: (axis: number) => number, q: (axis: number) => number): number =>
    p(0) * q(0) + p(1) * q(1) + p(2) * q(2);
  const [u, v] = [(axis: number) => way(b, axis), (axis: number) => way(c, axis)];
  const to = [place.x - positions[a], place.y - positions[a + 1], place.z - positions[a + 2]];
  const w = (axis: number): number => to[axis];
  const [uu, uv, vv, uw, vw] = [dot(u, u), dot(u, v), dot(v, v), dot(u, w), dot(v, w)];
  const det = uu * vv - uv * uv;
  if (!(det > 0)) return { at: 'vertex', vertex: a / 3 }; // an empty triangle has no inside
  const second = Math.max(0, (vv * uw - uv * vw) / det);
  const third = Math.max(0, (uu * vw - uv * uw) / det);
  const sum = Math.max(1, second + third);
  return pointInTriangle(surface, t, [Math.max(0, 1 - (second + third) / sum), second / sum, third / sum]);
}

export function isSamePoint(p: MeshPoint, q: MeshPoint): boolean {
  if (p.at === 'vertex') return q.at === 'vertex' && p.vertex === q.vertex;
  if (p.at === 'edge') return q.at === 'edge' && p.edge === q.edge && p.share === q.share;
  return q.at === 'triangle' && p.triangle === q.triangle && p.bary.every((weight, k) => weight === q.bary[k]);
}

/** A triangle that holds both points, inside or on its border, the lowest; -1 where there is none. */
export function sharedTriangle(surface: Surface, p: MeshPoint, q: MeshPoint): number {
  const { topology, triangles } = surface;
  if (p.at === 'triangle' || q.at === 'triangle') {
    const [inside, other] = p.at === 'triangle' ? [p, q] : [q as typeof p & { at: 'triangle' }, p];
    return weightsIn(topology, triangles, other, inside.triangle) === null ? -1 : inside.triangle;
  }
  // The point with the fewer triangles is asked for them.
  const [few, many] = p.at === 'vertex' ? [q, p] : [p, q];
  return trianglesAt(surface, few).find((t) => weightsIn(topology, triangles, many, t) !== null) ?? -1;
}

/** Length of a line, mm. */
export function lineLength(surface: Surface, { points, closed }: MeshLine): number {
  let sum = 0;
  for (let i = closed ? 0 : 1; i < points.length; i += 1)
    sum += distanceInSpace(surface, points[(i + points.length - 1) % points.length], points[i]);
  return sum;
}

export const distanceInSpace = (surface: Surface, p: MeshPoint, q: MeshPoint): number =>
  length3(sub3(placeOf(surface, p), placeOf(surface, q)));

/** The points without those that stand twice in a row; of a closed line, also without a last one that stands at the first. */
export function withoutDoubles(points: readonly MeshPoint[], closed: boolean): MeshPoint[] {
  const kept = points.filter((p, i) => i === 0 || !isSamePoint(points[i - 1], p));
  while (closed && kept.length > 1 && isSamePoint(kept[0], kept[kept.length - 1])) kept.pop();
  return kept;
}

/** The half-edge that triangle `t` has along an edge; -1 where it has none. */
export function halfedgeIn({ topology }: Surface, t: number, edge: number): number {
  for (let h = 3 * t; h < 3 * t + 3; h += 1) if (topology.edgeOfHalfedge[h] === edge) return h;
  return -1;
}
