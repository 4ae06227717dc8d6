import type { Stepwise } from '../../base/stepwise.ts';
import { areaVector } from '../../mesh/measure.ts';
import { dot3 } from '../../geom/vec.ts';

/** Triangles done in one stretch: a few milliseconds. */
const STRETCH = 5000;

/**
 * How far each surface can move before a triangle turns inside out: its area vector is a parabola in the distance, and it has folded
 * over where its part along the old normal reaches 0 (`1 + d kappa <= 0`, foam model 1).
 * @param directions per-vertex move for a distance of 1, x y z.
 * @param outward    +1 looks outward, -1 inward.
 * @returns per triangle the greatest distance that still works, mm; Infinity where it always does, and for empty triangles.
 */
export function* roomSteps(
  positions: Float64Array,
  triangles: Uint32Array,
  directions: Float64Array,
  outward: 1 | -1,
): Stepwise<Float64Array> {
  const rooms = new Float64Array(triangles.length / 3).fill(Infinity);
  const moved = new Float64Array(9);
  const local = new Uint32Array([0, 1, 2]);
  for (let t = 0; t < rooms.length; t += 1) {
    if (t % STRETCH === 0) yield;
    const still = areaVector(positions, triangles, t);
    const area2 = dot3(still, still);
    if (area2 === 0) continue;
    // Three samples of the parabola along the old normal give its coefficients exactly; the step is the triangle's own size.
    const step = Math.sqrt(Math.sqrt(area2));
    const sample = (distance: number): number => {
      for (let k = 0; k < 3; k += 1) {
        const v = 3 * triangles[3 * t + k];
        for (let axis = 0; axis < 3; axis += 1) {
          moved[3 * k + axis] = positions[v + axis] + outward * distance * directions[v + axis];
        }
      }
      return dot3(areaVector(moved, local, 0), still) / area2;
    };
    const [f1, f2] = [sample(step), sample(2 * step)];
    const b = (4 * f1 - f2 - 3) / 2;
    const a = f1 - 1 - b;
    rooms[t] = step * firstRoot(a, b);
  }
  return rooms;
}

/** Smallest positive x with a x² + b x + 1 = 0, or Infinity. */
function firstRoot(a: number, b: number): number {
  if (Math.abs(a) < 1e-14) return b < 0 ? -1 / b : Infinity;
  const disc = b * b - 4 * a;
  if (disc < 0) return Infinity;
  const q = -0.5 * (b + Math.sign(b || 1) * Math.sqrt(disc));
  const roots = [q / a, 1 / q].filter((x) => x > 0 && Number.isFinite(x));
  return roots.length === 0 ? Infinity : Math.min(...roots);
}
