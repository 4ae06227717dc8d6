import { describe, expect, it } from 'vitest';
import { runLeg } from './leg.ts';
import { TARGETS } from './targets.ts';

/** Inputs of each reader: fixed, so that every machine tries the same, and for about half a minute of a quiet one altogether. */
const INPUTS: Readonly<Record<string, number>> = {
  ...{ obj: 600, 'stl-ascii': 800, 'stl-binary': 1000, model: 600, svg: 300, drawing: 500, png: 800, jpeg: 600 },
  ...{
    seams: 2000,
    stock: 2000,
    parts: 1000,
    nest: 2000,
    project: 600,
    zip: 400,
    figures: 2000,
    options: 1500,
    'listed-parts': 400,
  },
};

describe('inputs that nobody would send', () => {
  it.each(TARGETS)('end in a result or a clear problem: $name', async (target) => {
    const { faults } = await runLeg({ target, seed: 1_000_003, count: INPUTS[target.name] ?? 500, isMeasured: false });
    const told = [...faults.values()].map(({ fault, bytes }) => `${fault}\n${Buffer.from(bytes).toString('base64')}`);
    expect(told).toEqual([]);
  });

  it('are the same for the same seed, and others for another', async () => {
    const [target] = TARGETS;
    const givenWith = async (seed: number): Promise<string> => {
      const given: string[] = [];
      await runLeg({
        target,
        seed,
        count: 200,
        isMeasured: false,
        before: (bytes) => given.push(Buffer.from(bytes).toString('base64')),
      });
      return given.join('\n');
    };
    const once = await givenWith(3);
    expect(await givenWith(3)).toBe(once);
    expect(await givenWith(4)).not.toBe(once);
  });
});
