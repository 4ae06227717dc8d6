import { describe, expect, it } from 'vitest';
import { coveredRegions, filledRegions, grownRegions, strokedRegions } from '../../src/geom/polygon-boolean.ts';
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

  it('puts equals in the order of their places, whichever way they came', () => {
    const square = (x: number, y: number, a: number) => ring(x, y, x + a, y, x + a, y + a, x, y + a);
    const hole = (x: number, y: number, a: number) => ring(x, y, x, y + a, x + a, y + a, x + a, y);
    const squares = [square(100, 0, 5), square(0, 80, 5), square(0, 0, 5), square(30, 30, 20), square(-50, 3, 5)];
    const holes = [hole(44, 32, 2), hole(32, 44, 2), hole(32, 32, 2), hole(40, 40, 3)];
    for (let turn = 0; turn < 5; turn += 1) {
      const regions = coveredRegions([
        ...squares.slice(turn),
        ...squares.slice(0, turn),
        ...holes.slice(turn),
        ...holes.slice(0, turn),
      ]);
      const least = (r: Float64Array, k: number): number => Math.min(...r.filter((_, i) => i % 2 === k));
      const places = (rings: readonly Float64Array[]) => rings.map((r) => [least(r, 0), least(r, 1)]);
      expect(places(regions.map(({ outer }) => outer))).toEqual([
        [30, 30],
        [-50, 3],
        [0, 0],
        [0, 80],
        [100, 0],
      ]);
      expect(places(regions[0].holes)).toEqual([
        [40, 40],
        [32, 32],
        [32, 44],
        [44, 32],
      ]);
    }
  });

  it('keeps an island in a hole as a region of its own', () => {
    const island = ring(8, 8, 12, 8, 12, 12, 8, 12);
    const regions = coveredRegions([ring(0, 0, 20, 0, 20, 20, 0, 20), ring(5, 5, 5, 15, 15, 15, 15, 5), island]);
    expect(regions.map(({ outer, holes }) => [ringArea(outer), holes.map(ringArea)])).toEqual([
      [400, [-100]],
      [16, []],
    ]);
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

describe('grownRegions with rounded corners', () => {
  it('adds the sides and a circle, as near to it as asked for', () => {
    const square = ring(0, 0, 20, 0, 20, 20, 0, 20);
    const [region] = grownRegions([square], 3, 0.01);
    // Steiner: area + girth · d + pi d².
    expect(ringArea(region.outer)).toBeGreaterThan(400 + 240 + 9 * Math.PI - 0.01 * 6 * Math.PI);
    expect(ringArea(region.outer)).toBeLessThan(400 + 240 + 9 * Math.PI);
    expect(grownRegions([square], 3, 1)[0].outer.length).toBeLessThan(region.outer.length / 2);
  });
});

describe('filledRegions', () => {
  const star = ring(
    ...[0, 2, 4, 1, 3].flatMap((k) => [Math.cos(0.4 * Math.PI * k), Math.sin(0.4 * Math.PI * k)].map((v) => 50 * v)),
  );
  const back = ring(...Array.from({ length: 5 }, (_, i) => [star[8 - 2 * i], star[9 - 2 * i]]).flat());

  it('fills the middle of a star or leaves it, by the rule, whichever way it is drawn', () => {
    for (const drawn of [star, back]) {
      const whole = filledRegions([drawn], 'nonzero');
      expect(whole).toHaveLength(1);
      // Five points and the pentagon between them: R² times 1.12257 (closed form of the pentagram).
      expect(ringArea(whole[0].outer)).toBeCloseTo(2500 * 1.12257, 0);
      const points = filledRegions([drawn], 'evenodd');
      expect(points).toHaveLength(5);
      // The inner pentagon is smaller by the golden ratio squared: 2.37764 R² / phi⁴.
      const inner = (2500 * 2.37764) / 6.854102;
      expect(points.reduce((sum, { outer }) => sum + ringArea(outer), 0)).toBeCloseTo(2500 * 1.12257 - inner, 0);
    }
  });

  it('gives corners back as they came and has nothing to say about lines', () => {
    const third = 1 / 3;
    const [region] = filledRegions([ring(third, 0, 0, 9, 7, 9), ring(1, 1, 2, 2)], 'evenodd');
    expect([...region.outer]).toContain(third);
    expect(filledRegions([ring(0, 0, 1, 1)], 'nonzero')).toEqual([]);
    expect(filledRegions([], 'nonzero')).toEqual([]);
  });
});

describe('strokedRegions', () => {
  const manner = { cap: 'butt', corner: 'miter', miterLimit: 4, deviationMm: 0.01 } as const;
  const area = (...more: Parameters<typeof strokedRegions>): number =>
    strokedRegions(...more).reduce(
      (sum, { outer, holes }) => sum + ringArea(outer) + holes.reduce((s, h) => s + ringArea(h), 0),
      0,
    );
  const open = (...points: number[]) => [{ points, isClosed: false }];

  it('covers length times width and what its ends add', () => {
    const line = open(1, 2, 11, 2);
    expect(area(line, 3, manner)).toBeCloseTo(30, 6);
    expect(area(line, 3, { ...manner, cap: 'square' })).toBeCloseTo(39, 6);
    expect(area(line, 3, { ...manner, cap: 'round' })).toBeCloseTo(30 + 2.25 * Math.PI, 0);
    const box = strokedRegions(line, 3, manner)[0].outer;
    expect([Math.min(...box), Math.max(...box)]).toEqual([0.5, 11]);
  });

  it('makes corners as asked for', () => {
    const hook = open(0, 0, 10, 0, 10, 10);
    // Two arms of 10 by 2 that share a square of 1, and the corner: a square of 1, its half, a quarter of a circle.
    expect(area(hook, 2, manner)).toBeCloseTo(40, 6);
    expect(area(hook, 2, { ...manner, corner: 'bevel' })).toBeCloseTo(39.5, 6);
    expect(area(hook, 2, { ...manner, corner: 'round' })).toBeCloseTo(39 + Math.PI / 4, 1);
    const sharp = open(0, 0, 30, 1, 0, 2);
    expect(area(sharp, 1, { ...manner, miterLimit: 50 })).toBeGreaterThan(area(sharp, 1, manner) + 3);
  });

  it('closes a closed line and keeps the hole in it', () => {
    const square = [{ points: [0, 0, 10, 0, 10, 10, 0, 10], isClosed: true }];
    const [region, ...none] = strokedRegions(square, 2, manner);
    expect(none).toEqual([]);
    expect([ringArea(region.outer), region.holes.map(ringArea)]).toEqual([144, [-64]]);
  });

  it('passes over what is no line', () => {
    expect(strokedRegions(open(3, 4), 2, manner)).toEqual([]);
    expect(strokedRegions([], 2, manner)).toEqual([]);
    expect(strokedRegions([...open(3, 4), ...open(0, 0, 9, 0)], 2, manner)).toHaveLength(1);
  });
});

it('draws a closed line too small for the grid as a dot as wide as the pen', () => {
  const points = [1e-9, 10, 0, 10 + 1e-9, -1e-9, 10, 0, 10 - 1e-9];
  for (const cap of ['butt', 'round', 'square'] as const) {
    const manner = { cap, corner: 'miter', miterLimit: 4, deviationMm: 1e-3 } as const;
    const [dot, ...others] = strokedRegions([{ points, isClosed: true }], 2, manner);
    expect(others).toEqual([]);
    expect(ringArea(dot.outer)).toBeCloseTo(Math.PI, 1);
  }
});
