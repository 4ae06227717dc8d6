import { describe, expect, it } from 'vitest';
import { FOAM_RULES } from '../../../src/model/foam-settings.ts';
import { markStations } from '../../../src/steps/foam/match-marks.ts';
import { forAll } from '../../support/for-all.ts';

const RULES = { ...FOAM_RULES, markSpacingMm: 80, markLeastSeamMm: 25 };

const expectNear = (found: readonly number[], wanted: readonly number[]): void => {
  expect(found).toHaveLength(wanted.length);
  found.forEach((mm, i) => expect(mm).toBeCloseTo(wanted[i], 9));
};

describe('match marks along a seam', () => {
  it('part it in stretches that grow to half as much again', () => {
    // 100 mm in 1 : 1.5, 150 mm too: its longer half is 90 mm, which is too long.
    expectNear(markStations(100, false, RULES), [40]);
    expectNear(markStations(150, false, RULES), [40, 90]);
    // 200 mm in 1 : 1.25 : 1.5, 53 1/3 and 66 2/3 and just 80 mm; 210 mm in 1 : 1 1/6 : 1 1/3 : 1.5.
    expectNear(markStations(200, false, RULES), [160 / 3, 120]);
    expectNear(markStations(210, false, RULES), [42, 91, 147]);
  });

  it('begin at the start of a closed one, which has no ends to line up', () => {
    expectNear(markStations(100, true, RULES), [0, 40]);
    expectNear(markStations(210, true, RULES), [0, 42, 91, 147]);
  });

  it('are none on a short one, and on a short closed one that at its start', () => {
    expect(markStations(24.9, false, RULES)).toEqual([]);
    expect(markStations(24.9, true, RULES)).toEqual([0]);
    expectNear(markStations(25, false, RULES), [10]);
    expectNear(markStations(25, true, RULES), [0, 10]);
  });

  it('are as many as those of the longest seam that is marked alike', () => {
    expectNear(markStations(200, false, RULES, 200.1), [40, 200 / 5 + (200 * 7) / 30, 140]);
    expectNear(markStations(24.9, false, RULES, 25), [9.96]);
  });

  it('stand no farther apart than the rule says, on as few stretches as that takes, and never evenly', () =>
    forAll(
      (rand) => ({ length: 25 + 1500 * rand(), spacing: 30 + 120 * rand() }),
      ({ length, spacing }) => {
        const marks = markStations(length, false, { ...RULES, markSpacingMm: spacing });
        const ends = [0, ...marks, length];
        const stretches = ends.slice(1).map((end, i) => end - ends[i]);
        expect(Math.max(...stretches)).toBeLessThanOrEqual(spacing < length * 0.6 ? spacing + 1e-9 : length);
        for (let i = 1; i < stretches.length; i += 1) expect(stretches[i]).toBeGreaterThan(stretches[i - 1]);
        expect(stretches[stretches.length - 1] / stretches[0]).toBeCloseTo(1.5, 6);
        // With one stretch fewer the last, 1.2 times the mean, would be too long.
        const fewer = stretches.length - 1;
        if (fewer >= 2) expect((1.2 * length) / fewer).toBeGreaterThan(spacing);
      },
    ));
});
