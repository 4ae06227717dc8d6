import { describe, expect, it } from 'vitest';
import type { Say } from '../../../src/base/paper-language.ts';
import { findPaper } from '../../../src/model/papers.ts';
import { stripPages } from '../../../src/steps/tile/strip-pages.ts';
import { expectOk } from '../../support/expect-ok.ts';

const inInches: Say = Object.assign((text: string): string => text, { unit: 'in' as const });

/** The strip on paper of a width, its lines counted from its lower left corner, mm to a thousandth. */
function stripOn(widthMm: number, heightMm: number, say?: Say) {
  const paper = expectOk(findPaper('custom', widthMm, heightMm));
  const foams = [{ name: 'EVA 6 mm', thicknessMm: 6 }];
  const [page] = expectOk(stripPages({ paper, marginMm: 10, foams, cautions: [], ...(say && { say }) }));
  const [cut] = page.drawing.strokes.filter(({ role }) => role === 'cut');
  const [x, y] = cut.points;
  const round = (mm: number): number => Math.round(mm * 1000) / 1000;
  const own = (points: ArrayLike<number>): string =>
    Array.from(points, (mm, i) => round(mm - (i % 2 === 0 ? x : y))).join(' ');
  return {
    page,
    cut: own(cut.points),
    ticks: page.drawing.strokes.filter(({ role }) => role === 'mark').map(({ points }) => own(points)),
    numbers: page.drawing.words
      .filter(({ at }) => at.y > y && at.y < y + 40 && at.x > x && at.x < x + cut.points[2] - x)
      .map(({ text, at }) => `${text} ${round(at.x - x)} ${round(at.y - y)}`),
  };
}

describe('the test strip', () => {
  it('has ticks every 10 mm along both edges, longer ones with a number every 50', () => {
    const { cut, ticks, numbers } = stripOn(260, 300);
    expect(cut).toBe('0 0 240 0 240 40 0 40');
    expect(ticks).toHaveLength(2 * 23);
    expect(ticks.slice(0, 10)).toEqual([
      ...['10 0 10 2.4', '10 40 10 37.6', '20 0 20 2.4', '20 40 20 37.6', '30 0 30 2.4', '30 40 30 37.6'],
      ...['40 0 40 2.4', '40 40 40 37.6', '50 0 50 4', '50 40 50 36'],
    ]);
    expect(ticks.at(-1)).toBe('230 40 230 37.6');
    expect(numbers).toEqual(['50 50 5.4', '100 100 5.4', '150 150 5.4', '200 200 5.4', '240 mm 120 17.25']);
  });

  it('is as long as the paper has room for in steps of 20 mm, from 120 to 240', () => {
    const lengthOn = (widthMm: number): string => stripOn(widthMm, widthMm).cut.split(' ')[2];
    expect(lengthOn(400)).toBe('240');
    expect(lengthOn(259.9)).toBe('220');
    expect(lengthOn(200)).toBe('180');
    expect(lengthOn(160)).toBe('140');
  });

  it('stands across paper that is too narrow upright', () => {
    expect(stripOn(259.9, 300).page).toMatchObject({ widthMm: 300, heightMm: 259.9 });
    expect(stripOn(259.9, 300).cut).toBe('0 0 240 0 240 40 0 40');
    expect(stripOn(260, 300).page).toMatchObject({ widthMm: 260, heightMm: 300 });
  });

  it('is 9 in long for who works in inches, with ticks every half and numbers every 2', () => {
    const { cut, ticks, numbers } = stripOn(260, 300, inInches);
    expect(cut).toBe('0 0 228.6 0 228.6 40 0 40');
    expect(ticks).toHaveLength(2 * 17);
    expect(ticks[0]).toBe('12.7 0 12.7 2.4');
    expect(ticks[6]).toBe('50.8 0 50.8 4');
    expect(numbers).toEqual(['2 50.8 5.4', '4 101.6 5.4', '6 152.4 5.4', '8 203.2 5.4', '9 in 114.3 17.25']);
  });

  it('is called by its foam, and by its thickness where the name does not tell it', () => {
    const title = (name: string): string => {
      const paper = expectOk(findPaper('A4'));
      const input = { paper, marginMm: 10, foams: [{ name, thicknessMm: 6 }], cautions: [] };
      return expectOk(stripPages(input))[0].drawing.words[0].text;
    };
    expect(title('EVA 6 mm')).toBe('Test strip: EVA 6 mm');
    expect(title('EVA')).toBe('Test strip: EVA, 6 mm');
  });
});
