import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { brokenPlace } from '../../src/project/broken-place.ts';
import { readSeamFile } from '../../src/project/seam-file.ts';

describe('what is said of a broken seam file', () => {
  it.each([
    ['{"version":1,"edges":[[0]]}', 'at edges.0.1 there is nothing where a number belongs.'],
    ['{"version":1,"edges":[[0,1,2]]}', 'at edges.0.2 there is 2 too much.'],
    ['{"version":1,"edges":[[0,"one"]]}', 'at edges.0.1 there is "one" where a number belongs.'],
    ['{"version":1,"edges":[[0,1.5]]}', 'at edges.0.1 there is 1.5 where a whole number belongs.'],
    ['{"version":1,"edges":[[0,-1]]}', 'at edges.0.1 there is -1 where at least 0 belongs.'],
    ['{"version":2}', 'at version there is 2 where 1 belongs.'],
    ['{"edges":[]}', 'at version something is missing.'],
    ['{"version":1,"edges":{}}', 'at edges there is an object where a list belongs.'],
    ['7', 'at its top there is 7 where an object belongs.'],
  ])('%s', (text, ending) => {
    const read = readSeamFile(text, 's.json');
    expect(read.ok ? '' : read.problem.text).toBe(`s.json is not a seam file: ${ending}`);
  });
});

it('says what a check of our own wants, and of others only that something else belongs', () => {
  const of = (check: v.CheckAction<number, string | undefined>): string => {
    const read = v.safeParse(v.object({ count: v.pipe(v.number(), check) }), { count: 3 });
    return read.success ? '' : brokenPlace(read.issues[0]);
  };
  expect(of(v.check((n) => n % 2 === 0, 'an even number'))).toBe('at count there is 3 where an even number belongs');
  expect(of(v.check((n) => n % 2 === 0))).toBe('at count there is 3 where something else belongs');
});
