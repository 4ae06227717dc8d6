import type { Elasticity } from '../../../src/model/springing.ts';
import { HingeBending } from '../../../src/steps/dryfit/hinge-bending.ts';
import { hingeTurn } from '../../../src/steps/dryfit/hinge-turn.ts';
import { addMembrane } from '../../../src/steps/dryfit/membrane-energy.ts';
import type { ShellSheet } from '../../../src/steps/dryfit/shell-sheet.ts';

const NUDGE_MM = 1e-5;
const MOST_STEPS = 200;

/** Where a bent sheet comes to rest, and the forces of the sheet on what holds it there, N, three per vertex. */
export interface Rest {
  readonly positions: Float64Array;
  readonly forces: Float64Array;
  readonly energy: number;
  readonly steps: number;
}

/**
 * Newton's method on positions and leans together, with a dense matrix: for small sheets.
 * @param isHeld 1 for each of the three numbers of a vertex that does not move.
 */
export function restOf(
  sheet: ShellSheet,
  elasticity: Elasticity,
  thicknessMm: number,
  start: Float64Array,
  isHeld: Uint8Array,
): Rest {
  const bending = new HingeBending(sheet, elasticity, thicknessMm);
  const count = start.length;
  const size = count + bending.leans.length;
  let at = new Float64Array(size);
  at.set(start);
  const held = new Uint8Array(size);
  held.set(isHeld);
  const gradientAt = (place: Float64Array): { energy: number; gradient: Float64Array } => {
    const positions = place.subarray(0, count);
    const gradient = new Float64Array(size);
    bending.leans.set(place.subarray(count));
    bending.moveTo(positions);
    const energy = addMembrane(sheet, elasticity, thicknessMm, positions, gradient) + bending.measure();
    bending.addGradient(gradient);
    bending.addLeanGradient(gradient.subarray(count));
    return { energy, gradient };
  };
  // Numbers of one place beside each other: the factor then stays narrow.
  const placeOf = (i: number): number => {
    if (i < count) return start[i - (i % 3)];
    const e = i - count;
    return (start[3 * sheet.edgeVertices[2 * e]] + start[3 * sheet.edgeVertices[2 * e + 1]]) / 2;
  };
  const order = Array.from({ length: size }, (_, i) => i).sort((i, j) => placeOf(i) - placeOf(j));
  let shift = 0;
  let steps = 0;
  let now = gradientAt(at);
  for (; steps < MOST_STEPS; steps += 1) {
    const force = now.gradient.map((g, i) => (held[i] ? 0 : -g));
    if (Math.hypot(...force) < 1e-9) break;
    const matrix = matrixAt(sheet, elasticity, thicknessMm, bending, at.subarray(0, count), size);
    for (let i = 0; i < size; i += 1)
      if (held[i]) {
        for (let j = 0; j < size; j += 1) matrix[i * size + j] = matrix[j * size + i] = 0;
        matrix[i * size + i] = 1;
      }
    let step = solveDense(matrix, force, order, shift);
    while (step === null) {
      shift = Math.max(4 * shift, 1e-6);
      step = solveDense(matrix, force, order, shift);
    }
    let share = 1;
    let next = now;
    let to = at;
    do {
      to = at.map((a, i) => a + share * step[i]);
      next = gradientAt(to);
      share /= 2;
    } while (next.energy > now.energy + 1e-13 * Math.abs(now.energy) && share > 1e-9);
    shift = shift < 1e-9 ? 0 : shift / 8;
    const gain = now.energy - next.energy;
    at = to;
    now = gradientAt(at);
    if (shift === 0 && Math.abs(gain) < 1e-13 * now.energy) break;
  }
  return {
    positions: at.slice(0, count),
    forces: now.gradient.slice(0, count).map((g) => -g),
    energy: now.energy,
    steps,
  };
}

function matrixAt(
  sheet: ShellSheet,
  { youngNPerMm2, poisson }: Elasticity,
  thicknessMm: number,
  bending: HingeBending,
  x: Float64Array,
  size: number,
): Float64Array {
  const matrix = new Float64Array(size * size);
  const { triangles, areas, inverses, triangleEdges, edgeVertices, edgeOpposite, edgeTriangles } = sheet;
  const stiffness = (youngNPerMm2 * thicknessMm) / (1 - poisson * poisson);
  const perTurn = new Float64Array(bending.leans.length);
  for (let t = 0; t < areas.length; t += 1) {
    const v = [0, 1, 2].map((i) => triangles[3 * t + i]);
    const [a, b, c, d] = inverses.subarray(4 * t, 4 * t + 4);
    const slopes = [
      [-a - c, -b - d],
      [a, b],
      [c, d],
    ];
    const f = [0, 1, 2].map((k) => [0, 1].map((j) => v.reduce((sum, p, i) => sum + x[3 * p + k] * slopes[i][j], 0)));
    const g = (i: number, j: number): number => (f.reduce((s, r) => s + r[i] * r[j], 0) - (i === j ? 1 : 0)) / 2;
    const [xx, xy, yy] = [g(0, 0), g(0, 1), g(1, 1)];
    const scale = stiffness * areas[t];
    const s = [
      [scale * (xx + poisson * yy), scale * (1 - poisson) * xy],
      [scale * (1 - poisson) * xy, scale * (yy + poisson * xx)],
    ];
    const row = (i: number, k: number): number[] => [
      f[k][0] * slopes[i][0],
      f[k][1] * slopes[i][1],
      f[k][0] * slopes[i][1] + f[k][1] * slopes[i][0],
    ];
    for (let i = 0; i < 9; i += 1)
      for (let j = 0; j < 9; j += 1) {
        const [p, k, q, l] = [Math.floor(i / 3), i % 3, Math.floor(j / 3), j % 3];
        const [m, n] = [row(p, k), row(q, l)];
        let value =
          scale *
          (m[0] * n[0] + m[1] * n[1] + poisson * (m[0] * n[1] + m[1] * n[0]) + ((1 - poisson) / 2) * m[2] * n[2]);
        if (k === l)
          for (let u = 0; u < 2; u += 1) for (let w = 0; w < 2; w += 1) value += slopes[p][u] * s[u][w] * slopes[q][w];
        matrix[(3 * v[p] + k) * size + 3 * v[q] + l] += value;
      }
    // Each angle: the numbers it changes with, and how.
    const angles = [0, 1, 2].map((i) => {
      const e = triangleEdges[3 * t + i];
      perTurn[e] += bending.momentOf(t, i) / 2;
      const places = [x.length + e];
      const rates = [edgeTriangles[2 * e] === t ? 1 : -1];
      if (edgeTriangles[2 * e + 1] >= 0) {
        const slope = bending.slopesOf(e);
        cornersOf(e).forEach((corner, m) => {
          for (let k = 0; k < 3; k += 1) {
            places.push(3 * corner + k);
            rates.push(slope[3 * m + k] / 2);
          }
        });
      }
      return { places, rates };
    });
    for (let i = 0; i < 3; i += 1)
      for (let j = 0; j < 3; j += 1) {
        const both = bending.stiffnessOf(t, i, j);
        angles[i].places.forEach((p, m) =>
          angles[j].places.forEach((q, n) => {
            matrix[p * size + q] += both * angles[i].rates[m] * angles[j].rates[n];
          }),
        );
      }
  }
  const up = new Float64Array(12);
  const down = new Float64Array(12);
  for (let e = 0; e < perTurn.length; e += 1) {
    if (edgeTriangles[2 * e + 1] < 0) continue;
    const corners = cornersOf(e);
    for (let i = 0; i < 12; i += 1) {
      const p = 3 * corners[Math.floor(i / 3)] + (i % 3);
      const before = x[p];
      x[p] = before + NUDGE_MM;
      hingeTurn(x, corners[0], corners[1], corners[2], corners[3], up);
      x[p] = before - NUDGE_MM;
      hingeTurn(x, corners[0], corners[1], corners[2], corners[3], down);
      x[p] = before;
      for (let j = 0; j < 12; j += 1) {
        const value = (perTurn[e] * (up[j] - down[j])) / (2 * NUDGE_MM) / 2;
        const q = 3 * corners[Math.floor(j / 3)] + (j % 3);
        matrix[p * size + q] += value;
        matrix[q * size + p] += value;
      }
    }
  }
  return matrix;

  function cornersOf(e: number): number[] {
    return [edgeVertices[2 * e], edgeVertices[2 * e + 1], edgeOpposite[2 * e], edgeOpposite[2 * e + 1]];
  }
}

/** Cholesky on a copy, numbers taken in the given order; null where the matrix with the shift on its diagonal is not positive. */
function solveDense(
  matrix: Float64Array,
  rightSide: Float64Array,
  order: readonly number[],
  shift: number,
): Float64Array | null {
  const n = rightSide.length;
  const l = new Float64Array(n * n);
  order.forEach((p, i) => {
    for (let j = 0; j <= i; j += 1) l[i * n + j] = matrix[p * n + order[j]] + (i === j ? shift : 0);
  });
  // Noughts at the left of a row stay noughts.
  const first = new Int32Array(n);
  for (let i = 0; i < n; i += 1) {
    let j = 0;
    while (j < i && l[i * n + j] === 0) j += 1;
    first[i] = j;
    for (; j <= i; j += 1) {
      let sum = l[i * n + j];
      for (let k = Math.max(first[i], first[j]); k < j; k += 1) sum -= l[i * n + k] * l[j * n + k];
      if (j < i) l[i * n + j] = sum / l[j * n + j];
      else if (sum > 0) l[i * n + i] = Math.sqrt(sum);
      else return null;
    }
  }
  const x = Float64Array.from(order, (p) => rightSide[p]);
  for (let i = 0; i < n; i += 1) {
    for (let k = first[i]; k < i; k += 1) x[i] -= l[i * n + k] * x[k];
    x[i] /= l[i * n + i];
  }
  for (let i = n - 1; i >= 0; i -= 1) {
    x[i] /= l[i * n + i];
    for (let k = first[i]; k < i; k += 1) x[k] -= l[i * n + k] * x[i];
  }
  const solution = new Float64Array(n);
  order.forEach((p, i) => {
    solution[p] = x[i];
  });
  return solution;
}
