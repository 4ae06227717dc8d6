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
    const i = 2 * corners[3 * t];
    const j = 2 * corners[3 * t + 1];
    const k = 2 * corners[3 * t + 2];
    const x1 = flat[j] - flat[i];
    const y1 = flat[j + 1] - flat[i + 1];
    const x2 = flat[k] - flat[i];
    const y2 = flat[k + 1] - flat[i + 1];
    const det = x1 * y2 - x2 * y1;
    const height = (2 * area[t]) / base[t];
    // Columns of the map times det: what one mm along flat x, and along flat y, becomes in the triangle's own plane.
    const xx = base[t] * y2 - foot[t] * y1;
    const xy = -height * y1;
    const yx = foot[t] * x1 - base[t] * x2;
    const yy = height * x1;
    const zx = xx + yy;
    const zy = xy - yx;
    const wx = xx - yy;
    const wy = xy + yx;
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
  let total = 0;
  let sum = 0;
  let max = -Infinity;
  let min = Infinity;
  for (let t = 0; t < area.length; t += 1) {
    if (empty[t] === 1) continue;
    const figure = percent(values[t]);
    total += area[t];
    sum += area[t] * figure;
    if (figure > max) max = figure;
    if (figure < min) min = figure;
  }
  if (!(total > 0)) return { max: 0, p99: 0, mean: 0 };
  const figures = Float64Array.from(values, percent);
  // A mean is rounded once more than the figures it is of.
  const mean = Math.min(max, sum / total);
  return { max, p99: figureOfShare(figures, area, empty, 0.99 * total, min, max), mean };
}

/** Slots into which figures are dealt to find the one of a share without sorting them all. */
const SLOTS = 4096;

/** The smallest figure that triangles of together `share` mm² do not exceed. */
function figureOfShare(
  figures: Float64Array,
  area: Float64Array,
  empty: Uint8Array,
  share: number,
  min: number,
  max: number,
): number {
  const scale = max > min ? (SLOTS - 1) / (max - min) : 0;
  const slotOf = (t: number): number => Math.floor((figures[t] - min) * scale);
  const inSlot = new Float64Array(SLOTS);
  for (let t = 0; t < figures.length; t += 1) if (empty[t] === 0) inSlot[slotOf(t)] += area[t];
  let slot = 0;
  let before = 0;
  while (slot < SLOTS - 1 && before + inSlot[slot] < share) before += inSlot[slot++];
  const rest: number[] = [];
  for (let t = 0; t < figures.length; t += 1) if (empty[t] === 0 && slotOf(t) >= slot) rest.push(t);
  rest.sort((s, t) => figures[s] - figures[t] || s - t);
  for (const t of rest) {
    before += area[t];
    if (before >= share) return figures[t];
  }
  return max;
}
