import { describe, expect, it } from 'vitest';
import { IS_LONG } from '../support/long.ts';
import { BROKEN } from './broken-solids.ts';
import { brokenTrial, sourcesOf } from './broken-trials.ts';
import { outcomeFaults } from './outcome-faults.ts';
import { runToPieces } from './run-to-pieces.ts';

/** Every day these; all kinds in the long tests, and by chance in `npm run hostile:broken`. */
const DAILY = ['tip to tip', 'fins', 'one triangle', 'half a turn', 'far larger'];

describe('broken sculpts', () => {
  it.each(IS_LONG ? Object.keys(BROKEN) : DAILY)('%s: end in sound pieces or a reason', async (name) => {
    const trial = await brokenTrial(name, 11);
    expect(outcomeFaults(await runToPieces(trial.project, sourcesOf(trial)))).toEqual([]);
  });
});
