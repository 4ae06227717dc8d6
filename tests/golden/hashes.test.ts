import { existsSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { expectGolden } from '../support/golden.ts';
import { IS_LONG } from '../support/long.ts';
import { makeSample } from '../support/run-sample.ts';
import { HASHED_NAMES, hashesOf } from './sample-hashes.ts';

const GOLDEN = 'hashes.txt';
/** Made every day; the others in the long run, and whenever the hashes are written anew. */
const DAILY: readonly string[] = ['bracer', 'maul-head'];
const IS_WHOLE = IS_LONG || process.env.FOAMLOFT_UPDATE_GOLDEN === '1';

it('every file of the samples has the bytes it had', async () => {
  const made: string[] = [];
  for (const name of IS_WHOLE ? HASHED_NAMES : DAILY) made.push(...(await hashesOf(name)));
  if (IS_WHOLE) return expectGolden(GOLDEN, `${made.join('\n')}\n`);
  const path = new URL(GOLDEN, import.meta.url);
  expect(existsSync(path), 'tests/golden/hashes.txt is missing: npm run golden').toBe(true);
  const lines = readFileSync(path, 'utf8').split('\n');
  const kept = DAILY.flatMap((name) => lines.filter((line) => line.startsWith(`${name} `)));
  expect(made, 'differs from tests/golden/hashes.txt; if the change is meant, run: npm run golden').toEqual(kept);
});

it('a run in a pipeline that has made nothing yet gives the same bytes', async () => {
  const [name] = DAILY;
  expect(await hashesOf(name, await makeSample(name))).toEqual(await hashesOf(name));
});
