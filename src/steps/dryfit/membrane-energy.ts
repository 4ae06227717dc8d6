import type { Elasticity } from '../../model/springing.ts';
import type { ShellSheet } from './shell-sheet.ts';

/**
 * Energy of a sheet pulled in its own surface: constant-strain triangles of St. Venant-Kirchhoff material in plane stress,
 * W = (E t / 2 (1 - nu²)) ((1 - nu) |G|² + nu tr(G)²) per area, G = (F'F - 1) / 2 (Bonet and Wood, "Nonlinear Continuum Mechanics for
 * Finite Element Analysis", 2nd ed. 2008, 6.27, in its plane stress form).
 * @param positions  x y z per vertex, mm.
 * @param gradient   dE/dx is added to it, N; minus it is the force of the sheet on what holds it.
 * @returns N mm.
 */
export function addMembrane(
  sheet: ShellSheet,
  { youngNPerMm2, poisson }: Elasticity,
  thicknessMm: number,
  positions: Float64Array,
  gradient: Float64Array,
): number {
  const { triangles, areas, inverses } = sheet;
  const stiffness = (youngNPerMm2 * thicknessMm) / (1 - poisson * poisson);
  let energy = 0;
  for (let t = 0; t < areas.length; t += 1) {
    const [p, q, r] = [3 * triangles[3 * t], 3 * triangles[3 * t + 1], 3 * triangles[3 * t + 2]];
    const [ia, ib, ic, id] = [inverses[4 * t], inverses[4 * t + 1], inverses[4 * t + 2], inverses[4 * t + 3]];
    let xx = -1;
    let xy = 0;
    let yy = -1;
    for (let k = 0; k < 3; k += 1) {
      const a = positions[q + k] - positions[p + k];
      const b = positions[r + k] - positions[p + k];
      const u = a * ia + b * ic;
      const v = a * ib + b * id;
      xx += u * u;
      xy += u * v;
      yy += v * v;
    }
    xx /= 2;
    xy /= 2;
    yy /= 2;
    const trace = xx + yy;
    const scale = stiffness * areas[t];
    energy += (scale / 2) * ((1 - poisson) * (xx * xx + 2 * xy * xy + yy * yy) + poisson * trace * trace);
    const sxx = scale * ((1 - poisson) * xx + poisson * trace);
    const syy = scale * ((1 - poisson) * yy + poisson * trace);
    const sxy = scale * (1 - poisson) * xy;
    for (let k = 0; k < 3; k += 1) {
      const a = positions[q + k] - positions[p + k];
      const b = positions[r + k] - positions[p + k];
      const u = a * ia + b * ic;
      const v = a * ib + b * id;
      const pu = u * sxx + v * sxy;
      const pv = u * sxy + v * syy;
      const onQ = pu * ia + pv * ib;
      const onR = pu * ic + pv * id;
      gradient[q + k] += onQ;
      gradient[r + k] += onR;
      gradient[p + k] -= onQ + onR;
    }
  }
  return energy;
}
