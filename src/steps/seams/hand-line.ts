import { ok, type Result } from '../../base/result.ts';
import { edgeDistances, pathTo } from '../../mesh/edge-distance.ts';
import { edgeLengths } from '../../mesh/edge-fold.ts';
import { vertexCount, type Mesh } from '../../mesh/mesh.ts';
import { topologyOf, triangleOfHalfedge } from '../../mesh/topology.ts';
import { handPath } from './edge-path.ts';

/** A piece that a line is kept to: those triangles of the mesh that have a number. */
export interface LineBounds {
  readonly patchOfTriangle: Int32Array;
  readonly patch: number;
  /** Seams as lines of mesh vertices: one that closes the piece on itself has the piece on both sides. */
  readonly seams: readonly { readonly vertices: ArrayLike<number> }[];
  /** True to run both ends on to the border of the piece, so that the line splits it. */
  readonly isAcross: boolean;
}

/** Edges that a line neither runs along nor touches, but with its ends. */
export interface LineFence {
  readonly closed: readonly number[];
}

/**
 * A line along edges through corners in their order, from each to the next as a hand would draw it.
 * @param corners mesh vertices, one or more.
 * @param bounds  the piece it stays in, or edges it stays off, or null.
 * @param trail   mesh vertices the hand came by: the line keeps near them where it can.
 * @param clear   1 per edge that the line keeps off where another way leads; left out: none.
 * @returns mesh vertices from one end to the other. Fails with `seams/no-path`.
 */
export function handLine(
  mesh: Mesh,
  corners: readonly number[],
  bounds: LineBounds | LineFence | null,
  trail: readonly number[] = [],
  clear?: Uint8Array,
): Result<readonly number[]> {
  const piece = bounds === null ? null : insideOf(mesh, bounds);
  const line = corners.slice(0, 1);
  for (const corner of corners.slice(1)) {
    const from = line[line.length - 1];
    if (corner === from) continue;
    const isOpenTo = piece === null ? {} : { isOpenTo: (e: number) => piece.mayTake(e, from, corner) };
    const keepOff = clear === undefined ? {} : { clear };
    const stretch = handPath(mesh, from, corner, { trail: new Set(trail), ...isOpenTo, ...keepOff });
    if (!stretch.ok) return stretch;
    line.push(...stretch.value.slice(1));
  }
  if (piece === null || bounds === null || 'closed' in bounds || !bounds.isAcross || line.length < 2) return ok(line);
  const whole = [...line, ...wayOut(mesh, piece, line)];
  return ok([...wayOut(mesh, piece, whole.toReversed()).toReversed(), ...whole]);
}

/** The edges and corners of the mesh as a piece has them. */
interface Inside {
  /** 1 for edges with the piece on both sides. */
  readonly isInner: Uint8Array;
  /** 1 for corners on the border of the piece. */
  readonly isOnBorder: Uint8Array;
  /** Whether a way between two corners may take an edge: the border is touched by its ends alone, or it would lead out on the other side. */
  mayTake(edge: number, from: number, to: number): boolean;
}

function insideOf(mesh: Mesh, bounds: LineBounds | LineFence): Inside {
  const topology = topologyOf(mesh);
  const { edgeCount, edgeVertices, halfedgeOfEdge, twin } = topology;
  const isClosed = new Set<number>('closed' in bounds ? bounds.closed : []);
  const seams = 'closed' in bounds ? [] : bounds.seams;
  for (const { vertices } of seams)
    for (let i = 1; i < vertices.length; i += 1) isClosed.add(topology.edgeBetween(vertices[i - 1], vertices[i]));
  const isOwn = (h: number): boolean =>
    'closed' in bounds || bounds.patchOfTriangle[triangleOfHalfedge(h)] === bounds.patch;
  const isInner = new Uint8Array(edgeCount);
  const isOnBorder = new Uint8Array(vertexCount(mesh));
  for (let e = 0; e < edgeCount; e += 1) {
    const sides = [halfedgeOfEdge[e], twin[halfedgeOfEdge[e]]];
    if (!isClosed.has(e) && sides.every((h) => h >= 0 && isOwn(h))) isInner[e] = 1;
    else isOnBorder[edgeVertices[2 * e]] = isOnBorder[edgeVertices[2 * e + 1]] = 1;
  }
  const mayTouch = (v: number, from: number, to: number): boolean => isOnBorder[v] === 0 || v === from || v === to;
  const mayTake = (e: number, from: number, to: number): boolean =>
    isInner[e] === 1 && mayTouch(edgeVertices[2 * e], from, to) && mayTouch(edgeVertices[2 * e + 1], from, to);
  return { isInner, isOnBorder, mayTake };
}

/** The shortest way from the end of a line to the border of its piece that does not touch the line again; none where it ends there already. */
function wayOut(mesh: Mesh, { isInner, isOnBorder }: Inside, line: readonly number[]): readonly number[] {
  const end = line[line.length - 1];
  if (isOnBorder[end] === 1) return [];
  const { edgeVertices } = topologyOf(mesh);
  const taken = new Set(line.slice(0, -1));
  const weights = edgeLengths(mesh).map((length, e) => {
    const ends = [edgeVertices[2 * e], edgeVertices[2 * e + 1]];
    return isInner[e] === 0 || ends.some((v) => taken.has(v)) || ends.every((v) => isOnBorder[v] === 1)
      ? Infinity
      : length;
  });
  const found = edgeDistances(mesh, [end], weights);
  let nearest = -1;
  found.distance.forEach((distance, v) => {
    if (isOnBorder[v] === 1 && distance < (nearest < 0 ? Infinity : found.distance[nearest])) nearest = v;
  });
  return nearest < 0 ? [] : pathTo(mesh, found, nearest).slice(1);
}
