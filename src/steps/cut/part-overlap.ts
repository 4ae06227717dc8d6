import { leastCut } from '../../geom/max-flow.ts';
import type { OverlapPlace } from '../../geom/overlap-places.ts';
import { cross3, dot3, length3, pointAt3, sub3 } from '../../geom/vec.ts';
import { edgeLengths } from '../../mesh/edge-fold.ts';
import { edgeDistances, pathTo } from '../../mesh/edge-distance.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { nextHalfedge, prevHalfedge, topologyOf, triangleOfHalfedge } from '../../mesh/topology.ts';
import type { Patch } from '../../model/patch.ts';
import { patchAsMesh, slitEdges } from './patch-as-mesh.ts';

/** A cut that may free a piece from lying over itself. Only laying it flat again tells. */
export interface OverlapCut {
  /** `across` parts the two limbs from each other; a `slit` leaves the piece in one and lets the limbs swing apart. */
  readonly kind: 'across' | 'slit';
  /** Pairs of local vertices of the patch. */
  readonly edges: readonly (readonly [number, number])[];
  readonly lengthMm: number;
}

/** Slits go so far towards a cut right across, as shares of its length. */
const SLIT_DEPTHS = [0.25, 0.5, 0.75, 1];
/** Slits tried at each depth from each mouth. */
const SLITS_PER_DEPTH = 3;
/** Domed points tried from each mouth, and the least that must be missing of a full turn round them, radians. */
const MOST_DOMES = 3;
const LEAST_DOME = 0.02;
/** Of cuts across that are the same length to this share, the one in the middle between the limbs, or the one that parts a whole turn off. */
const PLACE_SHARE = 1e-3;
/** The end of a limb that winds over itself: triangles at least this share as far from the other end as the farthest one. */
const END_SHARE = 0.9;

/**
 * Cuts along edges that may take away one place where a piece lies over itself:
 * - *across*: the least cut between the two limbs in the net of triangles, each side as wide as it is long. No pair of the place is left
 *   in one piece, so it helps always, as long as no limb stands on both sides.
 * - *slits* from the border between the limbs (an armpit, the end of a dart) or from the rim of a window inwards, shortest paths to points
 *   well apart and to the most domed ones: where foam is missing a slit opens, and the limbs swing apart. They can be shorter than a cut
 *   across, and leave one piece.
 * @param positions  surface that is laid flat, x y z of the whole sculpt's vertices, mm.
 * @returns the cut across first, then the slits that are shorter, shortest first. Empty where nothing inside the patch parts the limbs.
 */
export function cutsForOverlap(patch: Patch, positions: Float64Array, place: OverlapPlace): readonly OverlapCut[] {
  const surface = surfaceOf(patch, positions);
  const across = cutAcross(surface, place);
  if (across === null) return [];
  return [across, ...slits(surface, patch, place, across.lengthMm)];
}

/** A patch by itself: its triangles, and which of its edges can be cut. */
interface Surface {
  readonly mesh: Mesh;
  readonly lengths: Float64Array;
  /** 1 for edges with foam joined across. */
  readonly isInside: Uint8Array;
}

function surfaceOf(patch: Patch, positions: Float64Array): Surface {
  const mesh = patchAsMesh(patch, positions);
  const topology = topologyOf(mesh);
  const isInside = slitEdges(mesh, patch).map((isSlit, e) =>
    isSlit === 0 && topology.twin[topology.halfedgeOfEdge[e]] >= 0 ? 1 : 0,
  );
  return { mesh, lengths: edgeLengths(mesh), isInside };
}

function cutAcross(surface: Surface, place: OverlapPlace): OverlapCut | null {
  const { mesh, lengths, isInside } = surface;
  const topology = topologyOf(mesh);
  const size = mesh.triangles.length / 3;
  const inside = [...isInside.keys()].filter((e) => isInside[e] === 1);
  const ends = inside.flatMap((e) => {
    const h = topology.halfedgeOfEdge[e];
    return [triangleOfHalfedge(h), triangleOfHalfedge(topology.twin[h])];
  });
  const { from, to, isWinding } = sidesToPart(size, ends, place);
  const [near, far] = [stepsFrom(size, ends, from), stepsFrom(size, ends, to)];
  const amiss = (t: number): number =>
    (isWinding ? far[t] : Math.abs(near[t] - far[t])) / Math.max(1, near[t] + far[t]);
  const capacities = inside.map(
    (e, i) => lengths[e] * (1 + PLACE_SHARE * Math.max(amiss(ends[2 * i]), amiss(ends[2 * i + 1]))),
  );
  const { pipes } = leastCut({ size, ends, capacities }, from, to);
  if (pipes.length === 0) return null;
  return overlapCut(
    'across',
    surface,
    pipes.map((pipe) => inside[pipe]),
  );
}

/**
 * The triangles to part from each other. A limb that winds over itself more than once stands on both sides: then its end and what lies
 * on that, a whole turn off.
 */
function sidesToPart(size: number, ends: readonly number[], { limbs, pairs, pair }: OverlapPlace) {
  const [first, second] = [without(limbs[0], limbs[1]), without(limbs[1], limbs[0])];
  if (first.length === limbs[0].length) return { from: first, to: second, isWinding: false };
  const steps = stepsFrom(size, ends, second.length > 0 ? second : [pair[1]]);
  const reach = END_SHARE * first.reduce((most, t) => Math.max(most, steps[t]), 0);
  const own = new Set(first);
  const last = pairs.filter(([t]) => own.has(t) && steps[t] >= reach);
  const [from, to] = [new Set(last.map(([t]) => t)), new Set(last.map(([, u]) => u))];
  if (last.length === 0 || [...from].some((t) => to.has(t)))
    return { from: [pair[0]], to: [pair[1]], isWinding: false };
  return { from: [...from], to: [...to], isWinding: true };
}

function without(list: Uint32Array, other: Uint32Array): number[] {
  const gone = new Set(other);
  return [...list].filter((t) => !gone.has(t));
}

/** Steps from triangle to triangle from the given ones; where none leads, more than any. */
function stepsFrom(size: number, ends: readonly number[], from: readonly number[]): Float64Array {
  const next: number[][] = Array.from({ length: size }, () => []);
  for (let i = 0; i < ends.length; i += 2) {
    next[ends[i]].push(ends[i + 1]);
    next[ends[i + 1]].push(ends[i]);
  }
  const steps = new Float64Array(size).fill(size);
  for (const t of from) steps[t] = 0;
  const queue = [...from];
  for (const t of queue) {
    for (const u of next[t]) {
      if (steps[u] <= steps[t] + 1) continue;
      steps[u] = steps[t] + 1;
      queue.push(u);
    }
  }
  return steps;
}

function slits(surface: Surface, patch: Patch, place: OverlapPlace, longest: number): OverlapCut[] {
  const { mesh, lengths, isInside } = surface;
  const weights = lengths.map((length, e) => (isInside[e] === 1 ? length : Infinity));
  const isBorder = new Uint8Array(patch.meshVertices.length);
  for (const loop of patch.loops) for (const v of loop) isBorder[v] = 1;
  const known = new Set<string>();
  const found: OverlapCut[] = [];
  const domes = domedPoints(mesh, isBorder);
  for (const mouth of mouths(surface, patch, place)) {
    const ways = edgeDistances(mesh, mouth, weights);
    const near = domes.filter((v) => ways.distance[v] <= longest).slice(0, MOST_DOMES);
    for (const end of [...spreadEnds(mesh, ways.distance, isBorder, longest), ...near]) {
      const path = pathTo(mesh, ways, end);
      const key = path.join(' ');
      if (known.has(key) || path.slice(1).some((v) => isBorder[v] === 1)) continue;
      known.add(key);
      found.push(overlapCut('slit', surface, edgesOfPath(mesh, path)));
    }
    const bridge = shortestBridge(patch, mouth, ways.distance);
    if (bridge !== null && ways.distance[bridge] < longest) {
      found.push(overlapCut('slit', surface, edgesOfPath(mesh, pathTo(mesh, ways, bridge))));
    }
  }
  return found.sort((a, b) => a.lengthMm - b.lengthMm);
}

/**
 * Where slits may begin: the border from one limb to the other and back, or all of it where the limbs lie on different loops; and the rim
 * of each other loop.
 */
function mouths(surface: Surface, patch: Patch, { pair }: OverlapPlace): number[][] {
  const [p, q] = pair.map((t) => nearestOnBorder(surface, patch, t));
  return patch.loops.flatMap((loop) => {
    const [i, j] = [loop.indexOf(p), loop.indexOf(q)];
    const list = [...loop];
    if (i < 0 || j < 0 || i === j) return [list];
    const [low, high] = [Math.min(i, j), Math.max(i, j)];
    return [list.slice(low, high + 1), [...list.slice(high), ...list.slice(0, low + 1)]];
  });
}

function nearestOnBorder({ mesh, lengths }: Surface, patch: Patch, triangle: number): number {
  const { distance } = edgeDistances(mesh, [...mesh.triangles.subarray(3 * triangle, 3 * triangle + 3)], lengths);
  let best = patch.loops[0][0];
  for (const loop of patch.loops) for (const v of loop) if (distance[v] < distance[best]) best = v;
  return best;
}

/** Inner points to which slits lead: in every range of depth a few, each as far from the others as can be. */
function spreadEnds(mesh: Mesh, distance: Float64Array, isBorder: Uint8Array, longest: number): number[] {
  const ends: number[] = [];
  let from = 0;
  for (const depth of SLIT_DEPTHS) {
    const to = depth * longest;
    const within = [...distance.keys()].filter((v) => isBorder[v] === 0 && distance[v] > from && distance[v] <= to);
    const room = new Float64Array(within.length).fill(Infinity);
    // The deepest of the range first.
    let best = within.reduce((most, v, i) => (most < 0 || distance[v] > distance[within[most]] ? i : most), -1);
    for (let n = 0; n < SLITS_PER_DEPTH && best >= 0; n += 1) {
      const end = within[best];
      ends.push(end);
      let farthest = -1;
      for (const [i, v] of within.entries()) {
        room[i] = Math.min(room[i], apart(mesh, v, end));
        if (room[i] > 0 && (farthest < 0 || room[i] > room[farthest])) farthest = i;
      }
      best = farthest;
    }
    from = to;
  }
  return ends;
}

/** Inner points whose angles miss most of a full turn, the most first; saddles and flat ones are left out. */
function domedPoints({ positions, triangles }: Mesh, isBorder: Uint8Array): number[] {
  const missing = new Float64Array(isBorder.length).fill(2 * Math.PI);
  for (let h = 0; h < triangles.length; h += 1) {
    const at = pointAt3(positions, triangles[h]);
    const [u, v] = [nextHalfedge(h), prevHalfedge(h)].map((k) => sub3(pointAt3(positions, triangles[k]), at));
    missing[triangles[h]] -= Math.atan2(length3(cross3(u, v)), dot3(u, v));
  }
  return [...missing.keys()]
    .filter((v) => isBorder[v] === 0 && missing[v] > LEAST_DOME)
    .sort((v, w) => missing[w] - missing[v] || v - w);
}

const apart = ({ positions }: Mesh, v: number, w: number): number =>
  Math.hypot(
    positions[3 * v] - positions[3 * w],
    positions[3 * v + 1] - positions[3 * w + 1],
    positions[3 * v + 2] - positions[3 * w + 2],
  );

/** The nearest point of another loop than the one the mouth is on; null where there is none. */
function shortestBridge(patch: Patch, mouth: readonly number[], distance: Float64Array): number | null {
  let best: number | null = null;
  for (const loop of patch.loops) {
    if (loop.includes(mouth[0])) continue;
    for (const v of loop) if (distance[v] < (best === null ? Infinity : distance[best])) best = v;
  }
  return best;
}

function edgesOfPath(mesh: Mesh, path: readonly number[]): number[] {
  const topology = topologyOf(mesh);
  return path.slice(1).map((v, i) => topology.edgeBetween(path[i], v));
}

function overlapCut(kind: OverlapCut['kind'], { mesh, lengths }: Surface, edges: readonly number[]): OverlapCut {
  const { edgeVertices } = topologyOf(mesh);
  return {
    kind,
    edges: edges.map((e) => [edgeVertices[2 * e], edgeVertices[2 * e + 1]] as const),
    lengthMm: edges.reduce((sum, e) => sum + lengths[e], 0),
  };
}
