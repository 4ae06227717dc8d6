import { eigen3 } from '../../geom/symmetric-3x3.ts';
import { curvatureMatrices, greatestCurvature } from '../../mesh/principal-curvatures.ts';
import type { PatchBendField } from '../../model/bend-field.ts';
import type { ShellLayer } from '../../model/shell-layer.ts';
import { neutralSurface } from './neutral-surface.ts';
import type { PatchBend } from './part-bends.ts';

/**
 * What bending does to the skins of a rolled piece all over it, and the line about which each place bends: the figures of `bendStrain`, which
 * tells the worst of them. A triangle counts as its corner that bends most. Null where folds or kerfs take up the bend.
 * @param uv flat coordinates of the patch's vertices, in the piece's frame.
 */
export function bendPlaces(bend: PatchBend, layer: ShellLayer, uv: Float64Array): PatchBendField | null {
  if (bend.choice.style !== 'rolled') return null;
  const surface = neutralSurface(bend, layer);
  const { positions, triangles } = surface;
  const matrices = curvatureMatrices(surface, layer.thicknessMm);
  const count = triangles.length / 3;
  const strainPct = new Float32Array(count);
  const axisRad = new Float32Array(count);
  const skinMm = layer.thicknessMm * Math.max(layer.neutralFraction, 1 - layer.neutralFraction);
  const axes = new Map<number, readonly number[]>();
  for (let t = 0; t < count; t += 1) {
    const corners = triangles.subarray(3 * t, 3 * t + 3);
    let [worst, most] = [-1, 0];
    for (const v of corners) {
      const curvature = greatestCurvature(matrices, v);
      if (Math.abs(curvature) > Math.abs(most)) [worst, most] = [v, curvature];
    }
    if (worst < 0) continue;
    strainPct[t] = 100 * skinMm * most;
    const axis = axes.get(worst) ?? axisOf(matrices.subarray(6 * worst, 6 * worst + 6));
    axes.set(worst, axis);
    axisRad[t] = flatAngle(axis, positions, uv, corners);
  }
  return { strainPct, axisRad };
}

/** The line about which the surface bends: along it lie the edges whose folds make the bend. */
function axisOf(matrix: Float64Array): readonly number[] {
  const { values, vectors } = eigen3(matrix);
  return vectors[Math.abs(values[0]) >= Math.abs(values[2]) ? 0 : 2];
}

/** Direction in the flat piece of a direction in space, as the triangle lies there; 0 for a triangle without area. */
function flatAngle(axis: readonly number[], p: Float64Array, uv: Float64Array, corners: Uint32Array): number {
  const [a, b, c] = corners;
  const along = (from: number, to: number): number[] => [0, 1, 2].map((k) => p[3 * to + k] - p[3 * from + k]);
  const [u, v] = [along(a, b), along(a, c)];
  const dot = (x: readonly number[], y: readonly number[]): number => x[0] * y[0] + x[1] * y[1] + x[2] * y[2];
  const [uu, uv3, vv, ua, va] = [dot(u, u), dot(u, v), dot(v, v), dot(u, axis), dot(v, axis)];
  const area2 = uu * vv - uv3 * uv3;
  if (!(area2 > 0)) return 0;
  const [s, t] = [(ua * vv - va * uv3) / area2, (va * uu - ua * uv3) / area2];
  const flat = (k: 0 | 1): number => s * (uv[2 * b + k] - uv[2 * a + k]) + t * (uv[2 * c + k] - uv[2 * a + k]);
  return Math.atan2(flat(1), flat(0));
}
