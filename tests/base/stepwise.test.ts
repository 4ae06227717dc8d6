import { describe, expect, it } from 'vitest';
import { inStretches, runAtOnce, runWithPauses, type Stepwise } from '../../src/base/stepwise.ts';

function* countTo(end: number, seen: number[]): Stepwise<number> {
  for (let i = 1; i <= end; i += 1) {
    seen.push(i);
    yield;
  }
  return end;
}

describe('a computation in stretches', () => {
  it('gives its result at once, or with a pause after every stretch', async () => {
    expect(runAtOnce(countTo(3, []))).toBe(3);
    const seen: number[] = [];
    const atPause: number[] = [];
    const pause = (): undefined => void atPause.push(seen.length);
    expect(await runWithPauses(countTo(3, seen), pause)).toBe(3);
    expect(atPause).toEqual([1, 2, 3]);
  });

  it('does things by number, every one once, so many at a time', () => {
    const stretches: [number, number][] = [];
    const steps = inStretches(7, 3, (from, to) => stretches.push([from, to]));
    steps.next();
    expect(stretches).toEqual([[0, 3]]);
    runAtOnce(steps);
    expect(stretches).toEqual([
      [0, 3],
      [3, 6],
      [6, 7],
    ]);
  });

  it('goes no further when it was called off', async () => {
    const seen: number[] = [];
    const pause = (): Promise<void> => (seen.length < 2 ? Promise.resolve() : Promise.reject(new Error('off')));
    await expect(runWithPauses(countTo(9, seen), pause)).rejects.toThrow('off');
    expect(seen).toEqual([1, 2]);
  });
});
