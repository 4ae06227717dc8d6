import { describe, expect, it } from 'vitest';
import { flatArc } from '../../src/geom/svg-arc.ts';
import { forAll } from '../support/for-all.ts';
import { near } from '../support/near-numbers.ts';

const [EAST, NORTH] = [
  { x: 5, y: 0 },
  { x: 0, y: 5 },
];
const packed = (points: readonly { x: number; y: number }[]): number[] => points.flatMap(({ x, y }) => [x, y]);
const middleOf = <T>(points: readonly T[]): T => points[points.length / 2 - 1];

describe('flatArc', () => {
  it('takes that of the four arcs which the flags name', () => {
    const arcs = [
      [0, 1],
      [0, 0],
      [1, 1],
      [1, 0],
    ].map(([large, sweep]) => flatArc(EAST, [5, 5, 0, large, sweep], NORTH, 0.1));
    // Steps of 2 acos(1 - 0.1 / 5), 22.9 degrees, go into 90 degrees four times and into 270 twelve times.
    expect(arcs.map((points) => points.length)).toEqual([4, 4, 12, 12]);
    const h = 5 * Math.SQRT1_2;
    expect(arcs.map((points) => [middleOf(points).x, middleOf(points).y])).toEqual([
      near([h, h]),
      near([5 - h, 5 - h]),
      near([5 + h, 5 + h]),
      near([-h, -h]),
    ]);
    for (const points of arcs) expect(points.at(-1)).toBe(NORTH);
  });

  it('stays on its ellipse, turned and moved', () => {
    // Centre 3, -2, half axes 8 and 5, turned by 30 degrees, from 20 to 120 degrees of its own angle.
    const [c, s] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
    const at = (deg: number) => {
      const [x, y] = [8 * Math.cos((deg * Math.PI) / 180), 5 * Math.sin((deg * Math.PI) / 180)];
      return { x: 3 + c * x - s * y, y: -2 + s * x + c * y };
    };
    const points = flatArc(at(20), [8, 5, 30, 0, 1], at(120), 0.05);
    expect(points.length).toBe(8);
    const expected = Array.from({ length: 8 }, (_, i) => at(20 + (100 * (i + 1)) / 8));
    expect(packed(points)).toEqual(near(packed(expected), 9));
    const back = flatArc(at(120), [8, 5, 30, 0, 0], at(20), 0.05);
    expect(packed(back.slice(0, -1).reverse())).toEqual(near(packed(points.slice(0, -1)), 9));
    const rest = flatArc(at(20), [8, 5, 30, 1, 0], at(120), 0.05);
    expect(rest.length).toBe(21);
    expect(packed(rest.slice(0, 1))).toEqual(near(packed([at(20 - 260 / 21)]), 9));
    for (const { x, y } of rest) {
      const [u, v] = [c * (x - 3) + s * (y + 2), -s * (x - 3) + c * (y + 2)];
      expect((u / 8) ** 2 + (v / 5) ** 2).toBeCloseTo(1, 9);
    }
  });

  it('makes radii that are too short just long enough', () => {
    const points = flatArc({ x: -3, y: 0 }, [1, 1, 0, 0, 1], { x: 3, y: 0 }, 0.5);
    // Half a circle of 3; steps of 67 degrees go into it three times.
    expect(packed(points)).toEqual(near([-1.5, -1.5 * Math.sqrt(3), 1.5, -1.5 * Math.sqrt(3), 3, 0]));
    const oval = flatArc({ x: 0, y: -6 }, [1, 2, 0, 0, 1], { x: 0, y: 6 }, 0.01);
    expect(Math.max(...oval.map(({ x }) => x))).toBeCloseTo(3, 1);
    const high = flatArc({ x: -6, y: 0 }, [2, 1, 0, 0, 1], { x: 6, y: 0 }, 0.01);
    expect(Math.min(...high.map(({ y }) => y))).toBeCloseTo(-3, 1);
  });

  it('takes radii without their sign', () => {
    expect(flatArc(EAST, [-5, -5, 0, 0, 1], NORTH, 0.1)).toEqual(flatArc(EAST, [5, 5, 0, 0, 1], NORTH, 0.1));
  });

  it('is straight without a radius and nothing between one place', () => {
    expect(flatArc(EAST, [0, 5, 0, 0, 1], NORTH, 0.1)).toEqual([NORTH]);
    expect(flatArc(EAST, [5, 0, 0, 0, 1], NORTH, 0.1)).toEqual([NORTH]);
    expect(flatArc(EAST, [5, 5, 0, 1, 1], { ...EAST }, 0.1)).toEqual([]);
    expect(flatArc(EAST, [5, 5, 0, 0, 1], { x: 5, y: 5 }, 0.001).length).toBeGreaterThan(10);
    expect(flatArc(EAST, [5, 5, 0, 0, 1], { x: 0, y: 0 }, 0.001).length).toBeGreaterThan(10);
  });

  it('ends, however fine or coarse it is asked for', () => {
    expect(flatArc(EAST, [5, 5, 0, 0, 1], NORTH, 1e-30)).toHaveLength(100_000);
    expect(flatArc(EAST, [5, 5, 0, 0, 1], NORTH, 50)).toEqual([NORTH]);
    expect(flatArc(EAST, [5, 5, 0, 1, 1], NORTH, 50)).toHaveLength(2);
    expect(flatArc({ x: 0, y: 0 }, [1, 1, 0, 0, 1], { x: 1e-200, y: 0 }, 0.1)).toEqual([{ x: 1e-200, y: 0 }]);
  });

  it('is never farther from the circle than the tolerance, and not much finer than that', async () => {
    const gen = (rand: () => number) => [10 * rand(), 2 * Math.PI * rand(), 10 ** (-3 * rand() - 1), rand()];
    await forAll(gen, ([more, angle, tolerance, flags]) => {
      const radius = 5 + more;
      const to = { x: 10 * Math.cos(angle), y: 10 * Math.sin(angle) };
      const [large, sweep] = [flags < 0.5 ? 1 : 0, flags % 0.5 < 0.25 ? 1 : 0];
      const points = [{ x: 0, y: 0 }, ...flatArc({ x: 0, y: 0 }, [radius, radius, 0, large, sweep], to, tolerance)];
      const chord = Math.hypot(points[1].x, points[1].y);
      // Rise of a chord: r - sqrt(r² - (c / 2)²).
      const rise = radius - Math.sqrt(radius * radius - (chord * chord) / 4);
      expect(rise).toBeLessThanOrEqual(tolerance * (1 + 1e-6));
      const turned = 2 * Math.asin(5 / radius);
      const whole = large === 1 ? 2 * Math.PI - turned : turned;
      expect((points.length - 1) * 2 * Math.asin(chord / 2 / radius)).toBeCloseTo(whole, 6);
      if (points.length > 9) expect(rise).toBeGreaterThan(0.75 * tolerance);
    });
  });
});
