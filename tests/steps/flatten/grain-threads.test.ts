import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../../src/base/work.ts';
import { graphOfTriangles } from '../../../src/geom/sparse-graph.ts';
import type { FlatPiece } from '../../../src/model/flat-piece.ts';
import { flatSystem } from '../../../src/steps/flatten/flat-system.ts';
import { flattenPatch } from '../../../src/steps/flatten/flatten-patch.ts';
import type { GrainOnSurface } from '../../../src/steps/flatten/flatten-options.ts';
import { grainThreads } from '../../../src/steps/flatten/grain-threads.ts';
import { restShapes } from '../../../src/steps/flatten/rest-shapes.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { fingerprint, onePatch, referencePatch } from './flatten-support.ts';
import { expectDerivatives } from './term-derivatives.ts';

const AXIS = { x: 1, y: 0, z: 0 };
const mesh = referencePatch('cap45-2k');
const patch = onePatch(mesh);

const laid = async (stretch: GrainOnSurface['stretch'], turnRad = 0): Promise<FlatPiece> =>
  expectOk(await flattenPatch(patch, mesh.positions, { grain: { axis: AXIS, turnRad, stretch } }, QUIET_WORK));

/**
 * How much one mm along the x axis of the model, laid onto each triangle, changes its length: root of the mean square over the area. The
 * cap lies round the z axis, so these threads run across the whole of it. Counted here from the corners, not by the product's formulas.
 */
function threadStrain(flat: FlatPiece, turn: 0 | 1): number {
  let sum = 0;
  let total = 0;
  for (let t = 0; t < patch.triangles.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => patch.triangles[t + k]);
    const at = (v: number, k: number): number => mesh.positions[3 * patch.meshVertices[v] + k];
    const p = [0, 1, 2].map((k) => at(b, k) - at(a, k));
    const q = [0, 1, 2].map((k) => at(c, k) - at(a, k));
    const n = [p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0]];
    const twice = Math.hypot(...n);
    const unit = n.map((x) => x / twice);
    // The axis without its part along the normal; turned by a quarter, normal x thread.
    const bare = [1 - unit[0] * unit[0], -unit[0] * unit[1], -unit[0] * unit[2]];
    const size = Math.hypot(...bare);
    const thread = bare.map((x) => x / size);
    const way =
      turn === 0
        ? thread
        : [
            unit[1] * thread[2] - unit[2] * thread[1],
            unit[2] * thread[0] - unit[0] * thread[2],
            unit[0] * thread[1] - unit[1] * thread[0],
          ];
    // way = s p + r q, by the normal equations.
    const dot = (u: number[], v: number[]): number => u[0] * v[0] + u[1] * v[1] + u[2] * v[2];
    const det = dot(p, p) * dot(q, q) - dot(p, q) ** 2;
    const s = (dot(way, p) * dot(q, q) - dot(way, q) * dot(p, q)) / det;
    const r = (dot(way, q) * dot(p, p) - dot(way, p) * dot(p, q)) / det;
    const flatAt = (v: number, k: number): number => flat.uv[2 * v + k];
    const x = s * (flatAt(b, 0) - flatAt(a, 0)) + r * (flatAt(c, 0) - flatAt(a, 0));
    const y = s * (flatAt(b, 1) - flatAt(a, 1)) + r * (flatAt(c, 1) - flatAt(a, 1));
    sum += (twice / 2) * (Math.hypot(x, y) - 1) ** 2;
    total += twice / 2;
  }
  return Math.sqrt(sum / total);
}

describe('threads of the grain', () => {
  it('keep their length when the stretch is to lie across them, and give when it is to lie along', async () => {
    const [plain, across, along] = [await laid('any'), await laid('across'), await laid('along')];
    expect(threadStrain(across, 0)).toBeLessThan(0.3 * threadStrain(plain, 0));
    expect(threadStrain(across, 1)).toBeGreaterThan(threadStrain(plain, 1));
    expect(threadStrain(along, 1)).toBeLessThan(0.3 * threadStrain(plain, 1));
    for (const { flipped, solve } of [across, along])
      expect({ flipped, ...solve }).toMatchObject({ flipped: 0, converged: true });
  });

  it('run where the angle says: a quarter turn exchanges across and along', async () => {
    const [across, turned] = [await laid('across'), await laid('along', Math.PI / 2)];
    // The cap looks the same from both ends, so its flat piece may lie either way round.
    const [one, other] = [fingerprint(across.uv), fingerprint(turned.uv)];
    one.forEach((distance, i) => expect(other[i]).toBeCloseTo(distance, 6));
  });

  it('ask for nothing where any stretch will do', () => {
    const rest = restShapes(patch, mesh.positions);
    const system = flatSystem(patch, rest, graphOfTriangles(rest.vertexCount, patch.triangles));
    expect(grainThreads(system, { axis: AXIS, turnRad: 0, stretch: 'any' })).toBeNull();
  });

  it('have the slopes and curvatures of their cost', () => {
    expectDerivatives((system) => grainThreads(system, { axis: AXIS, turnRad: 0.4, stretch: 'across' }));
  });
});
