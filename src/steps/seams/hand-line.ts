import { ok, type Result } from '../../base/result.ts';
import { edgeDistances, edgesOfVertices, pathTo } from '../../mesh/edge-distance.ts';
import { edgeLengths } from '../../mesh/edge-fold.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { topologyOf, triangleOfHalfedge } from '../../mesh/topology.ts';
import { handPath } from './edge-path.ts';

/** A piece that a line is kept to: those triangles of the mesh that have a number. */
export interface LineBounds {
  readonly patchOfTriangle: Int32Array;
  readonly patch: number;
  /** True to run both ends on to the border of the piece, so that the line splits it. */
  readonly isAcross: boolean;
}

/**
 * A line along edges through corners in their order, from each to the next as a hand would draw it.
 * @param corners mesh vertices, one or more.
 * @param bounds  the piece it stays in, or null.
 * @returns mesh vertices from one end to the other. Fails with `seams/no-path`.
 */
export function handLine(mesh: Mesh, corners: readonly number[], bounds: LineBounds | null): Result<readonly number[]> {
  const isInner = bounds === null ? undefined : innerEdges(mesh, bounds);
  const wish = isInner === undefined ? {} : { isOpenTo: (e: number) => isInner[e] === 1 };
  const line = corners.slice(0, 1);
  for (const corner of corners.slice(1)) {
    const from = line[line.length - 1];
    if (corner === from) continue;
    const stretch = handPath(mesh, from, corner, wish);
    if (!stretch.ok) return stretch;
    line.push(...stretch.value.slice(1));
  }
  if (isInner === undefined || bounds?.isAcross !== true || line.length < 2) return ok(line);
  const ahead = wayOut(mesh, isInner, line);
  const whole = [...line, ...ahead];
  const behind = wayOut(mesh, isInner, whole.toReversed());
  return ok([...behind.toReversed(), ...whole]);
}

/** 1 for edges with the piece on both sides. */
function innerEdges(mesh: Mesh, { patchOfTriangle, patch }: LineBounds): Uint8Array {
  const { edgeCount, halfedgeOfEdge, twin } = topologyOf(mesh);
  const isInner = new Uint8Array(edgeCount);
  for (let e = 0; e < edgeCount; e += 1) {
    const sides = [halfedgeOfEdge[e], twin[halfedgeOfEdge[e]]];
    if (sides.every((h) => h >= 0 && patchOfTriangle[triangleOfHalfedge(h)] === patch)) isInner[e] = 1;
  }
  return isInner;
}

/** The shortest way from the end of a line to the border of its piece that does not touch the line again; none where it ends there already. */
function wayOut(mesh: Mesh, isInner: Uint8Array, line: readonly number[]): readonly number[] {
  const end = line[line.length - 1];
  const { starts, edges } = edgesOfVertices(mesh);
  const { edgeVertices } = topologyOf(mesh);
  const isOnBorder = (v: number): boolean => {
    for (let i = starts[v]; i < starts[v + 1]; i += 1) if (isInner[edges[i]] === 0) return true;
    return false;
  };
  if (isOnBorder(end)) return [];
  const taken = new Set(line.slice(0, -1));
  const weights = edgeLengths(mesh).map((length, e) =>
    isInner[e] === 0 || taken.has(edgeVertices[2 * e]) || taken.has(edgeVertices[2 * e + 1]) ? Infinity : length,
  );
  const found = edgeDistances(mesh, [end], weights);
  let nearest = -1;
  found.distance.forEach((distance, v) => {
    if (distance === Infinity || !isOnBorder(v)) return;
    if (nearest < 0 || distance < found.distance[nearest]) nearest = v;
  });
  return nearest < 0 ? [] : pathTo(mesh, found, nearest).slice(1);
}
