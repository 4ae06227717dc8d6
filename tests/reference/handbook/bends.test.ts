import { describe, expect, it } from 'vitest';
import { bendAllowance, bendDeduction, outsideSetback } from '../../../src/geom/bend-allowance.ts';
import { numbersOf, rowOf } from './cases.ts';
import { apart, flatPointsOf, layFlat } from './flat-figures.ts';
import type { Solid } from './polygon-solids.ts';

/**
 * Bend allowances of the sheet-metal handbooks, by the formula and through the whole chain: a plate with two legs and a round bend,
 * sculpted on the inside of the bend, laid flat. The bend is a row of flat sides that touch the circle, so that with `n` turns it
 * takes 2 n (r + k t) tan(angle / 2n) of sheet.
 */
const LEG = 50;
const WIDTH = 40;
const TURNS = 90;
const INCH = 25.4;

function bentPlate(insideRadius: number, angle: number): Solid {
  const half = angle / TURNS / 2;
  const profile: [number, number][] = [[insideRadius, -LEG]];
  for (let i = 0; i < TURNS; i += 1) {
    const at = (2 * i + 1) * half;
    profile.push([(insideRadius / Math.cos(half)) * Math.cos(at), (insideRadius / Math.cos(half)) * Math.sin(at)]);
  }
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  profile.push([insideRadius * cos - LEG * sin, insideRadius * sin + LEG * cos]);
  const count = profile.length;
  return {
    corners: [0, WIDTH].flatMap((z) => profile.map(([x, y]) => [x, y, z] as const)),
    // Outward is away from the middle of the bend.
    faces: profile.slice(1).map((_, i) => [i, i + 1, count + i + 1, count + i]),
    seams: [],
  };
}

async function flatLength(insideRadius: number, angle: number, thicknessMm: number, neutralFraction: number) {
  const { pieces } = await layFlat(bentPlate(insideRadius, angle), { modelIs: 'back', thicknessMm, neutralFraction });
  expect(pieces).toHaveLength(1);
  const [first] = flatPointsOf(pieces[0], 0);
  const [last] = flatPointsOf(pieces[0], TURNS + 1);
  const length = apart(first, last);
  // The template is a rectangle with square edges: what is cut is as long.
  expect(pieces[0].areaMm2 / WIDTH).toBeCloseTo(length, 6);
  return length;
}

/** What tangents add to an arc of that many turns, as a share: x² / 3 with x half a turn, and the next term. */
const tangentShare = (angle: number): number => Math.tan(angle / TURNS / 2) / (angle / TURNS / 2);

describe('bend allowances', () => {
  it.each(['M1', 'M2'])('%s', async (id) => {
    const { inputs, expected } = numbersOf(id);
    const angle = (inputs.angle_deg * Math.PI) / 180;
    const bend = { angle, insideRadius: inputs.inner_radius, thickness: inputs.thickness, neutralFraction: inputs.K };
    expect(bendAllowance(bend)).toBeCloseTo(expected.allowance, 6);
    expect(outsideSetback(bend)).toBeCloseTo(expected.outside_setback, 6);
    expect(bendDeduction(bend)).toBeCloseTo(expected.deduction, 6);
    const through = await flatLength(inputs.inner_radius, angle, inputs.thickness, inputs.K);
    expect(through).toBeCloseTo(2 * LEG + expected.allowance * tangentShare(angle), 5);
  });

  it('M4: a published example in inches', async () => {
    const { inputs, expected } = numbersOf('M4');
    const angle = (inputs.angle_deg * Math.PI) / 180;
    const [radius, thickness] = [inputs.inner_radius_in * INCH, inputs.thickness_in * INCH];
    const allowance = bendAllowance({ angle, insideRadius: radius, thickness, neutralFraction: inputs.K });
    expect(allowance / INCH).toBeCloseTo(expected.allowance_in, 5);
    const through = await flatLength(radius, angle, thickness, inputs.K);
    expect((through - 2 * LEG) / INCH / tangentShare(angle)).toBeCloseTo(expected.allowance_in, 5);
  });

  it('M5: the empirical allowance of aviation structures, whose k of 0.4475 comes within 0.8 per cent of it', async () => {
    const { inputs, expected } = numbersOf('M5');
    const angle = (inputs.N * Math.PI) / 180;
    const through = async (k: number) =>
      ((await flatLength(inputs.R, angle, inputs.T, k)) - 2 * LEG) / tangentShare(angle);
    const own = await through(expected.implied_K);
    // The formula's 0.0173 (or 0.01743) a degree stands for pi / 180 = 0.017453.
    expect(Math.abs(own / expected.allowance - 1)).toBeLessThan(0.0085);
    expect(Math.abs(own / expected['allowance_0.01743_form'] - 1)).toBeLessThan(0.0015);
    expect((await through(0.5)) / own - 1).toBeCloseTo((0.5 - expected.implied_K) * (inputs.T / (own / angle)), 5);
  });

  it('M6: the outside of a bend stretches by t / 2 r, through the chain', async () => {
    const { thickness } = numbersOf('M6').inputs;
    const strains = rowOf('M6', 'expected', 'outer_strain_percent');
    for (const [i, radius] of rowOf('M6', 'inputs', 'inner_radius').entries()) {
      const { pieces, findings } = await layFlat(bentPlate(radius, Math.PI / 2), {
        modelIs: 'back',
        thicknessMm: thickness,
        neutralFraction: 0.5,
      });
      // Flat sides of 1 degree miss the circle by a share of 1e-5.
      expect(Math.abs((pieces[0].bend?.outsidePct ?? 0) / strains[i] - 1)).toBeLessThan(3e-5);
      expect(pieces[0].bend?.insidePct).toBeCloseTo(pieces[0].bend?.outsidePct ?? 0, 9);
      const tight = findings.filter(({ code }) => code === 'foam/bend-tight').map(({ severity }) => severity);
      expect(tight).toEqual(strains[i] > 25 ? ['warning'] : strains[i] > 10.001 ? ['note'] : []);
    }
  });
});
