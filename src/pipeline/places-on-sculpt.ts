import type { Finding } from '../base/finding.ts';
import type { OwnSurface } from './sculpt-run.ts';

/** A finding about a sheet with a mesh of its own, its places in the numbering of the sculpt. Corners the sculpt has not are left out. */
export function onSculpt(finding: Finding, { mesh, sourceOfTriangle }: OwnSurface, sculptVertices: number): Finding {
  const { triangles, edges, vertices, ...where } = finding.where;
  const isKnown = (v: number): boolean => v < sculptVertices;
  const [edge] = edges ?? [];
  const at =
    triangles !== undefined && triangles.length > 0 ? mesh.triangles[3 * triangles[0]] : (edge?.[0] ?? vertices?.[0]);
  const point =
    at === undefined ? undefined : ([0, 1, 2].map((i) => mesh.positions[3 * at + i]) as [number, number, number]);
  return {
    ...finding,
    where: {
      ...(point === undefined ? {} : { point }),
      ...where,
      ...(triangles === undefined ? {} : { triangles: [...new Set(triangles.map((t) => sourceOfTriangle[t]))] }),
      ...(edges === undefined ? {} : { edges: edges.filter((pair) => pair.every(isKnown)) }),
      ...(vertices === undefined ? {} : { vertices: vertices.filter(isKnown) }),
    },
  };
}
