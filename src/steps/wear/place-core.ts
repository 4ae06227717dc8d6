import type { Stepwise } from '../../base/stepwise.ts';
import { pointAt3, rad, type Vec3 } from '../../geom/vec.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { signedSurface } from '../../mesh/signed-distance.ts';
import { topologySteps } from '../../mesh/topology.ts';
import type { SignedCore } from './model-clearance.ts';

/** Where a core stands: turned about the zero of its file, about x, then y, then z, degrees; then that zero is moved there, mm. */
export interface CorePlace {
  readonly point: Vec3;
  readonly turnDeg: readonly [number, number, number];
}

/** The corners of a core in their place, packed x y z, mm. */
export function placedPositions(positions: Float64Array, { point, turnDeg }: CorePlace): Float64Array {
  const [[ca, sa], [cb, sb], [cc, sc]] = turnDeg.map((deg) => [cosOf(deg), sinOf(deg)] as const);
  const placed = new Float64Array(positions.length);
  for (let v = 0; v < positions.length / 3; v += 1) {
    const { x, y, z } = pointAt3(positions, v);
    const [y1, z1] = [ca * y - sa * z, sa * y + ca * z];
    const [x2, z2] = [cb * x + sb * z1, -sb * x + cb * z1];
    placed[3 * v] = cc * x2 - sc * y1 + point.x;
    placed[3 * v + 1] = sc * x2 + cc * y1 + point.y;
    placed[3 * v + 2] = z2 + point.z;
  }
  return placed;
}

/** A quarter turn is exact, so that a box stays a box. */
const cosOf = (deg: number): number => (deg % 180 === 90 || deg % 180 === -90 ? 0 : Math.cos(rad(deg)));
const sinOf = (deg: number): number => (deg % 180 === 0 ? 0 : Math.sin(rad(deg)));

/** The core in its place with what is needed to ask on which side of it a point lies, and how many open edges it has. */
export function* placeCoreSteps(
  mesh: Mesh,
  place: CorePlace,
): Stepwise<{ readonly core: SignedCore; readonly openEdges: number }> {
  const topology = yield* topologySteps(mesh);
  const positions = placedPositions(mesh.positions, place);
  yield;
  const surface = signedSurface(positions, mesh.triangles, topology);
  return { core: { positions, surface }, openEdges: topology.twin.reduce((sum, h) => (h < 0 ? sum + 1 : sum), 0) };
}
