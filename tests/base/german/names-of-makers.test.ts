import { describe, expect, it } from 'vitest';
import { TOLD } from '../../../src/app/german/told.ts';
import { sayOnPaper } from '../../../src/base/german/on-paper.ts';
import { wayText } from '../../../src/base/german/places.ts';

/** What every object of the language has by itself, and a maker may call a piece. */
const NAMES = ['constructor', 'Constructor', 'toString', 'ToString', 'valueOf', 'hasOwnProperty', '__proto__'];

describe('words that a maker chose', () => {
  it.each(NAMES)('stay as they are on German paper: %s', (name) => {
    expect(sayOnPaper(name)).toBe(name);
    expect(sayOnPaper(`${name} · ${name}`)).toBe(`${name} · ${name}`);
    expect(sayOnPaper(`${name}: ${name}`)).toBe(`${name}: ${name}`);
    expect(sayOnPaper(`Glue ${name} on`)).toContain(name);
  });

  it.each(NAMES)('stay as they are in a German window: %s', (name) => {
    expect(TOLD.sentence(name)).toBe(name);
    expect(wayText(`pull it ${name}`)).toBeNull();
  });
});
