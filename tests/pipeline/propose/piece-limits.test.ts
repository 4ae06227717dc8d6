import { describe, expect, it } from 'vitest';
import { narrowestPlace, percentile99, sheetShare } from '../../../src/pipeline/propose/piece-limits.ts';
import { cutPatches } from '../../../src/steps/cut/cut-patches.ts';
import { restShapes } from '../../../src/steps/flatten/rest-shapes.ts';
import { topologyOf } from '../../../src/mesh/topology.ts';
import { forAll } from '../../support/for-all.ts';
import { meshOf } from '../../support/meshes.ts';

type Points = readonly (readonly [number, number])[];

function flatPatch(points: Points, faces: readonly (readonly number[])[]) {
  const mesh = meshOf(
    points.map(([x, y]) => [x, y, 0] as const),
    faces,
  );
  const seams = { isSeam: new Uint8Array(topologyOf(mesh).edgeCount), count: 0 };
  const [patch] = cutPatches(mesh, seams, mesh.positions).patches;
  return { patch };
}

const uvOf = (points: Points, meshVertices: Uint32Array): Float64Array =>
  Float64Array.from([...meshVertices].flatMap((v) => points[v]));

describe('the 99th percentile', () => {
  it('leaves out no more than a hundredth of the area, and of the number', () =>
    forAll(
      (random) => Array.from({ length: 250 }, () => ({ figure: 10 * random(), size: 0.2 + 5 * random() })),
      (triangles) => {
        const points = triangles.flatMap(({ size }, i) => [
          [20 * i, 0] as const,
          [20 * i + size, 0] as const,
          [20 * i, size] as const,
        ]);
        const mesh = meshOf(
          points.map(([x, y]) => [x, y, 0] as const),
          triangles.map((_, i) => [3 * i, 3 * i + 1, 3 * i + 2]),
        );
        const numbers = Uint32Array.from(mesh.triangles.keys());
        const rest = restShapes(
          {
            meshTriangles: Uint32Array.from(triangles.keys()),
            triangles: mesh.triangles,
            meshVertices: numbers,
            loops: [],
            euler: 1,
            kind: 'disc',
            findings: [],
          },
          mesh.positions,
        );
        const figures = Float64Array.from(triangles, ({ figure }) => figure);
        const found = percentile99(rest, figures);
        const over = (limit: number) => triangles.filter(({ figure }) => figure > limit);
        const areaOf = (list: typeof triangles): number => list.reduce((sum, { size }) => sum + size * size, 0);
        const holds = (limit: number): boolean =>
          over(limit).length <= 0.01 * triangles.length && areaOf(over(limit)) <= 0.01 * areaOf(triangles);
        expect(holds(found)).toBe(true);
        expect(holds(found - 1e-9)).toBe(false);
        // By area alone many small triangles do not count.
        const byArea = percentile99(rest, figures, false);
        expect(areaOf(over(byArea))).toBeLessThanOrEqual(0.01 * areaOf(triangles));
        expect(areaOf(over(byArea - 1e-9))).toBeGreaterThan(0.01 * areaOf(triangles));
        expect(byArea).toBeLessThanOrEqual(found);
      },
    ));
});

describe('the sheet', () => {
  it('is measured the better way round, and turned', () => {
    const sheet = { widthMm: 100, heightMm: 50 };
    expect(sheetShare(Float64Array.from([0, 0, 40, 0, 40, 90, 0, 90]), sheet)).toBeCloseTo(0.9, 12);
    const [c, s] = [Math.cos(0.4), Math.sin(0.4)];
    const turned = [0, 0, 100, 0, 100, 50, 0, 50].map((_, i, all) =>
      i % 2 === 0 ? c * all[i] - s * all[i + 1] : s * all[i - 1] + c * all[i],
    );
    expect(sheetShare(Float64Array.from(turned), sheet)).toBeCloseTo(1, 9);
  });
});

describe('the narrowest width', () => {
  // Two squares of 20 mm joined by a neck 4 mm wide and 10 mm long.
  const points: Points = [
    [0, 0],
    [20, 0],
    [20, 8],
    [30, 8],
    [30, 0],
    [50, 0],
    [50, 20],
    [30, 20],
    [30, 12],
    [20, 12],
    [20, 20],
    [0, 20],
  ];
  const faces = [
    [0, 1, 2],
    [0, 2, 9, 11],
    [11, 9, 10],
    [2, 3, 8, 9],
    [4, 5, 3],
    [3, 5, 6, 8],
    [8, 6, 7],
  ];

  it('is that of a neck', () => {
    const { patch } = flatPatch(points, faces);
    expect(narrowestPlace(patch, uvOf(points, patch.meshVertices), 6).widthMm).toBeCloseTo(4, 12);
    expect(narrowestPlace(patch, uvOf(points, patch.meshVertices), 3).widthMm).toBe(Infinity);
  });

  it('is not that of a corner', () => {
    const square: Points = [
      [6, 0],
      [50, 0],
      [50, 50],
      [0, 50],
      [0, 6],
    ];
    // Its blunt corner is 8.5 mm across.
    const { patch } = flatPatch(square, [[0, 1, 2, 3, 4]]);
    expect(narrowestPlace(patch, uvOf(square, patch.meshVertices), 10).widthMm).toBe(Infinity);
  });
});
