import { describe, expect, it } from 'vitest';
import { convexHull, tightBox } from '../../src/geom/convex-hull.ts';

describe('convexHull', () => {
  it('runs counter-clockwise from the leftmost point and leaves out what lies inside or on a side', () => {
    expect([...convexHull([5, 5, 10, 0, 0, 0, 10, 10, 5, 0, 0, 10])]).toEqual([0, 0, 10, 0, 10, 10, 0, 10]);
  });
});

describe('tightBox', () => {
  it('finds the sides of a turned rectangle', () => {
    const [c, s] = [Math.cos(0.4), Math.sin(0.4)];
    const corners = [0, 0, 30, 0, 30, 12, 0, 12];
    const turned = corners.map((_, i) =>
      i % 2 === 0 ? c * corners[i] - s * corners[i + 1] : s * corners[i - 1] + c * corners[i],
    );
    const box = tightBox(turned);
    expect(box.longMm).toBeCloseTo(30, 9);
    expect(box.shortMm).toBeCloseTo(12, 9);
    expect(box.x).toBeCloseTo(c, 9);
    expect(box.y).toBeCloseTo(s, 9);
  });

  it('leaves a square upright', () => {
    expect(tightBox([0, 0, 10, 0, 10, 10, 0, 10])).toMatchObject({ longMm: 10, shortMm: 10 });
    expect(Math.abs(tightBox([0, 0, 10, 0, 10, 10, 0, 10]).x) % 1).toBe(0);
  });
});
