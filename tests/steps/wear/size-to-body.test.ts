import { describe, expect, it } from 'vitest';
import { foamId, layerId } from '../../../src/base/ids.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { topologyOf } from '../../../src/mesh/topology.ts';
import { makeShellLayer } from '../../../src/steps/shell/make-shell-layer.ts';
import { sizeFor } from '../../../src/steps/wear/size-search.ts';
import {
  backAtSize,
  moveForGirth,
  moveForRoom,
  sizeForGirth,
  sizeForRoom,
} from '../../../src/steps/wear/size-to-body.ts';
import { measureTape } from '../../../src/steps/wear/tape.ts';
import { torusMesh, tubeMesh } from '../../support/meshes.ts';

const CHOICE = { layer: layerId('l'), foam: foamId('f'), neutralFraction: 0.5, modelIs: 'face' } as const;

function shellOf(mesh: Mesh, thicknessMm: number) {
  const layer = makeShellLayer(mesh, { ...CHOICE, thicknessMm });
  return {
    back: { positions: layer.backPositions, triangles: mesh.triangles, topology: topologyOf(mesh) },
    sculptPositions: mesh.positions,
    facePositions: layer.facePositions,
    thicknessMm,
  };
}

const larger = (mesh: Mesh, factor: number): Mesh => ({ ...mesh, positions: mesh.positions.map((x) => factor * x) });
const PLANE = { point: { x: 0, y: 0, z: 50 }, normal: { x: 0, y: 0, z: 1 } };

describe('the size that fits the body', () => {
  it('is that of the tube whose inside is as large as the body, foam as thick as before', () => {
    const sides = 48;
    const shell = shellOf(tubeMesh(sides, 60, 100), 6);
    const apothem = Math.cos(Math.PI / sides);
    // Inner girth: 2 n tan(pi / n) (apothem - t) with the apothem 60 f cos(pi / n).
    const wanted = 400;
    const expected = (wanted / (2 * sides * Math.tan(Math.PI / sides)) + 6) / (60 * apothem);
    expect(sizeForGirth(shell, PLANE, wanted)).toBeCloseTo(expected, 12);
    expect(sizeForGirth(shell, PLANE, 30)).toBeCloseTo(
      (30 / (2 * sides * Math.tan(Math.PI / sides)) + 6) / (60 * apothem),
      12,
    );
  });

  it('gives that girth on a shell that is made anew at that size', () => {
    const mesh = torusMesh(24, 16, 100, 40);
    const plane = { point: { x: 95, y: 0, z: 5 }, normal: { x: 0.3, y: 1, z: 0.2 } };
    const factor = sizeForGirth(shellOf(mesh, 8), plane, 320) ?? NaN;
    const fresh = shellOf(larger(mesh, factor), 8);
    const point = { x: factor * 95, y: 0, z: factor * 5 };
    expect(measureTape(fresh.back, { ...plane, point })?.girthMm).toBeCloseTo(320, 8);
    const moved = backAtSize(shellOf(mesh, 8), factor);
    moved.forEach((x, i) => expect(Math.abs(x - fresh.back.positions[i])).toBeLessThan(1e-9));
  });

  it('leaves the room that is wanted round a pipe', () => {
    const rod = { point: { x: 0, y: 0, z: 50 }, direction: { x: 0, y: 0, z: 1 }, radiusMm: 20, lengthMm: Infinity };
    const factor = sizeForRoom(shellOf(tubeMesh(12, 30, 100), 6), rod, 1.5);
    expect(factor).toBeCloseTo((20 + 1.5 + 6) / (30 * Math.cos(Math.PI / 12)), 12);
  });

  it('tells how far the foam must come in where it is loose, and out where it is tight', () => {
    const sides = 12;
    const shell = shellOf(tubeMesh(sides, 60, 100), 6);
    const girth = (apothem: number): number => 2 * sides * Math.tan(Math.PI / sides) * apothem;
    const inner = 60 * Math.cos(Math.PI / sides) - 6;
    expect(moveForGirth(shell, PLANE, girth(inner - 7.3))).toBeCloseTo(-7.3, 9);
    expect(moveForGirth(shell, PLANE, girth(inner + 11))).toBeCloseTo(11, 9);
    expect(moveForGirth(shell, PLANE, girth(inner + 100))).toBeNull();
    const rod = { point: { x: 0, y: 0, z: 50 }, direction: { x: 0, y: 0, z: 1 }, radiusMm: 20, lengthMm: Infinity };
    expect(moveForRoom(shell, rod, 1.5)).toBeCloseTo(21.5 - inner, 9);
  });

  it('takes the nearest size of several, and none where the figure jumps over what is wanted or never comes to it', () => {
    expect(sizeFor((f) => 100 * f, 100)).toBe(1);
    expect(sizeFor((f) => 100 + 10 * Math.sin(8 * (f - 1)), 105)).toBeCloseTo(1 + Math.asin(0.5) / 8, 9);
    expect(sizeFor((f) => (f > 1.4 ? 200 : 100), 150)).toBeNull();
    expect(sizeFor(() => 100, 150)).toBeNull();
    expect(sizeFor(() => null, 150)).toBeNull();
  });
});
