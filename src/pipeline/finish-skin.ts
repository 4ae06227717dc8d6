import type { SeamId } from '../base/ids.ts';
import { topologyOf, triangleOfHalfedge, nextHalfedge } from '../mesh/topology.ts';
import type { SeamChain } from '../model/seams.ts';
import type { Colour } from '../model/colours.ts';
import type { SculptPart } from '../project/project.ts';
import { areasOfCorners, type PaintSkin, type SkinEdge } from '../steps/shop/paint-skin.ts';
import type { CutSculpt, LayerOutcome, Outcome, SculptOutcome } from './outcome.ts';

/** A skin that still knows where it came from. */
export interface FoundSkin {
  readonly skin: PaintSkin;
  /** Per triangle the polygon of the file. */
  readonly faceOf: Uint32Array;
  /** Where a move of the surface by 1 mm takes each corner, as `PaintSkin.corners`. */
  readonly moves: Float64Array;
  /** For each sheet that is seen, per triangle of its mesh the triangle of the skin, or -1 where another sheet covers it. */
  readonly placeOf: ReadonlyMap<LayerOutcome, Int32Array>;
}

/**
 * The face of the outermost sheet of every wall and of what is laid on it, without what that covers.
 * @param colours  of the maker's list; a polygon has that of the last area of it that says one, else the base.
 */
export function finishSkin(
  { sculpts, pieces }: Pick<Outcome, 'sculpts' | 'pieces'>,
  colours: readonly Colour[],
  base: string | undefined,
): FoundSkin {
  const rest = colours.findIndex(({ id }) => id === base);
  const gathered: Gathered = {
    indexOf: new Map((pieces ?? []).map(({ id }, i) => [id as string, i])),
    corners: [],
    moves: [],
    pieceOf: [],
    colourOf: [],
    faceOf: [],
    edges: [],
    placeOf: new Map(),
  };
  for (const own of sculpts) gatherSculpt(gathered, own, coloursOfFaces(own.part, colours), rest);
  const { corners, moves, pieceOf, colourOf, faceOf, edges, placeOf } = gathered;
  const packed = Float64Array.from(corners);
  return {
    skin: {
      areaMm2: areasOfCorners(packed),
      pieceOf: Int32Array.from(pieceOf),
      colourOf: Int32Array.from(colourOf),
      corners: packed,
      edges,
    },
    faceOf: Uint32Array.from(faceOf),
    moves: Float64Array.from(moves),
    placeOf,
  };
}

/** The skin so far; of every triangle one entry, of corners and moves nine. */
interface Gathered {
  /** Index of each piece by its id. */
  readonly indexOf: ReadonlyMap<string, number>;
  readonly corners: number[];
  readonly moves: number[];
  readonly pieceOf: number[];
  readonly colourOf: number[];
  readonly faceOf: number[];
  readonly edges: SkinEdge[];
  readonly placeOf: Map<LayerOutcome, Int32Array>;
}

function gatherSculpt(
  { indexOf, corners, moves, pieceOf, colourOf, faceOf, edges, placeOf }: Gathered,
  { layers, raised }: Pick<SculptOutcome, 'layers' | 'raised'>,
  colourOfFace: ReadonlyMap<number, number>,
  rest: number,
): void {
  const covered = new Set(raised.flatMap(({ plan }) => plan.raised?.area.faces ?? []));
  const wall = layers.at(0);
  if (wall === undefined) return;
  for (const layer of [wall, ...raised]) {
    const cut = need(layer.cut);
    const pieceOfPatch = need(layer.pieces).reduce(
      (list, { patch, id }) => list.set(patch, indexOf.get(id) ?? -1),
      new Map<number, number>(),
    );
    const place = new Int32Array(cut.patchOfTriangle.length).fill(-1);
    cut.patchOfTriangle.forEach((patch, t) => {
      const face = cut.mesh.faceOfTriangle[t];
      const piece = pieceOfPatch.get(patch) ?? -1;
      if (piece < 0 || (layer === wall && covered.has(face))) return;
      place[t] = pieceOf.length;
      pieceOf.push(piece);
      faceOf.push(face);
      colourOf.push(colourOfFace.get(face) ?? rest);
      const { facePositions: outer, backPositions: inner, thicknessMm } = cut.shells[patch];
      for (let k = 0; k < 9; k += 1) {
        const at = 3 * cut.mesh.triangles[3 * t + Math.floor(k / 3)] + (k % 3);
        corners.push(outer[at]);
        moves.push((outer[at] - inner[at]) / thicknessMm);
      }
    });
    for (const edge of edgesInside(cut, place)) edges.push(edge);
    placeOf.set(layer, place);
  }
  for (const layer of raised) for (const edge of edgesRound(layer, wall, placeOf)) edges.push(edge);
}

function coloursOfFaces({ regions }: Pick<SculptPart, 'regions'>, colours: readonly Colour[]): Map<number, number> {
  const found = new Map<number, number>();
  const indexOf = new Map(colours.map(({ id }, i) => [id, i]));
  for (const { colour, faces } of regions) {
    const index = colour === undefined ? undefined : indexOf.get(colour);
    if (index !== undefined) for (const face of faces) found.set(face, index);
  }
  return found;
}

/** Edges between two triangles of a sheet that are both seen. */
function edgesInside(cut: CutSculpt, place: Int32Array): readonly SkinEdge[] {
  const { edgeCount, halfedgeOfEdge, twin } = topologyOf(cut.mesh);
  const seams = seamsByEdge(cut);
  const edges: SkinEdge[] = [];
  for (let e = 0; e < edgeCount; e += 1) {
    const h = halfedgeOfEdge[e];
    if (twin[h] < 0) continue;
    const [a, b] = [place[triangleOfHalfedge(h)], place[triangleOfHalfedge(twin[h])]];
    if (a < 0 || b < 0) continue;
    edges.push({ a, b, mm: edgeMm(cut, h), joint: seams.get(e) ?? null });
  }
  return edges;
}

/** Edges between what is laid on the wall and the wall round it; those that lie on no edge of the wall are left out. */
function edgesRound(layer: LayerOutcome, wall: LayerOutcome, placeOf: FoundSkin['placeOf']): readonly SkinEdge[] {
  const [cut, under] = [need(layer.cut), need(wall.cut)];
  const [place, placeUnder] = [need(placeOf.get(layer)), need(placeOf.get(wall))];
  const { twin } = topologyOf(cut.mesh);
  const below = topologyOf(under.mesh);
  const wallVertex = new Map(Array.from(under.mesh.fileVertex, (n, v) => [n, v]));
  const edges: SkinEdge[] = [];
  for (let h = 0; h < twin.length; h += 1) {
    if (twin[h] >= 0) continue;
    const [v, w] = [cut.mesh.triangles[h], cut.mesh.triangles[nextHalfedge(h)]].map(
      (own) => wallVertex.get(cut.mesh.fileVertex[own]) ?? -1,
    );
    const e = v < 0 || w < 0 ? -1 : below.edgeBetween(v, w);
    const both = e < 0 ? [] : [below.halfedgeOfEdge[e], below.twin[below.halfedgeOfEdge[e]]];
    const beside = both.filter((own) => own >= 0).map((own) => placeUnder[triangleOfHalfedge(own)]);
    const b = beside.find((t) => t >= 0);
    const a = place[triangleOfHalfedge(h)];
    if (b !== undefined && a >= 0) edges.push({ a, b, mm: edgeMm(cut, h), joint: 'laid' });
  }
  return edges;
}

/** Length of an edge on the face, mm. */
function edgeMm({ mesh, shells, patchOfTriangle }: CutSculpt, h: number): number {
  const { facePositions: at } = shells[patchOfTriangle[triangleOfHalfedge(h)]];
  const [v, w] = [3 * mesh.triangles[h], 3 * mesh.triangles[nextHalfedge(h)]];
  return Math.hypot(at[w] - at[v], at[w + 1] - at[v + 1], at[w + 2] - at[v + 2]);
}

/** The seam along each edge of the mesh that has one. */
function seamsByEdge({ mesh, chains }: CutSculpt): ReadonlyMap<number, SeamId> {
  const topology = topologyOf(mesh);
  const found = new Map<number, SeamId>();
  for (const { id, vertices } of chains) {
    for (let i = 0; i + 1 < vertices.length; i += 1) {
      const e = topology.edgeBetween(vertices[i], vertices[i + 1]);
      if (e >= 0) found.set(e, id);
    }
  }
  return found;
}

/** Lengths of the stretches of a seam on the face, mm. */
export function stretchesOnFace({ shell: { facePositions: at } }: CutSculpt, { vertices }: SeamChain): Float64Array {
  return Float64Array.from({ length: vertices.length - 1 }, (_, i) => {
    const [v, w] = [3 * vertices[i], 3 * vertices[i + 1]];
    return Math.hypot(at[w] - at[v], at[w + 1] - at[v + 1], at[w + 2] - at[v + 2]);
  });
}

function need<T>(value: T | null | undefined): T {
  if (value === null || value === undefined) throw new Error('finish: the chain has not run to its end');
  return value;
}
