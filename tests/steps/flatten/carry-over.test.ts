import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../../src/base/work.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import type { Patch } from '../../../src/model/patch.ts';
import { carryOver, type EarlierFlat } from '../../../src/steps/flatten/carry-over.ts';
import { flattenPatch } from '../../../src/steps/flatten/flatten-patch.ts';
import { countFlips } from '../../../src/steps/flatten/flips.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { forAll } from '../../support/for-all.ts';
import { referencePatch } from './flatten-support.ts';
import { worstAfterFit } from './rigid-fit.ts';
import { dart, halves, largest, movedSeam, partedBy } from './seam-moves.ts';

const DOME = referencePatch('hemisphere-500');

const flatOf = async (patch: Patch, start?: Float64Array) =>
  expectOk(await flattenPatch(patch, DOME.positions, start === undefined ? {} : { start }, QUIET_WORK));

const canLie = (patch: Patch): boolean => patch.kind === 'disc' || patch.kind === 'windowed';

async function laid(patches: readonly Patch[]): Promise<EarlierFlat[]> {
  const list: EarlierFlat[] = [];
  for (const patch of patches.filter(canLie)) list.push({ patch, uv: (await flatOf(patch)).uv });
  return list;
}

/** Carries over, minimises from there and from nothing, and compares. @returns whether there was a start. */
async function expectSameEnd(patch: Patch, earlier: readonly EarlierFlat[]): Promise<boolean> {
  const start = carryOver(patch, DOME.positions, earlier);
  if (start === null) return false;
  expect(countFlips(patch.triangles, start)).toBe(0);
  const [warm, cold] = [await flatOf(patch, start), await flatOf(patch)];
  expect(warm.solve.converged).toBe(true);
  expect(worstAfterFit(cold.uv, warm.uv)).toBeLessThan(1e-6); // mm
  return true;
}

const whole = (mesh: Mesh): Uint8Array => new Uint8Array(mesh.triangles.length / 3);

describe('a start carried over from earlier flat patches', () => {
  it('has no flip and leads to the same shape, whatever seam was moved by a few triangles', async () => {
    let tried = 0;
    let started = 0;
    await forAll(
      (rand) => {
        const before = halves(DOME, 0.6 * rand() - 0.3);
        return { before, after: movedSeam(DOME, before, 1 + Math.floor(20 * rand()), rand) };
      },
      async ({ before, after }) => {
        const earlier = await laid(partedBy(DOME, before));
        for (const patch of partedBy(DOME, after).filter(canLie)) {
          tried += 1;
          if (await expectSameEnd(patch, earlier)) started += 1;
        }
      },
      { runs: 12 },
    );
    expect(started).toBeGreaterThan(0.9 * tried);
  });

  it('does so when a dart is opened, closed, made longer or shorter', async () => {
    let started = 0;
    let tried = 0;
    await forAll(
      (rand) => {
        const way = dart(DOME, 1 + Math.floor(7 * rand()), rand);
        return { way, from: Math.floor((way.length + 1) * rand()), to: Math.floor((way.length + 1) * rand()) };
      },
      async ({ way, from, to }) => {
        const [before, after] = [from, to].map((length) => partedBy(DOME, whole(DOME), way.slice(0, length)));
        tried += 1;
        if (await expectSameEnd(largest(after), await laid(before))) started += 1;
      },
      { runs: 12 },
    );
    expect(started).toBeGreaterThan(0.9 * tried);
  });

  it('does so when a patch is parted in two and when two are joined', async () => {
    const one = partedBy(DOME, whole(DOME));
    const two = partedBy(DOME, halves(DOME, 0));
    for (const half of two) expect(await expectSameEnd(half, await laid(one))).toBe(true);
    expect(await expectSameEnd(one[0], await laid(two))).toBe(true);
  });

  it('takes what was not moved as it lies', async () => {
    const before = halves(DOME, 0);
    const [earlier] = await laid([largest(partedBy(DOME, before))]);
    const start = carryOver(earlier.patch, DOME.positions, [earlier]);
    expect(start).toEqual(earlier.uv);
  });

  it('is none where nothing is shared', async () => {
    const [left, right] = partedBy(DOME, halves(DOME, 0));
    expect(carryOver(left, DOME.positions, await laid([right]))).toBeNull();
    expect(carryOver(left, DOME.positions, [])).toBeNull();
  });

  it('is the same on every run', async () => {
    const earlier = await laid(partedBy(DOME, halves(DOME, 0)));
    const [patch] = partedBy(DOME, halves(DOME, 0.1));
    expect(carryOver(patch, DOME.positions, earlier)).toEqual(carryOver(patch, DOME.positions, earlier));
  });
});
