import type { SparseGraph } from '../../geom/sparse-graph.ts';
import { handedRound } from '../../mesh/angle-defects.ts';
import type { RestShapes } from './rest-shapes.ts';

/** Rounds in which defects are handed to neighbours before a peak counts: a few sides across, so that one rough vertex is none. */
const SMOOTHING_ROUNDS = 16;
/** Values that differ by no more than this share are alike; then the place decides, which does not depend on the numbering. */
const ALIKE = 1e-9;

/** Angle defect with what single vertices have evened out, radians, and what it is per mm². */
export interface SmoothDefect {
  readonly amount: Float64Array;
  readonly density: Float64Array;
}

/** @param defect  per vertex, radians. */
export function smoothDefect(rest: RestShapes, graph: SparseGraph, defect: Float64Array): SmoothDefect {
  const around = new Float64Array(rest.vertexCount);
  for (let h = 0; h < rest.corners.length; h += 1) around[rest.corners[h]] += rest.area[Math.floor(h / 3)] / 3;
  const amount = handedRound(graph, defect, SMOOTHING_ROUNDS);
  const area = handedRound(graph, around, SMOOTHING_ROUNDS);
  return { amount, density: amount.map((radians, v) => (area[v] > 0 ? radians / area[v] : 0)) };
}

/**
 * Inner vertices round which an area may ask for stretch: the one farthest from the border, and those where the defect that a disc out to
 * the border would hold if it were as bent all over is greatest: the most domed, the next most domed clear of it, and the most saddled.
 * @param depth  distance to the border per vertex, mm.
 * @returns each vertex once; empty where all vertices lie on the border.
 */
export function boundCentres(rest: RestShapes, depth: Float64Array, { density }: SmoothDefect): readonly number[] {
  const held = density.map((perMm2, v) => Math.PI * perMm2 * depth[v] * depth[v]);
  const isInside = (v: number): boolean => depth[v] > 0 && depth[v] < Infinity;
  const deepest = greatest(rest, depth, isInside);
  if (deepest < 0) return [];
  const domed = greatest(rest, held, (v) => isInside(v) && held[v] > 0);
  const isClear = (v: number): boolean => isInside(v) && held[v] > 0 && away(rest, v, domed) > depth[domed] / 2;
  const next = domed < 0 ? -1 : greatest(rest, held, isClear);
  const hollow = held.map((radians) => -radians);
  const saddled = greatest(rest, hollow, (v) => isInside(v) && hollow[v] > 0);
  return [...new Set([deepest, domed, next, saddled])].filter((v) => v >= 0);
}

/** The vertex with the greatest value among those allowed, of like ones the first by place; -1 where none is allowed. */
function greatest({ points }: RestShapes, values: Float64Array, isAllowed: (v: number) => boolean): number {
  let most = -Infinity;
  for (let v = 0; v < values.length; v += 1) if (values[v] > most && isAllowed(v)) most = values[v];
  let best = -1;
  for (let v = 0; v < values.length; v += 1) {
    if (values[v] < most - ALIKE * Math.abs(most) || !isAllowed(v)) continue;
    if (best < 0 || comesBefore(points, v, best)) best = v;
  }
  return best;
}

function comesBefore(points: Float64Array, v: number, w: number): boolean {
  for (let axis = 0; axis < 3; axis += 1) {
    const difference = points[3 * v + axis] - points[3 * w + axis];
    if (difference !== 0) return difference < 0;
  }
  return false;
}

const away = ({ points }: RestShapes, v: number, w: number): number =>
  Math.hypot(points[3 * v] - points[3 * w], points[3 * v + 1] - points[3 * w + 1], points[3 * v + 2] - points[3 * w + 2]);
