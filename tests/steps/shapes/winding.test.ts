import { expect, it } from 'vitest';
import { makeShape } from '../../../src/steps/shapes/make-shape.ts';
import { readSizes } from '../../../src/steps/shapes/read-sizes.ts';
import type { ShapeKind } from '../../../src/steps/shapes/shape-kind.ts';
import { HELICAL_STRIP, TAPERED_HELICAL_STRIP } from '../../../src/steps/shapes/winding.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { forAll } from '../../support/for-all.ts';

function figures(kind: ShapeKind, sizes: Readonly<Record<string, number>>) {
  const typed = Object.entries(sizes).map(([name, value]) => [name, String(value)] as const);
  const made = expectOk(makeShape(kind, expectOk(readSizes(kind, typed))));
  const all = Object.fromEntries(made.measures.map(({ name, value }) => [name, value as number]));
  return { ...made, all };
}

it('a strip of foam winds round its neutral surface, pi (D + 2 k t)', () => {
  const { all } = figures(HELICAL_STRIP, {
    rod_diameter: 30,
    strip_width: 20,
    strip_thickness: 2,
    K: 0.4,
    covered_length: 600,
  });
  const around = Math.PI * (30 + 2 * 0.4 * 2);
  expect(all.circumference).toBeCloseTo(around, 9);
  expect(all.strip_length).toBeCloseTo((600 * around) / 20, 6);
  expect(all.lead_angle_deg).toBeCloseTo((180 / Math.PI) * Math.asin(20 / around), 9);
});

it('without a taper both kinds of winding are one', () => {
  const sizes = { strip_width: 20, overlap: 5, covered_length: 600 };
  const [straight, tapered] = [
    figures(HELICAL_STRIP, { ...sizes, rod_diameter: 30 }).all,
    figures(TAPERED_HELICAL_STRIP, { ...sizes, large_diameter: 30, small_diameter: 30 }).all,
  ];
  for (const name of ['strip_length', 'turns']) expect(tapered[name]).toBeCloseTo(straight[name], 8);
  expect(tapered.pitch_start).toBeCloseTo(straight.pitch, 9);
  expect(tapered.lead_angle_end_deg).toBeCloseTo(straight.lead_angle_deg, 9);
});

/** A cone laid flat is a sector: a place at the distance r / sin(taper) from the apex and the angle theta sin(taper). */
it('on a taper the strip lies flat as its edge does in the developed cone', () =>
  forAll(
    (rand) => ({
      large_diameter: 35 + 20 * rand(),
      small_diameter: 15 + 15 * rand(),
      covered_length: 100 + 300 * rand(),
      strip_width: 8 + 20 * rand(),
    }),
    (sizes) => {
      const { all, pieces } = figures(TAPERED_HELICAL_STRIP, sizes);
      const [r0, r1] = [sizes.large_diameter / 2, sizes.small_diameter / 2];
      const slant = Math.hypot(sizes.covered_length, r0 - r1);
      expect(all.strip_length).toBeCloseTo((Math.PI * (r0 + r1) * slant) / sizes.strip_width, 6);
      const [lower] = pieces[0].outline;
      expect(lower.lengthMm / all.strip_length).toBeCloseTo(1, 9);
      const sin = (r0 - r1) / slant;
      const angle = 2 * Math.PI * all.turns * sin;
      const [p, q] = [r0 / sin, r1 / sin];
      const across = Math.sqrt(p * p + q * q - 2 * p * q * Math.cos(angle));
      const { from, to } = lower.segments[0];
      expect(Math.hypot(to.x - from.x, to.y - from.y) / across).toBeCloseTo(1, 7);
    },
    { runs: 20 },
  ));

it('a winding that never gets on or that would be a wrap is refused', () => {
  for (const sizes of [[['overlap', '20']], [['strip_width', '100']]] as const)
    expect(makeShape(HELICAL_STRIP, expectOk(readSizes(HELICAL_STRIP, sizes))).ok).toBe(false);
});
