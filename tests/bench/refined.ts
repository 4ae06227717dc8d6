import type { Mesh } from '../../src/mesh/mesh.ts';
import { topologyOf } from '../../src/mesh/topology.ts';
import { meshOf } from '../support/meshes.ts';

/** Every triangle parted into four at the middles of its sides; the surface stays where it is. */
export function refined(mesh: Mesh): Mesh {
  const { edgeCount, edgeVertices, edgeOfHalfedge } = topologyOf(mesh);
  const { positions, triangles } = mesh;
  const count = positions.length / 3;
  const points = Array.from({ length: count }, (_, v): [number, number, number] => [
    positions[3 * v],
    positions[3 * v + 1],
    positions[3 * v + 2],
  ]);
  for (let e = 0; e < edgeCount; e += 1) {
    const [v, w] = [points[edgeVertices[2 * e]], points[edgeVertices[2 * e + 1]]];
    points.push([(v[0] + w[0]) / 2, (v[1] + w[1]) / 2, (v[2] + w[2]) / 2]);
  }
  const faces: number[][] = [];
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = triangles.subarray(t, t + 3);
    const [ab, bc, ca] = [0, 1, 2].map((k) => count + edgeOfHalfedge[t + k]);
    faces.push([a, ab, ca], [ab, b, bc], [ca, bc, c], [ab, bc, ca]);
  }
  return meshOf(points, faces);
}
