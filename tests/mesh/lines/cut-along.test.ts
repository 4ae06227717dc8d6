import { describe, expect, it } from 'vitest';
import { cutAlong, type CutMesh } from '../../../src/mesh/lines/cut-along.ts';
import { LINE_JOIN_MM } from '../../../src/mesh/lines/net-points.ts';
import type { MeshLine, MeshPoint } from '../../../src/mesh/lines/mesh-line.ts';
import { placeOf } from '../../../src/mesh/lines/mesh-point.ts';
import { nearShortestLine } from '../../../src/mesh/lines/shortest-line.ts';
import { triangleCount, vertexCount, type Mesh } from '../../../src/mesh/mesh.ts';
import { surfaceOf } from '../../../src/mesh/surface.ts';
import { topologyOf } from '../../../src/mesh/topology.ts';
import { expectCut } from '../../support/expect-cut.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { forAll } from '../../support/for-all.ts';
import { boxMesh, meshOf, torusMesh, tubeMesh } from '../../support/meshes.ts';
import { bumpyMesh } from '../../support/bumpy-mesh.ts';
import { ballMesh, coneMesh, sheetMesh } from '../../support/round-meshes.ts';
import { randomPoint } from '../../support/surface-points.ts';

const open = (...points: MeshPoint[]): MeshLine => ({ points, closed: false });
const inTriangle = (triangle: number, b: number, c: number): MeshPoint => ({
  at: 'triangle',
  triangle,
  bary: [1 - b - c, b, c],
});

/** The finer mesh keeps near the points that were asked for. */
function expectNear(mesh: Mesh, cut: CutMesh, lines: readonly MeshLine[]): void {
  lines.forEach(({ points }, i) => {
    for (const point of points) {
      const { x, y, z } = placeOf(surfaceOf(mesh), point);
      const p = cut.mesh.positions;
      const nearest = Math.min(
        ...[...cut.lines[i]].map((v) => Math.hypot(p[3 * v] - x, p[3 * v + 1] - y, p[3 * v + 2] - z)),
      );
      if (cut.lines[i].length > 0) expect(nearest).toBeLessThan(2 * LINE_JOIN_MM);
    }
  });
}

const SQUARE = meshOf(
  [
    [0, 0, 0],
    [10, 0, 0],
    [10, 10, 0],
    [0, 10, 0],
  ],
  [
    [0, 1, 2],
    [0, 2, 3],
  ],
);

describe('one triangle', () => {
  it('keeps its number for the first part', () => {
    const cut = cutAlong(SQUARE, [open({ at: 'vertex', vertex: 1 }, inTriangle(0, 0.25, 0.25))]);
    expectCut(SQUARE, cut);
    expect([...cut.sourceOfTriangle]).toEqual([0, 1, 0, 0]);
    expect(cut.added).toHaveLength(1);
    expect([...cut.lines[0]]).toEqual([1, 4]);
  });

  it('shares the crossing of two lines', () => {
    const cross = [
      open(inTriangle(0, 0.2, 0.2), inTriangle(0, 0.6, 0.2)),
      open(inTriangle(0, 0.5, 0.1), inTriangle(0, 0.3, 0.3)),
    ];
    const cut = cutAlong(SQUARE, cross);
    expectCut(SQUARE, cut);
    expect(cut.lines.map((line) => line.length)).toEqual([3, 3]);
    expect(cut.lines[0][1]).toBe(cut.lines[1][1]);
    expect(vertexCount(cut.mesh)).toBe(4 + 5);
  });

  it('makes one of lines that run on each other', () => {
    const cut = cutAlong(SQUARE, [
      open(inTriangle(0, 0.1, 0.1), inTriangle(0, 0.7, 0.1)),
      open(inTriangle(0, 0.5, 0.1), inTriangle(0, 0.3, 0.1)),
    ]);
    expectCut(SQUARE, cut);
    expect([...cut.lines[0]]).toEqual([4, 7, 6, 5]);
    expect([...cut.lines[1]]).toEqual([6, 7]);
  });

  it('has a line along its edge, with the points of others on it', () => {
    const cut = cutAlong(SQUARE, [
      open({ at: 'vertex', vertex: 0 }, { at: 'vertex', vertex: 2 }),
      open({ at: 'vertex', vertex: 1 }, { at: 'edge', edge: topologyOf(SQUARE).edgeBetween(0, 2), share: 0.25 }),
    ]);
    expectCut(SQUARE, cut);
    expect([...cut.lines[0]]).toEqual([0, 4, 2]);
    expect([...(cut.partsOfEdge.get(topologyOf(SQUARE).edgeBetween(0, 2)) ?? [])]).toEqual([0, 4, 2]);
    expect(triangleCount(cut.mesh)).toBe(4);
  });

  it('brings what is nearer than a blade can tell to a corner or an edge', () => {
    const cut = cutAlong(SQUARE, [
      open(inTriangle(0, 1e-5, 1e-5), inTriangle(0, 0.5, 0.4999), { at: 'vertex', vertex: 2 }),
    ]);
    expect(cut.added).toHaveLength(1);
    expect(cut.added[0].at).toBe('edge');
    expectCut(SQUARE, cut);
  });

  it('closes a line inside it', () => {
    const ring: MeshLine = {
      points: [inTriangle(0, 0.2, 0.2), inTriangle(0, 0.5, 0.2), inTriangle(0, 0.3, 0.5)],
      closed: true,
    };
    const cut = cutAlong(SQUARE, [ring]);
    expectCut(SQUARE, cut);
    expect([...cut.lines[0]]).toEqual([4, 5, 6, 4]);
  });

  it('refuses a line that leaps', () => {
    expect(() => cutAlong(SQUARE, [open(inTriangle(0, 0.3, 0.3), inTriangle(1, 0.3, 0.3))])).toThrow(
      'share no triangle',
    );
  });
});

describe('random lines', () => {
  const surfaces: readonly Mesh[] = [
    boxMesh(30, 40, 50),
    tubeMesh(9, 20, 60, 4),
    torusMesh(12, 8, 40, 12),
    ballMesh(2, 50),
    coneMesh(10, 3, 40, 60),
    sheetMesh(6, 6, 80, 80, (x, y) => 6 * Math.sin(x / 9) * Math.cos(y / 7)),
  ];

  it('leave the surface where it is', () =>
    forAll(
      (rand) => {
        const mesh = rand() < 0.2 ? bumpyMesh(rand) : surfaces[Math.floor(rand() * surfaces.length)];
        const surface = surfaceOf(mesh);
        const count = 1 + Math.floor(rand() * 6);
        const lines = Array.from({ length: count }, (): MeshLine => {
          const from = randomPoint(surface, rand);
          const found = nearShortestLine(surface, from, randomPoint(surface, rand));
          return found.ok ? found.value.line : open(from);
        });
        return { mesh, lines };
      },
      ({ mesh, lines }) => {
        const cut = cutAlong(mesh, lines);
        expectCut(mesh, cut);
        expectNear(mesh, cut, lines);
      },
      { runs: 30 },
    ));

  it('may be many in one triangle, and near each other', () =>
    forAll(
      (rand) => {
        // Half of the points lie about one place, within a few times what is brought together.
        const spot = (): MeshPoint => {
          const [b, c] =
            rand() < 0.5 ? [0.3 + 0.004 * rand(), 0.3 + 0.004 * rand()] : [0.05 + 0.45 * rand(), 0.05 + 0.4 * rand()];
          return inTriangle(0, b, c);
        };
        return Array.from({ length: 2 + Math.floor(20 * rand()) }, () => open(spot(), spot(), spot()));
      },
      (lines) => {
        const cut = cutAlong(SQUARE, lines);
        expectCut(SQUARE, cut);
        expectNear(SQUARE, cut, lines);
      },
      { runs: 20 },
    ));

  it('drawn behind others leave their numbers alone where they do not meet', () => {
    const mesh = ballMesh(2, 50);
    const surface = surfaceOf(mesh);
    const line = (v: number, w: number): MeshLine =>
      expectOk(nearShortestLine(surface, { at: 'vertex', vertex: v }, { at: 'vertex', vertex: w })).line;
    const first = line(0, 1);
    const used = new Set(cutAlong(mesh, [first]).lines[0]);
    const other = Array.from({ length: vertexCount(mesh) }, (_, w) => line(2, w)).find(
      (way) => way.points.length > 3 && cutAlong(mesh, [first, way]).lines[1].every((v) => !used.has(v)),
    );
    if (other === undefined) throw new Error('no line apart from the first');
    const [one, both] = [cutAlong(mesh, [first]), cutAlong(mesh, [first, other])];
    expect(both.lines[0]).toEqual(one.lines[0]);
    expect(both.mesh.positions.subarray(0, one.mesh.positions.length)).toEqual(one.mesh.positions);
    const changed = new Set(both.sourceOfTriangle.subarray(triangleCount(one.mesh)));
    one.sourceOfTriangle.forEach((source, t) => {
      if (!changed.has(source))
        expect([...both.mesh.triangles.subarray(3 * t, 3 * t + 3)]).toEqual([
          ...one.mesh.triangles.subarray(3 * t, 3 * t + 3),
        ]);
    });
  });
});
