import { describe, expect, it } from 'vitest';
import { nameWords, signs, wordsOf } from '../../scripts/origins/gather.ts';
import { originFaults, originsText } from '../../scripts/origins/text.ts';
import { readProjectFile } from './project-files.ts';

describe('what is seen', () => {
  it('has an origin: a new word of a name, sign, colour or drawing is put into scripts/origins/origins.ts', () => {
    expect(nameWords().length).toBeGreaterThan(600);
    expect(signs().length).toBeGreaterThan(10);
    expect(originFaults()).toEqual([]);
  });

  it('is listed for whoever asks: npm run origins', () => {
    const headings = (text: string): string[] => text.split('\n').filter((line) => line.startsWith('#'));
    expect(headings(readProjectFile('shared/origins.md'))).toEqual(headings(originsText()));
  });
});

describe('words of a name', () => {
  it('are small unless they are short forms', () => {
    expect(wordsOf('Save templates, PDF')).toEqual(['save', 'templates', 'PDF']);
    expect(wordsOf('body’s girth 10°')).toEqual(['body’s', 'girth']);
  });
});
