import { afterEach, describe, expect, it } from 'vitest';
import { language, languageFor, speak } from '../../../src/app/language/language.ts';
import { WORDS } from '../../../src/app/words.ts';
import { formatLength } from '../../../src/base/format-length.ts';

const page = { lang: '', dir: '' } as HTMLElement;
afterEach(() => speak('en', page));

describe('the language of the window', () => {
  it('is the first of the system’s that it speaks, unless another is wished', () => {
    expect(languageFor('auto', ['fr-FR', 'de-AT', 'en'])).toBe('de');
    expect(languageFor('auto', ['en-GB', 'de'])).toBe('en');
    expect(languageFor('auto', ['fr'])).toBe('en');
    expect(languageFor('auto', [])).toBe('en');
    expect(languageFor('en', ['de'])).toBe('en');
  });

  it('goes with its decimal mark, its words and what the page says of itself', async () => {
    expect([formatLength(48.5, 'mm'), WORDS.head.undo]).toEqual(['48.5\u00a0mm', 'Undo']);
    await speak('de', page);
    expect([language(), page.lang, page.dir]).toEqual(['de', 'de', 'ltr']);
    expect([formatLength(48.5, 'mm'), WORDS.head.undo]).toEqual(['48,5\u00a0mm', 'Rückgängig']);
    await speak('en', page);
    expect([formatLength(48.5, 'mm'), WORDS.head.undo, page.lang]).toEqual(['48.5\u00a0mm', 'Undo', 'en']);
  });
});
