import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/base/random.ts';
import { runAtOnce } from '../../../src/base/stepwise.ts';
import { edgeDistances } from '../../../src/mesh/edge-distance.ts';
import { edgeLengths } from '../../../src/mesh/edge-fold.ts';
import { checkMeshLine } from '../../../src/mesh/lines/check-mesh-line.ts';
import type { MeshPoint } from '../../../src/mesh/lines/mesh-line.ts';
import { distanceInSpace, lineLength, placeOf, pointAtPlace } from '../../../src/mesh/lines/mesh-point.ts';
import {
  lineOf,
  nearShortestLine,
  shortestLineSteps,
  type MeasuredLine,
} from '../../../src/mesh/lines/shortest-line.ts';
import { shortestWaySteps } from '../../../src/mesh/lines/window-search.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { surfaceOf, type Surface } from '../../../src/mesh/surface.ts';
import { surfaceTreeOf } from '../../../src/mesh/surface-tree.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { forAll } from '../../support/for-all.ts';
import { boxMesh, meshOf, torusMesh, tubeMesh } from '../../support/meshes.ts';
import { ballMesh, coneMesh, sheetMesh } from '../../support/round-meshes.ts';
import { randomPoint } from '../../support/surface-points.ts';

const shortest = (surface: Surface, p: MeshPoint, q: MeshPoint): MeasuredLine =>
  expectOk(runAtOnce(shortestLineSteps(surface, p, q)));
const vertex = (v: number): MeshPoint => ({ at: 'vertex', vertex: v });
const nearest = (mesh: Mesh, x: number, y: number, z: number): MeshPoint => {
  const hit = surfaceTreeOf(mesh).nearest({ x, y, z });
  if (hit === null) throw new Error('no surface');
  return pointAtPlace(surfaceOf(mesh), hit.triangle, hit.point);
};

const shake = seededRandom(3);
const bumpy = sheetMesh(
  16,
  16,
  100,
  100,
  (x, y) => 15 * Math.sin(x / 8) * Math.cos(y / 9),
  () => 3 * (shake() - 0.5),
);

describe('the shortest line', () => {
  it.each([
    ['a ball', ballMesh(2, 100)],
    ['a ring', torusMesh(20, 10, 100, 40)],
    ['a bumpy sheet', bumpy],
  ])('is the same by two methods on %s, there and back, and keeps to the triangle inequality', async (_, mesh) => {
    const surface = surfaceOf(mesh);
    const lengths = edgeLengths(mesh);
    await forAll(
      (rand) => [randomPoint(surface, rand), randomPoint(surface, rand), randomPoint(surface, rand)] as const,
      ([p, q, r]) => {
        const there = shortest(surface, p, q);
        expect(checkMeshLine(surface, there.line)).toEqual([]);
        expect(lineLength(surface, there.line)).toBeCloseTo(there.lengthMm, 9);
        // Found without the quick line's help.
        const alone = runAtOnce(shortestWaySteps(surface, p, q));
        expect(Math.abs(alone.distance - there.lengthMm)).toBeLessThan(1e-9 * (1 + there.lengthMm));
        expect(Math.abs(lineOf(surface, alone.legs).lengthMm - alone.distance)).toBeLessThan(
          1e-9 * (1 + alone.distance),
        );
        expect(Math.abs(shortest(surface, q, p).lengthMm - there.lengthMm)).toBeLessThan(1e-9 * (1 + there.lengthMm));
        const over = shortest(surface, p, r).lengthMm + shortest(surface, r, q).lengthMm;
        expect(there.lengthMm).toBeLessThan(over * (1 + 1e-12) + 1e-12);
        expect(there.lengthMm).toBeGreaterThan(distanceInSpace(surface, p, q) * (1 - 1e-12) - 1e-12);
        const near = expectOk(nearShortestLine(surface, p, q));
        expect(checkMeshLine(surface, near.line)).toEqual([]);
        expect(near.lengthMm).toBeGreaterThan(there.lengthMm * (1 - 1e-12));
        if (p.at === 'vertex' && q.at === 'vertex') {
          const edges = edgeDistances(mesh, [p.vertex], lengths, q.vertex).distance[q.vertex];
          expect(near.lengthMm).toBeLessThan(edges * (1 + 1e-12) + 1e-12);
        }
      },
      { runs: 25 },
    );
  });

  it('is straight over a flat sheet, whatever its triangles', async () => {
    const rand = seededRandom(8);
    const flat = sheetMesh(12, 12, 100, 100, undefined, () => 4 * (rand() - 0.5));
    const surface = surfaceOf(flat);
    await forAll(
      (draw) => [randomPoint(surface, draw), randomPoint(surface, draw)] as const,
      ([p, q]) => {
        const straight = distanceInSpace(surface, p, q);
        expect(Math.abs(expectOk(nearShortestLine(surface, p, q)).lengthMm - straight)).toBeLessThan(1e-11);
        expect(Math.abs(runAtOnce(shortestWaySteps(surface, p, q)).distance - straight)).toBeLessThan(1e-11);
      },
      { runs: 60 },
    );
  });

  it('over a box is the one known from unfolding it', () => {
    // The spider and the fly (Dudeney 1903): a room 30 x 12 x 12, 1 under the ceiling and 1 over the floor at the end walls: 40, over five walls.
    const room = boxMesh(30, 12, 12);
    const line = shortest(surfaceOf(room), nearest(room, 0, 6, 11), nearest(room, 30, 6, 1));
    expect(line.lengthMm).toBeCloseTo(40, 12);
    // From corner to corner of a cube: sqrt 5.
    const cube = boxMesh(1);
    expect(shortest(surfaceOf(cube), vertex(0), vertex(7)).lengthMm).toBeCloseTo(Math.sqrt(5), 12);
  });

  it('round a tube is a helix, as exact as the facets', () => {
    const [sides, r, height] = [24, 50, 120];
    const tube = tubeMesh(sides, r, height, 5);
    const around = 2 * r * Math.sin(Math.PI / sides);
    // Ring 0, side 0 to ring 5, side 7: straight on the unrolled facets.
    const line = shortest(surfaceOf(tube), vertex(0), vertex(5 * sides + 7));
    expect(line.lengthMm).toBeCloseTo(Math.hypot(7 * around, height), 10);
  });

  it('round a cone is straight on the unrolled cone, or goes over the tip', () => {
    const [sides, r, depth] = [36, 60, 80];
    const cone = coneMesh(sides, 6, r, depth);
    const surface = surfaceOf(cone);
    const slant = Math.hypot(r, depth);
    const facet = 2 * Math.asin((r * Math.sin(Math.PI / sides)) / slant);
    const at = (ring: number, side: number): MeshPoint => vertex(1 + (ring - 1) * sides + side);
    for (const side of [1, 5, 12, 18]) {
      const [a, b, turn] = [slant, (slant * 4) / 6, side * facet];
      const closed = Math.sqrt(a * a + b * b - 2 * a * b * Math.cos(turn));
      expect(shortest(surface, at(6, 0), at(4, side)).lengthMm).toBeCloseTo(closed, 10);
    }
    // A sharp cone's tip is never on the way but at its end.
    expect(shortest(surface, vertex(0), at(6, 3)).lengthMm).toBeCloseTo(slant, 12);
  });

  it('comes nearer to the great circle with the square of the edges', () => {
    const errors = [2, 3, 4].map((level) => {
      const ball = ballMesh(level, 100);
      const surface = surfaceOf(ball);
      let worst = 0;
      const rand = seededRandom(2);
      for (let i = 0; i < 12; i += 1) {
        const [p, q] = [vertex(Math.floor(rand() * 162)), vertex(Math.floor(rand() * 162))];
        const [a, b] = [placeOf(surface, p), placeOf(surface, q)];
        const great = 100 * Math.acos(Math.max(-1, Math.min(1, (a.x * b.x + a.y * b.y + a.z * b.z) / 1e4)));
        if (great > 10) worst = Math.max(worst, Math.abs(shortest(surface, p, q).lengthMm / great - 1));
      }
      return worst;
    });
    expect(errors[0]).toBeLessThan(0.02);
    for (const i of [1, 2]) expect(Math.log2(errors[i - 1] / errors[i])).toBeGreaterThan(1.7);
  });

  it('bends round the end of a slit and round an opening', () => {
    // An L: the way from one arm to the other bends at the inner corner, whose far side is air.
    const ell = meshOf(
      [
        [0, 0, 0],
        [2, 0, 0],
        [2, 1, 0],
        [1, 1, 0],
        [1, 2, 0],
        [0, 2, 0],
      ],
      [
        [0, 1, 2, 3],
        [0, 3, 4, 5],
      ],
    );
    const line = shortest(surfaceOf(ell), vertex(2), vertex(4));
    expect(line.lengthMm).toBeCloseTo(2, 12);
    expect(line.line.points).toEqual([vertex(2), vertex(3), vertex(4)]);
    // From a place on an open edge to a place on another.
    const bent = shortest(surfaceOf(ell), nearest(ell, 2, 0.5, 0), nearest(ell, 0.5, 2, 0));
    expect(bent.lengthMm).toBeCloseTo(2 * Math.hypot(1, 0.5), 12);
  });

  it('is a single point from a point to itself, and a piece of an edge along an edge', () => {
    const surface = surfaceOf(boxMesh(10));
    for (const p of [vertex(3), nearest(boxMesh(10), 5, 0, 0), nearest(boxMesh(10), 5, 3, 0)]) {
      const line = shortest(surface, p, p);
      expect(line).toEqual({ line: { points: [p], closed: false }, lengthMm: 0 });
    }
    const edge = shortest(surface, vertex(0), vertex(1));
    expect(edge.line.points).toEqual([vertex(0), vertex(1)]);
  });

  it('tells of surfaces that do not touch, and goes on through a corner they share', () => {
    const points: [number, number, number][] = [
      [0, 0, 0],
      [1, 0, 0],
      [0, 1, 0],
      [5, 0, 0],
      [6, 0, 0],
      [5, 1, 0],
    ];
    const apart = runAtOnce(
      shortestLineSteps(
        surfaceOf(
          meshOf(points, [
            [0, 1, 2],
            [3, 4, 5],
          ]),
        ),
        vertex(0),
        vertex(4),
      ),
    );
    expect(apart.ok ? '' : apart.problem.code).toBe('seams/no-path');
    const bowTie = surfaceOf(
      meshOf(points, [
        [0, 1, 2],
        [1, 4, 3],
      ]),
    );
    const through = shortest(bowTie, vertex(0), vertex(4));
    expect(through.line.points).toEqual([vertex(0), vertex(1), vertex(4)]);
    expect(through.lengthMm).toBeCloseTo(6, 12);
  });

  it('is told as not proven where the search had to be given up', () => {
    const surface = surfaceOf(ballMesh(2, 100));
    const [whole, cut] = [undefined, 40].map((most) =>
      runAtOnce(shortestLineSteps(surface, vertex(0), vertex(9), most)),
    );
    expect(whole.ok && whole.notes).toEqual([]);
    expect(cut.ok && cut.notes.map(({ code }) => code)).toEqual(['seams/not-proven-shortest']);
  });

  it('keeps its length over needles', () => {
    // A strip of triangles a thousand times as long as wide.
    const points: [number, number, number][] = [];
    for (let i = 0; i <= 40; i += 1) points.push([i * 0.01, 0, 0], [i * 0.01 + 0.003, 10, 0]);
    const faces = Array.from({ length: 40 }, (_, i) => [2 * i, 2 * i + 2, 2 * i + 3, 2 * i + 1]);
    const strip = surfaceOf(meshOf(points, faces));
    const line = shortest(strip, vertex(0), vertex(81));
    expect(line.lengthMm).toBeCloseTo(Math.hypot(0.403, 10), 11);
    expect(checkMeshLine(strip, line.line)).toEqual([]);
  });
});
