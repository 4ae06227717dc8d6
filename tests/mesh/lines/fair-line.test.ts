import { describe, expect, it } from 'vitest';
import { runAtOnce } from '../../../src/base/stepwise.ts';
import { edgeDistances, pathTo } from '../../../src/mesh/edge-distance.ts';
import { edgeLengths } from '../../../src/mesh/edge-fold.ts';
import { layLine, nearestAlong, pointAlong, turnsOf } from '../../../src/mesh/lines/along-line.ts';
import { checkMeshLine } from '../../../src/mesh/lines/check-mesh-line.ts';
import { fairLineSteps, type FairLine } from '../../../src/mesh/lines/fair-line.ts';
import { countCrossings } from '../../../src/mesh/lines/line-crossings.ts';
import type { MeshLine, MeshPoint } from '../../../src/mesh/lines/mesh-line.ts';
import { lineLength, placeOf } from '../../../src/mesh/lines/mesh-point.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { surfaceOf, type Surface } from '../../../src/mesh/surface.ts';
import { forAll } from '../../support/for-all.ts';
import { torusMesh } from '../../support/meshes.ts';
import { ballMesh, sheetMesh } from '../../support/round-meshes.ts';

const vertices = (numbers: readonly number[], closed = false): MeshLine => ({
  points: numbers.map((vertex): MeshPoint => ({ at: 'vertex', vertex })),
  closed,
});
const edgeLine = (mesh: Mesh, from: number, to: number): MeshLine =>
  vertices(pathTo(mesh, edgeDistances(mesh, [from], edgeLengths(mesh), to), to));
const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Greatest distance of a hundred places of the new line from all of the old one, by no help of the step's own. */
function farthest(surface: Surface, line: MeshLine, old: MeshLine): number {
  const [laid, before] = [layLine(surface, line), layLine(surface, old)];
  let most = 0;
  for (let i = 0; i <= 100; i += 1) {
    const p = placeOf(surface, pointAlong(surface, laid, (laid.lengthMm * i) / 100));
    most = Math.max(most, nearestAlong(before, p).distanceMm);
  }
  return most;
}

function expectFair(surface: Surface, old: MeshLine, fair: FairLine, within: number): void {
  expect(checkMeshLine(surface, fair.line)).toEqual([]);
  expect(fair.line.closed).toBe(old.closed);
  expect(farthest(surface, fair.line, old)).toBeLessThan(within + 1e-9);
  expect(fair.farthestMm).toBeLessThanOrEqual(within);
  expect(fair.lengthMm).toBeCloseTo(lineLength(surface, fair.line), 9);
  expect(countCrossings(surface, [fair.line])).toBe(0);
}

describe('straighten and fair', () => {
  it('makes stairs over a flat sheet into a straight line', () => {
    const surface = surfaceOf(sheetMesh(20, 20, 100, 100));
    // Up the grid in stairs from corner to corner: right, up, right, up ...; the diagonal is 2.5 mm away from it in the middle of each step.
    const stairs = vertices(Array.from({ length: 41 }, (_, i) => Math.ceil(i / 2) + 21 * Math.floor(i / 2)));
    const fair = runAtOnce(fairLineSteps(surface, stairs, 6));
    expectFair(surface, stairs, fair, 6);
    expect(fair.lengthMm).toBeCloseTo(Math.hypot(100, 100), 6);
    expect(fair.farthestMm).toBeCloseTo(2.5, 1);
    expect([fair.line.points[0], fair.line.points.at(-1)]).toEqual([stairs.points[0], stairs.points[40]]);
  });

  it('keeps within the distance on a ball, is shorter and turns less', async () => {
    const ball = ballMesh(3, 100);
    const surface = surfaceOf(ball);
    await forAll(
      (rand) => ({ from: Math.floor(rand() * 642), to: Math.floor(rand() * 642), within: 2 + 6 * rand() }),
      ({ from, to, within }) => {
        const old = edgeLine(ball, from, to);
        if (old.points.length < 6) return;
        const fair = runAtOnce(fairLineSteps(surface, old, within));
        expectFair(surface, old, fair, within);
        expect(fair.withinMm).toBe(within);
        expect(fair.lengthMm).toBeLessThan(lineLength(surface, old));
        expect([fair.line.points[0], fair.line.points.at(-1)]).toEqual([old.points[0], old.points.at(-1)]);
        const before = turnsOf(layLine(surface, old));
        if (sum(before) > 3) expect(sum(turnsOf(layLine(surface, fair.line)))).toBeLessThan(sum(before));
      },
      { runs: 4 },
    );
  });

  it('makes a jagged ring round a ring smooth and keeps it closed', () => {
    const [m, n] = [24, 16];
    const surface = surfaceOf(torusMesh(m, n, 100, 40));
    // Along the outer equator like a saw: up across a quad, and down along its side.
    const jagged = vertices(Array.from({ length: m }, (_, i) => [i * n, ((i + 1) % m) * n + 1]).flat(), true);
    const fair = runAtOnce(fairLineSteps(surface, jagged, 20));
    expectFair(surface, jagged, fair, 20);
    expect(fair.withinMm).toBe(20);
    expect(fair.lengthMm).toBeLessThan(lineLength(surface, jagged) * 0.95);
    expect(Math.max(...turnsOf(layLine(surface, fair.line)))).toBeLessThan(0.5);
  });

  it('bends round a corner of the old line within what it is given', () => {
    const surface = surfaceOf(sheetMesh(20, 20, 100, 100));
    // Along one side of a square and up the next: with 5 mm room it stays at the corner, which it may cut by 5 mm.
    const angle = vertices([
      ...Array.from({ length: 15 }, (_, i) => 21 * 3 + 3 + i),
      ...Array.from({ length: 14 }, (_, i) => 21 * (4 + i) + 17),
    ]);
    const fair = runAtOnce(fairLineSteps(surface, angle, 5));
    expectFair(surface, angle, fair, 5);
    expect(fair.farthestMm).toBeGreaterThan(3);
    expect(fair.lengthMm).toBeLessThan(140);
    expect(fair.lengthMm).toBeGreaterThan(70 * Math.SQRT2);
  });

  it('keeps off another line, and stays as it is where it has no room at all', () => {
    const surface = surfaceOf(sheetMesh(20, 20, 100, 100));
    const row = (j: number, from: number, to: number): number[] =>
      Array.from({ length: to - from + 1 }, (_, i) => 21 * j + from + i);
    // A bay of three sides; a spit from the middle of its mouth reaches into it.
    const bay = vertices([
      ...row(5, 2, 5),
      21 * 6 + 5,
      21 * 7 + 5,
      21 * 8 + 5,
      ...row(9, 5, 12),
      21 * 8 + 12,
      21 * 7 + 12,
      21 * 6 + 12,
      ...row(5, 12, 16),
    ]);
    const spit = vertices([21 * 2 + 8, 21 * 3 + 8, 21 * 4 + 8, 21 * 5 + 8, 21 * 6 + 8]);
    const free = runAtOnce(fairLineSteps(surface, bay, 18));
    expect(countCrossings(surface, [free.line, spit])).toBeGreaterThan(0);
    const kept = runAtOnce(fairLineSteps(surface, bay, 18, [spit]));
    expectFair(surface, bay, kept, 18);
    expect(countCrossings(surface, [kept.line, spit])).toBe(0);
    expect(kept.withinMm).toBeLessThan(18);
    const two = vertices([0, 1]);
    expect(runAtOnce(fairLineSteps(surface, two, 3))).toEqual({ line: two, lengthMm: 5, farthestMm: 0, withinMm: 0 });
    expect(() => runAtOnce(fairLineSteps(surface, bay, 0))).toThrow(RangeError);
  });
});

describe('crossings', () => {
  const surface = surfaceOf(sheetMesh(4, 4, 40, 40));
  const across = vertices([5, 6, 7, 8, 9]);

  it('are counted where lines cross in a corner, in an edge and inside a triangle', () => {
    expect(countCrossings(surface, [across, vertices([1, 6, 11])])).toBeGreaterThan(0);
    expect(countCrossings(surface, [across, vertices([10, 11, 12])])).toBe(0);
    const inside = (triangle: number, a: number, b: number): MeshPoint => ({
      at: 'triangle',
      triangle,
      bary: [a, b, 1 - a - b],
    });
    const one: MeshLine = { points: [inside(0, 0.1, 0.2), inside(0, 0.6, 0.3)], closed: false };
    const other: MeshLine = { points: [inside(0, 0.2, 0.6), inside(0, 0.3, 0.1)], closed: false };
    expect(countCrossings(surface, [one, other])).toBe(1);
  });

  it('are none where a line ends on another, and one where it runs back on itself', () => {
    expect(countCrossings(surface, [across, vertices([1, 6])])).toBe(0);
    expect(countCrossings(surface, [vertices([5, 6, 5])])).toBe(1);
  });
});
