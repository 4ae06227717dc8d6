import { describe, expect, it } from 'vitest';
import { energyOf } from '../../../src/steps/flatten/dirichlet-energy.ts';
import { restShapes } from '../../../src/steps/flatten/rest-shapes.ts';
import { meshOf } from '../../support/meshes.ts';
import { onePatch } from './flatten-support.ts';

describe('the symmetric Dirichlet energy', () => {
  it('is s² + s² + 1/s² + 1/s² for a shape enlarged by s, 4 for one of true size, without bound for one turned over', () => {
    const mesh = meshOf(
      [
        [0, 0, 0],
        [10, 0, 0],
        [0, 7, 0],
        [10, 7, 0],
      ],
      [[0, 1, 3, 2]],
    );
    const patch = onePatch(mesh);
    const rest = restShapes(patch, mesh.positions);
    const scaled = (x: number, y: number): Float64Array =>
      Float64Array.from(
        [...patch.meshVertices].flatMap((v) => [x * mesh.positions[3 * v], y * mesh.positions[3 * v + 1]]),
      );
    expect(energyOf(rest, scaled(1, 1))).toBeCloseTo(4, 14);
    expect(energyOf(rest, scaled(2, 2))).toBeCloseTo(4 + 4 + 0.25 + 0.25, 13);
    expect(energyOf(rest, scaled(3, 0.5))).toBeCloseTo(9 + 0.25 + 1 / 9 + 4, 13);
    expect(energyOf(rest, scaled(-1, 1))).toBe(Infinity);
    expect(energyOf(rest, scaled(1, 0))).toBe(Infinity);
  });
});
