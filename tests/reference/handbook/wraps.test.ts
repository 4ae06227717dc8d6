import { describe, expect, it } from 'vitest';
import type { ModelIs } from '../../../src/model/shell-layer.ts';
import { numbersOf } from './cases.ts';
import { apart, flatPointsOf, layFlat } from './flat-figures.ts';
import { tube } from './polygon-solids.ts';

/**
 * Wraps of a tube of outside diameter 120 in foam of 10 mm, from the model to the template: B1 of the handbook, and its neighbours by the
 * same formula pi (D + 2 d), d the way from the model to the neutral surface.
 */
const { inputs, expected } = numbersOf('B1');
const RADIUS = inputs.outer_diameter / 2;
const HEIGHT = 100;
const T = inputs.thickness;

const CASES: readonly { modelIs: ModelIs; k: number; wrap: number; out: number }[] = [
  { modelIs: 'face', k: 0, wrap: expected.inner, out: -T },
  { modelIs: 'face', k: 0.33, wrap: expected['K0.33'], out: -0.67 * T },
  { modelIs: 'face', k: 0.5, wrap: expected['K0.50_mid'], out: -0.5 * T },
  { modelIs: 'face', k: 1, wrap: expected.outer, out: 0 },
  { modelIs: 'middle', k: 0.5, wrap: expected.outer, out: 0 },
  { modelIs: 'back', k: 0.5, wrap: 2 * Math.PI * (RADIUS + T / 2), out: T / 2 },
];

/** Length of the flat piece and of its template, a rectangle, through the chain; corners on the circle, as a modeller draws them. */
async function wrapOf(sides: number, modelIs: ModelIs, neutralFraction: number) {
  const solid = tube(sides, RADIUS, RADIUS, () => HEIGHT);
  const { pieces } = await layFlat(solid, { modelIs, neutralFraction, thicknessMm: T });
  expect(pieces).toHaveLength(1);
  const [first, last] = flatPointsOf(pieces[0], 0);
  return { flat: apart(first, last), template: pieces[0].areaMm2 / HEIGHT };
}

/** The polygon's own wrap: its sides lie cos(pi / n) of the radius from the axis, and move with their planes. */
const polygonWrap = (sides: number, out: number): number =>
  2 * sides * (RADIUS * Math.cos(Math.PI / sides) + out) * Math.tan(Math.PI / sides);

describe.each(CASES)('a tube whose model is the $modelIs, k $k', ({ modelIs, k, wrap, out }) => {
  it(`wraps ${wrap.toFixed(3)} mm, the nearer the finer with the square of its sides`, async () => {
    const misses: number[] = [];
    for (const sides of [24, 48, 96]) {
      const own = polygonWrap(sides, out);
      const { flat, template } = await wrapOf(sides, modelIs, k);
      expect(Math.abs(flat - own)).toBeLessThan(1e-6);
      expect(Math.abs(template - own)).toBeLessThan(1e-6);
      misses.push(Math.abs(own - wrap));
    }
    for (const i of [1, 2]) expect(Math.abs(Math.log2(misses[i - 1] / misses[i]) - 2)).toBeLessThan(0.02);
    expect(misses[2] / wrap).toBeLessThan(1e-3);
  });
});
