import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import { CircleInTriangle } from '../../src/geom/circle-in-triangle.ts';

const part = new CircleInTriangle();

describe('the part of a triangle inside a circle', () => {
  it('is all of the circle, all of the triangle, or nothing', () => {
    part.measure(0.01, 2, 1, 6, 3, 4);
    expect(part.area).toBeCloseTo(Math.PI * 0.01, 12);
    expect(part.arc).toBeCloseTo(2 * Math.PI * 0.1, 12);
    part.measure(100, 2, 1, 6, 3, 4);
    expect(part.area).toBeCloseTo(12, 12);
    expect(part.arc).toBeCloseTo(0, 12);
    part.measure(1, -5, -5, 6, 3, 4);
    expect(part.area).toBeCloseTo(0, 12);
    expect(part.arc).toBeCloseTo(0, 12);
    part.measure(-1, 2, 1, 6, 3, 4);
    expect([part.area, part.arc]).toEqual([0, 0]);
  });

  it('is half a circle over the middle of a side, and a sixth at the corner of an even triangle', () => {
    part.measure(1, 5, 0, 10, 5, 8);
    expect(part.area).toBeCloseTo(Math.PI / 2, 12);
    expect(part.arc).toBeCloseTo(Math.PI, 12);
    part.measure(1, 0, 0, 10, 5, 5 * Math.sqrt(3));
    expect(part.area).toBeCloseTo(Math.PI / 6, 12);
    expect(part.arc).toBeCloseTo(Math.PI / 3, 12);
  });

  it('is what counting points says, and the arc is how fast the area grows', () => {
    const random = seededRandom(3);
    for (let round = 0; round < 40; round += 1) {
      const [base, foot, height] = [1 + random(), random() * 2 - 0.5, 0.3 + random()];
      const [x, y, r] = [random() * 2 - 0.5, random() * 2 - 0.8, 0.1 + random()];
      part.measure(r * r, x, y, base, foot, height);
      const { area, arc } = part;
      const n = 300;
      let inside = 0;
      for (let i = 0; i < n; i += 1) {
        for (let j = 0; j < n; j += 1) {
          // Points spread evenly over the triangle by folding a square.
          const [a, b] = [(i + 0.5) / n, (j + 0.5) / n];
          const [u, v] = a + b > 1 ? [1 - a, 1 - b] : [a, b];
          if ((u * base + v * foot - x) ** 2 + (v * height - y) ** 2 < r * r) inside += 1;
        }
      }
      expect(Math.abs(area - ((inside / (n * n)) * base * height) / 2)).toBeLessThan(0.005);
      const step = 1e-6;
      part.measure((r + step) ** 2, x, y, base, foot, height);
      expect((part.area - area) / step).toBeCloseTo(arc, 2);
    }
  });
});
