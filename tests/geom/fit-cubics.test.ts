import { describe, expect, it } from 'vitest';
import { distanceToSegment } from '../../src/geom/distance-to-segment.ts';
import { cubicPoint, fitCubics, type FittedCubic } from '../../src/geom/fit-cubics.ts';

const along = (count: number, point: (share: number) => readonly [number, number]): number[] =>
  Array.from({ length: count }, (_, i) => point(i / (count - 1))).flat();

/** Greatest distance of points from curves, which are looked at densely. */
function off(points: readonly number[], curves: readonly FittedCubic[]): number {
  const parts = curves.flatMap((curve) =>
    Array.from({ length: 200 }, (_, i) => [cubicPoint(curve, i / 200), cubicPoint(curve, (i + 1) / 200)] as const),
  );
  let worst = 0;
  for (let i = 0; i < points.length; i += 2)
    worst = Math.max(
      worst,
      Math.min(...parts.map(([a, b]) => distanceToSegment(points[i], points[i + 1], a.x, a.y, b.x, b.y))),
    );
  return worst;
}

describe('curves through points', () => {
  it('finds the best quarter of a circle: off by 2 in 10 000 of its radius', () => {
    // One cubic with its tangents given is off a quarter by 0.000273 R one way (Goldapp 1991); by half of that where both ways count.
    const points = along(200, (t) => [100 * Math.cos((t * Math.PI) / 2), 100 * Math.sin((t * Math.PI) / 2)]);
    const curves = fitCubics(points, { x: 0, y: 1 }, { x: 1, y: 0 }, 0.1);
    expect(curves).toHaveLength(1);
    const handle = Math.hypot(curves[0].handles[0].x - 100, curves[0].handles[0].y) / 100;
    expect(handle).toBeCloseTo(0.5519, 2);
    expect(off(points, curves)).toBeLessThan(0.03);
  });

  it('gives a cubic back', () => {
    const curve: FittedCubic = {
      from: { x: 0, y: 0 },
      handles: [
        { x: 10, y: 30 },
        { x: 50, y: 40 },
      ],
      to: { x: 60, y: 0 },
    };
    const points = along(80, (t) => {
      const { x, y } = cubicPoint(curve, t);
      return [x, y];
    });
    const [start, end] = [Math.hypot(10, 30), Math.hypot(10, 40)];
    const made = fitCubics(points, { x: 10 / start, y: 30 / start }, { x: -10 / end, y: 40 / end }, 0.05);
    expect(made).toHaveLength(1);
    expect(off(points, made)).toBeLessThan(0.05);
  });

  it.each([0.5, 0.1, 0.02])('keeps to %f by parting, and curves follow each other smoothly', (limit) => {
    const points = along(600, (t) => [100 * t, 12 * Math.sin(12 * t) + 5 * Math.sin(31 * t)]);
    const made = fitCubics(points, null, null, limit);
    expect(off(points, made)).toBeLessThanOrEqual(limit + 0.05);
    for (const [i, { to, handles }] of made.slice(0, -1).entries()) {
      const next = made[i + 1];
      expect(next.from).toEqual(to);
      const [ax, ay] = [to.x - handles[1].x, to.y - handles[1].y];
      const [bx, by] = [next.handles[0].x - to.x, next.handles[0].y - to.y];
      expect(Math.abs(ax * by - ay * bx) / (Math.hypot(ax, ay) * Math.hypot(bx, by))).toBeLessThan(1e-9);
    }
    expect(made.length).toBeLessThan(40);
  });

  it('stays finite on points that are hardly a line', () => {
    for (const points of [
      [0, 0, 1, 0],
      [0, 0, 0, 0],
      [0, 0, 0, 0, 0, 0, 0, 0],
      [0, 0, 5, 0, 0, 0, 5, 0, 0, 0],
    ])
      for (const { handles } of fitCubics(points, null, null, 0.1))
        expect([handles[0].x, handles[0].y, handles[1].x, handles[1].y].every(Number.isFinite)).toBe(true);
  });
});
