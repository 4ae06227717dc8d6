import { buildTree, type SurfaceTree } from '../geom/bvh.ts';
import type { Mesh } from './mesh.ts';

const known = new WeakMap<Mesh, SurfaceTree>();

/** The bounding volume tree over a mesh's triangles; built once for each mesh and kept as long as the mesh lives. */
export function surfaceTreeOf(mesh: Mesh): SurfaceTree {
  let tree = known.get(mesh);
  if (tree === undefined) {
    tree = buildTree(mesh.positions, mesh.triangles);
    known.set(mesh, tree);
  }
  return tree;
}
