import { describe, expect, it } from 'vitest';
import { DRY_FIT_MM } from '../../src/base/tolerance.ts';
import { gapReason, type GapReason } from '../../src/pipeline/gap-reasons.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { runSample } from '../support/run-sample.ts';
import { SHAPES } from './seams/test-models.ts';
import { runModel } from './test-model-chain.ts';

const HORN = SHAPES.find(({ name }) => name === 'horn');

/** Why the seams that do not close do not, by letter. */
function reasonsOf({ layers: [{ cut, bends }], dryFit }: Outcome): ReadonlyMap<string, GapReason | null> {
  if (cut === null || bends === null || dryFit === null) throw new Error('an unfinished outcome');
  const open = dryFit.perSeam.filter((fit) => Math.max(fit.worstGapMm, fit.worstOverlapMm) > DRY_FIT_MM);
  return new Map(open.map((fit) => [fit.letter, gapReason(fit, cut, bends)]));
}

describe('seams that no cut closes', () => {
  it.each([2, 15])('at the tip of a horn, 3 mm across, are too short for %i mm foam', async (thicknessMm) => {
    if (HORN === undefined) throw new Error('no horn');
    const { outcome } = await runModel(HORN, { thicknessMm, modelIs: 'face' });
    const reasons = reasonsOf(outcome);
    expect([...reasons.keys()]).toEqual(['H', 'I', 'J', 'K', 'L']);
    for (const [letter, reason] of reasons) expect(reason?.why, letter).toBe('gone');
  });

  it('end at a corner whose planes find no common point under 15 mm of foam: the facet beside them turns by 4 degrees', async () => {
    const outcome = await runSample('helm', (project) => {
      const [part] = project.parts;
      return { ...project, parts: [{ ...part, layers: [{ ...part.layers[0], thicknessMm: 15 }] }] };
    });
    const reasons = reasonsOf(outcome);
    expect([...reasons.keys()]).toEqual(['A', 'D']);
    for (const reason of reasons.values()) {
      expect(reason?.why).toBe('turned');
      expect(reason?.why === 'turned' ? reason.turnDeg : 0).toBeCloseTo(4, 1);
    }
  });
});
