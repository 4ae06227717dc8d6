import { buildTree } from '../../src/geom/bvh.ts';
import { diagonalEdges, edgeFolds } from '../../src/mesh/edge-fold.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';
import { boxOfPoints3, surfaceArea } from '../../src/mesh/measure.ts';
import { topologyOf } from '../../src/mesh/topology.ts';
import type { SculptView } from '../../src/model/bench-view.ts';

/** What the screen is sent of a mesh in mm. */
export function sculptView(mesh: Mesh): SculptView {
  const topology = topologyOf(mesh);
  const vertices = mesh.positions.length / 3;
  const { min, max } = boxOfPoints3(mesh.positions);
  const open = topology.halfedgeOfEdge.filter((h) => topology.twin[h] < 0).length;
  const area = surfaceArea(mesh.positions, mesh.triangles);
  const afterExactJoin = {
    vertices,
    faces: mesh.faceCount,
    edges: topology.edgeCount,
    euler: 0,
    openLoops: 0,
    openEdges: open,
    nonManifoldVertices: 0,
  };
  return {
    positions: Float32Array.from(mesh.positions),
    triangles: mesh.triangles,
    faceOfTriangle: mesh.faceOfTriangle,
    fileVertex: mesh.fileVertex,
    edgeVertices: topology.edgeVertices,
    edgeFoldRad: Float32Array.from(edgeFolds(mesh)),
    edgeIsDiagonal: diagonalEdges(mesh),
    edgeIsOpen: Uint8Array.from(topology.halfedgeOfEdge, (h) => (topology.twin[h] < 0 ? 1 : 0)),
    groups: [],
    colours: null,
    sized: true,
    mmPerUnit: 1,
    facts: {
      ...afterExactJoin,
      verticesAfterExactJoin: vertices,
      triangles: mesh.triangles.length / 3,
      triangleEdges: topology.edgeCount,
      shells: 1,
      genus: 0,
      nonManifoldEdges: 0,
      turnedEdges: 0,
      emptyFaces: 0,
      doubledFaces: 0,
      area,
      fanArea: area,
      boxMin: [min.x, min.y, min.z],
      boxSize: [max.x - min.x, max.y - min.y, max.z - min.z],
      afterExactJoin,
    },
    joined: { inFile: vertices, afterExact: vertices, afterNear: vertices, toleranceUnits: 0 },
    bvh: buildTree(mesh.positions, mesh.triangles).serialise(),
  };
}
