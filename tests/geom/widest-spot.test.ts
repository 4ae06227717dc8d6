import { describe, expect, it } from 'vitest';
import { depthInside, widestSpot } from '../../src/geom/widest-spot.ts';

describe('widestSpot', () => {
  it('finds half the short side of a rectangle and the arm of an L', () => {
    expect(widestSpot([Float64Array.from([0, 0, 40, 0, 40, 10, 0, 10])], 0.01).radiusMm).toBeCloseTo(5, 1);
    // An L of arms 10 wide: the largest circle sits in the corner, r = 10 sqrt 2 / (1 + sqrt 2) from its two outer sides and the inner corner.
    const ell = Float64Array.from([0, 0, 40, 0, 40, 10, 10, 10, 10, 40, 0, 40]);
    expect(widestSpot([ell], 0.001).radiusMm).toBeCloseTo((10 * Math.SQRT2) / (1 + Math.SQRT2), 2);
  });

  it('keeps clear of holes', () => {
    const square = Float64Array.from([0, 0, 30, 0, 30, 30, 0, 30]);
    const hole = Float64Array.from([10, 10, 10, 20, 20, 20, 20, 10]);
    const spot = widestSpot([square, hole], 0.001);
    expect(spot.radiusMm).toBeCloseTo((10 * Math.SQRT2) / (1 + Math.SQRT2), 2);
    expect(depthInside([square, hole], 15, 15)).toBeCloseTo(-5, 9);
    expect(depthInside([square, hole], 3, 15)).toBeCloseTo(3, 9);
  });

  it('is nothing for a line', () => {
    expect(widestSpot([Float64Array.from([0, 0, 10, 0])], 0.1).radiusMm).toBe(0);
  });
});
