import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { TARGETS } from './targets.ts';
import { tryInput } from './try-input.ts';

const FOLDER = new URL('./kept/', import.meta.url);
const NAMES = readdirSync(FOLDER);

/** The reader of a kept file: its name begins with the target's. */
const targetOf = (name: string) =>
  TARGETS.filter((target) => name.startsWith(`${target.name}-`)).sort((a, b) => b.name.length - a.name.length)[0];

describe('inputs that a reader once failed on', () => {
  it.each(NAMES)('%s ends in a result or a clear problem', async (name) => {
    const tried = await tryInput(targetOf(name), new Uint8Array(readFileSync(new URL(name, FOLDER))), false);
    expect('fault' in tried ? tried.fault : null).toBeNull();
  });
});
