import { describe, expect, it } from 'vitest';
import { scaleAlong, scaledDirection, scaledNormal, scaledPoint, scaledPoints } from '../../src/geom/scale-along.ts';
import { forAll } from '../support/for-all.ts';
import { near } from '../support/near-numbers.ts';

const numbers = ({ x, y }: { x: number; y: number }): number[] => [x, y];
/** Along 3, 4 to the double, across it to the half. */
const scale = scaleAlong(Math.atan2(4, 3), 2, 0.5);

describe('scaleAlong', () => {
  it('draws out along its direction and presses together across it', () => {
    expect([scale.xx, scale.xy, scale.yy]).toEqual(near([1.04, 0.72, 1.46]));
    expect(numbers(scaledPoint({ x: 3, y: 4 }, scale))).toEqual(near([6, 8]));
    expect(numbers(scaledPoint({ x: -4, y: 3 }, scale))).toEqual(near([-2, 1.5]));
    expect([...scaledPoints([3, 4, -4, 3, 10, 100], scale)]).toEqual(near([6, 8, -2, 1.5, 82.4, 153.2]));
  });

  it('takes a direction and its opposite as one', () => {
    const back = scaleAlong(Math.atan2(-4, -3), 2, 0.5);
    expect([back.xx, back.xy, back.yy]).toEqual(near([1.04, 0.72, 1.46]));
  });

  it('is exact where both factors are one', () => {
    expect(scaleAlong(0.7, 1.25, 1.25)).toEqual({ xx: 1.25, xy: 0, yy: 1.25 });
  });

  it.each([
    [0, 1],
    [1, 0],
    [-2, 1],
    [1, -2],
    [NaN, 1],
    [1, NaN],
  ])('wants factors above nought, not %d and %d', (along, across) => {
    expect(() => scaleAlong(0, along, across)).toThrow(new RangeError(`scale ${along} along, ${across} across`));
  });

  it('turns lines, and what stands square on them against them', async () => {
    expect(numbers(scaledDirection({ x: 1, y: 0 }, scale))).toEqual(
      near([1.04, 0.72].map((v) => v / Math.hypot(1.04, 0.72))),
    );
    expect(numbers(scaledNormal({ x: 0, y: 1 }, scale))).toEqual(
      near([-0.72, 1.04].map((v) => v / Math.hypot(1.04, 0.72))),
    );
    const gen = (rand: () => number) => ({
      way: 7 * rand(),
      angle: 7 * rand(),
      along: 0.2 + rand(),
      across: 0.2 + rand(),
    });
    await forAll(gen, ({ way, angle, along, across }) => {
      const any = scaleAlong(angle, along, across);
      const ahead = scaledDirection({ x: Math.cos(way), y: Math.sin(way) }, any);
      const left = scaledNormal({ x: -Math.sin(way), y: Math.cos(way) }, any);
      expect([Math.hypot(ahead.x, ahead.y), left.x, left.y]).toEqual(near([1, -ahead.y, ahead.x]));
    });
  });

  it('leaves no direction as none', () => {
    expect(scaledDirection({ x: 0, y: 0 }, scale)).toEqual({ x: 0, y: 0 });
  });
});
