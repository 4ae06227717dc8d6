import type { Vec3 } from '../geom/vec.ts';
import type { Mesh } from './mesh.ts';
import { topologyOf, type Topology } from './topology.ts';

/** A surface of triangles with who touches whom; positions may be those of any surface of the foam. */
export interface Surface {
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
  readonly topology: Topology;
}

/** A plane in space: a point of it, mm, and a direction square to it, any length but 0. */
export interface Plane {
  readonly point: Vec3;
  readonly normal: Vec3;
}

const known = new WeakMap<Mesh, Surface>();

/** The mesh itself as a surface: one record for each mesh, kept as long as the mesh lives, so that what is found for it can be kept too. */
export function surfaceOf(mesh: Mesh): Surface {
  let surface = known.get(mesh);
  if (surface === undefined) {
    surface = { positions: mesh.positions, triangles: mesh.triangles, topology: topologyOf(mesh) };
    known.set(mesh, surface);
  }
  return surface;
}
