import { describe, expect, it } from 'vitest';
import { foamId, layerId } from '../../../src/base/ids.ts';
import type { ModelIs } from '../../../src/model/shell-layer.ts';
import { makeShellLayer } from '../../../src/steps/shell/make-shell-layer.ts';
import { boxMesh, tubeMesh, meshOf } from '../../support/meshes.ts';
import { ringLength } from '../../../src/geom/ring.ts';

const shell = (
  mesh: Parameters<typeof makeShellLayer>[0],
  thicknessMm: number,
  modelIs: ModelIs,
  neutralFraction = 0.5,
) => makeShellLayer(mesh, { layer: layerId('l1'), foam: foamId('f'), thicknessMm, neutralFraction, modelIs });

/** Length of the bottom ring of a tube of `sides` sides. */
const girth = (positions: Float64Array, sides: number): number =>
  ringLength(Float64Array.from({ length: 2 * sides }, (_, i) => positions[3 * Math.floor(i / 2) + (i % 2)]));

describe('makeShellLayer', () => {
  it('makes the inner box of a box whose sculpt is the face exact at every corner', () => {
    const layer = shell(boxMesh(100), 10, 'face');
    for (const x of layer.backPositions) expect(Math.min(Math.abs(x - 10), Math.abs(x - 90))).toBeLessThan(1e-12);
    for (const x of layer.neutralPositions) expect(Math.min(Math.abs(x - 5), Math.abs(x - 95))).toBeLessThan(1e-12);
  });

  it('leaves the sculpt untouched to the last bit where it is the neutral surface', () => {
    const mesh = tubeMesh(24, 50, 100);
    expect(shell(mesh, 10, 'middle', 0.5).neutralPositions).toBe(mesh.positions);
  });

  // Bend allowance L = pi (Di + 2 K t): sheet-metal bending handbooks, worked case B1 (outside diameter 120, sheet 10).
  // A tube of n sides is shorter than the round one by sin(pi/n)/(pi/n) at its corners; the moved planes keep that ratio exactly.
  it.each([
    ['face', 0, 314.159265],
    ['face', 0.33, 334.893777],
    ['face', 0.5, 345.575192],
    ['face', 1, 376.991118],
    ['middle', 0.5, 376.991118],
    ['back', 0.5, 408.407045],
  ] as const)('gives the handbook wrap length for %s, k %f', (modelIs, k, length) => {
    const sides = 512;
    // Flat sides touch the round tube (their middles lie on it), so planes move exactly as the round wall does.
    const mesh = tubeMesh(sides, 60 / Math.cos(Math.PI / sides), 100);
    const polygon = (Math.tan(Math.PI / sides) / (Math.PI / sides)) * length;
    expect(girth(shell(mesh, 10, modelIs, k).neutralPositions, sides)).toBeCloseTo(polygon, 5);
  });

  it('says where a tube is tighter than the foam is thick, and how thick would work', () => {
    const layer = shell(tubeMesh(16, 8, 40), 10, 'face');
    const finding = layer.findings.find((f) => f.code === 'shell/folds-over');
    expect(finding?.limit).toBeCloseTo(7.8, 1);
    expect(finding?.where.triangles?.length).toBe(32);
  });

  it('notes a corner of four planes that no single point suits, with the miss of a cuboctahedron', () => {
    // Two triangles (60 degrees) and two squares (90 degrees) meet: least squares by angle misses by +0.63 and -0.82 mm at 10 mm.
    const ring = [
      [1, 0, 1],
      [1, 0, -1],
      [0, 1, -1],
      [0, 1, 1],
    ].map((p) => p.map((x) => 40 * x) as [number, number, number]);
    const mesh = meshOf(
      [[40, 40, 0], ...ring],
      [
        [0, 1, 2],
        [0, 2, 3],
        [0, 3, 4],
        [0, 4, 1],
      ],
    );
    const { corners } = shell(mesh, 10, 'face');
    expect(corners).toEqual([{ vertex: 0, missMm: expect.closeTo(0.82, 2) as number }]);
  });

  it('refuses a thickness that is our own mistake', () => {
    expect(() => shell(boxMesh(10), 0, 'face')).toThrow(RangeError);
  });
});
