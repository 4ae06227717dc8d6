import { MinHeap } from '../../base/min-heap.ts';
import type { SparseGraph } from '../../geom/sparse-graph.ts';
import { angleDefects } from '../../mesh/angle-defects.ts';
import type { RestShapes } from './rest-shapes.ts';

export interface Unfolded {
  /** x y per local vertex, mm. */
  readonly flat: Float64Array;
  /** Greatest difference between a side in the plane and on the surface, over the patch's size (root of its area). */
  readonly gap: number;
}

/**
 * Lays triangle after triangle in the plane, each hinged on one already laid, longest hinges first (a long hinge turns a rounding error
 * into a small angle). Where the surface is developable all sides then close; where not, `gap` tells by how much they miss.
 * @param graph  which vertices are joined by a side.
 */
export function unfold(rest: RestShapes, graph: SparseGraph): Unfolded {
  const { corners, count } = rest;
  const flat = new Float64Array(2 * rest.vertexCount);
  const across = acrossSides(rest, graph);
  const laid = new Uint8Array(rest.vertexCount);
  const done = new Uint8Array(count);
  const queue = new MinHeap();
  const first = largestTriangle(rest);
  flat[2 * corners[3 * first + 1]] = rest.base[first];
  flat[2 * corners[3 * first + 2]] = rest.foot[first];
  flat[2 * corners[3 * first + 2] + 1] = rest.height[first];
  for (let k = 0; k < 3; k += 1) laid[corners[3 * first + k]] = 1;
  done[first] = 1;
  const open = (t: number): void => {
    for (let h = 3 * t; h < 3 * t + 3; h += 1) {
      if (across[h] >= 0 && done[Math.floor(across[h] / 3)] === 0) queue.push(-sideLength(rest, h), across[h]);
    }
  };
  open(first);
  while (queue.size > 0) {
    const h = queue.pop().item;
    const t = Math.floor(h / 3);
    if (done[t] === 1) continue;
    done[t] = 1;
    const apex = corners[3 * t + ((h + 2 - 3 * t) % 3)];
    if (laid[apex] === 0) {
      layApex(rest, h, flat, apex);
      laid[apex] = 1;
    }
    open(t);
  }
  return { flat, gap: greatestGap(rest, flat) };
}

/**
 * How much the surface is bent in itself: the sum over inner vertices of what the angles round them miss or exceed a full turn by,
 * radians. 0 for a developable patch (up to rounding), about 6.3 for a hemisphere.
 * @param loops  border loops; their vertices are not inner ones.
 */
export const angleDefect = (rest: RestShapes, loops: readonly Uint32Array[]): number =>
  angleDefects(rest, loops).reduce((sum, radians) => sum + Math.abs(radians), 0);

/** For each side k of triangle t (index 3 t + k, from corner k to the next) the same side in the neighbour, or -1. */
function acrossSides(rest: RestShapes, graph: SparseGraph): Int32Array {
  const { corners } = rest;
  const across = new Int32Array(corners.length).fill(-1);
  // The side that runs from v to its neighbour at place p of the graph stands at p.
  const sideAt = new Int32Array(graph.neighbours.length).fill(-1);
  for (let h = 0; h < corners.length; h += 1) sideAt[placeOf(graph, corners[h], corners[nextSide(h)])] = h;
  for (let h = 0; h < corners.length; h += 1) across[h] = sideAt[placeOf(graph, corners[nextSide(h)], corners[h])];
  return across;
}

const nextSide = (h: number): number => (h % 3 === 2 ? h - 2 : h + 1);

/** Where among all neighbours w stands as one of v. */
function placeOf(graph: SparseGraph, v: number, w: number): number {
  let p = graph.starts[v];
  while (graph.neighbours[p] !== w) p += 1;
  return p;
}

function largestTriangle(rest: RestShapes): number {
  let best = 0;
  for (let t = 1; t < rest.count; t += 1) if (rest.area[t] > rest.area[best]) best = t;
  return best;
}

function sideLength(rest: RestShapes, h: number): number {
  const t = Math.floor(h / 3);
  if (h === 3 * t) return rest.base[t];
  const along = h === 3 * t + 1 ? rest.base[t] - rest.foot[t] : rest.foot[t];
  return Math.sqrt(along * along + rest.height[t] * rest.height[t]);
}

/** Places the third corner of a triangle whose side `h` lies in the plane. */
function layApex(rest: RestShapes, h: number, flat: Float64Array, apex: number): void {
  const t = Math.floor(h / 3);
  const from = 2 * rest.corners[h];
  const to = 2 * rest.corners[nextSide(h)];
  const ex = flat[to] - flat[from];
  const ey = flat[to + 1] - flat[from + 1];
  const side = sideLength(rest, h);
  // Place of the apex along and beside the side, from its start.
  const beside = (rest.base[t] * rest.height[t]) / side;
  const along = alongSide(rest, t, h - 3 * t, side);
  const length = Math.sqrt(ex * ex + ey * ey);
  flat[2 * apex] = flat[from] + (along * ex - beside * ey) / length;
  flat[2 * apex + 1] = flat[from + 1] + (along * ey + beside * ex) / length;
}

/** Foot of the opposite corner on side k, measured from the side's start. */
function alongSide(rest: RestShapes, t: number, k: number, side: number): number {
  const { base, foot, height } = rest;
  if (k === 0) return foot[t];
  if (k === 1) return ((base[t] - foot[t]) * base[t]) / side;
  return (foot[t] * foot[t] + height[t] * height[t] - foot[t] * base[t]) / side;
}

function greatestGap(rest: RestShapes, flat: Float64Array): number {
  let most = 0;
  for (let h = 0; h < rest.corners.length; h += 1) {
    const a = 2 * rest.corners[h];
    const b = 2 * rest.corners[nextSide(h)];
    const x = flat[b] - flat[a];
    const y = flat[b + 1] - flat[a + 1];
    most = Math.max(most, Math.abs(Math.sqrt(x * x + y * y) - sideLength(rest, h)));
  }
  return most / Math.sqrt(rest.totalArea);
}
