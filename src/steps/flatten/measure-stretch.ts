import type { FlatPiece, Spread } from '../../model/flat-piece.ts';
import type { RestShapes } from './rest-shapes.ts';

/**
 * Forming stretch of every triangle: the singular values `a >= b` of the map from the flat piece to the finished shape (foam model 3),
 * found from the true triangle in space, not from the one the solver opened. An empty triangle has no stretch.
 *
 * The map is written in complex numbers, K p = z p + w conj(p): then a = |z| + |w|, b = |z| - |w|, and what is stretched most lies
 * where both parts point the same way.
 */
export function measureStretch(
  rest: RestShapes,
  flat: Float64Array,
): Pick<FlatPiece, 'major' | 'minor' | 'majorAngle' | 'stretchPct' | 'squashPct'> {
  const { corners, base, foot, area, empty } = rest;
  const major = new Float64Array(rest.count).fill(1);
  const minor = new Float64Array(rest.count).fill(1);
  const majorAngle = new Float64Array(rest.count);
  for (let t = 0; t < rest.count; t += 1) {
    if (empty[t] === 1) continue;
    const [i, j, k] = [2 * corners[3 * t], 2 * corners[3 * t + 1], 2 * corners[3 * t + 2]];
    const [x1, y1] = [flat[j] - flat[i], flat[j + 1] - flat[i + 1]];
    const [x2, y2] = [flat[k] - flat[i], flat[k + 1] - flat[i + 1]];
    const det = x1 * y2 - x2 * y1;
    const height = (2 * area[t]) / base[t];
    // Columns of the map times det: what one mm along flat x, and along flat y, becomes in the triangle's own plane.
    const [xx, xy] = [base[t] * y2 - foot[t] * y1, -height * y1];
    const [yx, yy] = [foot[t] * x1 - base[t] * x2, height * x1];
    const [zx, zy] = [xx + yy, xy - yx];
    const [wx, wy] = [xx - yy, xy + yx];
    const w = Math.sqrt(wx * wx + wy * wy);
    major[t] = (Math.sqrt(zx * zx + zy * zy) + w) / (2 * det);
    // The smaller one from the area, so that it loses no digits.
    minor[t] = (2 * area[t]) / det / major[t];
    majorAngle[t] = w > 0 ? 0.5 * Math.atan2(wy * zx - wx * zy, wx * zx + wy * zy) : 0;
  }
  return {
    major,
    minor,
    majorAngle,
    stretchPct: spread(rest, major, (a) => 100 * (a - 1)),
    squashPct: spread(rest, minor, (b) => 100 * (1 - b)),
  };
}

/** Largest, 99 % by area, and mean by area. Negative where the foam must change the other way, and counted so: a - 1 and 1 - b as they are. */
function spread({ area, empty }: RestShapes, values: Float64Array, percent: (value: number) => number): Spread {
  const figures = Float64Array.from(values, percent);
  const order = Uint32Array.from(figures.keys()).sort((a, b) => figures[a] - figures[b] || a - b);
  let total = 0;
  for (let t = 0; t < area.length; t += 1) if (empty[t] === 0) total += area[t];
  let max = -Infinity;
  let p99 = -Infinity;
  let sum = 0;
  let covered = 0;
  for (const t of order) {
    if (empty[t] === 1) continue;
    if (covered < 0.99 * total) p99 = figures[t];
    covered += area[t];
    sum += figures[t] * area[t];
    max = figures[t];
  }
  return total > 0 ? { max, p99, mean: sum / total } : { max: 0, p99: 0, mean: 0 };
}
