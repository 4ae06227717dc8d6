import { expect } from 'vitest';
import { checkMesh } from '../../src/mesh/check-mesh.ts';
import type { CutMesh } from '../../src/mesh/lines/cut-along.ts';
import { triangleArea } from '../../src/mesh/measure.ts';
import { triangleCount, vertexCount, type Mesh } from '../../src/mesh/mesh.ts';
import { topologyOf } from '../../src/mesh/topology.ts';

const areaOf = (mesh: Mesh): number =>
  [...Array(triangleCount(mesh)).keys()].reduce((sum, t) => sum + triangleArea(mesh.positions, mesh.triangles, t), 0);

const eulerOf = (mesh: Mesh): number => new Set(mesh.triangles).size - topologyOf(mesh).edgeCount + triangleCount(mesh);

/** Length of the open border, mm. */
function rimOf(mesh: Mesh): number {
  const { edgeCount, edgeVertices, twin, halfedgeOfEdge } = topologyOf(mesh);
  let sum = 0;
  for (let e = 0; e < edgeCount; e += 1)
    if (twin[halfedgeOfEdge[e]] < 0) sum += apart(mesh, edgeVertices[2 * e], edgeVertices[2 * e + 1]);
  return sum;
}

const apart = ({ positions }: Mesh, v: number, w: number): number =>
  Math.hypot(...[0, 1, 2].map((i) => positions[3 * v + i] - positions[3 * w + i]));

/** All that holds for any cut of a mesh along lines: the surface is where it was, and the lines are edges. */
export function expectCut(mesh: Mesh, cut: CutMesh): void {
  checkMesh(cut.mesh);
  const before = vertexCount(mesh);
  expect(cut.mesh.positions.every(Number.isFinite)).toBe(true);
  expect(cut.mesh.positions.subarray(0, 3 * before)).toEqual(mesh.positions);
  expect(cut.mesh.vertexOfFile.subarray(0, mesh.vertexOfFile.length)).toEqual(mesh.vertexOfFile);
  const total = areaOf(mesh);
  expect(Math.abs(areaOf(cut.mesh) - total)).toBeLessThan(1e-9 * total);
  const perSource = new Float64Array(triangleCount(mesh));
  let least = Infinity;
  for (let t = 0; t < triangleCount(cut.mesh); t += 1) {
    const own = triangleArea(cut.mesh.positions, cut.mesh.triangles, t);
    const source = cut.sourceOfTriangle[t];
    perSource[source] += own;
    if (cut.mesh.faceOfTriangle[t] !== mesh.faceOfTriangle[source])
      throw new Error(`triangle ${t} lies on another face`);
    least = Math.min(least, own);
  }
  expect(least).toBeGreaterThan(0);
  const worst = perSource.reduce(
    (most, own, t) => Math.max(most, Math.abs(own - triangleArea(mesh.positions, mesh.triangles, t))),
    0,
  );
  expect(worst).toBeLessThan(1e-9 * total);
  expect(eulerOf(cut.mesh)).toBe(eulerOf(mesh));
  expect(rimOf(cut.mesh)).toBeCloseTo(rimOf(mesh), 9);
  const topology = topologyOf(cut.mesh);
  expect(topology.usesOfEdge.reduce((most, uses) => Math.max(most, uses), 0)).toBe(
    topologyOf(mesh).usesOfEdge.reduce((most, uses) => Math.max(most, uses), 0),
  );
  for (const line of cut.lines)
    for (let i = 1; i < line.length; i += 1)
      expect(topology.edgeBetween(line[i - 1], line[i])).toBeGreaterThanOrEqual(0);
}
