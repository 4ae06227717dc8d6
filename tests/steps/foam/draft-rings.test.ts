import { describe, expect, it } from 'vitest';
import { arc, line } from '../../../src/geom/outline.ts';
import { boxOfPoints } from '../../../src/geom/ring.ts';
import { deg, type Vec2 } from '../../../src/geom/vec.ts';
import type { ShapeEdge } from '../../../src/model/shape.ts';
import { ringsAt } from '../../../src/steps/foam/draft-rings.ts';

const SQUARE = { from: 0, middle: 0, to: 0 };
const LEAN_45 = { from: 45, middle: 45, to: 45 };

function edgeThrough(points: readonly (readonly [number, number])[], bevelDeg: ShapeEdge['bevelDeg']): ShapeEdge {
  const corners = points.map(([x, y]): Vec2 => ({ x, y }));
  return {
    name: 'edge',
    segments: corners.slice(1).map((to, i) => line(corners[i], to)),
    lengthMm: 1,
    trueLengthMm: 1,
    bevelDeg,
  };
}

/** A plate of 100 × 60 mm, counter-clockwise from the origin, of which the lower edge and the right one may lean. */
const plate = (lower: ShapeEdge['bevelDeg'], right: ShapeEdge['bevelDeg'] = SQUARE): readonly ShapeEdge[] => [
  edgeThrough(
    [
      [0, 0],
      [100, 0],
    ],
    lower,
  ),
  edgeThrough(
    [
      [100, 0],
      [100, 60],
    ],
    right,
  ),
  edgeThrough(
    [
      [100, 60],
      [0, 60],
    ],
    SQUARE,
  ),
  edgeThrough(
    [
      [0, 60],
      [0, 0],
    ],
    SQUARE,
  ),
];

function expectRing(ring: ArrayLike<number>, wanted: readonly number[]): void {
  expect(ring).toHaveLength(wanted.length);
  wanted.forEach((mm, i) => expect(ring[i]).toBeCloseTo(mm, 9));
}

describe('rings of a draft at a height', () => {
  it('are its own outline where nothing leans, and at no height', () => {
    const own = [0, 0, 100, 0, 100, 60, 0, 60];
    expect([...ringsAt({ outline: plate(SQUARE), holes: [] }, 10)[0]]).toEqual(own);
    expect([...ringsAt({ outline: plate(LEAN_45), holes: [] }, 0)[0]]).toEqual(own);
  });

  it('stand out by the height times the tangent of the lean, edge by edge, and inside below the line', () => {
    const outline = plate(LEAN_45, { from: deg(Math.atan(0.3)), middle: deg(Math.atan(0.3)), to: deg(Math.atan(0.3)) });
    expectRing(ringsAt({ outline, holes: [] }, 10)[0], [0, -10, 103, -10, 103, 60, 0, 60]);
    expectRing(ringsAt({ outline, holes: [] }, -4)[0], [0, 4, 98.8, 4, 98.8, 60, 0, 60]);
  });

  it('follow a lean that changes evenly from the start over the middle to the end', () => {
    // Quarters of the lower edge: 0, 22.5, 45 degrees to its middle, then by way of 35 to 25 degrees.
    const lower = edgeThrough(
      [
        [0, 0],
        [25, 0],
        [50, 0],
        [75, 0],
        [100, 0],
      ],
      { from: 0, middle: 45, to: 25 },
    );
    const outline = [lower, ...plate(SQUARE).slice(1)];
    const tan = (angle: number): number => Math.tan((angle * Math.PI) / 180);
    expectRing(ringsAt({ outline, holes: [] }, 10)[0], [
      ...[0, 0, 25, -10 * tan(22.5), 50, -10, 75, -10 * tan(35)],
      ...[100, -10 * tan(25), 100, 60, 0, 60],
    ]);
  });

  it('lean where only the starts of edges do, and where only their ends', () => {
    const falls = { from: 45, middle: 20, to: 0 };
    const rises = { from: 0, middle: 20, to: 45 };
    expectRing(ringsAt({ outline: plate(falls), holes: [] }, 10)[0], [0, -10, 100, 0, 100, 60, 0, 60]);
    expectRing(ringsAt({ outline: plate(rises), holes: [] }, 10)[0], [0, 0, 100, -10, 100, 60, 0, 60]);
    // All edges alike: every corner stands out square from one of its edges alone.
    const all = (lean: ShapeEdge['bevelDeg']): readonly ShapeEdge[] =>
      plate(SQUARE).map((edge) => ({ ...edge, bevelDeg: lean }));
    expectRing(ringsAt({ outline: all(falls), holes: [] }, 10)[0], [0, -10, 110, 0, 100, 70, -10, 60]);
    expectRing(ringsAt({ outline: all(rises), holes: [] }, 10)[0], [-10, 0, 100, -10, 110, 60, 0, 70]);
  });

  it('bear an edge without length', () => {
    const point = edgeThrough(
      [
        [100, 0],
        [100, 0],
      ],
      { from: 0, middle: 30, to: 0 },
    );
    const [lower, ...rest] = plate(LEAN_45);
    const [ring] = ringsAt({ outline: [lower, point, ...rest], holes: [] }, 10);
    for (const mm of ring) expect(Number.isFinite(mm)).toBe(true);
    const { minX, minY, maxX, maxY } = boxOfPoints(ring);
    [minX, minY, maxX, maxY].forEach((mm, i) => expect(mm).toBeCloseTo([0, -10, 100, 60][i], 9));
  });

  it('of holes come first with the outline, then in order; foam that leans in under them makes them smaller over the line', () => {
    // Clockwise, so its foam lies on the left and the hole on the right.
    const hole = [
      edgeThrough(
        [
          [20, 20],
          [20, 40],
        ],
        LEAN_45,
      ),
      edgeThrough(
        [
          [20, 40],
          [50, 40],
        ],
        SQUARE,
      ),
      edgeThrough(
        [
          [50, 40],
          [50, 20],
        ],
        SQUARE,
      ),
      edgeThrough(
        [
          [50, 20],
          [20, 20],
        ],
        SQUARE,
      ),
    ];
    const other = [
      edgeThrough(
        [
          [70, 20],
          [70, 30],
          [80, 30],
          [80, 20],
          [70, 20],
        ],
        SQUARE,
      ),
    ];
    const [outer, first, second, ...more] = ringsAt({ outline: plate(SQUARE), holes: [hole, other] }, 5);
    expect(more).toEqual([]);
    expectRing(outer, [0, 0, 100, 0, 100, 60, 0, 60]);
    expectRing(first, [25, 20, 25, 40, 50, 40, 50, 20]);
    expectRing(second, [70, 20, 70, 30, 80, 30, 80, 20]);
  });

  it('take arcs as chords no farther off than 0.02 mm, each moved along its own way out', () => {
    const disc: ShapeEdge = { ...edgeThrough([], LEAN_45), segments: [arc({ x: 0, y: 0 }, 40, 0, 2 * Math.PI)] };
    const [flat] = ringsAt({ outline: [disc], holes: [] }, 0);
    const [moved] = ringsAt({ outline: [disc], holes: [] }, 6);
    const radii = (ring: ArrayLike<number>): number[] =>
      Array.from({ length: ring.length / 2 }, (_, i) => Math.hypot(ring[2 * i], ring[2 * i + 1]));
    const turn = (2 * Math.PI) / (flat.length / 2);
    expect(40 * (1 - Math.cos(turn / 2))).toBeLessThanOrEqual(0.02 + 1e-9);
    for (const radius of radii(flat)) expect(radius).toBeCloseTo(40, 9);
    // Chords that stand off by 6 mm meet at 6 / cos(half their turn).
    for (const radius of radii(moved)) expect(radius).toBeCloseTo(40 + 6 / Math.cos(turn / 2), 9);
  });
});
