import { describe, expect, it } from 'vitest';
import { topologyOf } from '../../../src/mesh/topology.ts';
import { REFERENCE_LIMITS } from '../../../src/pipeline/propose/proposal.ts';
import { meshOf } from '../../support/meshes.ts';
import { seek } from './seek.ts';

/** A strip 60 mm wide, flat but for folds of `turnDeg` at the given columns, 10 mm from column to column. */
function bent(turnDeg: number, at: readonly number[]) {
  let [x, z, lean] = [0, 0, 0];
  const rows = [[x, z]];
  for (let i = 1; i <= 8; i += 1) {
    [x, z] = [x + 10 * Math.cos(lean), z - 10 * Math.sin(lean)];
    rows.push([x, z]);
    if (at.includes(i)) lean += (turnDeg * Math.PI) / 180;
  }
  return meshOf(
    rows.flatMap(([a, b]) => [[a, 0, b] as const, [a, 60, b] as const]),
    Array.from({ length: 8 }, (_, i) => [2 * i, 2 * i + 2, 2 * i + 3, 2 * i + 1]),
  );
}

// One fold of 18 degrees spread over 10 mm has a radius of 32 mm: 9 % in foam of 6 mm.
const limits = (mostPct: number, foldLimitDeg = 20) => ({
  ...REFERENCE_LIMITS,
  bend: { thicknessMm: 6, neutralFraction: 0.5, foldLimitDeg, mostPct },
});

describe('a tight bend', () => {
  it('is taken away by a seam along it where pieces cost little', async () => {
    const mesh = bent(18, [4]);
    const start = { isSeam: new Uint8Array(topologyOf(mesh).edgeCount), count: 0 };
    const { last } = await seek({ mesh, limits: limits(5), start, dial: 1 }, 300);
    expect(last.edges).toEqual([[8, 9]]);
    expect([last.feasible, last.reasons, last.sum.bends]).toEqual([true, [], 0]);
  });

  it('is told, and no piece fails for it, where it goes on all round', async () => {
    const { last } = await seek({ mesh: bent(18, [1, 2, 3, 4, 5, 6, 7]), limits: limits(5), dial: 1 }, 100);
    expect([last.feasible, last.pieces]).toEqual([true, 1]);
    expect(last.reasons.map(({ limit }) => limit)).toEqual(['bend']);
    expect(last.reasons[0].text).toMatch(/seams cannot help/);
    expect(last.reasons[0].share).toBeGreaterThan(1);
  });

  it('is none where the foam takes it, nor where the fold is grooved', async () => {
    for (const some of [limits(25), limits(5, 15)]) {
      const { last } = await seek({ mesh: bent(18, [4]), limits: some, dial: 1 }, 100);
      expect([last.pieces, last.reasons]).toEqual([1, []]);
    }
  });
});
