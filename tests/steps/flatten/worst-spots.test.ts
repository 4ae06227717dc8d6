import { describe, expect, it } from 'vitest';
import { graphOfTriangles } from '../../../src/geom/sparse-graph.ts';
import { deg, rad } from '../../../src/geom/vec.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import type { WorstSpot } from '../../../src/model/forming.ts';
import { measureStretch } from '../../../src/steps/flatten/measure-stretch.ts';
import { restShapes } from '../../../src/steps/flatten/rest-shapes.ts';
import { worstSpots } from '../../../src/steps/flatten/worst-spots.ts';
import { meshOf } from '../../support/meshes.ts';
import { flatten, onePatch, referencePatch } from './flatten-support.ts';

/** A square sheet of 100 mm in `n` times `n` cells, each parted the same way. */
function sheet(n: number): Mesh {
  const at = (i: number, j: number): number => j * (n + 1) + i;
  const points = Array.from(
    { length: (n + 1) ** 2 },
    (_, v) => [((v % (n + 1)) * 100) / n, (Math.floor(v / (n + 1)) * 100) / n, 0] as const,
  );
  const faces = Array.from({ length: n * n }, (_, c) => {
    const [i, j] = [c % n, Math.floor(c / n)];
    return [at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)];
  });
  return meshOf(points, faces);
}

/** Spots of a sheet whose flat piece has the given scales: major, minor and direction in degrees at the middle of each triangle. */
function spotsOf(
  mesh: Mesh,
  scales: (x: number, y: number) => readonly [number, number, number],
): readonly WorstSpot[] {
  const patch = onePatch(mesh);
  const rest = restShapes(patch, mesh.positions);
  const uv = Float64Array.from({ length: 2 * rest.vertexCount }, (_, i) => rest.points[3 * (i >> 1) + (i % 2)]);
  const measured = measureStretch(rest, uv);
  for (let t = 0; t < rest.count; t += 1) {
    const corners = [...patch.triangles.subarray(3 * t, 3 * t + 3)];
    const middle = (k: number): number => corners.reduce((sum, v) => sum + rest.points[3 * v + k] / 3, 0);
    const [a, b, angle] = scales(middle(0), middle(1));
    measured.major[t] = a;
    measured.minor[t] = b;
    measured.majorAngle[t] = rad(angle);
  }
  return worstSpots(patch, rest, graphOfTriangles(rest.vertexCount, patch.triangles), { uv, ...measured });
}

const hump = (x: number, y: number, cx: number, cy: number, wide: number): number =>
  Math.exp(-((x - cx) ** 2 + (y - cy) ** 2) / (wide * wide));

describe('worst spots', () => {
  it('are the separate humps, the worst first, with place, area and direction', () => {
    const spots = spotsOf(sheet(40), (x, y) => [
      1 + 0.1 * hump(x, y, 25, 70, 10) + 0.05 * hump(x, y, 75, 70, 10),
      1 - 0.08 * hump(x, y, 60, 20, 10),
      30,
    ]);
    expect(spots.map(({ kind }) => kind)).toEqual(['stretch', 'squash', 'stretch']);
    for (const [spot, percent, x, y, along] of [
      [spots[0], 10, 25, 70, 30],
      [spots[1], 8, 60, 20, 120],
      [spots[2], 5, 75, 70, 30],
    ] as const) {
      expect(spot.percent / percent).toBeGreaterThan(0.96);
      expect(spot.percent).toBeLessThanOrEqual(percent);
      expect(Math.hypot(spot.at.x - x, spot.at.y - y)).toBeLessThan(2.5);
      expect(spot.point).toEqual([spot.at.x, spot.at.y, 0]);
      // Where the hump is over 60 %: a circle of radius 10 root(ln(1 / 0.6)).
      expect(spot.areaMm2 / (Math.PI * 100 * Math.log(1 / 0.6))).toBeCloseTo(1, 0);
      expect(spot.way).toBe('one');
      expect(deg(spot.alongRad)).toBeCloseTo(along, 9);
    }
  });

  it('that grow together are one', () => {
    // Between the two the hump falls to 80 % of the lower.
    const spots = spotsOf(sheet(40), (x, y) => [
      1 + Math.max(0.1 * hump(x, y, 40, 50, 12), 0.08 * hump(x, y, 52, 50, 12)),
      1,
      0,
    ]);
    expect(spots.length).toBe(1);
    expect(spots[0].percent).toBeGreaterThan(9);
  });

  it('are at most five, and none where the foam hardly gives', () => {
    const many = spotsOf(sheet(40), (x, y) => [
      1 +
        Array.from(
          { length: 9 },
          (_, i) => 0.05 * hump(x, y, 20 + 30 * (i % 3), 20 + 30 * Math.floor(i / 3), 5),
        ).reduce((a, b) => a + b),
      1,
      0,
    ]);
    expect(many.length).toBe(5);
    expect(spotsOf(sheet(20), () => [1.004, 0.996, 0])).toEqual([]);
  });

  it('tell whether the place gives in one direction, in all, along its edge, or in several', () => {
    const ring = (x: number, y: number): number => (deg(Math.atan2(y - 50, x - 50)) + 90) % 180;
    expect(
      spotsOf(sheet(20), (x, y) => [1 + 0.1 * hump(x, y, 50, 50, 20), 1 + 0.09 * hump(x, y, 50, 50, 20), 0])[0].way,
    ).toBe('all');
    expect(spotsOf(sheet(20), (x, y) => [1 + 0.1 * hump(x, y, 50, 50, 20), 1, ring(x, y)])[0].way).toBe('varied');
    const rim = (x: number, y: number): number => (Math.max(Math.abs(x - 50), Math.abs(y - 50)) > 40 ? 0.1 : 0.01);
    const alongRim = (x: number, y: number): number => (Math.abs(x - 50) > Math.abs(y - 50) ? 90 : 0);
    const [edge] = spotsOf(sheet(20), (x, y) => [1 + rim(x, y), 1, alongRim(x, y)]);
    expect(edge.way).toBe('edge');
    // The middle of such a place would lie in the hole: it stands at the peak.
    expect(Math.max(Math.abs(edge.at.x - 50), Math.abs(edge.at.y - 50))).toBeGreaterThan(35);
  });

  it('are not made by a needle or an empty triangle', () => {
    // A corner drawn in to within a hair of the opposite side, and one that lies on it.
    const points = [
      [0, 0, 0],
      [100, 0, 0],
      [100, 100, 0],
      [0, 100, 0],
      [50, 1e-4, 0],
      [50, 100, 0],
    ] as const;
    const mesh = meshOf(points, [
      [0, 1, 4],
      [0, 4, 3],
      [4, 1, 2],
      [4, 2, 5],
      [4, 5, 3],
    ]);
    const spots = spotsOf(mesh, (_, y) => (y < 1 ? [3, 0.2, 0] : [1.02, 1, 0]));
    expect(spots.length).toBe(1);
    expect(spots[0].percent).toBeLessThan(2.1);
    expect(spots[0].triangle).not.toBe(0);
  });

  it('of a cap: pulled in the middle, gathered along the edge', async () => {
    const mesh = referencePatch('cap45-2k');
    const patch = onePatch(mesh);
    const rest = restShapes(patch, mesh.positions);
    const flat = await flatten(mesh);
    const spots = worstSpots(patch, rest, graphOfTriangles(rest.vertexCount, patch.triangles), flat);
    expect(spots).toMatchObject([
      { kind: 'squash', way: 'edge' },
      { kind: 'stretch', way: 'all' },
    ]);
    expect(spots[0].percent).toBeCloseTo(flat.squashPct.max, 0);
    expect(spots[1].percent).toBeCloseTo(flat.stretchPct.max, 1);
    expect(Math.hypot(spots[1].at.x, spots[1].at.y)).toBeLessThan(3);
    for (const { triangle, meshTriangle } of spots) expect(meshTriangle).toBe(patch.meshTriangles[triangle]);
  });

  it('do not depend on the numbering', async () => {
    const mesh = referencePatch('mask-1k');
    const count = mesh.positions.length / 3;
    const points = Array.from({ length: count }, (_, v) => {
      const [x, y, z] = mesh.positions.subarray(3 * v, 3 * v + 3);
      return [x, y, z] as const;
    });
    const faces = Array.from({ length: mesh.triangles.length / 3 }, (_, t) => [
      ...mesh.triangles.subarray(3 * t, 3 * t + 3),
    ]);
    const back = meshOf(
      points.toReversed(),
      faces.toReversed().map(([a, b, c]) => [count - 1 - c, count - 1 - a, count - 1 - b]),
    );
    const [one, other] = await Promise.all(
      [mesh, back].map(async (each) => {
        const patch = onePatch(each);
        const rest = restShapes(patch, each.positions);
        return worstSpots(patch, rest, graphOfTriangles(rest.vertexCount, patch.triangles), await flatten(each));
      }),
    );
    expect(other.length).toBe(one.length);
    for (const [i, spot] of one.entries()) {
      expect(other[i]).toMatchObject({ kind: spot.kind, way: spot.way, point: spot.point });
      expect(other[i].percent).toBeCloseTo(spot.percent, 3);
      expect(other[i].areaMm2).toBeCloseTo(spot.areaMm2, 3);
    }
  });
});
