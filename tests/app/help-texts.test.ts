import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { DRAWN_NAMES } from '../../src/app/help/drawings.ts';
import { GLOSSARY_WORDS, TERM_NAMES } from '../../src/app/help/glossary-words.ts';
import { GUIDE_STEPS, doneSteps, nextStep, type GuideFacts } from '../../src/app/help/guide-steps.ts';
import { lengthsIn, plainText, runsOf } from '../../src/app/help/linked-text.ts';
import { MEANS_WORDS } from '../../src/app/help/means-words.ts';
import { termVerbs } from '../../src/app/help/term-verbs.ts';
import { FIRST_VIEW, FIRST_WISHES } from '../../src/app/view-state.ts';
import { RULE_LIMITS } from '../../src/project/shop-rules.ts';

const APP = new URL('../../src/app/', import.meta.url);
const sources = (readdirSync(APP, { recursive: true }) as string[])
  .filter((name) => name.endsWith('.ts'))
  .map((name) => ({ name, text: readFileSync(new URL(name, APP), 'utf8') }));

/** Elements that are fields, and what makes fields: what they are is said where they are used. */
const FIELD = /<(?:input|select|textarea|fl-length-field|fl-number-field)\b/g;
const MADE_ELSEWHERE = ['length-field.ts', 'quantity-field.ts', 'figure-fields.ts', 'finder.ts', 'app.ts'];

/** Fields of a source that nothing is said of, each by its line. Files that are opened by a button have no field to be seen. */
function unsaid({ name, text }: { readonly name: string; readonly text: string }): string[] {
  if (MADE_ELSEWHERE.includes(name) || name.startsWith('help/')) return [];
  return [...text.matchAll(FIELD)].flatMap(({ index }) => {
    const tag = text.slice(index, index + 420);
    const isSaid = /^[^>]*?data-means=/.test(tag) || tag.includes('type="file"') || isWrapped(text, index);
    return isSaid ? [] : [`${name}:${text.slice(0, index).split('\n').length}`];
  });
}

/** Fields made by a function of their own file are said where that is called. */
const isWrapped = (text: string, index: number): boolean => {
  const maker = /(?:const (field)|#(field|number)\()[\s\S]{0,800}$/.exec(
    text.slice(0, index).split('\n\n').at(-1) ?? '',
  );
  const name = maker?.[1] ?? maker?.[2];
  return name !== undefined && new RegExp(`means\\(\\s*'[^']+',\\s*(?:this\\.#)?${name}\\(`).test(text);
};

describe('what fields mean', () => {
  it('is said of every field there is', () => {
    expect(sources.flatMap(unsaid)).toEqual([]);
  });

  it('is said of every field that asks for it, and of nothing else', () => {
    const fixed = sources.flatMap(({ text }) =>
      [...text.matchAll(/data-means="([^"]+)"|means\(\s*'([^']+)'/g)].map(([, one, other]) => one ?? other),
    );
    const begins = sources.flatMap(({ text }) =>
      [...text.matchAll(/data-means=\$\{`([a-z-]+)\$\{/g)].map(([, begin]) => begin),
    );
    const names = Object.keys(MEANS_WORDS);
    expect(fixed.filter((name) => !names.includes(name))).toEqual([]);
    expect(begins.filter((begin) => !names.some((name) => name.startsWith(begin)))).toEqual([]);
    const isUsed = (name: string): boolean => fixed.includes(name) || begins.some((begin) => name.startsWith(begin));
    expect(names.filter((name) => !isUsed(name))).toEqual([]);
  });

  it('is said of every rule of the shop', () => {
    expect(Object.keys(RULE_LIMITS).filter((name) => !(`rule-${name}` in MEANS_WORDS))).toEqual([]);
  });

  it('leads to words of the trade that are there, and is whole sentences', () => {
    const texts = [...Object.values(MEANS_WORDS), ...TERM_NAMES.map((name) => GLOSSARY_WORDS[name].says)];
    for (const text of texts) expect(plainText(text, 'mm')).toMatch(/^[A-Z0-9].*\.$/);
  });

  it('is drawn where a drawing helps', () => {
    const wanted = ['neutral', 'surface', 'rule-bevelLimitDeg', 'lap', 'rule-kerfMm', 'score-depthMm', 'stagger'];
    const more = ['tape-easeMm', 'tape-bodyGirthMm', 'page-overlapMm', 'page-marginMm', 'shrink-alongPct', 'room'];
    const rest = ['rule-stretchNoticePct', 'squash-price', 'rule-foldLimitDeg', 'join-room', 'winding-pitch'];
    expect([...wanted, ...more, ...rest].filter((name) => !DRAWN_NAMES.includes(name))).toEqual([]);
    const known = [...Object.keys(MEANS_WORDS), ...TERM_NAMES];
    expect(DRAWN_NAMES.filter((name) => !known.includes(name))).toEqual([]);
  });

  it('says lengths in the unit in force', () => {
    expect(lengthsIn('10 to 15 mm, or 3.5 mm', 'in')).toBe('3/8\u00a0in to 9/16\u00a0in, or 1/8\u00a0in');
    expect(lengthsIn('10 to 15 mm', 'mm')).toBe('10\u00a0mm to 15\u00a0mm');
  });
});

describe('words of the trade', () => {
  it('cut sentences at words in brackets, and refuse one that leads nowhere', () => {
    expect(runsOf('A [seam] or two [darts|dart].')).toEqual([
      'A ',
      { word: 'seam', to: 'seam' },
      ' or two ',
      { word: 'darts', to: 'dart' },
      '.',
    ]);
    expect(() => runsOf('A [mistake].')).toThrow('mistake');
  });

  it('are found by what else they are called', () => {
    expect(termVerbs([])).toEqual([]);
    expect(termVerbs(['notch']).map(({ id }) => id)).toEqual(['word-dart', 'word-mate-mark']);
  });
});

describe('the guided job', () => {
  const then: GuideFacts = { project: null, view: FIRST_VIEW, wishes: FIRST_WISHES };

  it('ticks what was done, and nothing else', () => {
    expect(GUIDE_STEPS).toHaveLength(10);
    expect(doneSteps([], then, then)).toEqual([]);
    expect(doneSteps([], { ...then, view: { ...FIRST_VIEW, stage: 1.1, colouring: 'stretch' } }, then)).toEqual([
      'apart',
      'stretch',
    ]);
    expect(doneSteps(['apart'], then, then)).toEqual(['apart']);
  });

  it('goes on at the next step that is open, and comes back for those left behind', () => {
    expect(nextStep([], -1)).toBe(0);
    expect(nextStep(['apart'], 0)).toBe(2);
    const names = GUIDE_STEPS.map(({ name }) => name);
    expect(nextStep(names.slice(1), 9)).toBe(0);
    expect(nextStep(names, 9)).toBeNull();
  });
});
