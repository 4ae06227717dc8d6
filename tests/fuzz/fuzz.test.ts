import { describe, expect, it } from 'vitest';
import { runLeg } from './leg.ts';
import { TARGETS } from './targets.ts';

/** Inputs of each reader: fixed, so that every machine tries the same, and for about half a minute of a quiet one altogether. */
const INPUTS: Readonly<Record<string, number>> = {
  ...{ obj: 800, 'stl-ascii': 1000, 'stl-binary': 1500, model: 800, svg: 400, drawing: 800, png: 1000, jpeg: 800 },
  ...{
    seams: 3000,
    stock: 3000,
    parts: 1500,
    nest: 3000,
    project: 800,
    zip: 500,
    figures: 5000,
    options: 2000,
    'listed-parts': 600,
  },
};

describe('inputs that nobody would send', () => {
  it.each(TARGETS)('end in a result or a clear problem: $name', async (target) => {
    const { faults } = await runLeg({ target, seed: 20261128, count: INPUTS[target.name] ?? 500, isMeasured: false });
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
