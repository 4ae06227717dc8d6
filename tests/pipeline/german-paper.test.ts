import { beforeAll, describe, expect, it } from 'vitest';
import { foamId } from '../../src/base/ids.ts';
import { contentHash } from '../../src/base/hash.ts';
import { runAtOnce } from '../../src/base/stepwise.ts';
import { IN_PLACE } from '../../src/geom/matrix4.ts';
import { textWidthMm } from '../../src/geom/text-width.ts';
import type { Words } from '../../src/model/template.ts';
import { shopPaperSteps } from '../../src/pipeline/shop-files.ts';
import { emptyProject } from '../../src/project/new-project.ts';
import { addPlain } from '../../src/project/plain-commands.ts';
import type { ShapePart } from '../../src/project/plain-part.ts';
import { readProjectFile, writeProjectFile } from '../../src/project/project-file.ts';
import { paperLanguageOf, setPaperLanguage } from '../../src/project/paper-language-commands.ts';
import { expectOk } from '../support/expect-ok.ts';
import { makeSample, type MadeSample } from '../support/run-sample.ts';

/** Words that no line in German has. Names of pieces are the maker's and may have others. */
const ENGLISH =
  /\b(?:the|and|of|to|with|on|at|by|it|you|cut|page|from|each|this|that|in under|out under|step|fold|bevel)\b/i;

const SHAFT: Omit<ShapePart, 'id'> = {
  kind: 'shape',
  name: 'Shaft',
  transform: IN_PLACE,
  copies: 1,
  foams: [foamId('eva-6')],
  shape: 'pipe_wrap',
  sizes: { diameter: '32 mm', length: '900 mm' },
};

const inGerman = setPaperLanguage('de');

describe('the paper of a job in German', () => {
  let made: MadeSample;
  let words: readonly Words[];
  let sheet: readonly Words[];
  beforeAll(async () => {
    made = await makeSample('maul-head', inGerman.apply);
    words = (made.outcome.paper?.pages ?? []).flatMap(({ drawing }) => drawing.words);
    const paper = expectOk(runAtOnce(shopPaperSteps(made.outcome, '2026-01-01')));
    sheet = paper.pages.flatMap(({ drawing }) => drawing.words);
  });

  it('has no line in English', () => {
    expect(words.length).toBeGreaterThan(200);
    const left = [...words, ...sheet].map(({ text }) => text).filter((text) => ENGLISH.test(text));
    expect([...new Set(left)]).toEqual([]);
    const all = words.map(({ text }) => text);
    expect(all.some((text) => /Bergfalz \d+°/.test(text))).toBe(true);
    expect(all.some((text) => /Gehrung \d+° nach innen/.test(text))).toBe(true);
    expect(all.filter((text) => /\d\.\d/.test(text))).toEqual([]);
  });

  it('keeps within the paper', () => {
    const [page] = made.outcome.paper?.pages ?? [];
    const level = words.filter(({ angleRad, align }) => angleRad === 0 && align === 'left');
    expect(level.filter(({ text, at, heightMm }) => at.x + textWidthMm(text, heightMm) > page.widthMm)).toEqual([]);
  });

  it('is the same each time, to the byte', async () => {
    const drawn = JSON.stringify(
      words.map(({ text, at, heightMm }) => [text, at.x.toFixed(3), at.y.toFixed(3), heightMm]),
    );
    expect(await contentHash(new TextEncoder().encode(drawn))).toBe(
      '4c91df665adf625e58f2c00857d97997aa80a8e3019d70a270877501af4ed2b4',
    );
  });

  it('is a wish of the project: kept in its file, taken back, and nothing where it is English', async () => {
    const german = inGerman.apply(addPlain(SHAFT).apply(emptyProject('staff')));
    const read = expectOk(await readProjectFile(writeProjectFile(german, new Map()), 'staff.foamloft.json'));
    expect(paperLanguageOf(read.project)).toBe('de');
    const english = setPaperLanguage('en').apply(german);
    expect(english.paper).not.toHaveProperty('language');
    expect(setPaperLanguage('en').apply(english)).toBe(english);
    expect(inGerman.apply(german)).toBe(german);
  });
});
