import { describe, expect, it } from 'vitest';
import type { Paper } from '../../../src/model/foam-stock.ts';
import type { PrinterProfile } from '../../../src/model/printer.ts';
import { paperFrame } from '../../../src/steps/tile/paper-frame.ts';
import { scalePages } from '../../../src/steps/tile/scale-page.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { pageInput } from './support.ts';
import type { PageInput } from '../../../src/steps/tile/page-input.ts';

function pagesOn(size: readonly [number, number], change: Partial<PageInput> = {}, overlapMm = 10, hasJoints = true) {
  const paper: Paper = { name: 'own', widthMm: size[0], heightMm: size[1], roll: false };
  const frame = expectOk(paperFrame(paper, 'portrait', 10, overlapMm));
  return scalePages(pageInput({ templates: [], ...change }), frame, hasJoints);
}

const wordsOf = (pages: ReturnType<typeof pagesOn>): string =>
  pages.flatMap(({ pen }) => pen.words.map(({ text }) => text)).join(' ');

/** Sides of the squares that are drawn. */
const squaresOn = (pages: ReturnType<typeof pagesOn>): readonly number[] =>
  pages.flatMap(({ pen }) => pen.strokes.filter(({ closed }) => closed).map(({ points }) => points[2] - points[0]));

const correctionOf = (printer: Partial<PrinterProfile>): string => {
  const whole = { name: 'Shed', acrossShare: 1, upShare: 1, leanRad: 0, ...printer };
  const text = wordsOf(pagesOn([210, 297], { printer: whole }));
  expect(text).toContain('For Shed only');
  return /These pages are drawn (.*?) so that this printer prints them true/.exec(text)?.[1] ?? text;
};

describe('the page that is measured', () => {
  it('has a square of 100 mm where that has room, else one of 50, and says what both must read', () => {
    const large = pagesOn([210, 297]);
    expect(squaresOn(large)).toEqual([100]);
    expect(wordsOf(large)).toContain('Both sides of the square must read 100 mm. The rules beside it must read 4 in');
    expect(wordsOf(large)).toContain('both diagonals must read 141.4 mm');
    // The figure takes 124.6 mm.
    expect(squaresOn(pagesOn([144.7, 297]))).toEqual([100]);
    const small = pagesOn([144.5, 297]);
    expect(squaresOn(small)).toEqual([50]);
    expect(wordsOf(small)).toContain('Both sides of the square must read 50 mm. The rules beside it must read 2 in');
    expect(wordsOf(small)).toContain('both diagonals must read 70.7 mm');
    expect(squaresOn(pagesOn([210, 156.7]))).toEqual([100]);
    expect(squaresOn(pagesOn([210, 156.5]))).toEqual([50]);
  });

  it('tells how pages are joined only where some are', () => {
    expect(wordsOf(pagesOn([210, 297]))).toContain('lay it on the 10 mm strip of its neighbour');
    expect(wordsOf(pagesOn([210, 297], {}, 0))).toContain('tape the edges together');
    const alone = wordsOf(pagesOn([210, 297], {}, 10, false));
    expect(alone).not.toContain('Joining');
    expect(alone).not.toContain('strip of its neighbour');
  });

  it('ends with the cautions, and begins with the name of the project and what is to be noticed', () => {
    const text = wordsOf(pagesOn([210, 297], { notice: ['Draft, do not cut.'] }));
    expect(text).toMatch(/^Lamplighter shield Draft, do not cut\. Print this page first/);
    expect(text).toMatch(/Take care Knife: fresh blade\. Read the label\.$/);
    expect(wordsOf(pagesOn([210, 297], { cautions: [] }))).not.toContain('Take care');
  });

  it('says how pages for a printer that errs are drawn', () => {
    // 1 / 0.988142 is 1.2 % more.
    expect(correctionOf({ acrossShare: 1 / 1.012, upShare: 1 / 0.996 })).toBe(
      '1.20 % larger across, 0.40 % smaller up',
    );
    expect(correctionOf({ acrossShare: 1.00001, upShare: 0.8 })).toBe('true across, 25.00 % larger up');
    // Leaning to the right is made up for by leaning to the left.
    expect(correctionOf({ leanRad: Math.PI / 360 })).toBe('true across, true up, leaning 0.50° to the left');
    expect(correctionOf({ leanRad: -Math.PI / 180 })).toBe('true across, true up, leaning 1.00° to the right');
    expect(correctionOf({ leanRad: 0.00005 })).toBe('true across, true up');
    expect(wordsOf(pagesOn([210, 297]))).not.toContain('only');
  });

  it('has blanks of 14 mm to write into beside both ways', () => {
    const [{ pen }] = pagesOn([210, 297]);
    const blanks = pen.strokes.filter(({ role }) => role === 'frame').map(({ points }) => [...points]);
    expect(blanks).toHaveLength(2);
    const across = pen.words.find(({ text }) => text === 'across');
    const up = pen.words.find(({ text }) => text === 'up');
    if (across === undefined || up === undefined) throw new Error('no words beside the blanks');
    const left = across.at.x;
    expect(up.at.y).toBe(across.at.y);
    // `across` is 11.6 mm long: its blank begins at 13.1, `up` 17 mm farther, its own blank 6 mm on.
    expect(blanks[0][0] - left).toBeGreaterThanOrEqual(13);
    expect(blanks[0][0] - left).toBeLessThan(16);
    expect(up.at.x - blanks[0][0]).toBeCloseTo(17, 9);
    expect(blanks[1][0] - up.at.x).toBeGreaterThanOrEqual(6);
    for (const [x0, y0, x1, y1] of blanks) {
      expect(x1 - x0).toBeCloseTo(14, 9);
      expect(y0).toBeCloseTo(across.at.y - 0.6, 9);
      expect(y1).toBe(y0);
    }
  });
});
