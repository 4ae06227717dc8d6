import type { RoundAreas } from '../../mesh/round-areas.ts';
import type { RoundField } from '../../mesh/round-field.ts';
import type { SurfaceSides } from '../../mesh/surface-distance.ts';

/** Angle defect that counts as rounding, radians. */
const ROUNDING = 1e-9;

/** A ratio and the index of the area it comes from, -1 for none. */
export interface RatioAt {
  readonly ratio: number;
  readonly index: number;
}

/**
 * Least ratio of greatest to least scale with which an area round a vertex p that is nowhere domed can be laid flat.
 *
 * Let M and m be the greatest and least scale of the map f from surface to plane, and R a length no larger than the distance from p to the
 * area's rim. Rays from f(p) go back to paths that reach the rim only after a length R, so the disc of radius m R round f(p) goes back to
 * the surface in one piece. The circle of radius M s in it, for any s <= R m / M, goes back to a closed line round p that is at most
 * 2 pi M s / m long and stays at least s away from p. Where no inner vertex is domed, the area, if it has no hole, is a space of curvature
 * at most 0 in the sense of Alexandrov: its discs are convex, the nearest point of a disc is found without lengthening, and so the line is
 * no shorter than the circle of radius s on the surface, l(s). Hence
 *
 *     M / m >= l(s) / (2 pi s)   for all s <= R m / M,   so   M / m >= min(R / s, l(s) / (2 pi s))   for all s <= R.
 *
 * In such a space l(s) / s does not fall (points on two straight lines from p move apart at least in proportion), so for r < s the area
 * between gives `A(s) - A(r) <= l(s) / s * (s² - r²) / 2`. With distances that are too long inside `u < level` (there u is not under the
 * distance: squared distances are at least as convex along a straight line as the field takes them to be) and with `near`, which is not
 * over it, A(level) is not under the field's area and A(near) not over it:
 *
 *     l(s) / (2 pi s) >= (area_j - area_i) / (pi (level_j² - near_i²)),   s = level_j, i < j or nothing taken off.
 *
 * On a surface of constant curvature -1 this goes as 1 + R² / 12, the true circle as 1 + R² / 6.
 * (Bridson and Haefliger, "Metric spaces of non-positive curvature", 1999, chapters II.1, II.2 and II.5.)
 * @param defect  angle defect per vertex, radians.
 * @param first   index of the smallest area that counts.
 * @returns the ratio, and the index of the area in which the lines back from the plane run.
 */
export function saddleRatio(
  sides: SurfaceSides,
  field: RoundField,
  { level, near, area }: RoundAreas,
  defect: Float64Array,
  first: number,
): RatioAt {
  const limit = firstDomed(sides, field, defect);
  let last = level.length - 1;
  while (last >= 0 && level[last] > limit) last -= 1;
  const none = { ratio: 1, index: -1 };
  if (last < first || !hasNoHole(sides, field, level[last])) return none;
  let best: RatioAt = none;
  for (let j = first; j <= last; j += 1) {
    let circle = area[j] / (Math.PI * level[j] * level[j]);
    for (let i = 0; i < j; i += 1) {
      circle = Math.max(circle, (area[j] - area[i]) / (Math.PI * (level[j] * level[j] - near[i] * near[i])));
    }
    const ratio = Math.min(near[last] / level[j], circle);
    if (ratio > best.ratio) best = { ratio, index: last };
  }
  return best;
}

/** The lowest level from which on a triangle of the area has a domed vertex. */
function firstDomed({ opened }: SurfaceSides, field: RoundField, defect: Float64Array): number {
  let first = Infinity;
  for (let i = 0; i < field.triangles.length; i += 1) {
    const h = 3 * field.triangles[i];
    const isDomed =
      Math.max(defect[opened.corners[h]], defect[opened.corners[h + 1]], defect[opened.corners[h + 2]]) > ROUNDING;
    if (isDomed && field.lowest[i] < first) first = field.lowest[i];
  }
  return first;
}

/** Whether the triangles that reach under a level make a disc: vertices less sides plus triangles is 1. */
function hasNoHole({ opened, starts, places }: SurfaceSides, field: RoundField, level: number): boolean {
  const { corners } = opened;
  const isTaken = new Uint8Array(opened.count);
  for (let i = 0; i < field.triangles.length; i += 1) if (field.lowest[i] < level) isTaken[field.triangles[i]] = 1;
  const isSeen = new Uint8Array(opened.vertexCount);
  let vertices = 0;
  let triangles = 0;
  let alone = 0;
  for (let t = 0; t < opened.count; t += 1) {
    if (isTaken[t] === 0) continue;
    triangles += 1;
    for (let h = 3 * t; h < 3 * t + 3; h += 1) {
      const v = corners[h];
      const w = corners[h === 3 * t + 2 ? h - 2 : h + 1];
      if (isSeen[v] === 0) vertices += 1;
      isSeen[v] = 1;
      let isShared = false;
      for (let i = starts[w]; i < starts[w + 1] && !isShared; i += 1) {
        const other = places[i];
        const end = corners[other % 3 === 2 ? other - 2 : other + 1];
        isShared = end === v && isTaken[Math.floor(other / 3)] === 1;
      }
      if (!isShared) alone += 1;
    }
  }
  return vertices - (3 * triangles + alone) / 2 + triangles === 1;
}
