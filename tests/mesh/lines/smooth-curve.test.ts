import { describe, expect, it } from 'vitest';
import { runAtOnce } from '../../../src/base/stepwise.ts';
import { dot3, sub3, unit3, vec3, type Vec3 } from '../../../src/geom/vec.ts';
import { layLine, nearestAlong, pointAlong } from '../../../src/mesh/lines/along-line.ts';
import { checkMeshLine } from '../../../src/mesh/lines/check-mesh-line.ts';
import { lineThrough } from '../../../src/mesh/lines/line-through.ts';
import type { MeshLine, MeshPoint } from '../../../src/mesh/lines/mesh-line.ts';
import { placeOf, pointAtPlace, pointInTriangle } from '../../../src/mesh/lines/mesh-point.ts';
import { nearShortestLine } from '../../../src/mesh/lines/shortest-line.ts';
import { smoothCurveSteps } from '../../../src/mesh/lines/smooth-curve.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { surfaceOf, type Surface } from '../../../src/mesh/surface.ts';
import { surfaceTreeOf } from '../../../src/mesh/surface-tree.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';
import { forAll } from '../../support/for-all.ts';
import { meshOf } from '../../support/meshes.ts';
import { ballMesh, sheetMesh } from '../../support/round-meshes.ts';
import { randomPoint } from '../../support/surface-points.ts';

const nearest = (mesh: Mesh, p: Vec3): MeshPoint => {
  const hit = surfaceTreeOf(mesh).nearest(p);
  if (hit === null) throw new Error('no surface');
  return pointAtPlace(surfaceOf(mesh), hit.triangle, hit.point);
};
const curve = (surface: Surface, points: readonly MeshPoint[], closed = false, tolerance = 0.05): MeshLine => {
  const line = expectOk(runAtOnce(smoothCurveSteps(surface, points, closed, tolerance)));
  expect(checkMeshLine(surface, line)).toEqual([]);
  return line;
};

/** A point of a plane cubic Bezier curve. */
const bezier = (p: readonly Vec3[], t: number): Vec3 => {
  const w = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3];
  return vec3(
    w.reduce((sum, one, i) => sum + one * p[i].x, 0),
    w.reduce((sum, one, i) => sum + one * p[i].y, 0),
    0,
  );
};

describe('a smooth curve through points', () => {
  it('is the plane curve on a flat sheet, within the tolerance', () => {
    const sheet = sheetMesh(20, 20, 100, 100);
    const surface = surfaceOf(sheet);
    const spots = [vec3(10.3, 12.1, 0), vec3(40, 30, 0), vec3(50.7, 75, 0), vec3(90, 80.2, 0)];
    const line = curve(
      surface,
      spots.map((spot) => nearest(sheet, spot)),
    );
    const laid = layLine(surface, line);
    for (const spot of spots) expect(nearestAlong(laid, spot).distanceMm).toBeLessThan(1e-9);
    // The middle piece by hand: velocity of the parabola through three points, handles a third of the way.
    const [a, b, c, d] = spots;
    const gap = (p: Vec3, q: Vec3): number => Math.hypot(q.x - p.x, q.y - p.y);
    const handle = (p: Vec3, m: Vec3, q: Vec3, sign: number): Vec3 => {
      const [s, l] = [gap(p, m), gap(m, q)];
      const way = (axis: 'x' | 'y'): number =>
        (((q[axis] - m[axis]) / l) * s + ((m[axis] - p[axis]) / s) * l) / (s + l);
      const size = (sign * (sign > 0 ? l : s)) / 3;
      return vec3(m.x + size * way('x'), m.y + size * way('y'), 0);
    };
    const control = [b, handle(a, b, c, 1), handle(b, c, d, -1), c];
    for (let i = 0; i <= 20; i += 1) expect(nearestAlong(laid, bezier(control, i / 20)).distanceMm).toBeLessThan(0.05);
  });

  it('passes any points of a ball, open and closed', async () => {
    const surface = surfaceOf(ballMesh(3, 100));
    await forAll(
      (rand) => ({ points: Array.from({ length: 4 }, () => randomPoint(surface, rand)), closed: rand() < 0.5 }),
      ({ points, closed }) => {
        const line = curve(surface, points, closed, 0.2);
        expect(line.closed).toBe(closed);
        const laid = layLine(surface, line);
        for (const p of points) expect(nearestAlong(laid, placeOf(surface, p)).distanceMm).toBeLessThan(1e-9);
      },
      { runs: 6 },
    );
  });

  it('has no corner at its points, in facets, on edges and on corners of the surface', () => {
    const ball = ballMesh(3, 100);
    const surface = surfaceOf(ball);
    // A wave round the equator, six points up and down; two of them brought onto a corner and an edge of the surface.
    const wave = Array.from({ length: 6 }, (_, i) => {
      const turn = (i * Math.PI) / 3;
      const p = nearest(ball, vec3(100 * Math.cos(turn), 100 * Math.sin(turn), i % 2 === 0 ? 30 : -30));
      const t = surfaceTreeOf(ball).nearest(placeOf(surface, p))?.triangle ?? 0;
      if (i === 1) return pointInTriangle(surface, t, [1, 0, 0]);
      return i === 2 ? pointInTriangle(surface, t, [0.4, 0.6, 0]) : p;
    });
    const turnAt = (line: MeshLine, p: MeshPoint): number => {
      const laid = layLine(surface, line);
      const { mm } = nearestAlong(laid, placeOf(surface, p));
      const places = [mm - 0.5, mm, mm + 0.5].map((at) =>
        placeOf(surface, pointAlong(surface, laid, (at + laid.lengthMm) % laid.lengthMm)),
      );
      const [a, b] = [sub3(places[1], places[0]), sub3(places[2], places[1])];
      return Math.acos(dot3(unit3(a), unit3(b)));
    };
    const polygon = expectOk(lineThrough(surface, wave, true));
    const smooth = curve(surface, wave, true, 0.005);
    for (const p of wave) {
      expect(turnAt(polygon, p)).toBeGreaterThan(0.8);
      // What facets turn, 0.15 at most, and the curve itself within a millimetre.
      expect(turnAt(smooth, p)).toBeLessThan(0.2);
    }
  });

  it('is the shortest line through two points, and one point for one', () => {
    const ball = ballMesh(2, 100);
    const surface = surfaceOf(ball);
    const [p, q] = [nearest(ball, vec3(90, 10, 20)), nearest(ball, vec3(-20, 80, 60))];
    expect(curve(surface, [p, q, q]).points).toEqual(expectOk(nearShortestLine(surface, p, q)).line.points);
    expect(curve(surface, [p, p]).points).toEqual([p]);
    expect(() => runAtOnce(smoothCurveSteps(surface, [p, q], false, 0))).toThrow(RangeError);
  });

  it('tells of points on surfaces that do not touch', () => {
    const apart = surfaceOf(
      meshOf(
        [
          [0, 0, 0],
          [1, 0, 0],
          [0, 1, 0],
          [5, 0, 0],
          [6, 0, 0],
          [5, 1, 0],
        ],
        [
          [0, 1, 2],
          [3, 4, 5],
        ],
      ),
    );
    const at = (vertex: number): MeshPoint => ({ at: 'vertex', vertex });
    expectProblem(runAtOnce(smoothCurveSteps(apart, [at(0), at(1), at(4)], false, 0.1)), 'seams/no-path');
  });

  it('stays on the surface beside its open edges', () => {
    const sheet = sheetMesh(10, 10, 100, 100);
    const surface = surfaceOf(sheet);
    // The curve would swing out over the edge at its middle point.
    const line = curve(
      surface,
      [vec3(10, 60, 0), vec3(3, 30, 0), vec3(60, 2, 0)].map((spot) => nearest(sheet, spot)),
    );
    expect(line.points.length).toBeGreaterThan(5);
  });
});
