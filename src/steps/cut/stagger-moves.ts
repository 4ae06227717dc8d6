import { DisjointSets } from '../../base/disjoint-sets.ts';
import type { Stepwise } from '../../base/stepwise.ts';
import { frontDistanceSteps } from '../../mesh/front-distance.ts';
import { triangleArea } from '../../mesh/measure.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import type { Patch } from '../../model/patch.ts';
import type { SeamChain } from '../../model/seams.ts';

/** A seam that is to lie elsewhere: `grows` takes a strip from `gives`, beside the chain. */
export interface SeamMove {
  /** Index of the chain. */
  readonly chain: number;
  readonly grows: number;
  readonly gives: number;
  /** Side of the chain on which `gives` lies. */
  readonly side: 0 | 1;
}

/** Why a seam stays over the one of the sheet above. */
export type StayReason = 'crease' | 'dart' | 'narrow' | 'form';

/** Least part of a patch that must be left of it, and most of what is left that may come off beside its largest part. */
const LEAST_LEFT_SHARE = 0.2;
const MOST_CRUMBS_SHARE = 0.05;

/** Share of a seam's length within which two sums of lengths are alike: rounding. */
const LIKE_SHARE = 1e-6;

/** An edge along which the distance rises by less than this share of its length is come to head-on: at under 30 degrees. */
const HEAD_ON_SLOPE = 0.5;

/** Halvings of the distance when the greatest that works is looked for. */
const HALVINGS = 12;

/** Whether a seam runs along a fold, somewhere, that a sheet does not bend over. */
export const isCrease = ({ foldRad }: SeamChain, creaseRad: number): boolean =>
  foldRad.some((fold) => Math.abs(fold) > creaseRad);

/** Why a seam cannot be moved whatever the distance; null where it can. Open edges are no seams. */
export function whyFixed(seam: SeamChain, creaseRad: number): StayReason | null {
  const { sides } = seam;
  if (isCrease(seam, creaseRad)) return 'crease';
  const [left, right] = sides;
  if (left.patch !== right.patch) return null;
  const last = left.localVertices.length - 1;
  const endsInside = [0, last].some((i) => left.localVertices[i] === right.localVertices[i]);
  return endsInside ? 'dart' : null;
}

/**
 * Which piece grows at each seam: the one that has lost more length of seam so far, so that a row of like pieces moves on together and
 * each keeps its size; of two alike that on the right.
 * @param isOther  of two alike the one on the left.
 */
export function movesOf(mesh: Mesh, chains: readonly SeamChain[], creaseRad: number, isOther: boolean): SeamMove[] {
  const gained = new Map<number, number>();
  const moves: SeamMove[] = [];
  for (const [chain, seam] of chains.entries()) {
    if (seam.kind === 'open' || whyFixed(seam, creaseRad) !== null) continue;
    const [left, right] = seam.sides.map(({ patch }) => patch);
    const lengthMm = lengthOf(mesh, seam);
    const ahead = (gained.get(right) ?? 0) - (gained.get(left) ?? 0);
    const rightGrows = Math.abs(ahead) <= LIKE_SHARE * lengthMm ? !isOther : ahead < 0;
    const [gives, grows] = rightGrows ? [left, right] : [right, left];
    gained.set(grows, (gained.get(grows) ?? 0) + lengthMm);
    gained.set(gives, (gained.get(gives) ?? 0) - lengthMm);
    moves.push({ chain, grows, gives, side: rightGrows ? 0 : 1 });
  }
  return moves;
}

export function lengthOf({ positions }: Mesh, { vertices }: SeamChain): number {
  let sum = 0;
  for (let i = 1; i < vertices.length; i += 1) {
    const [v, w] = [3 * vertices[i - 1], 3 * vertices[i]];
    sum += Math.hypot(
      positions[w] - positions[v],
      positions[w + 1] - positions[v + 1],
      positions[w + 2] - positions[v + 2],
    );
  }
  return sum;
}

/** Distance from a seam within the patch that gives, mm, per local vertex of it. */
export function* moveDistanceSteps(mesh: Mesh, patch: Patch, seam: SeamChain, side: 0 | 1): Stepwise<Float64Array> {
  const positions = new Float64Array(3 * patch.meshVertices.length);
  patch.meshVertices.forEach((v, local) => positions.set(mesh.positions.subarray(3 * v, 3 * v + 3), 3 * local));
  return yield* frontDistanceSteps(patch.triangles, positions, seam.sides[side].localVertices);
}

/** What lies round a strip, as local vertices of the patch it is taken from. */
export interface StripRoom {
  /** The other side of a seam at which the patch meets itself: the strip must not come to it. */
  readonly across: Uint32Array | null;
  /** Edges of the patch that stay where they are, and those from which the patch gives a strip too. */
  readonly staying: readonly Uint32Array[];
  readonly giving: readonly Uint32Array[];
  /** A piece narrower than this is hard to cut and to glue, mm. */
  readonly leastWidthMm: number;
}

/**
 * How far a seam can move into a patch: the distance asked for, or less, so that what is left is one piece of some size, and nowhere too
 * narrow before an edge it comes to head-on; mm.
 * @param distance  per local vertex of the patch.
 */
export function reachOf(mesh: Mesh, patch: Patch, distance: Float64Array, room: StripRoom, askedMm: number): number {
  const { across, staying, giving, leastWidthMm } = room;
  const nearest = across === null ? Infinity : Math.min(...Array.from(across, (v) => distance[v]));
  const before = Math.min(
    ...staying.map((edge) => headOnMm(mesh, patch, distance, edge) - leastWidthMm),
    ...giving.map((edge) => (headOnMm(mesh, patch, distance, edge) - leastWidthMm) / 2),
  );
  const works = (mm: number): boolean => mm < nearest && mm <= before && isOnePiece(mesh, patch, distance, mm);
  if (works(askedMm)) return askedMm;
  let [least, most] = [0, Math.max(0, Math.min(askedMm, before))];
  if (works(most)) return most;
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = (least + most) / 2;
    if (works(middle)) least = middle;
    else most = middle;
  }
  return least;
}

/** Least distance at which a line that moves on comes to an edge of the patch head-on, mm; Infinity where it only runs along its end. */
function headOnMm({ positions }: Mesh, { meshVertices }: Patch, distance: Float64Array, edge: Uint32Array): number {
  let nearest = Infinity;
  for (let i = 1; i < edge.length; i += 1) {
    const [a, b] = [distance[edge[i - 1]], distance[edge[i]]];
    const [v, w] = [3 * meshVertices[edge[i - 1]], 3 * meshVertices[edge[i]]];
    const side = Math.hypot(
      positions[w] - positions[v],
      positions[w + 1] - positions[v + 1],
      positions[w + 2] - positions[v + 2],
    );
    if (Math.abs(a - b) < HEAD_ON_SLOPE * side) nearest = Math.min(nearest, a, b);
  }
  return nearest;
}

/** Whether what lies farther off than a distance hangs together and is not too little. */
function isOnePiece(mesh: Mesh, patch: Patch, distance: Float64Array, mm: number): boolean {
  const sets = new DisjointSets(distance.length);
  const { triangles, meshTriangles } = patch;
  const isLeft = (v: number): boolean => distance[v] > mm;
  for (let h = 0; h < triangles.length; h += 1) {
    const [v, w] = [triangles[h], triangles[h % 3 === 2 ? h - 2 : h + 1]];
    if (isLeft(v) && isLeft(w)) sets.join(v, w);
  }
  const areas = new Map<number, number>();
  let [whole, left] = [0, 0];
  for (let t = 0; t < meshTriangles.length; t += 1) {
    const area = triangleArea(mesh.positions, mesh.triangles, meshTriangles[t]);
    whole += area;
    const corners = [0, 1, 2].map((k) => triangles[3 * t + k]).filter(isLeft);
    if (corners.length === 0) continue;
    const set = sets.find(corners[0]);
    const part = (area * corners.length) / 3;
    left += part;
    areas.set(set, (areas.get(set) ?? 0) + part);
  }
  const largest = Math.max(0, ...areas.values());
  return largest >= LEAST_LEFT_SHARE * whole && left - largest <= MOST_CRUMBS_SHARE * left;
}
