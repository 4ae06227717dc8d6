import { describe, expect, it } from 'vitest';
import { plateStiffness } from '../../../src/steps/dryfit/hinge-bending.ts';
import { IS_LONG } from '../../support/long.ts';
import { restOf } from './springing-solve.ts';
import { stripSheet } from './strip-sheet.ts';

// A strip hinged at both ends and pushed together, at rest: Love, "A treatise on the mathematical theory of elasticity", 4th ed. 1927,
// art. 262-263. With a the slope at its ends and k = sin(a / 2): chord / L = 2 E(k) / K(k) - 1, rise / L = k / K(k),
// push = (2 K(k) / L)² B, B the bending stiffness.
const LENGTH = 100;
const WIDTH = 10;
const THICKNESS = 2;
const FOAM = { youngNPerMm2: 1.5, poisson: 0 };

/** Complete elliptic integrals of modulus k by the arithmetic-geometric mean (Abramowitz and Stegun 17.6). */
function elliptic(k: number): { K: number; E: number } {
  let [a, b, c] = [1, Math.sqrt(1 - k * k), k];
  let sum = (c * c) / 2;
  for (let n = 0; Math.abs(c) > 1e-16; n += 1) {
    [a, b, c] = [(a + b) / 2, Math.sqrt(a * b), (a - b) / 2];
    sum += 2 ** n * c * c;
  }
  const K = Math.PI / (2 * a);
  return { K, E: K * (1 - sum) };
}

function errors(slopeDeg: number, columns: number, rows: number, shear: number, wobble: number) {
  const k = Math.sin((slopeDeg * Math.PI) / 360);
  const { K, E } = elliptic(k);
  const chord = LENGTH * ((2 * E) / K - 1);
  const rise = (LENGTH * k) / K;
  const push = ((2 * K) / LENGTH) ** 2 * plateStiffness(FOAM, THICKNESS) * WIDTH;
  const { sheet, uv } = stripSheet(LENGTH, WIDTH, columns, rows, shear, wobble);
  const count = sheet.vertexCount;
  const start = new Float64Array(3 * count);
  const isHeld = new Uint8Array(3 * count);
  for (let v = 0; v < count; v += 1) {
    const s = uv[2 * v] / LENGTH;
    start.set([chord * s, uv[2 * v + 1], 0.9 * rise * Math.sin(Math.PI * s)], 3 * v);
    if (v % (columns + 1) === 0 || v % (columns + 1) === columns) isHeld.fill(1, 3 * v, 3 * v + 3);
  }
  const { positions, forces, steps } = restOf(sheet, FOAM, THICKNESS, start, isHeld);
  let highest = 0;
  let end = 0;
  for (let v = 0; v < count; v += 1) {
    highest = Math.max(highest, positions[3 * v + 2]);
    if (v % (columns + 1) === columns) end += forces[3 * v];
  }
  return { rise: highest / rise - 1, push: end / push - 1, steps };
}

/** From three errors, each at half the triangle size of the one before: their limit, foam being a little compressible, need not be nought. */
const orderOf = ([a, b, c]: readonly number[]): number => Math.log2(Math.abs((a - b) / (b - c)));

describe('a strip hinged at its ends and pushed together', () => {
  for (const slope of IS_LONG ? [30, 60] : [60])
    it(`rises and pushes as the elastica does, slope ${slope} degrees`, () => {
      const found = [8, 16, 32].map((columns) => errors(slope, columns, 2, 0, 0));
      for (const { rise, push } of found) {
        expect(Math.abs(rise)).toBeLessThan(0.02);
        expect(Math.abs(push)).toBeLessThan(0.05);
      }
      expect(Math.abs(found[2].push)).toBeLessThan(0.01);
      expect(orderOf(found.map(({ push }) => push))).toBeGreaterThan(1.7);
      expect(orderOf(found.map(({ rise }) => rise))).toBeGreaterThan(1.7);
    });

  it('does so on a mesh that runs askew', () => {
    const found = [8, 16, 32].map((columns) => errors(60, columns, 2, 8, 0.15));
    for (const { rise, push } of found) {
      expect(Math.abs(rise)).toBeLessThan(0.03);
      expect(Math.abs(push)).toBeLessThan(0.05);
    }
  });
});
