import { afterEach, describe, expect, it } from 'vitest';
import { speakFrom, spoken, type Translation } from '../../../src/app/language/spoken.ts';

const INNER = spoken('test-inner', { seam: 'seam' });
const OUTER = spoken('test-outer', {
  heading: 'Seams',
  count: (n: number) => `${n} seams`,
  tools: { part: 'part', join: 'join' },
  steps: ['whole', 'flat'],
  inner: INNER,
});

const OUTER_ELSE: Translation<typeof OUTER> = {
  heading: 'Nähte',
  count: (n) => `${n} Nähte`,
  tools: { part: 'trennen', join: 'verbinden' },
  steps: ['ganz', 'flach'],
};

afterEach(() => speakFrom(null));

describe('a table of words', () => {
  it('is read in English until another language is spoken, and again when it no longer is', () => {
    const { tools } = OUTER;
    speakFrom({ 'test-outer': OUTER_ELSE, 'test-inner': { seam: 'Naht' } });
    expect([OUTER.heading, OUTER.count(2), OUTER.tools.join, OUTER.steps[1], OUTER.inner.seam]).toEqual([
      'Nähte',
      '2 Nähte',
      'verbinden',
      'flach',
      'Naht',
    ]);
    // What was taken out of it before is of the language before: words are read when something is drawn.
    expect(tools.join).toBe('join');
    speakFrom(null);
    expect([OUTER.heading, OUTER.inner.seam]).toEqual(['Seams', 'seam']);
  });

  it('says in English what is not translated yet', () => {
    speakFrom({ 'test-outer': { tools: { part: 'trennen' } } });
    expect([OUTER.tools.part, OUTER.tools.join, OUTER.heading]).toEqual(['trennen', 'join', 'Seams']);
  });

  it('does not compile in another language with a key or an argument amiss', () => {
    // @ts-expect-error: a heading is missing.
    const short: Translation<{ heading: string; count: (n: number) => string }> = { count: (n) => `${n}` };
    // @ts-expect-error: it counts, and is given no text.
    const other: Translation<{ count: (n: number) => string }> = { count: (text: string) => text };
    expect([short, other]).toHaveLength(2);
  });

  it('has a name of its own', () => {
    expect(() => spoken('test-inner', {})).toThrow('test-inner');
  });
});
