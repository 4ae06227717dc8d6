import { describe, expect, it } from 'vitest';
import { TARGETS } from './targets.ts';

/** Seeds that are there to be refused: what is mistaken for a model, copies alone, a zip with no
 * project, a coding that is not read, figures of another grammar, commands of too little, strips for a sculpt that is not there. */
const REFUSED: Readonly<Record<string, number>> = {
  model: 8,
  drawing: 1,
  zip: 1,
  jpeg: 1,
  figures: 2,
  options: 99,
  'listed-parts': 1,
};

describe('the files that inputs are made from', () => {
  it.each(TARGETS)('of $name are read', async (target) => {
    const refused: string[] = [];
    for (const bytes of await target.seeds()) {
      const { isOk, kind } = await target.look(bytes);
      if (!isOk) refused.push(kind);
    }
    expect(refused.length, refused.join('\n')).toBeLessThanOrEqual(REFUSED[target.name] ?? 0);
  });
});
