import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { QUIET_WORK } from '../../../src/base/work.ts';
import { planFactor } from '../../../src/geom/sparse-plan.ts';
import { graphOfPairs } from '../../../src/geom/sparse-graph.ts';
import { factorBytes } from '../../../src/geom/sparse-factor.ts';
import type * as Flattening from '../../../src/steps/flatten/flatten-patch.ts';
import { onePatch, referencePatch } from './flatten-support.ts';

let flattenPatch: typeof Flattening.flattenPatch;

// Other files share the modules that are loaded: those with the small room are loaded for this one alone.
beforeAll(async () => {
  vi.resetModules();
  vi.doMock(import('../../../src/geom/dense-room.ts'), async (original) => ({
    ...(await original()),
    MOST_ROOM_BYTES: 100_000,
  }));
  ({ flattenPatch } = await import('../../../src/steps/flatten/flatten-patch.ts'));
});

afterAll(() => {
  vi.doUnmock('../../../src/geom/dense-room.ts');
  vi.resetModules();
});

describe('a piece whose factor would not fit', () => {
  it('is refused in a sentence before any room is taken', async () => {
    const mesh = referencePatch('hemisphere-500');
    const result = await flattenPatch(onePatch(mesh), mesh.positions, {}, QUIET_WORK);
    expect(result).toMatchObject({ ok: false, problem: { code: 'flatten/too-large', where: { triangles: [0] } } });
  });

  it('is known by its plan: two nodes that meet take three entries of the matrix and one panel', () => {
    expect(factorBytes(planFactor(graphOfPairs(2, [0, 1])), 2)).toBe(8 * (4 * (4 + 3) + 2 * 2));
  });
});
