import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../../src/base/work.ts';
import { flattenPatch } from '../../../src/steps/flatten/flatten-patch.ts';
import { straightLines } from '../../../src/steps/flatten/straight-lines.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { onePatch, referencePatch } from './flatten-support.ts';
import { expectDerivatives } from './term-derivatives.ts';

/** Greatest distance of the points from the line through the first and the last, over the distance of these. */
function bow(uv: Float64Array, run: Uint32Array): number {
  const [a, b] = [2 * run[0], 2 * run[run.length - 1]];
  const [dx, dy] = [uv[b] - uv[a], uv[b + 1] - uv[a + 1]];
  const length = Math.hypot(dx, dy);
  return (
    Math.max(
      ...Array.from(run, (v) => Math.abs(dx * (uv[2 * v + 1] - uv[a + 1]) - dy * (uv[2 * v] - uv[a])) / length),
    ) / length
  );
}

describe('straight lines', () => {
  const mesh = referencePatch('cap45-2k');
  const patch = onePatch(mesh);
  const [loop] = patch.loops;
  const eighth = Math.floor(loop.length / 8);
  const runs = [loop.slice(0, eighth), loop.slice(3 * eighth, 4 * eighth)];

  it('make two stretches of a round rim straight, wherever the piece turns them', async () => {
    const laid = async (straightRuns: Uint32Array[]) =>
      expectOk(await flattenPatch(patch, mesh.positions, { straightRuns }, QUIET_WORK));
    const [plain, held] = [await laid([]), await laid(runs)];
    for (const run of runs) {
      expect(bow(plain.uv, run)).toBeGreaterThan(0.05);
      expect(bow(held.uv, run)).toBeLessThan(2e-6);
    }
    expect(held.flipped).toBe(0);
    expect(held.solve.converged).toBe(true);
    expect(held.energy).toBeGreaterThan(plain.energy);
  });

  it('have the slopes and curvatures of their cost, and leave out runs of two corners, which are straight', () => {
    expectDerivatives(
      (system, flat) => {
        const lines = straightLines(system, [Uint32Array.of(1, 2, 3), Uint32Array.of(5, 6)], flat);
        return lines?.termOver(lines.system) ?? null;
      },
      (flat, size) => {
        const longer = new Float64Array(2 * size);
        longer.set(flat);
        return longer;
      },
      (system, flat) => straightLines(system, [Uint32Array.of(1, 2, 3), Uint32Array.of(5, 6)], flat)?.system ?? system,
    );
  });
});
