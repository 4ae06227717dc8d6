import { expect, it } from 'vitest';
import type { PieceId } from '../../../src/base/ids.ts';
import { FOAM_RULES } from '../../../src/model/foam-settings.ts';
import { bendFinding } from '../../../src/steps/foam/bend-check.ts';
import { BEND_LIMITS } from '../../../src/model/bend-check.ts';

const LABEL = { id: 'p1' as PieceId, part: 'Helm', name: 'Brow' };

/** 6 mm foam that keeps its length at a share of its thickness from the inside, bent to that radius there. */
const tellOf = (radiusMm: number, neutral = 0.5): string => {
  const [outsidePct, insidePct] = [1 - neutral, neutral].map((share) => (100 * share * 6) / radiusMm);
  const strain = { outsidePct, insidePct, radiusMm, at: { x: 0, y: 0 }, point: [0, 0, 0] as const };
  return bendFinding(LABEL, { strain, thicknessMm: 6, limits: BEND_LIMITS, rules: FOAM_RULES })?.text ?? '';
};

it('offers kerfs where there is room for them', () => expect(tellOf(15)).toContain('cut kerfs'));

it('offers none round a tip sharper than half a hinge, and tells the bend all the same', () => {
  for (const [radiusMm, neutral] of [
    [0.2, 0.5],
    [1e-9, 0.5],
    // What keeps its length is the outside itself: there is no foam beyond it.
    [0.23, 1],
    [0.75, 1],
  ]) {
    const text = tellOf(radiusMm, neutral);
    expect(text).toMatch(/^Brow bends to a radius of [01] mm/);
    expect(text).not.toContain('kerfs');
  }
});
