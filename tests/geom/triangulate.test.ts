import { describe, expect, it } from 'vitest';
import { doesRingCross } from '../../src/geom/ring-cross.ts';
import { triangulatePolygon3, triangulateRings } from '../../src/geom/triangulate.ts';
import { cross3, dot3, pointAt3, sub3, type Vec3 } from '../../src/geom/vec.ts';
import { forAll } from '../support/for-all.ts';

/** A flat polygon laid in space: turned twice and moved. */
function inSpace(xy: readonly (readonly [number, number])[], turn = 0.7, tilt = 0.4, away = 3): Float64Array {
  return Float64Array.from(
    xy.flatMap(([x, y]) => {
      const [a, b] = [x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn)];
      return [a + away, b * Math.cos(tilt) - away, b * Math.sin(tilt) + 2 * away];
    }),
  );
}

const normal = (points: ArrayLike<number>, a: number, b: number, c: number): Vec3 =>
  cross3(sub3(pointAt3(points, b), pointAt3(points, a)), sub3(pointAt3(points, c), pointAt3(points, a)));

/** Checks the promises: two fewer than corners, every side once and in its direction, none empty, none turned; gives the area. */
function expectTriangulation(points: ArrayLike<number>, triangles: readonly number[], leastArea = 1e-12): number {
  const count = points.length / 3;
  expect(triangles.length).toBe(3 * (count - 2));
  const sides = new Set<string>();
  let area = 0;
  const first = normal(points, triangles[0], triangles[1], triangles[2]);
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = triangles.slice(i, i + 3);
    for (const side of [`${a} ${b}`, `${b} ${c}`, `${c} ${a}`]) {
      expect(sides.has(side)).toBe(false);
      sides.add(side);
    }
    const n = normal(points, a, b, c);
    expect(dot3(n, first)).toBeGreaterThan(0);
    const size = Math.hypot(n.x, n.y, n.z) / 2;
    expect(size).toBeGreaterThan(leastArea);
    area += size;
  }
  for (let i = 0; i < count; i += 1) {
    expect(sides.has(`${i} ${(i + 1) % count}`)).toBe(true);
    expect(sides.has(`${(i + 1) % count} ${i}`)).toBe(false);
  }
  return area;
}

const fanOf = (count: number): number[] => Array.from({ length: count - 2 }, (_, i) => [0, i + 1, i + 2]).flat();

const shoelace = (xy: readonly (readonly [number, number])[]): number =>
  xy.reduce((sum, [x, y], i) => sum + x * xy[(i + 1) % xy.length][1] - y * xy[(i + 1) % xy.length][0], 0) / 2;

describe('triangulatePolygon3', () => {
  it('leaves a triangle as it is', () => expect(triangulatePolygon3([0, 0, 0, 1, 0, 0, 0, 1, 0])).toEqual([0, 1, 2]));

  it('fills a hollow polygon from whatever corner it begins, in its own direction', () => {
    const hollow = [
      [0, 0],
      [4, 0],
      [4, 3],
      [3, 3],
      [3, 1],
      [1, 1],
      [1, 3],
      [0, 3],
    ] as const;
    for (let shift = 0; shift < hollow.length; shift += 1) {
      const xy = hollow.map((_, i) => hollow[(i + shift) % hollow.length]);
      for (const way of [xy, xy.toReversed()]) {
        const points = inSpace(way);
        const triangles = triangulatePolygon3(points);
        expect(expectTriangulation(points, triangles)).toBeCloseTo(8, 12);
        const seenFrom = dot3(normal(points, triangles[0], triangles[1], triangles[2]), { x: 0, y: 0, z: 1 });
        expect(Math.sign(seenFrom)).toBe(way === xy ? 1 : -1);
      }
    }
  });

  it('keeps corners on straight sides, without triangles that have no area', () => {
    const box = [
      [0, 0],
      [1, 0],
      [2, 0],
      [3, 0],
      [3, 1],
      [3, 2],
      [2, 2],
      [1, 2],
      [0, 2],
      [0, 1],
    ] as const;
    for (let shift = 0; shift < box.length; shift += 1) {
      const points = inSpace(box.map((_, i) => box[(i + shift) % box.length]));
      expect(expectTriangulation(points, triangulatePolygon3(points), 0.1)).toBeCloseTo(6, 12);
    }
    const triangle = inSpace([
      [0, 0],
      [1, 0],
      [2, 0],
      [1, 1],
      [0, 2],
      [0, 1],
    ]);
    expect(expectTriangulation(triangle, triangulatePolygon3(triangle), 0.1)).toBeCloseTo(2, 12);
  });

  it('fills a polygon that runs to a hole and back along one line', () => {
    const ring = [
      [0, 0],
      [6, 0],
      [6, 6],
      [0, 6],
      [0, 0],
      [2, 2],
      [2, 4],
      [4, 4],
      [4, 2],
      [2, 2],
    ] as const;
    const points = inSpace(ring);
    const triangles = triangulatePolygon3(points);
    expect(triangles.length).toBe(3 * 8);
    let area = 0;
    for (let i = 0; i < triangles.length; i += 3) {
      const n = normal(points, triangles[i], triangles[i + 1], triangles[i + 2]);
      area += Math.hypot(n.x, n.y, n.z) / 2;
    }
    expect(area).toBeCloseTo(32, 12);
  });

  it('uses the plane of greatest shadow for a polygon that is not flat', () => {
    const points = [0, 0, 0, 2, 0, 0.3, 2, 2, 0, 1.5, 0.6, 0.2, 0, 2, 0.3];
    const triangles = triangulatePolygon3(points);
    expect(triangles.length).toBe(9);
    for (let i = 0; i < 9; i += 3) {
      expect(normal(points, triangles[i], triangles[i + 1], triangles[i + 2]).z).toBeGreaterThan(0);
    }
  });

  it('fans a polygon that crosses itself or has no area from its first corner', () => {
    expect(
      triangulatePolygon3(
        inSpace([
          [0, 0],
          [2, 2],
          [2, 0],
          [0, 2],
        ]),
      ),
    ).toEqual([0, 1, 2, 0, 2, 3]);
    expect(triangulatePolygon3([0, 0, 0, 1, 1, 1, 2, 2, 2, 3, 3, 3])).toEqual([0, 1, 2, 0, 2, 3]);
    expect(
      triangulatePolygon3(
        inSpace([
          [0, 0],
          [3, 1],
          [0, 1],
          [3, 0],
          [1.5, 2],
        ]),
      ),
    ).toEqual([0, 1, 2, 0, 2, 3, 0, 3, 4]);
  });

  it('fills any star, wherever it lies, and the area is that of the polygon', () =>
    forAll(
      (rand) => {
        const count = 4 + Math.floor(60 * rand());
        const xy = Array.from({ length: count }, (_, i): [number, number] => {
          const [radius, angle] = [0.2 + rand(), (2 * Math.PI * (i + 0.8 * rand())) / count];
          return [radius * Math.cos(angle), radius * Math.sin(angle)];
        });
        return { xy, turn: 6 * rand(), tilt: 6 * rand(), away: 100 * rand() };
      },
      ({ xy, turn, tilt, away }) => {
        const points = inSpace(xy, turn, tilt, away);
        const area = expectTriangulation(points, triangulatePolygon3(points));
        expect(Math.abs(area - shoelace(xy))).toBeLessThan(1e-9);
      },
    ));

  it('is a fan where a polygon runs many times round and over itself: to look for ears would take many seconds', () => {
    const count = 20_000;
    const points = Float64Array.from({ length: 3 * count }, (_, i) => {
      const angle = (2 * Math.PI * 100 * Math.floor(i / 3)) / count;
      const radius = 1 + 0.3 * Math.sin(4.854 * angle);
      return [radius * Math.cos(angle), radius * Math.sin(angle), 0][i % 3];
    });
    expect(triangulatePolygon3(points)).toEqual(fanOf(count));
  });
});

describe('doesRingCross', () => {
  it('calls only a proper crossing one', () => {
    expect(doesRingCross([0, 0, 2, 2, 2, 0, 0, 2])).toBe(true);
    expect(doesRingCross([0, 0, 2, 0, 2, 2, 0, 2])).toBe(false);
    expect(doesRingCross([0, 0, 4, 0, 4, 2, 2, 0, 0, 2])).toBe(false);
    expect(doesRingCross([0, 0, 6, 0, 6, 6, 0, 6, 0, 0, 2, 2, 2, 4, 4, 4, 4, 2, 2, 2])).toBe(false);
  });
});

describe('triangulateRings', () => {
  it('leaves holes open and counts their points after the outer ones', () => {
    const triangles = triangulateRings([0, 0, 6, 0, 6, 6, 0, 6], [[2, 2, 2, 4, 4, 4, 4, 2]]);
    const xy = [0, 0, 6, 0, 6, 6, 0, 6, 2, 2, 2, 4, 4, 4, 4, 2];
    let area = 0;
    for (let i = 0; i < triangles.length; i += 3) {
      const [a, b, c] = triangles.slice(i, i + 3).map((p) => [xy[2 * p], xy[2 * p + 1]]);
      const twice = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
      expect(twice).toBeGreaterThan(0);
      area += twice / 2;
    }
    expect(area).toBeCloseTo(32, 12);
  });
});
