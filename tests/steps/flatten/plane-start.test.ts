import { describe, expect, it } from 'vitest';
import { energyOf } from '../../../src/steps/flatten/dirichlet-energy.ts';
import { countFlips } from '../../../src/steps/flatten/flips.ts';
import { planeStart } from '../../../src/steps/flatten/plane-start.ts';
import { restShapes } from '../../../src/steps/flatten/rest-shapes.ts';
import { boxMesh, meshOf } from '../../support/meshes.ts';
import { onePatch, referencePatch } from './flatten-support.ts';

describe('the look along the mean normal', () => {
  it('is a true and unturned picture of a flat patch, however it stands in space', () => {
    // A 3 by 2 rectangle in the plane x = z, seen from +x -z.
    const r = Math.SQRT1_2;
    const mesh = meshOf(
      [
        [0, 0, 0],
        [0, 2, 0],
        [3 * r, 2, 3 * r],
        [3 * r, 0, 3 * r],
      ],
      [[0, 1, 2, 3]],
    );
    const patch = onePatch(mesh);
    const rest = restShapes(patch, mesh.positions);
    const flat = planeStart(rest);
    if (flat === null) throw new Error('no look');
    expect(countFlips(patch.triangles, flat)).toBe(0);
    expect(energyOf(rest, flat)).toBeCloseTo(4, 12);
  });

  it('turns nothing over on a cap of 45 degrees', () => {
    const mesh = referencePatch('cap45-2k');
    const patch = onePatch(mesh);
    const flat = planeStart(restShapes(patch, mesh.positions));
    if (flat === null) throw new Error('no look');
    expect(countFlips(patch.triangles, flat)).toBe(0);
  });

  it('is not there for a surface that looks all ways alike', () => {
    const mesh = boxMesh(10);
    // All of the box but one triangle: it has a border, and hardly a mean normal.
    const open = meshOf(
      Array.from({ length: mesh.positions.length / 3 }, (_, v): [number, number, number] => [
        mesh.positions[3 * v],
        mesh.positions[3 * v + 1],
        mesh.positions[3 * v + 2],
      ]),
      Array.from({ length: mesh.triangles.length / 3 - 1 }, (_, t) => [...mesh.triangles.subarray(3 * t, 3 * t + 3)]),
    );
    expect(planeStart(restShapes(onePatch(open), open.positions))).toBeNull();
  });
});
