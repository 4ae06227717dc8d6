import { describe, expect, it } from 'vitest';
import { outcomeOf } from '../support/run-solid.ts';
import { HOSTILE_CASES } from './cases.ts';
import { expectSound, unsound } from './expect-sound.ts';

describe('what foam cannot do', () => {
  it.each(HOSTILE_CASES)('$name ends in pieces or a reason, and is told', async ({ solid, change, told }) => {
    const outcome = await outcomeOf(solid, change);
    expectSound(outcome);
    const codes = [...outcome.findings.map(({ code }) => code), outcome.stopped?.problem.code];
    for (const code of told) expect(codes).toContain(code);
  });
});

describe('the look for what is not a number', () => {
  it('finds it in lists, in fields and in arrays', () => {
    expect(unsound({ a: [1, { b: NaN }], c: Float64Array.of(0, Infinity), d: 'NaN' })).toEqual([
      '.a.1.b is NaN',
      '.c[1] is Infinity',
    ]);
  });
});
