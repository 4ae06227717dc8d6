import { expect, it } from 'vitest';
import { fail, ok } from '../../src/base/result.ts';
import { shownLines, shownSentence, shownText } from '../../src/base/shown-text.ts';

it('shows what steers a screen as a replacement sign, and leaves letters of every script', () => {
  expect(shownText('a\u001b[2J\u202eb\tc\nd\ud800e')).toBe('a\ufffd[2J\ufffdb c d\ufffde');
  for (const name of ['Tür', 'שלום', '👩‍👩‍👧', 'e\u0301', 'ﷺ']) expect(shownText(name)).toBe(name);
  expect(shownLines('a\nb\u0007')).toBe('a\nb\ufffd');
});

it('keeps the beginning and the end of a long sentence', () => {
  const shown = shownSentence(`The file names ${'x'.repeat(20_000)} there: choose another one.`);
  expect(shown.length).toBeLessThan(1600);
  expect(shown).toMatch(/^The file names x.*x there: choose another one\.$/);
});

it('is what problems and notes are told in', () => {
  const failed = fail('a/b', 'The part \u0007 is wrong.');
  expect(failed.problem.text).toBe('The part \ufffd is wrong.');
  const note = { code: 'a/b', severity: 'note', text: 'The part \u202e is odd.', where: {} } as const;
  expect(ok(1, [note]).notes[0].text).toBe('The part \ufffd is odd.');
});
