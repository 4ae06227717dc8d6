import { describe, expect, it } from 'vitest';
import { runAtOnce, runWithPauses, type Stepwise } from '../../src/base/stepwise.ts';

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

  it('goes no further when it was called off', async () => {
    const seen: number[] = [];
    const pause = (): Promise<void> => (seen.length < 2 ? Promise.resolve() : Promise.reject(new Error('off')));
    await expect(runWithPauses(countTo(9, seen), pause)).rejects.toThrow('off');
    expect(seen).toEqual([1, 2]);
  });
});
