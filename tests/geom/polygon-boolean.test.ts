import { describe, expect, it } from 'vitest';
import { coveredRegions, grownRegions } from '../../src/geom/polygon-boolean.ts';
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

describe('grownRegions', () => {
  const square = (x: number, y: number, a: number) => ring(x, y, x + a, y, x + a, y + a, x, y + a);
  const hole = (x: number, y: number, a: number) => ring(x, y, x, y + a, x + a, y + a, x + a, y);

  it('moves outlines out and holes in, corners staying corners', () => {
    const [region] = grownRegions([square(0, 0, 20), hole(5, 5, 8)], 1);
    expect(ringArea(region.outer)).toBeCloseTo(22 * 22, 6);
    expect(region.outer).toHaveLength(8);
    expect(ringArea(region.holes[0])).toBeCloseTo(-36, 6);
    expect(ringArea(grownRegions([square(0, 0, 20)], -1)[0].outer)).toBeCloseTo(18 * 18, 6);
  });

  it('closes what is narrower than two distances, and loses what is', () => {
    expect(grownRegions([square(0, 0, 20), hole(5, 5, 2)], 1)[0].holes).toEqual([]);
    expect(grownRegions([square(0, 0, 2)], -1)).toEqual([]);
    expect(grownRegions([], 1)).toEqual([]);
  });

  it('cuts very sharp corners off square, no nearer than the distance', () => {
    const [region] = grownRegions([ring(0, 0, 100, -5, 100, 5)], 1);
    const left = Math.min(...region.outer.filter((_, i) => i % 2 === 0));
    expect(left).toBeLessThan(-0.99);
    expect(left).toBeGreaterThan(-4);
  });
});
