import { topologyOf } from '../mesh/topology.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { SculptView } from '../model/bench-view.ts';
import type { DrawnSurface } from '../pipeline/drawn-lines.ts';
import { pathName } from '../project/path-names.ts';

/** What the document calls the edges of a sculpt that was cut along paths. */
export function edgeNames(
  sculpt: Mesh,
  { cut, pathOfLine }: Pick<DrawnSurface, 'cut' | 'pathOfLine'>,
): Required<Pick<SculptView, 'edgeNames' | 'edgePathWay'>> {
  const topology = topologyOf(cut.mesh);
  const { edgeVertices, edgeCount } = topology;
  const before = sculpt.positions.length / 3;
  const { fileVertex } = sculpt;
  const names = new Int32Array(2 * edgeCount);
  for (let e = 0; e < edgeCount; e += 1) {
    const [v, w] = edgeVertices.subarray(2 * e, 2 * e + 2);
    if (v < before && w < before) names.set([fileVertex[v], fileVertex[w]], 2 * e);
  }
  const { edgeVertices: own } = topologyOf(sculpt);
  for (const [edge, parts] of cut.partsOfEdge) {
    for (let i = 1; i < parts.length; i += 1)
      names.set(
        [fileVertex[own[2 * edge]], fileVertex[own[2 * edge + 1]]],
        2 * topology.edgeBetween(parts[i - 1], parts[i]),
      );
  }
  const edgePathWay = new Int8Array(edgeCount);
  for (const [i, line] of cut.lines.entries()) {
    for (let k = 1; k < line.length; k += 1) {
      const edge = topology.edgeBetween(line[k - 1], line[k]);
      names.set(pathName(pathOfLine[i]), 2 * edge);
      edgePathWay[edge] = edgeVertices[2 * edge] === line[k - 1] ? 1 : -1;
    }
  }
  return { edgeNames: names, edgePathWay };
}
