import type { SparseGraph } from '../../geom/sparse-graph.ts';
import { handedRound } from '../../mesh/angle-defects.ts';
import type { RestShapes } from './rest-shapes.ts';

/** Share of a patch's greatest depth over which defects are evened out before a peak counts. */
const EVENED_SHARE = 0.15;
/** Rounds of handing on, at least and at most: one rough vertex is no dome, and a fine mesh must not cost too much. */
const ROUNDS = { least: 4, most: 12 };
/** Values that differ by no more than this share are alike; then the place decides, which does not depend on the numbering. */
const ALIKE = 1e-9;

/**
 * Angle defect per mm², with what single vertices have evened out, radians per mm².
 * @param defect  per vertex, radians.
 * @param depth   distance to the border per vertex, mm.
 */
export function defectDensity(
  rest: RestShapes,
  graph: SparseGraph,
  defect: Float64Array,
  depth: Float64Array,
): Float64Array {
  const around = new Float64Array(rest.vertexCount);
  for (let h = 0; h < rest.corners.length; h += 1) around[rest.corners[h]] += rest.area[Math.floor(h / 3)] / 3;
  const greatest = depth.reduce((most, mm) => (mm < Infinity && mm > most ? mm : most), 0);
  // A triangle of area A has sides of about 1.5 root A; a round goes about root(1 / 2) of a side.
  const sides = (EVENED_SHARE * greatest) / (1.5 * Math.sqrt(rest.totalArea / rest.count));
  const rounds = Math.min(ROUNDS.most, Math.max(ROUNDS.least, Math.round(2 * sides * sides)));
  const area = handedRound(graph, around, rounds);
  return handedRound(graph, defect, rounds).map((radians, v) => (area[v] > 0 ? radians / area[v] : 0));
}

/**
 * Inner vertices round which an area may ask for stretch: the one farthest from the border, and those where the defect that a disc out to
 * the border would hold if it were as bent all over is greatest: the most domed, the next most domed clear of it, and the most saddled.
 * @param depth  distance to the border per vertex, mm.
 * @returns each vertex once; empty where all vertices lie on the border.
 */
export function boundCentres(rest: RestShapes, depth: Float64Array, density: Float64Array): readonly number[] {
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
  Math.hypot(
    points[3 * v] - points[3 * w],
    points[3 * v + 1] - points[3 * w + 1],
    points[3 * v + 2] - points[3 * w + 2],
  );
