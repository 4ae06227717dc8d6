import { describe, expect, it } from 'vitest';
import { runAtOnce } from '../../../src/base/stepwise.ts';
import { dot3, sub3, vec3, type Vec3 } from '../../../src/geom/vec.ts';
import { checkMeshLine } from '../../../src/mesh/lines/check-mesh-line.ts';
import { distanceToLine } from '../../../src/mesh/lines/line-distance.ts';
import type { MeshLine } from '../../../src/mesh/lines/mesh-line.ts';
import { lineLength, placeOf } from '../../../src/mesh/lines/mesh-point.ts';
import { sectionLines, sectionThrough, spacedSectionSteps } from '../../../src/mesh/lines/section-lines.ts';
import { surfaceOf, type Plane, type Surface } from '../../../src/mesh/surface.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';
import { forAll } from '../../support/for-all.ts';
import { boxMesh, meshOf, torusMesh, tubeMesh } from '../../support/meshes.ts';
import { ballMesh, sheetMesh } from '../../support/round-meshes.ts';
import { randomPoint } from '../../support/surface-points.ts';

const level = (z: number): Plane => ({ point: vec3(0, 0, z), normal: vec3(0, 0, 1) });
const places = (surface: Surface, line: MeshLine): Vec3[] => line.points.map((p) => placeOf(surface, p));
const expectGood = (surface: Surface, lines: readonly MeshLine[]): void => {
  for (const line of lines) expect(checkMeshLine(surface, line)).toEqual([]);
};

describe('a plane section as lines on the surface', () => {
  it('is closed round closed surfaces and lies in the plane', async () => {
    const surface = surfaceOf(torusMesh(24, 12, 100, 40));
    await forAll(
      (rand) => ({
        point: vec3(200 * (rand() - 0.5), 200 * (rand() - 0.5), 60 * (rand() - 0.5)),
        normal: vec3(rand() - 0.5, rand() - 0.5, rand() - 0.5),
      }),
      (plane) => {
        const lines = sectionLines(surface, plane);
        expectGood(surface, lines);
        for (const line of lines) {
          expect(line.closed).toBe(true);
          for (const p of places(surface, line))
            expect(Math.abs(dot3(sub3(p, plane.point), plane.normal))).toBeLessThan(1e-6);
        }
      },
      { runs: 40 },
    );
  });

  it('goes from open edge to open edge, and has the polygon of a tube for its length', () => {
    const tube = surfaceOf(tubeMesh(24, 50, 100, 4));
    // Round through corners at 25, through edges at 30; along the wall twice from rim to rim.
    for (const z of [25, 30]) {
      const [line, ...more] = sectionLines(tube, level(z));
      expect(more).toEqual([]);
      expect(line.closed).toBe(true);
      expect(lineLength(tube, line)).toBeCloseTo(24 * 100 * Math.sin(Math.PI / 24), 9);
    }
    const walls = sectionLines(tube, { point: vec3(0, 1, 0), normal: vec3(0, 1, 0) });
    expectGood(tube, walls);
    expect(walls.map((line) => [line.closed, Number(lineLength(tube, line).toFixed(9))])).toEqual([
      [false, 100],
      [false, 100],
    ]);
    expect(sectionLines(tube, level(101))).toEqual([]);
  });

  it('takes a ridge in the plane once, and none of a lone summit', () => {
    // A roof of two slopes, its ridge at 5; a plane through the ridge sees all of it below.
    const roof = surfaceOf(
      meshOf(
        [
          [0, 0, 0],
          [10, 0, 0],
          [10, 5, 5],
          [0, 5, 5],
          [10, 10, 0],
          [0, 10, 0],
        ],
        [
          [0, 1, 2, 3],
          [3, 2, 4, 5],
        ],
      ),
    );
    const ridge = sectionLines(roof, level(5));
    expectGood(roof, ridge);
    expect(ridge.map((line) => [line.closed, lineLength(roof, line)])).toEqual([[false, 10]]);
    // The top circle of a ring: one closed line, not one from each side.
    const ring = surfaceOf(torusMesh(12, 8, 100, 40));
    const top = sectionLines(ring, { point: vec3(0, 0, ring.positions[3 * 2 + 2]), normal: vec3(0, 0, 1) });
    expectGood(ring, top);
    expect(top.map((line) => [line.closed, line.points.length])).toEqual([[true, 12]]);
    const cube = boxMesh(10);
    expect(sectionLines(surfaceOf(cube), { point: vec3(10, 10, 10), normal: vec3(1, 1, 1) })).toEqual([]);
  });

  it('is the border of what lies under triangles in the plane', () => {
    const cube = surfaceOf(boxMesh(10));
    const [rim, ...more] = sectionLines(cube, level(10));
    expect(more).toEqual([]);
    expect([rim.closed, rim.points.length, lineLength(cube, rim)]).toEqual([true, 4, 40]);
  });

  it('through a picked place passes that place, and says where there is none', async () => {
    const ball = surfaceOf(ballMesh(2, 100));
    await forAll(
      (rand) => ({ p: randomPoint(ball, rand), normal: vec3(rand() - 0.5, rand() - 0.5, rand() - 0.5) }),
      ({ p, normal }) => {
        const line = expectOk(sectionThrough(ball, p, normal));
        expectGood(ball, [line]);
        expect(distanceToLine(placeOf(ball, p), places(ball, line), line.closed)).toBeLessThan(1e-6);
      },
      { runs: 60 },
    );
    const cube = surfaceOf(boxMesh(10));
    expectProblem(sectionThrough(cube, { at: 'vertex', vertex: 7 }, vec3(1, 1, 1)), 'seams/no-section');
    // Of two lines in one plane the one through the place.
    const ring = surfaceOf(torusMesh(24, 12, 100, 40));
    const outer = expectOk(sectionThrough(ring, { at: 'vertex', vertex: 0 }, vec3(0, 0, 1)));
    expect(Math.hypot(places(ring, outer)[0].x, places(ring, outer)[0].y)).toBeGreaterThan(130);
  });

  it('at equal distances lies in each plane that meets the surface', () => {
    const tube = surfaceOf(tubeMesh(24, 50, 100, 4));
    const sections = expectOk(runAtOnce(spacedSectionSteps(tube, level(10), 30)));
    expect(sections.map(({ offsetMm }) => offsetMm)).toEqual([0, 30, 60]);
    for (const { offsetMm, lines } of sections)
      for (const p of lines.flatMap((line) => places(tube, line))) expect(p.z).toBeCloseTo(10 + offsetMm, 12);
    expectProblem(runAtOnce(spacedSectionSteps(tube, level(0), 0.01)), 'seams/too-many-planes');
    expect(() => runAtOnce(spacedSectionSteps(tube, level(0), 0))).toThrow(RangeError);
  });

  it('keeps to triangles over a shaken sheet with corners in the plane', () => {
    const sheet = surfaceOf(sheetMesh(9, 9, 90, 90, (x, y) => Math.round(3 * Math.sin(x / 20) + 3 * Math.cos(y / 17))));
    for (const z of [-2, -1, 0, 1, 2, 3]) expectGood(sheet, sectionLines(sheet, level(z)));
  });
});
