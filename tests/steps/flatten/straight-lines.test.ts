import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../../src/base/work.ts';
import { flattenPatch } from '../../../src/steps/flatten/flatten-patch.ts';
import type { StraightRun } from '../../../src/steps/flatten/flatten-options.ts';
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

const square = (vertices: Uint32Array): StraightRun => ({ vertices, outwardMm: new Float64Array(vertices.length) });
const CUT: StraightRun = { vertices: Uint32Array.of(1, 2, 3), outwardMm: Float64Array.of(0.5, 2, -1) };

describe('straight lines', () => {
  const mesh = referencePatch('cap45-2k');
  const patch = onePatch(mesh);
  const [loop] = patch.loops;
  const eighth = Math.floor(loop.length / 8);
  const runs = [loop.slice(0, eighth), loop.slice(3 * eighth, 4 * eighth)];

  const laid = async (straightRuns: StraightRun[], start?: Float64Array) =>
    expectOk(await flattenPatch(patch, mesh.positions, { straightRuns, ...(start && { start }) }, QUIET_WORK));

  it('make two stretches of a round rim straight, wherever the piece turns them', async () => {
    const [plain, held] = [await laid([]), await laid(runs.map((run) => square(run)))];
    for (const run of runs) {
      expect(bow(plain.uv, run)).toBeGreaterThan(0.05);
      expect(bow(held.uv, run)).toBeLessThan(2e-6);
    }
    expect(held.flipped).toBe(0);
    expect(held.solve.converged).toBe(true);
    expect(held.energy).toBeGreaterThan(plain.energy);
  });

  it('make the cut edge straight where it stands outside the border by more in one place than in another', async () => {
    const [run] = runs;
    const outwardMm = Float64Array.from(run, (_, i) => 4 * Math.sin((Math.PI * i) / (run.length - 1)) ** 2);
    const held = await laid([{ vertices: run, outwardMm }]);
    expect(held.solve.converged).toBe(true);
    const [a, b] = [2 * run[0], 2 * run[run.length - 1]];
    const [dx, dy] = [held.uv[b] - held.uv[a], held.uv[b + 1] - held.uv[a + 1]];
    const length = Math.hypot(dx, dy);
    for (const [i, v] of run.entries()) {
      const left = (dx * (held.uv[2 * v + 1] - held.uv[a + 1]) - dy * (held.uv[2 * v] - held.uv[a])) / length;
      expect(left).toBeCloseTo(outwardMm[i], 3);
    }
  });

  it('come out the same from any start', async () => {
    const asked = runs.map(square);
    const held = await laid(asked);
    const turned = Float64Array.from(held.uv, (_, i) =>
      i % 2 === 0 ? -1.001 * held.uv[i + 1] : 0.998 * held.uv[i - 1],
    );
    const again = await laid(asked, turned);
    again.uv.forEach((x, i) => expect(Math.abs(x - held.uv[i])).toBeLessThan(1e-6));
  });

  it('have the slopes and curvatures of their cost, and leave out runs of two corners, which are straight', () => {
    expectDerivatives(
      (system, flat) => {
        const lines = straightLines(system, [CUT, square(Uint32Array.of(5, 6))], flat);
        return lines?.termOver(lines.system) ?? null;
      },
      (flat, size) => {
        const longer = new Float64Array(2 * size);
        longer.set(flat);
        return longer;
      },
      (system, flat) => straightLines(system, [CUT, square(Uint32Array.of(5, 6))], flat)?.system ?? system,
    );
  });
});
