import { diagonalEdges, edgeFolds } from '../mesh/edge-fold.ts';
import { topologyOf } from '../mesh/topology.ts';
import type { SculptView } from '../model/bench-view.ts';
import type { SizedSculpt } from '../pipeline/outcome.ts';
import { fileGroups } from '../steps/seams/area-border.ts';

/** What belongs to a sculpt on the screen and is not found in itself. */
export type BesideSculpt = Pick<SculptView, 'bvh' | 'edgeNames' | 'edgePathWay'>;

/** A sculpt as the screen needs it. */
export function sculptView({ mesh, model, facts, mmPerUnit }: SizedSculpt, beside: BesideSculpt): SculptView {
  const topology = topologyOf(mesh);
  return {
    positions: new Float32Array(mesh.positions),
    triangles: mesh.triangles,
    faceOfTriangle: mesh.faceOfTriangle,
    fileVertex: mesh.fileVertex,
    edgeVertices: topology.edgeVertices,
    edgeFoldRad: new Float32Array(edgeFolds(mesh)),
    edgeIsDiagonal: diagonalEdges(mesh),
    edgeIsOpen: new Uint8Array(topology.halfedgeOfEdge.map((h) => (topology.twin[h] < 0 ? 1 : 0))),
    colours: model.colours === null ? null : new Float32Array(model.colours),
    groups: fileGroups(mesh),
    sized: mmPerUnit !== null,
    mmPerUnit,
    facts,
    joined: model.joined,
    ...beside,
  };
}

/** Whether two views show one and the same sculpt, whatever tree they have over it. */
export function isSameSculpt(a: SculptView, b: SculptView): boolean {
  const isAlike = (key: 'positions' | 'triangles' | 'faceOfTriangle' | 'fileVertex' | 'edgeVertices' | 'colours') =>
    isSameArray(a[key], b[key]);
  return (
    a.mmPerUnit === b.mmPerUnit &&
    (a.edgeNames ?? null) === (b.edgeNames ?? null) &&
    isAlike('positions') &&
    isAlike('triangles') &&
    isAlike('faceOfTriangle') &&
    isAlike('fileVertex') &&
    isAlike('edgeVertices') &&
    isAlike('colours')
  );
}

function isSameArray(a: ArrayLike<number> | null, b: ArrayLike<number> | null): boolean {
  if (a === null || b === null || a.length !== b.length) return a === b;
  for (let i = 0; i < a.length; i += 1) if (a[i] !== b[i]) return false;
  return true;
}
