import { describe, expect, it } from 'vitest';
import { runAtOnce } from '../../../src/base/stepwise.ts';
import { length3, sub3, vec3, type Vec3 } from '../../../src/geom/vec.ts';
import { checkMeshLine } from '../../../src/mesh/lines/check-mesh-line.ts';
import { headingBetween, headingInSpace, headingTowards, type Heading } from '../../../src/mesh/lines/heading.ts';
import type { MeshPoint } from '../../../src/mesh/lines/mesh-line.ts';
import { lineLength, placeOf, pointAtPlace, sharedTriangle, weightsIn } from '../../../src/mesh/lines/mesh-point.ts';
import { shortestLineSteps } from '../../../src/mesh/lines/shortest-line.ts';
import { straightestLine, type StraightestLine } from '../../../src/mesh/lines/straightest-line.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { surfaceOf, type Surface } from '../../../src/mesh/surface.ts';
import { surfaceTreeOf } from '../../../src/mesh/surface-tree.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { forAll } from '../../support/for-all.ts';
import { boxMesh, torusMesh, tubeMesh } from '../../support/meshes.ts';
import { ballMesh, coneMesh, sheetMesh } from '../../support/round-meshes.ts';
import { randomPoint } from '../../support/surface-points.ts';

const vertex = (v: number): MeshPoint => ({ at: 'vertex', vertex: v });
const nearest = (mesh: Mesh, p: Vec3): MeshPoint => {
  const hit = surfaceTreeOf(mesh).nearest(p);
  if (hit === null) throw new Error('no surface');
  return pointAtPlace(surfaceOf(mesh), hit.triangle, hit.point);
};
const run = (surface: Surface, from: MeshPoint, towards: Vec3, length: number): StraightestLine => {
  const heading = headingTowards(surface, from, towards);
  if (heading === null) throw new Error('no heading');
  const line = straightestLine(surface, from, heading, length);
  expect(checkMeshLine(surface, line.line)).toEqual([]);
  expect(lineLength(surface, line.line)).toBeCloseTo(line.lengthMm, 9);
  return line;
};
const endOf = (surface: Surface, { line }: StraightestLine): Vec3 =>
  placeOf(surface, line.points[line.points.length - 1]);
const gap = (p: Vec3, q: Vec3): number => length3(sub3(p, q));

describe('the straightest line', () => {
  it('goes on where a shortest line would: from its start along it to its end', async () => {
    for (const mesh of [torusMesh(24, 12, 100, 40), ballMesh(2, 100)]) {
      const surface = surfaceOf(mesh);
      await forAll(
        (rand) => [randomPoint(surface, rand), randomPoint(surface, rand)] as const,
        ([p, q]) => {
          const short = expectOk(runAtOnce(shortestLineSteps(surface, p, q)));
          const [a, b] = short.line.points;
          // A shortest line that bends in a corner is not straight there.
          if (b === undefined || short.line.points.slice(1, -1).some((one) => one.at === 'vertex')) return;
          const t = sharedTriangle(surface, a, b);
          const [from, to] = [a, b].map((one) => weightsIn(surface.topology, surface.triangles, one, t));
          const heading = from && to && headingBetween(surface, t, from, to);
          if (!heading) throw new Error('no piece');
          const straight = straightestLine(surface, p, heading, short.lengthMm);
          expect(gap(endOf(surface, straight), placeOf(surface, q))).toBeLessThan(1e-8);
        },
        { runs: 30 },
      );
    }
  });

  it('winds round a tube as on the unrolled facets, and ends at its rim', () => {
    const [sides, r, height] = [24, 50, 120];
    const tube = tubeMesh(sides, r, height, 5);
    const surface = surfaceOf(tube);
    const facet = 2 * r * Math.sin(Math.PI / sides);
    const start = nearest(tube, vec3(r, 0, 30));
    // Tangent of the first facet, climbing 1 in 4: once round it has climbed a quarter of the way round.
    const first = placeOf(surface, vertex(1));
    const round = sides * facet;
    const along = sub3({ ...first, z: 0 }, { x: r, y: 0, z: 0 });
    const line = run(surface, start, vec3(along.x, along.y, facet / 4), Math.hypot(round, round / 4));
    expect(gap(endOf(surface, line), vec3(r, 0, 30 + round / 4))).toBeLessThan(1e-9);
    expect(line.isAtOpenEdge).toBe(false);
    const off = run(surface, start, vec3(along.x, along.y, facet / 4), 1e6);
    expect(off.isAtOpenEdge).toBe(true);
    expect(off.lengthMm).toBeCloseTo(90 * Math.sqrt(17), 8);
  });

  it('halves the angles at corners: along an edge of a cube, and on over the opposite face', () => {
    const surface = surfaceOf(boxMesh(10));
    // From corner 0 along x to corner 1, where three right angles meet: half of 270 degrees leads over the face x = 10 along its diagonal.
    const line = run(surface, vertex(0), vec3(1, 0, 0), 10 + 10 * Math.SQRT2);
    expect(line.line.points[1]).toEqual(vertex(1));
    expect(gap(endOf(surface, line), vec3(10, 10, 10))).toBeLessThan(1e-9);
    // Over the tip of a cone of even facets to the opposite side.
    const cone = coneMesh(16, 3, 60, 80);
    const over = run(surfaceOf(cone), vertex(1), vec3(-60, 0, 80), 200 / 3);
    expect(gap(endOf(surfaceOf(cone), over), placeOf(surfaceOf(cone), vertex(1 + 8)))).toBeLessThan(1e-9);
  });

  it('comes back to its start round a ball, within the square of the edges', () => {
    const misses = [2, 3, 4].map((level) => {
      const ball = ballMesh(level, 100);
      const surface = surfaceOf(ball);
      const start = nearest(ball, vec3(31, 47, 83));
      const line = run(surface, start, vec3(0.3, -0.7, 0.2), 2 * Math.PI * 100);
      return gap(endOf(surface, line), placeOf(surface, start));
    });
    expect(misses[2]).toBeLessThan(3);
    expect(misses[2]).toBeLessThan(misses[0] / 4);
  });

  it('is straight over a flat sheet through corners and along edges, from any place in any direction', async () => {
    const sheet = sheetMesh(10, 10, 100, 100);
    const surface = surfaceOf(sheet);
    await forAll(
      (rand) => ({
        p: randomPoint(surface, rand),
        turn: Math.floor(rand() * 8) * (Math.PI / 4) + (rand() < 0.5 ? 0 : rand()),
        size: 40 * rand(),
      }),
      ({ p, turn, size }) => {
        const d = vec3(Math.cos(turn), Math.sin(turn), 0);
        const a = placeOf(surface, p);
        const end = { x: a.x + size * d.x, y: a.y + size * d.y, z: 0 };
        const isOn = Math.min(end.x, end.y) > 1e-6 && Math.max(end.x, end.y) < 100 - 1e-6;
        if (!isOn) return;
        const line = run(surface, p, d, size);
        expect(gap(endOf(surface, line), end)).toBeLessThan(1e-8);
        expect(line.lengthMm).toBeCloseTo(size, 9);
      },
      { runs: 200 },
    );
  });

  it('starts on open edges inward, stays where it has no room, and asks for a direction', () => {
    const surface = surfaceOf(sheetMesh(4, 4, 40, 40));
    const inward = run(surface, nearest(sheetMesh(4, 4, 40, 40), vec3(15, 0, 0)), vec3(0, 1, 0), 40);
    expect(gap(endOf(surface, inward), vec3(15, 40, 0))).toBeLessThan(1e-9);
    const corner: MeshPoint = vertex(24);
    expect(headingTowards(surface, corner, vec3(1, 0.2, 0))).toBeNull();
    // Slightly off the sheet: along its edge, as far as the next corner on it.
    const beside = run(surface, corner, vec3(0.3, -1, 0), 25);
    expect(beside).toMatchObject({ isAtOpenEdge: true, line: { points: [corner, vertex(19)] } });
    expect(beside.lengthMm).toBeCloseTo(10, 12);
    expect(run(surface, corner, vec3(-1, -1, 0), 0).line.points).toEqual([corner]);
    expect(headingTowards(surface, corner, vec3(0, 0, 3))).toBeNull();
    expect(() =>
      straightestLine(surface, corner, headingTowards(surface, corner, vec3(-1, 0, 0)) as Heading, -1),
    ).toThrow(RangeError);
  });

  it('tells a heading in space as it was shown, where the surface is flat', () => {
    const surface = surfaceOf(boxMesh(10));
    const d = headingTowards(surface, nearest(boxMesh(10), vec3(10, 3, 4)), vec3(0, 0.6, -0.8));
    expect(gap(headingInSpace(surface, d as Heading), vec3(0, 0.6, -0.8))).toBeLessThan(1e-12);
  });
});
