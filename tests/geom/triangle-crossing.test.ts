import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import { doTrianglesCross } from '../../src/geom/triangle-crossing.ts';

type Point = readonly [number, number, number];

const cross = (a: readonly Point[], b: readonly Point[], tolerance = 1e-9): boolean =>
  doTrianglesCross(Float64Array.from([...a, ...b].flat()), Uint32Array.from([0, 1, 2, 3, 4, 5]), 0, 1, tolerance);

/** Six times the signed volume of a, b, c, d: exact for whole numbers up to some thousands. */
function volume(a: Point, b: Point, c: Point, d: Point): number {
  const [p, q, r] = [a, b, c].map((point) => point.map((value, i) => value - d[i]));
  return p[0] * (q[1] * r[2] - q[2] * r[1]) + p[1] * (q[2] * r[0] - q[0] * r[2]) + p[2] * (q[0] * r[1] - q[1] * r[0]);
}

/** True when the inside of the stretch from p to q passes through the inside of the triangle: signs of volumes only. */
function pierces(p: Point, q: Point, [a, b, c]: readonly Point[]): boolean {
  if (volume(a, b, c, p) * volume(a, b, c, q) >= 0) return false;
  const signs = [volume(p, q, a, b), volume(p, q, b, c), volume(p, q, c, a)].map(Math.sign);
  return signs.every((sign) => sign > 0) || signs.every((sign) => sign < 0);
}

describe('doTrianglesCross', () => {
  const flat: Point[] = [
    [0, 0, 0],
    [10, 0, 0],
    [0, 10, 0],
  ];

  it('agrees with stretches piercing triangles, on whole numbers', () => {
    const random = seededRandom(11);
    const point = (): Point => [0, 0, 0].map(() => Math.floor(1000 * random())) as unknown as Point;
    let crossings = 0;
    for (let i = 0; i < 4000; i += 1) {
      const [a, b] = [
        [point(), point(), point()],
        [point(), point(), point()],
      ];
      const truth = [0, 1, 2].some((k) => pierces(a[k], a[(k + 1) % 3], b) || pierces(b[k], b[(k + 1) % 3], a));
      expect(cross(a, b)).toBe(truth);
      expect(cross(b, a)).toBe(truth);
      if (truth) crossings += 1;
    }
    expect(crossings).toBeGreaterThan(200);
  });

  it('lets triangles touch: in a corner, along a side, in a corner on a face', () => {
    expect(
      cross(flat, [
        [10, 0, 0],
        [20, 0, 5],
        [20, 5, 5],
      ]),
    ).toBe(false);
    expect(
      cross(flat, [
        [2, 0, 0],
        [8, 0, 0],
        [5, -5, 5],
      ]),
    ).toBe(false);
    expect(
      cross(flat, [
        [2, 2, 0],
        [2, 2, 5],
        [3, 2, 5],
      ]),
    ).toBe(false);
    expect(
      cross(flat, [
        [2, 2, 1],
        [2, 2, 5],
        [3, 2, 5],
      ]),
    ).toBe(false);
  });

  it('calls no crossing what is shallower than the tolerance', () => {
    const dipping = (depth: number): Point[] => [
      [2, 2, -depth],
      [2, 3, 5],
      [3, 2, 5],
    ];
    expect(cross(flat, dipping(0.02), 0.1)).toBe(false);
    expect(cross(flat, dipping(2), 0.1)).toBe(true);
    // A corner on the middle of a neighbour's side, a little beyond it by rounding.
    expect(
      cross(
        flat,
        [
          [2, 1e-7, 0],
          [8, 1e-7, 0],
          [5, -5, 5],
        ],
        1e-6,
      ),
    ).toBe(false);
  });

  it('counts triangles that lie on each other in one plane, not those side by side', () => {
    expect(
      cross(flat, [
        [1, 1, 0],
        [4, 1, 0],
        [1, 4, 0],
      ]),
    ).toBe(true);
    expect(
      cross(
        flat,
        [
          [1, 1, 1e-8],
          [4, 1, 0],
          [1, 4, 0],
        ],
        1e-6,
      ),
    ).toBe(true);
    expect(
      cross(flat, [
        [10, 0, 0],
        [10, 10, 0],
        [0, 10, 0],
      ]),
    ).toBe(false);
    expect(
      cross(
        flat,
        [
          [9.99, 0, 0],
          [10, 10, 0],
          [0, 10, 0],
        ],
        0.1,
      ),
    ).toBe(false);
    expect(
      cross(flat, [
        [20, 0, 0],
        [30, 0, 0],
        [20, 10, 0],
      ]),
    ).toBe(false);
  });

  it('finds nothing crossed by a triangle without area', () => {
    expect(
      cross(flat, [
        [2, 2, -5],
        [2, 2, 0],
        [2, 2, 5],
      ]),
    ).toBe(false);
  });

  it('keeps its digits far from the origin', () => {
    const far = (points: readonly Point[]): Point[] => points.map(([x, y, z]) => [x + 1e6, y - 1e6, z + 1e6]);
    expect(
      cross(
        far(flat),
        far([
          [2, 2, -0.001],
          [2, 3, 5],
          [3, 2, 5],
        ]),
        1e-6,
      ),
    ).toBe(true);
    expect(
      cross(
        far(flat),
        far([
          [2, 2, 0.001],
          [2, 3, 5],
          [3, 2, 5],
        ]),
        1e-6,
      ),
    ).toBe(false);
  });
});
