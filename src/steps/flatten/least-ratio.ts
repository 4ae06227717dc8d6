import { shareOfWork, type Work } from '../../base/work.ts';
import type { SparseGraph } from '../../geom/sparse-graph.ts';
import { deg } from '../../geom/vec.ts';
import { angleDefects } from '../../mesh/angle-defects.ts';
import { roundAreas, type RoundAreas } from '../../mesh/round-areas.ts';
import { roundField } from '../../mesh/round-field.ts';
import { distancesFrom, surfaceSides, type SurfaceDistance, type SurfaceSides } from '../../mesh/surface-distance.ts';
import type { LeastRatio } from '../../model/forming.ts';
import type { Patch } from '../../model/patch.ts';
import { boundCentres, defectDensity } from './bound-centres.ts';
import type { RestShapes } from './rest-shapes.ts';
import { saddleEnds, saddleRatio, type RatioAt } from './saddle-ratio.ts';

/** An area smaller than this share of the patch asks for nothing: a maker presses it in, and one rough vertex is no dome. */
const LEAST_SHARE = 0.01;
/** A ratio no further over 1 than this is rounding. */
const ROUNDING = 1e-6;
/** Sizes of all angle defects together, radians, under which there is nothing to find. */
const NO_DEFECT = 1e-6;

/** What is found round one centre. */
interface Found {
  readonly centre: number;
  readonly kind: 'dome' | 'saddle';
  readonly ratio: number;
  readonly radiusMm: number;
  readonly held: number;
}

/**
 * A ratio of greatest to least scale that no laying flat of this patch without a flipped triangle can better, found from round areas
 * inside it: out to the border from a few centres, in every size. Why it holds is said at {@link domeRatio} and {@link saddleRatio}; it
 * holds for the mesh as it is, however well distances are found.
 * @param graph  which vertices of the patch are joined by a side.
 */
export async function leastRatio(patch: Patch, rest: RestShapes, graph: SparseGraph, work: Work): Promise<LeastRatio> {
  const isRim = new Uint8Array(rest.vertexCount);
  for (const loop of patch.loops) for (const v of loop) isRim[v] = 1;
  const defect = angleDefects(rest, patch.loops);
  const total = defect.reduce((sum, radians) => sum + radians, 0);
  const most = { dome: 0, saddle: 0 };
  let best: Found | null = null;
  if (defect.reduce((sum, radians) => sum + Math.abs(radians), 0) >= NO_DEFECT) {
    const sides = surfaceSides(rest);
    const rim = Array.from(isRim.keys()).filter((v) => isRim[v] === 1);
    const depth = await distancesFrom(sides, rim, new Uint8Array(rest.vertexCount), shareOfWork(work, 0, 0.2));
    const centres = boundCentres(rest, depth.value, defectDensity(rest, graph, defect, depth.value));
    const isSaddleEnd = saddleEnds(isRim, defect);
    const leastAreaMm2 = LEAST_SHARE * rest.totalArea;
    for (const [i, centre] of centres.entries()) {
      const share = shareOfWork(work, 0.2 + (0.8 * i) / centres.length, 0.2 + (0.8 * (i + 1)) / centres.length);
      const all = measured(sides, await distancesFrom(sides, [centre], isRim, share), defect, leastAreaMm2);
      if (all !== null) {
        for (const radians of all.held.subarray(all.first)) {
          most.dome = Math.max(most.dome, radians);
          most.saddle = Math.max(most.saddle, -radians);
        }
        best = better(best, centre, 'dome', all, domeRatio(all.areas, all.first));
      }
      if (isSaddleEnd[centre] === 1) continue;
      const distance = await distancesFrom(sides, [centre], isSaddleEnd, share);
      const hollow = measured(sides, distance, defect, leastAreaMm2);
      if (hollow === null) continue;
      const ratio = saddleRatio(sides, distance, hollow.areas, isSaddleEnd, hollow.first);
      best = better(best, centre, 'saddle', hollow, ratio);
    }
  }
  return {
    ...placeOf(patch, rest, best),
    defectDeg: deg(total),
    domeDeg: deg(most.dome),
    saddleDeg: deg(most.saddle),
  };
}

/**
 * Least ratio of greatest to least scale with which an area D round a vertex p can be laid flat.
 *
 * Let M and m be the greatest and least scale of the map f from surface to plane, and R a length no larger than the distance from p to the
 * rim of D. Every ray from f(p) can be followed back on the surface from p on (no triangle is flipped, so f is open). It must come to the
 * rim, because f(D) is bounded, and it has then run at least R on the surface and m R in the plane. So
 *
 * - the image of the rim meets every ray, nowhere nearer than m R. Drawn in to the circle of that radius it gets no longer and covers the
 *   circle: `M rim >= 2 pi m R`. For a cap of a sphere of half-angle x this is Milnor's x / sin x (J. Milnor, "A problem in cartography",
 *   1969);
 * - the image of D holds the disc of that radius: `M² area >= pi m² R²`;
 * - a closed line in the plane of length L goes round areas that, each counted with the square of how often it does so, are together no
 *   more than L² / (4 pi) (T. Banchoff and W. Pohl, "A generalization of the isoperimetric inequality", 1971), and f(D) has at least
 *   m² area: `M² rim² >= 4 pi m² area`.
 * @param first  index of the smallest area that counts.
 */
export function domeRatio({ near, area, rim }: RoundAreas, first: number): RatioAt {
  let best: RatioAt = { ratio: 1, index: -1 };
  for (let i = first; i < near.length; i += 1) {
    if (!(rim[i] > 0)) continue;
    const ratio = Math.max(
      (2 * Math.PI * near[i]) / rim[i],
      near[i] * Math.sqrt(Math.PI / area[i]),
      Math.sqrt(4 * Math.PI * area[i]) / rim[i],
    );
    if (ratio > best.ratio) best = { ratio, index: i };
  }
  return best;
}

/** Areas round a centre, what each holds, radians, and the index of the smallest that counts; null where none does. */
interface Measured {
  readonly areas: RoundAreas;
  readonly held: Float64Array;
  readonly first: number;
}

function measured(
  sides: SurfaceSides,
  distance: SurfaceDistance,
  defect: Float64Array,
  leastAreaMm2: number,
): Measured | null {
  const field = roundField(sides, distance);
  if (!(field.top > 0 && field.top < Infinity)) return null;
  const areas = roundAreas(sides, field);
  const first = areas.area.findIndex((mm2) => mm2 >= leastAreaMm2);
  return first < 0 ? null : { areas, first, held: heldBy(areas, distance, defect) };
}

function better(
  best: Found | null,
  centre: number,
  kind: Found['kind'],
  { areas, held }: Measured,
  { ratio, index }: RatioAt,
): Found | null {
  if (ratio <= (best?.ratio ?? 1) + ROUNDING) return best;
  return { centre, kind, ratio, radiusMm: areas.level[index], held: held[index] };
}

/** Angle defect inside each area, radians. */
function heldBy({ level }: RoundAreas, { settled, value }: SurfaceDistance, defect: Float64Array): Float64Array {
  const held = new Float64Array(level.length);
  for (const v of settled) for (let l = level.length - 1; l >= 0 && value[v] < level[l]; l -= 1) held[l] += defect[v];
  return held;
}

function placeOf(
  patch: Patch,
  { points, corners }: RestShapes,
  best: Found | null,
): Pick<LeastRatio, 'ratio' | 'kind' | 'centreVertex' | 'centreTriangle' | 'centre' | 'radiusMm' | 'heldDeg'> {
  if (best === null) {
    return { ratio: 1, kind: 'flat', centreVertex: -1, centreTriangle: -1, centre: null, radiusMm: 0, heldDeg: 0 };
  }
  const { centre, ratio, kind, radiusMm, held } = best;
  return {
    ratio,
    kind,
    radiusMm,
    heldDeg: deg(held),
    centreVertex: centre,
    centreTriangle: patch.meshTriangles[Math.floor(corners.indexOf(centre) / 3)],
    centre: [points[3 * centre], points[3 * centre + 1], points[3 * centre + 2]],
  };
}
