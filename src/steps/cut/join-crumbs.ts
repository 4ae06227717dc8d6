import { DisjointSets } from '../../base/disjoint-sets.ts';
import { edgeLengths } from '../../mesh/edge-fold.ts';
import { triangleArea } from '../../mesh/measure.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { triangleOfHalfedge, type Topology } from '../../mesh/topology.ts';

/** A part that came off its piece is a crumb up to this share of the piece's area. */
const CRUMB_SHARE = 0.05;

/**
 * Gives small parts that hang on nothing of their own piece to the neighbour they share most border with.
 * @param owner  piece of each triangle; changed.
 */
export function joinCrumbs(mesh: Mesh, topology: Topology, owner: number[]): void {
  const lengths = edgeLengths(mesh);
  const sets = new DisjointSets(owner.length);
  const borders: { s: number; t: number; lengthMm: number }[] = [];
  for (let e = 0; e < topology.edgeCount; e += 1) {
    const h = topology.halfedgeOfEdge[e];
    if (topology.twin[h] < 0) continue;
    const [s, t] = [triangleOfHalfedge(h), triangleOfHalfedge(topology.twin[h])];
    if (owner[s] === owner[t]) sets.join(s, t);
    else borders.push({ s, t, lengthMm: lengths[e] });
  }
  const areaOfPart = new Map<number, number>();
  const areaOfPiece = new Map<number, number>();
  for (const [t, piece] of owner.entries()) {
    const area = triangleArea(mesh.positions, mesh.triangles, t);
    const part = sets.find(t);
    areaOfPart.set(part, (areaOfPart.get(part) ?? 0) + area);
    areaOfPiece.set(piece, (areaOfPiece.get(piece) ?? 0) + area);
  }
  const isCrumb = (t: number): boolean =>
    (areaOfPart.get(sets.find(t)) ?? 0) <= CRUMB_SHARE * (areaOfPiece.get(owner[t]) ?? 0);
  const shared = new Map<number, Map<number, number>>();
  for (const { s, t, lengthMm } of borders) {
    for (const [own, other] of [
      [s, t],
      [t, s],
    ]) {
      if (!isCrumb(own) || isCrumb(other)) continue;
      const part = sets.find(own);
      const beside = shared.get(part) ?? new Map<number, number>();
      beside.set(owner[other], (beside.get(owner[other]) ?? 0) + lengthMm);
      shared.set(part, beside);
    }
  }
  const taker = new Map(
    [...shared].map(([part, beside]) => [part, [...beside].reduce((most, one) => (one[1] > most[1] ? one : most))[0]]),
  );
  for (let t = 0; t < owner.length; t += 1) owner[t] = taker.get(sets.find(t)) ?? owner[t];
}
