import type { RoundAreas } from '../../mesh/round-areas.ts';
import type { SurfaceDistance, SurfaceSides } from '../../mesh/surface-distance.ts';

/** Angle defect that counts as rounding, radians. */
const ROUNDING = 1e-9;

/** Vertices at which a search for a saddle has to end: the border, and whatever is domed. */
export const saddleEnds = (isRim: Uint8Array, defect: Float64Array): Uint8Array =>
  isRim.map((rim, v) => (rim === 1 || defect[v] > ROUNDING ? 1 : 0));

/** A ratio and the index of the area it comes from, -1 for none. */
export interface RatioAt {
  readonly ratio: number;
  readonly index: number;
}

/**
 * Least ratio of greatest to least scale with which a patch can be laid flat that has an area round a vertex p that is nowhere domed.
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
 * between gives `A(s) - A(r) <= l(s) / s * (s² - r²) / 2`. There the field is nowhere under the distance, for squared distances are at
 * least as convex along a straight line as the field takes them to be, and `near` is nowhere over it. So A(level) is not under the field's
 * area and A(near) not over it:
 *
 *     l(s) / (2 pi s) >= (area_j - area_i) / (pi (level_j² - near_i²)),   s = level_j, i < j or nothing taken off.
 *
 * On a surface of constant curvature -1 this goes as 1 + R² / 12, the true circle as 1 + R² / 6.
 * (Bridson and Haefliger, "Metric spaces of non-positive curvature", 1999, chapters II.1, II.2 and II.5.)
 * @param distance  from p out to a vertex of {@link saddleEnds}.
 * @param first     index of the smallest area that counts.
 * @returns the ratio, and the index of the largest area, in which the lines back from the plane run.
 */
export function saddleRatio(
  sides: SurfaceSides,
  distance: SurfaceDistance,
  { level, near, area }: RoundAreas,
  isSaddleEnd: Uint8Array,
  first: number,
): RatioAt {
  let best: RatioAt = { ratio: 1, index: -1 };
  if (!isSaddled(sides, distance.value, isSaddleEnd)) return best;
  const last = level.length - 1;
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

/**
 * Whether the triangles a search has seen make a disc without a domed vertex inside: vertices less sides plus triangles is 1, and each
 * vertex at which the search had to end lies on their border.
 */
function isSaddled({ opened, starts, places }: SurfaceSides, value: Float64Array, isEnd: Uint8Array): boolean {
  const { corners, count, vertexCount } = opened;
  const isSeen = (t: number): boolean =>
    value[corners[3 * t]] < Infinity && value[corners[3 * t + 1]] < Infinity && value[corners[3 * t + 2]] < Infinity;
  const isOnBorder = new Uint8Array(vertexCount);
  const isUsed = new Uint8Array(vertexCount);
  let triangles = 0;
  let alone = 0;
  for (let t = 0; t < count; t += 1) {
    if (!isSeen(t)) continue;
    triangles += 1;
    for (let h = 3 * t; h < 3 * t + 3; h += 1) {
      const v = corners[h];
      const w = corners[h === 3 * t + 2 ? h - 2 : h + 1];
      isUsed[v] = 1;
      let isShared = false;
      for (let i = starts[w]; i < starts[w + 1] && !isShared; i += 1) {
        const other = places[i];
        const end = corners[other % 3 === 2 ? other - 2 : other + 1];
        isShared = end === v && isSeen(Math.floor(other / 3));
      }
      if (isShared) continue;
      alone += 1;
      isOnBorder[v] = 1;
      isOnBorder[w] = 1;
    }
  }
  let vertices = 0;
  for (let v = 0; v < vertexCount; v += 1) {
    vertices += isUsed[v];
    if (isUsed[v] === 1 && isEnd[v] === 1 && isOnBorder[v] === 0) return false;
  }
  return vertices - (3 * triangles + alone) / 2 + triangles === 1;
}
