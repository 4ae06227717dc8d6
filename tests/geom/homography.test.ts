import { describe, expect, it } from 'vitest';
import { depthOf, fitHomography, inverseHomography, throughHomography } from '../../src/geom/homography.ts';
import { solveSquare } from '../../src/geom/solve-square.ts';
import type { Vec2 } from '../../src/geom/vec.ts';

const SQUARE: readonly Vec2[] = [
  { x: 0, y: 0 },
  { x: 1, y: 0 },
  { x: 1, y: 1 },
  { x: 0, y: 1 },
];
const TRUE = [900, -80, 300, 60, 700, 200, 0.2, -0.15, 1];

describe('maps that keep lines straight', () => {
  it('brings four points exactly to four', () => {
    const to = SQUARE.map((point) => throughHomography(TRUE, point));
    const map = fitHomography(SQUARE, to);
    if (map === null) throw new Error('no map');
    for (const point of [...SQUARE, { x: 0.3, y: 0.7 }, { x: 1.4, y: -0.2 }]) {
      const [a, b] = [throughHomography(map, point), throughHomography(TRUE, point)];
      expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeLessThan(1e-9);
      expect(depthOf(map, point.x, point.y)).toBeGreaterThan(0);
      const back = throughHomography(inverseHomography(map), a);
      expect(Math.hypot(back.x - point.x, back.y - point.y)).toBeLessThan(1e-12);
    }
  });

  it('makes squared distances least with more points: every small change of the map makes them more', () => {
    const from = Array.from({ length: 9 }, (_, i) => ({ x: i % 3, y: Math.floor(i / 3) }));
    const to = from.map((point, i) => {
      const { x, y } = throughHomography([90, -8, 30, 6, 70, 20, 0.1, -0.08, 1], point);
      return { x: x + 0.3 * Math.sin(7 * i), y: y + 0.3 * Math.cos(5 * i) };
    });
    const map = fitHomography(from, to);
    if (map === null) throw new Error('no map');
    const squares = (h: readonly number[]): number =>
      from.reduce((sum, point, i) => {
        const { x, y } = throughHomography(h, point);
        return sum + (x - to[i].x) ** 2 + (y - to[i].y) ** 2;
      }, 0);
    const least = squares(map);
    for (let k = 0; k < 9; k += 1)
      for (const change of [-1e-4, 1e-4])
        expect(squares(map.map((value, i) => (i === k ? value * (1 + change) : value)))).toBeGreaterThanOrEqual(
          least - 1e-12,
        );
  });

  it('finds none where points do not settle it', () => {
    const line = [0, 1, 2, 3].map((x) => ({ x, y: 2 * x }));
    expect(fitHomography(line, SQUARE)).toBeNull();
    expect(fitHomography(SQUARE.slice(1), SQUARE.slice(1))).toBeNull();
    expect(
      fitHomography(
        SQUARE.map(() => ({ x: 1, y: 1 })),
        SQUARE,
      ),
    ).toBeNull();
  });
});

it('solves a few equations, or says that it cannot', () => {
  const solved = solveSquare(
    [
      [0, 2],
      [3, 1],
    ],
    [4, 5],
  );
  expect(solved?.[0]).toBeCloseTo(1, 14);
  expect(solved?.[1]).toBeCloseTo(2, 14);
  expect(
    solveSquare(
      [
        [1, 2],
        [2, 4],
      ],
      [1, 2],
    ),
  ).toBeNull();
});
