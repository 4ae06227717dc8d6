import { beforeAll, describe, expect, it } from 'vitest';
import { runAtOnce } from '../../src/base/stepwise.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { Page } from '../../src/model/page.ts';
import type { Drawing } from '../../src/model/template.ts';
import { makeMockUp } from '../../src/pipeline/mock-up.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import type { Pipeline } from '../../src/pipeline/pipeline.ts';
import { shopPaperSteps } from '../../src/pipeline/shop-files.ts';
import { cutterSheets } from '../../src/steps/write/cutter-sheets.ts';
import { sheetDrawings } from '../../src/steps/write/sheet-drawings.ts';
import { collisions } from '../steps/tile/support.ts';
import { expectOk } from '../support/expect-ok.ts';
import { IS_LONG } from '../support/long.ts';
import { madeSample, SAMPLE_NAMES } from '../support/run-sample.ts';

const DATE = '2026-01-01';

/** A drawing as if it were a page, so that everything is counted alike. */
const asPage = (name: string, drawing: Drawing): Page => ({
  kind: 'tile',
  name,
  widthMm: 0,
  heightMm: 0,
  drawing,
  pieces: [],
});

const together = (drawings: readonly Drawing[]): Drawing => ({
  strokes: drawings.flatMap(({ strokes }) => strokes),
  words: drawings.flatMap(({ words }) => words),
});

/** Word collisions over everything that is printed, shown or engraved of all samples: 0. */
describe.each(SAMPLE_NAMES)('no words of the %s run into lines or other words', (name) => {
  let pipeline: Pipeline;
  let outcome: Outcome;
  beforeAll(async () => {
    ({ pipeline, outcome } = await madeSample(name));
  });

  it('on templates and the map, on A4', () => {
    const { project, paper } = outcome;
    expect(project.paper.name).toBe('A4');
    expect(paper?.pages.map(({ kind }) => kind)).toContain('map');
    expect(paper?.pages.flatMap(collisions)).toEqual([]);
  });

  it('on sheets of foam, as they are looked at and as they are engraved, and each piece is numbered', () => {
    const { pieces, strips, templates, sheets } = outcome;
    if (pieces === null || templates === null || sheets === null) throw new Error('the chain has not run to its end');
    const choice = { kind: 'laser', cutWidthMm: 0.2 } as const;
    const made = expectOk(cutterSheets({ pieces: [...pieces, ...strips], templates, layout: sheets, choice }));
    for (const { number, pieces: laid, list } of made) {
      expect(list).toEqual([]);
      expect(collisions(asPage(`sheet ${number}`, together(laid.map(({ drawing }) => drawing))))).toEqual([]);
      for (const { number: own, words } of laid) expect(words[0].text).toMatch(new RegExp(`^${own}\\.?$`));
      // What is cut and engraved are lines of their own.
      const engraved = laid.map(({ lines, words }) => ({
        strokes: lines.map(({ points, closed }) => ({ role: 'cut' as const, points, closed })),
        words,
      }));
      expect(collisions(asPage(`engraved ${number}`, together(engraved)))).toEqual([]);
    }
    // What pieces.svg shows is the same.
    for (const sheet of sheets.sheets) {
      const own = sheet.placements.map(({ piece }) => templates.find((template) => template.piece === piece)!);
      expect(collisions(asPage('pieces.svg', together(sheetDrawings(sheet, own).drawings)))).toEqual([]);
    }
  });

  it('on the build sheet', () => {
    const { pages } = expectOk(runAtOnce(shopPaperSteps(outcome, DATE)));
    expect(pages.length).toBeGreaterThan(0);
    expect(pages.flatMap(collisions)).toEqual([]);
  });

  it.runIf(IS_LONG || name === 'lantern' || name === 'shoulder-plate')('on the mock-up', async () => {
    const mockUp = { times: 4, cardMm: 0.4 };
    const { pages } = expectOk(await makeMockUp(pipeline, outcome, mockUp, DATE, QUIET_WORK)).pages;
    expect(pages.flatMap(collisions)).toEqual([]);
  });
});
