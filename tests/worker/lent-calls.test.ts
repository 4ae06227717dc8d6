import { describe, expect, it } from 'vitest';
import { givingBack } from '../../src/worker/lent-calls.ts';

describe('functions lent to a worker', () => {
  it('are given back once the call is answered, and not heard any more', async () => {
    const told: string[] = [];
    const back: unknown[] = [];
    let late: (text: string) => unknown = () => undefined;
    const desk = givingBack(
      {
        work: async (size: number, tell: (text: string) => unknown) => {
          tell(`begun ${size}`);
          late = tell;
          await Promise.resolve();
          if (size < 0) throw new Error('no size');
          return 2 * size;
        },
      },
      (lent) => back.push(lent),
    );
    const tell = (text: string): number => told.push(text);
    const working = desk.work(3, tell);
    expect(back).toEqual([]);
    expect(await working).toBe(6);
    expect(back).toEqual([tell]);
    await late('still going on');
    await expect(desk.work(-1, tell)).rejects.toThrow('no size');
    expect(back).toEqual([tell, tell]);
    expect(told).toEqual(['begun 3', 'begun -1']);
  });
});
