import { CURVE_DEVIATION_MM, type CurveSegment } from './outline.ts';
import type { Vec2 } from './vec.ts';

/** Halvings at most of one stretch between two corners. */
const MOST_HALVINGS = 16;
/** Stretches a curve is parted into before any is looked at, so that no wave is passed over. */
const FIRST_STRETCHES = 16;

/**
 * A curve given by a function of a parameter, sampled so that no chord is farther than the stated deviation from it. Length and swept area are
 * found by halving chords and taking out the error of second and fourth order (Romberg), so `f` should be smooth between `corners`.
 * @param corners  parameters between `from` and `to` at which it has a corner.
 */
export function curve(f: (t: number) => Vec2, from: number, to: number, corners: readonly number[] = []): CurveSegment {
  const stops = [from, ...corners, to];
  const points: Vec2[] = [f(from)];
  let [lengthMm, sweptMm2] = [0, 0];
  for (let i = 1; i < stops.length; i += 1) {
    const [a, b] = [stops[i - 1], stops[i]];
    for (let k = 0; k < FIRST_STRETCHES; k += 1) {
      const at = (j: number): number => (j === FIRST_STRETCHES ? b : a + ((b - a) * j) / FIRST_STRETCHES);
      sample(f, at(k), at(k + 1), points, MOST_HALVINGS);
    }
    const sums = curveSums(f, a, b);
    lengthMm += sums.length;
    sweptMm2 += sums.swept;
  }
  return {
    kind: 'curve',
    from: points[0],
    to: points[points.length - 1],
    points,
    deviationMm: CURVE_DEVIATION_MM,
    lengthMm,
    sweptMm2,
  };
}

function sample(f: (t: number) => Vec2, a: number, b: number, points: Vec2[], left: number): void {
  const [p, q] = [points[points.length - 1], f(b)];
  const isNear = [0.25, 0.5, 0.75].every(
    (share) => distanceFromChord(f(a + share * (b - a)), p, q) <= 0.9 * CURVE_DEVIATION_MM,
  );
  if (isNear || left === 0) {
    points.push(q);
    return;
  }
  sample(f, a, (a + b) / 2, points, left - 1);
  sample(f, (a + b) / 2, b, points, left - 1);
}

function distanceFromChord(point: Vec2, p: Vec2, q: Vec2): number {
  const [dx, dy] = [q.x - p.x, q.y - p.y];
  const length = Math.hypot(dx, dy);
  if (length === 0) return Math.hypot(point.x - p.x, point.y - p.y);
  return Math.abs(dx * (point.y - p.y) - dy * (point.x - p.x)) / length;
}

/** Relative change at which halving ends, and halvings at most: 16 · 2^11 chords. */
const SETTLED = 1e-12;
const MOST_ROUNDS = 11;

/** Length of a curve and the area its ray from the origin sweeps. */
export function curveSums(
  f: (t: number) => Vec2,
  a: number,
  b: number,
): { readonly length: number; readonly swept: number } {
  const lengths: number[][] = [];
  const areas: number[][] = [];
  for (let round = 0; round <= MOST_ROUNDS; round += 1) {
    const count = FIRST_STRETCHES * 2 ** round;
    let [length, swept] = [0, 0];
    let p = f(a);
    for (let i = 1; i <= count; i += 1) {
      const q = f(i === count ? b : a + ((b - a) * i) / count);
      length += Math.hypot(q.x - p.x, q.y - p.y);
      swept += (p.x * q.y - q.x * p.y) / 2;
      p = q;
    }
    const isDone = [extend(lengths, length), extend(areas, swept)].every(Boolean);
    if (isDone) break;
  }
  const best = (rows: readonly number[][]): number => rows[rows.length - 1][rows.length - 1];
  return { length: best(lengths), swept: best(areas) };
}

/** Adds a row to Romberg's table. @returns whether the best value has settled. */
function extend(rows: number[][], first: number): boolean {
  const before = rows[rows.length - 1] as number[] | undefined;
  const row = [first];
  for (let k = 0; before !== undefined && k < before.length; k += 1)
    row.push(row[k] + (row[k] - before[k]) / (4 ** (k + 1) - 1));
  rows.push(row);
  return (
    before !== undefined &&
    rows.length > 3 &&
    Math.abs(row[row.length - 1] - before[before.length - 1]) <= SETTLED * Math.abs(row[row.length - 1])
  );
}
