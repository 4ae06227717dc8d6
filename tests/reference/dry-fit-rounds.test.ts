import { describe, expect, it } from 'vitest';
import type { DryFit } from '../../src/model/dry-fit.ts';
import { IS_LONG } from '../support/long.ts';
import { ball } from './handbook/ball.ts';
import { elbow, tube, type Solid } from './handbook/polygon-solids.ts';
import { allOf, parted } from './handbook/parted-tube.ts';
import { runSolid } from './handbook/flat-figures.ts';

async function fitOf(solid: Solid, thicknessMm: number): Promise<DryFit> {
  const { outcome } = await runSolid(solid, { thicknessMm });
  if (outcome.dryFit === null) throw new Error('no dry fit');
  return outcome.dryFit;
}

const worstOf = ({ worstGapMm, worstOverlapMm }: DryFit): number => Math.max(worstGapMm, worstOverlapMm);

describe('things of flat panels', () => {
  const bracer = tube(8, 45, 60, () => 200);
  const cone = tube(12, 80, 40, () => 100);
  it.each([
    ['an octagonal bracer in two grooved halves', parted(bracer, 8, [0, 4]), 2],
    ['an octagonal bracer of eight panels', parted(bracer, 8, allOf(8)), 8],
    ['a truncated cone of twelve panels', parted(cone, 12, allOf(12)), 12],
    ['a truncated cone of one grooved piece', parted(cone, 12, [0]), 1],
    ['an elbow of two eight-sided tubes', elbow(8, 50, 120), 10],
  ])('%s closes', async (_, solid, seams) => {
    const fit = await fitOf(solid, 6);
    expect(fit.perSeam.length).toBeGreaterThanOrEqual(Math.min(3, seams));
    expect(worstOf(fit)).toBeLessThan(1e-6);
  });
});

describe('round things', () => {
  it('a ball of twelve gores closes the better, the finer its facets', async () => {
    const worst: number[] = [];
    for (const columns of IS_LONG ? [2, 4, 8] : [2, 4])
      worst.push(worstOf(await fitOf(ball(100, 12, columns, 6 * columns), 6)));
    expect(worst[0]).toBeLessThan(5e-4);
    for (let k = 1; k < worst.length; k += 1) expect(worst[k]).toBeLessThan(worst[k - 1] / 4);
  });

  it('an elbow of two round tubes closes with the square of its facets’ size', async () => {
    const worst: number[] = [];
    for (const sides of IS_LONG ? [24, 48, 96] : [24, 48]) worst.push(worstOf(await fitOf(elbow(sides, 50, 120), 6)));
    expect(worst[0]).toBeLessThan(0.25);
    for (let k = 1; k < worst.length; k += 1) {
      const order = Math.log2(worst[k - 1] / worst[k]);
      expect(order).toBeGreaterThan(1.85);
      expect(order).toBeLessThan(2.15);
    }
  });

  it('a tube cut straight across and along closes exactly, however coarse', async () => {
    const fit = await fitOf(
      parted(
        tube(24, 50, 50, () => 120),
        24,
        [0],
      ),
      10,
    );
    expect(worstOf(fit)).toBeLessThan(1e-6);
  });

  it.each([24, 96])('a cone of %d sides slit along one closes exactly, however coarse or fine', async (sides) => {
    expect(
      worstOf(
        await fitOf(
          tube(sides, 80, 40, () => 100),
          6,
        ),
      ),
    ).toBeLessThan(1e-6);
  });
});
