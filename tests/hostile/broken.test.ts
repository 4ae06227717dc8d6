import { describe, expect, it } from 'vitest';
import { BROKEN } from './broken-solids.ts';
import { brokenTrial, sourcesOf } from './broken-trials.ts';
import { outcomeFaults } from './outcome-faults.ts';
import { runToPieces } from './run-to-pieces.ts';

describe('broken sculpts', () => {
  it.each(Object.keys(BROKEN))('%s: end in sound pieces or a reason', async (name) => {
    const trial = await brokenTrial(name, 11);
    expect(outcomeFaults(await runToPieces(trial.project, sourcesOf(trial)))).toEqual([]);
  });
});
