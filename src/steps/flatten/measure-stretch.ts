import type { FlatPiece, Spread } from '../../model/flat-piece.ts';
import type { RestShape } from './rest-shape.ts';

/**
 * Forming stretch of every triangle: the singular values `a >= b` of the map from the flat piece to the finished shape (foam model 3),
 * found from the true triangle in space, not from the one the solver opened. An empty triangle has no stretch.
 */
export function measureStretch(
  shape: RestShape,
  flat: Float64Array,
): Pick<FlatPiece, 'major' | 'minor' | 'majorAngle' | 'stretchPct' | 'squashPct'> {
  const { triangles, points, areas } = shape;
  const major = new Float64Array(areas.length).fill(1);
  const minor = new Float64Array(areas.length).fill(1);
  const majorAngle = new Float64Array(areas.length);
  for (let t = 0; t < areas.length; t += 1) {
    if (areas[t] === 0) continue;
    const [i, j, k] = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]];
    const [x1, y1] = [flat[2 * j] - flat[2 * i], flat[2 * j + 1] - flat[2 * i + 1]];
    const [x2, y2] = [flat[2 * k] - flat[2 * i], flat[2 * k + 1] - flat[2 * i + 1]];
    const det = x1 * y2 - x2 * y1;
    // Columns of the 3 x 2 map: what one mm along flat x, and along flat y, becomes in space.
    let [xx, xy, yy] = [0, 0, 0];
    for (let axis = 0; axis < 3; axis += 1) {
      const e1 = points[3 * j + axis] - points[3 * i + axis];
      const e2 = points[3 * k + axis] - points[3 * i + axis];
      const alongX = (e1 * y2 - e2 * y1) / det;
      const alongY = (e2 * x1 - e1 * x2) / det;
      xx += alongX * alongX;
      xy += alongX * alongY;
      yy += alongY * alongY;
    }
    // Both from sums and differences, and the smaller one from the area, so that neither loses digits near 1.
    const half = Math.hypot((xx - yy) / 2, xy);
    major[t] = Math.sqrt((xx + yy) / 2 + half);
    minor[t] = (2 * areas[t]) / det / major[t];
    majorAngle[t] = 0.5 * Math.atan2(2 * xy, xx - yy);
  }
  return {
    major,
    minor,
    majorAngle,
    stretchPct: spread(major, areas, (a) => 100 * (a - 1)),
    squashPct: spread(minor, areas, (b) => 100 * (1 - b)),
  };
}

/** Largest, 99 % by area, and mean by area. Negative where the foam must change the other way, and counted so: a - 1 and 1 - b as they are. */
function spread(values: Float64Array, areas: Float64Array, percent: (value: number) => number): Spread {
  const figures = Float64Array.from(values, percent);
  const order = Uint32Array.from(figures.keys()).sort((a, b) => figures[a] - figures[b] || a - b);
  const total = areas.reduce((sum, area) => sum + area, 0);
  let max = -Infinity;
  let p99 = -Infinity;
  let sum = 0;
  let covered = 0;
  for (const t of order) {
    if (areas[t] === 0) continue;
    if (covered < 0.99 * total) p99 = figures[t];
    covered += areas[t];
    sum += figures[t] * areas[t];
    max = figures[t];
  }
  return total > 0 ? { max, p99, mean: sum / total } : { max: 0, p99: 0, mean: 0 };
}
