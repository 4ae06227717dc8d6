import { describe, expect, it } from 'vitest';
import { coveredRegions } from '../../src/geom/polygon-boolean.ts';
import { ringArea } from '../../src/geom/ring.ts';

const ring = (...xy: number[]): Float64Array => Float64Array.from(xy);

describe('coveredRegions', () => {
  it('gives corners back exactly as they came, not as the grid has them', () => {
    const third = 1 / 3;
    const regions = coveredRegions([ring(third, third, 10 + third, third, 10 + third, 7.1234567, third, 7.1234567)]);
    expect(regions).toHaveLength(1);
    expect([...regions[0].outer].sort()).toEqual(
      [third, third, third, third, 10 + third, 10 + third, 7.1234567, 7.1234567].sort(),
    );
  });

  it('keeps corners that lie on a straight line', () => {
    const [region] = coveredRegions([ring(0, 0, 5, 0, 10, 0, 10, 10, 0, 10)]);
    expect(region.outer.length / 2).toBe(5);
  });

  it('parts a crossed ring and drops the loop that runs the wrong way', () => {
    // A bow tie: the right half runs counter-clockwise, the left one clockwise.
    const regions = coveredRegions([ring(0, 0, 10, 10, 10, 0, 0, 10)]);
    expect(regions).toHaveLength(1);
    expect(ringArea(regions[0].outer)).toBeCloseTo(25, 6);
  });

  it('keeps holes with their ring and puts the largest region first', () => {
    const square = (x: number, y: number, a: number) => ring(x, y, x + a, y, x + a, y + a, x, y + a);
    const hole = (x: number, y: number, a: number) => ring(x, y, x, y + a, x + a, y + a, x + a, y);
    const regions = coveredRegions([square(100, 0, 5), square(0, 0, 20), hole(2, 2, 3), hole(8, 8, 6)]);
    expect(regions.map((r) => Math.round(ringArea(r.outer)))).toEqual([400, 25]);
    expect(regions[0].holes.map((h) => Math.round(ringArea(h)))).toEqual([-36, -9]);
  });

  it('joins what overlaps', () => {
    const regions = coveredRegions([ring(0, 0, 10, 0, 10, 10, 0, 10), ring(5, 0, 15, 0, 15, 10, 5, 10)]);
    expect(regions).toHaveLength(1);
    expect(ringArea(regions[0].outer)).toBeCloseTo(150, 6);
  });

  it('has nothing to say about lines and points', () => {
    expect(coveredRegions([])).toEqual([]);
    expect(coveredRegions([ring(0, 0, 1, 1)])).toEqual([]);
    expect(coveredRegions([ring(0, 0, 0, 10, 10, 10, 10, 0)])).toEqual([]);
  });
});
