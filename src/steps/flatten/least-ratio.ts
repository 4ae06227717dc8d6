import { shareOfWork, type Work } from '../../base/work.ts';
import type { SparseGraph } from '../../geom/sparse-graph.ts';
import { deg } from '../../geom/vec.ts';
import { angleDefects } from '../../mesh/angle-defects.ts';
import { roundAreas, type RoundAreas } from '../../mesh/round-areas.ts';
import { roundField } from '../../mesh/round-field.ts';
import { distancesFrom, surfaceSides, type SurfaceSides } from '../../mesh/surface-distance.ts';
import type { LeastRatio } from '../../model/forming.ts';
import type { Patch } from '../../model/patch.ts';
import { boundCentres, smoothDefect } from './bound-centres.ts';
import type { RestShapes } from './rest-shapes.ts';
import { saddleRatio, type RatioAt } from './saddle-ratio.ts';

/** An area smaller than this share of the patch asks for nothing: a maker presses it in, and one rough vertex is no dome. */
const LEAST_SHARE = 0.01;
/** A ratio no further over 1 than this is rounding. */
const ROUNDING = 1e-6;
/** Absolute angle defect, radians in all, under which a patch can be laid flat as it is. */
const NO_DEFECT = 1e-6;

/**
 * A ratio of greatest to least scale that no laying flat of this patch without a flipped triangle can better, found from round areas inside
 * it: out to the border from a few centres, in every size. See {@link domeRatio} and {@link saddleRatio} for why it holds; it is of the
 * mesh itself, so it does not rest on how well distances are found.
 * @param graph  which vertices of the patch are joined by a side.
 */
export async function leastRatio(patch: Patch, rest: RestShapes, graph: SparseGraph, work: Work): Promise<LeastRatio> {
  const isRim = new Uint8Array(rest.vertexCount);
  for (const loop of patch.loops) for (const v of loop) isRim[v] = 1;
  const defect = angleDefects(rest, isRim);
  const smooth = smoothDefect(rest, graph, defect);
  const inDegrees = defectDegrees(smooth.amount);
  if (defect.every((radians) => radians === 0) || sumOfSizes(defect) < NO_DEFECT) return flatRatio(inDegrees);
  const sides = surfaceSides(rest);
  const rim = Array.from(isRim.keys()).filter((v) => isRim[v] === 1);
  const depth = await distancesFrom(sides, rim, new Uint8Array(rest.vertexCount), shareOfWork(work, 0, 0.2));
  const centres = boundCentres(rest, depth.value, smooth);
  let best: { centre: number; ratio: number; radiusMm: number; kind: 'dome' | 'saddle' } | null = null;
  for (const [i, centre] of centres.entries()) {
    const share = shareOfWork(work, 0.2 + (0.8 * i) / centres.length, 0.2 + (0.8 * (i + 1)) / centres.length);
    const field = roundField(sides, await distancesFrom(sides, [centre], isRim, share));
    if (!(field.top > 0 && field.top < Infinity)) continue;
    const areas = roundAreas(sides, field);
    const dome = domeRatio(areas, LEAST_SHARE * rest.totalArea);
    const saddle = saddleRatio(sides, field, areas, defect);
    const { ratio, index } = dome.ratio >= saddle.ratio ? dome : saddle;
    if (index < 0 || ratio <= 1 + ROUNDING || ratio <= (best?.ratio ?? 1) + ROUNDING) continue;
    best = { centre, ratio, radiusMm: areas.level[index], kind: dome.ratio >= saddle.ratio ? 'dome' : 'saddle' };
  }
  if (best === null) return flatRatio(inDegrees);
  const { centre, ratio, kind, radiusMm } = best;
  return {
    ratio,
    kind,
    radiusMm,
    centreVertex: patch.meshVertices[centre],
    centreTriangle: patch.meshTriangles[Math.floor(sides.places[sides.starts[centre]] / 3)],
    centre: [rest.points[3 * centre], rest.points[3 * centre + 1], rest.points[3 * centre + 2]],
    ...inDegrees,
  };
}

/**
 * Least ratio of greatest to least scale with which an area D round a vertex p can be laid flat.
 *
 * Let M and m be the greatest and least scale of the map f from surface to plane, and R a length no larger than the distance from p to the
 * rim of D. Every ray from f(p) can be followed back on the surface from p on (f keeps sides, so it is open). It must come to the rim,
 * because f(D) is bounded, and it has then run at least R on the surface and m R in the plane. So
 *
 * - the image of the rim meets every ray, nowhere nearer than m R. Drawn in to the circle of that radius it gets no longer and covers the
 *   circle: `M rim >= 2 pi m R`. For a cap of a sphere of half-angle x this is Milnor's x / sin x (J. Milnor, "A problem in cartography",
 *   1969);
 * - the image of D holds the disc of that radius: `M² area >= pi m² R²`;
 * - a closed line in the plane of length L goes round areas of which w-fold ones count w² times no more than L² / (4 pi) (T. Banchoff and
 *   W. Pohl, "A generalization of the isoperimetric inequality", 1971), and f(D) has at least the area m² area:
 *   `M² rim² >= 4 pi m² area`.
 * @param leastAreaMm2  smaller areas are left out.
 */
export function domeRatio({ near, area, rim }: RoundAreas, leastAreaMm2: number): RatioAt {
  let best: RatioAt = { ratio: 1, index: -1 };
  for (let i = 0; i < near.length; i += 1) {
    if (!(area[i] >= leastAreaMm2 && rim[i] > 0)) continue;
    const ratio = Math.max(
      (2 * Math.PI * near[i]) / rim[i],
      near[i] * Math.sqrt(Math.PI / area[i]),
      Math.sqrt(4 * Math.PI * area[i]) / rim[i],
    );
    if (ratio > best.ratio) best = { ratio, index: i };
  }
  return best;
}

const sumOfSizes = (values: Float64Array): number => values.reduce((sum, value) => sum + Math.abs(value), 0);

function defectDegrees(amounts: Float64Array): Pick<LeastRatio, 'defectDeg' | 'domeDeg' | 'saddleDeg'> {
  let dome = 0;
  let saddle = 0;
  for (const radians of amounts) {
    if (radians > 0) dome += radians;
    else saddle -= radians;
  }
  return { defectDeg: deg(dome - saddle), domeDeg: deg(dome), saddleDeg: deg(saddle) };
}

const flatRatio = (inDegrees: Pick<LeastRatio, 'defectDeg' | 'domeDeg' | 'saddleDeg'>): LeastRatio => ({
  ratio: 1,
  kind: 'flat',
  centreVertex: -1,
  centreTriangle: -1,
  centre: null,
  radiusMm: 0,
  ...inDegrees,
});
