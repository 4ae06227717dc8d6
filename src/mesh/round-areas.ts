import { CircleInTriangle } from '../geom/circle-in-triangle.ts';
import type { RoundField } from './round-field.ts';
import type { SurfaceSides } from './surface-distance.ts';

/** The areas `u < level` of a field round one vertex, from small to large. */
export interface RoundAreas {
  /** mm, ascending. */
  readonly level: Float64Array;
  /** A length that the distance along the surface from the vertex to the area's rim is not under, mm. */
  readonly near: Float64Array;
  /** Area, mm², and length of the rim, mm. */
  readonly area: Float64Array;
  readonly rim: Float64Array;
}

/** Bands of levels in each of which the slope is bounded. */
const BANDS = 64;
/** Share of the squared level under which -k is rounding; at the vertex itself its root would show. */
const ROUNDING = 1e-13;
/** Bands after which the areas are measured, closer together towards the largest. */
const MEASURED = [4, 8, 12, 16, 20, 24, 28, 32, 36, 40, 44, 48, 52, 56, 59, 61, 62, 63, 64];

/**
 * Measures areas that are exactly as round as a field says, and how far off their rims are at least.
 *
 * A path from the vertex out to the rim climbs through every band of levels, in none of them more steeply than on the steepest triangle
 * that reaches into the band. With `|grad u|² = 1 - k / u²` and q the largest of -k and 0 in the band from `a` to `b` it is there at least
 *
 *     integral of du / sqrt(1 + q / u²)  =  sqrt(b² + q) - sqrt(a² + q)
 *
 * long, wherever the values at the vertices come from: how good they are decides only how sharp this is.
 * @param field  its top finite and > 0.
 */
export function roundAreas({ opened }: SurfaceSides, field: RoundField): RoundAreas {
  const { base, foot, height } = opened;
  const { top, triangles, zx, zy, k, lowest, highest } = field;
  const near = nearOfBands(field);
  const level = Float64Array.from(MEASURED, (band) => (band * top) / BANDS);
  const area = new Float64Array(level.length);
  const rim = new Float64Array(level.length);
  const part = new CircleInTriangle();
  for (let i = 0; i < triangles.length; i += 1) {
    const t = triangles[i];
    for (let l = level.length - 1; l >= 0 && level[l] > lowest[i]; l -= 1) {
      if (highest[i] <= level[l]) {
        area[l] += (base[t] * height[t]) / 2;
        continue;
      }
      part.measure(level[l] * level[l] - k[i], zx[i], zy[i], base[t], foot[t], height[t]);
      area[l] += part.area;
      rim[l] += part.arc;
    }
  }
  return { level, near: Float64Array.from(MEASURED, (band) => near[band]), area, rim };
}

/** Least distance to the levels between the bands. */
function nearOfBands({ top, triangles, k, lowest, highest }: RoundField): Float64Array {
  const steepest = new Float64Array(BANDS);
  for (let i = 0; i < triangles.length; i += 1) {
    if (-k[i] <= ROUNDING * highest[i] * highest[i] || lowest[i] >= top) continue;
    // A band more at each end than rounding could hide.
    const from = Math.max(0, Math.floor((lowest[i] / top) * BANDS - 1e-6));
    const to = Math.min(BANDS - 1, Math.floor((highest[i] / top) * BANDS + 1e-6));
    for (let band = from; band <= to; band += 1) steepest[band] = Math.max(steepest[band], -k[i]);
  }
  const near = new Float64Array(BANDS + 1);
  for (let band = 0; band < BANDS; band += 1) {
    const a = (band * top) / BANDS;
    const b = ((band + 1) * top) / BANDS;
    const q = steepest[band];
    // The difference of the roots, without its loss of digits.
    near[band + 1] = near[band] + ((b - a) * (b + a)) / (Math.sqrt(b * b + q) + Math.sqrt(a * a + q));
  }
  return near;
}
