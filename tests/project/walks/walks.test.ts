import { expect, it } from 'vitest';
import { IS_LONG } from '../../support/long.ts';
import { commandNames } from './command-names.ts';
import { GENERATORS, walk } from './walk.ts';

it('every command there is is walked with', () => {
  expect([...GENERATORS.keys()].sort()).toEqual([...commandNames()]);
});

it('a walk of commands, undo, redo and jumps is what a plain model of the history says, and its files are the same bytes again', async () => {
  const told = await walk(7, IS_LONG ? 10_000 : 1000, IS_LONG ? 1000 : 500);
  expect(told.saved).toBe(told.steps / 100);
  // It goes about in the document, and not on one spot.
  expect(told.changed.size).toBeGreaterThan(IS_LONG ? 120 : 80);
  expect([told.ways, told.versions].every((n) => n > 1)).toBe(true);
});
