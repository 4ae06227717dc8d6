import type { MeshLine, MeshPoint } from '../lines/mesh-line.ts';
import type { Mesh } from '../mesh.ts';
import { topologyOf } from '../topology.ts';
import type { Partners } from './mirror-partners.ts';

/** The place opposite to one on the surface; null where what holds it has no partner. */
export function mirroredPoint(mesh: Mesh, { ofVertex, ofEdge, ofTriangle }: Partners, p: MeshPoint): MeshPoint | null {
  switch (p.at) {
    case 'vertex': {
      const vertex = ofVertex[p.vertex];
      return vertex < 0 ? null : { at: 'vertex', vertex };
    }
    case 'edge': {
      const edge = ofEdge[p.edge];
      if (edge < 0) return null;
      const { edgeVertices } = topologyOf(mesh);
      const isSameWay = ofVertex[edgeVertices[2 * p.edge]] === edgeVertices[2 * edge];
      return { at: 'edge', edge, share: isSameWay ? p.share : 1 - p.share };
    }
    case 'triangle': {
      const triangle = ofTriangle[p.triangle];
      if (triangle < 0) return null;
      const own = [0, 1, 2].map((k) => ofVertex[mesh.triangles[3 * p.triangle + k]]);
      const [a, b, c] = [0, 1, 2].map((k) => p.bary[own.indexOf(mesh.triangles[3 * triangle + k])]);
      return { at: 'triangle', triangle, bary: [a, b, c] };
    }
  }
}

/** The line opposite to one on the surface; null where a part of it has no partner. */
export function mirroredLine(mesh: Mesh, partners: Partners, { points, closed }: MeshLine): MeshLine | null {
  const mirrored = points.map((p) => mirroredPoint(mesh, partners, p));
  return mirrored.every((p) => p !== null) ? { points: mirrored, closed } : null;
}
