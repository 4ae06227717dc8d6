import type { SurfaceDistance, SurfaceSides } from './surface-distance.ts';

/**
 * Distances between the vertices as well. On each triangle `u = sqrt(w)` with the one function `w(x) = |x - z|² + k` that takes the squared
 * values at its three corners. Along a side w is known from the side's ends alone, so neighbours agree; level lines are arcs round z; in
 * the plane u is the distance itself, with k = 0. The slope is `|grad u|² = 1 - k / u²`.
 */
export interface RoundField {
  /** Largest level, mm, up to which `u < level` lies in these triangles and off the marked vertices and their sides. */
  readonly top: number;
  /** The triangles with a settled corner, and for each of them z, in the triangle's own plane, and k, mm². */
  readonly triangles: Int32Array;
  readonly zx: Float64Array;
  readonly zy: Float64Array;
  readonly k: Float64Array;
  /** Least and greatest u on each triangle, mm. */
  readonly lowest: Float64Array;
  readonly highest: Float64Array;
}

/** Share by which the largest level stays clear of the side it is held up by: a line that just touches is found only to half the digits. */
const CLEAR_SHARE = 1e-6;

export function roundField(sides: SurfaceSides, distance: SurfaceDistance): RoundField {
  const { corners, base, foot, height } = sides.opened;
  const { value, settled, reach } = distance;
  const isInside = new Uint8Array(sides.opened.vertexCount);
  for (const v of settled) isInside[v] = 1;
  const triangles = trianglesAt(sides, settled);
  const zx = new Float64Array(triangles.length);
  const zy = new Float64Array(triangles.length);
  const k = new Float64Array(triangles.length);
  const lowest = new Float64Array(triangles.length);
  const highest = new Float64Array(triangles.length);
  let top = reach;
  for (let i = 0; i < triangles.length; i += 1) {
    const t = triangles[i];
    const a = value[corners[3 * t]];
    const b = value[corners[3 * t + 1]];
    const c = value[corners[3 * t + 2]];
    const x = (a * a - b * b + base[t] * base[t]) / (2 * base[t]);
    const y = (a * a - c * c + foot[t] * foot[t] + height[t] * height[t] - 2 * foot[t] * x) / (2 * height[t]);
    zx[i] = x;
    zy[i] = y;
    k[i] = a * a - x * x - y * y;
    highest[i] = Math.max(a, b, c);
    let least = Infinity;
    for (let h = 3 * t; h < 3 * t + 3; h += 1) {
      const v = corners[h];
      const w = corners[h === 3 * t + 2 ? h - 2 : h + 1];
      const low = lowestOnSide(value[v], value[w], sides.length[h]);
      least = Math.min(least, low);
      // Over a side with both ends outside, the area would leave these triangles or the surface.
      if (isInside[v] === 0 && isInside[w] === 0) top = Math.min(top, low);
    }
    const isRoundZ = y > 0 && x * height[t] > y * foot[t] && (base[t] - x) * height[t] > y * (base[t] - foot[t]);
    lowest[i] = isRoundZ ? Math.sqrt(Math.max(0, k[i])) : least;
  }
  return { top: (1 - CLEAR_SHARE) * top, triangles, zx, zy, k, lowest, highest };
}

/** The triangles at some vertices, each once, in the order of the vertices. */
function trianglesAt({ opened, starts, places }: SurfaceSides, vertices: Int32Array): Int32Array {
  const isTaken = new Uint8Array(opened.count);
  const triangles = new Int32Array(opened.count);
  let count = 0;
  for (const v of vertices) {
    for (let i = starts[v]; i < starts[v + 1]; i += 1) {
      const t = Math.floor(places[i] / 3);
      if (isTaken[t] === 1) continue;
      isTaken[t] = 1;
      triangles[count++] = t;
    }
  }
  return triangles.slice(0, count);
}

/** Least u along a side with the values `a` and `b` at its ends. */
function lowestOnSide(a: number, b: number, length: number): number {
  const along = (a * a - b * b + length * length) / (2 * length);
  if (along <= 0) return a;
  if (along >= length) return b;
  return Math.sqrt(Math.max(0, a * a - along * along));
}
