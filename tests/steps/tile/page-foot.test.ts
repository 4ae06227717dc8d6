import { describe, expect, it } from 'vitest';
import { inEnglish } from '../../../src/base/paper-language.ts';
import { textWidthMm } from '../../../src/geom/text-width.ts';
import { findPaper } from '../../../src/model/papers.ts';
import { drawFoot, listThatFits, type Foot } from '../../../src/steps/tile/page-foot.ts';
import { paperFrame } from '../../../src/steps/tile/paper-frame.ts';
import { Pen } from '../../../src/steps/tile/pen.ts';
import { expectOk } from '../../support/expect-ok.ts';

/** A4 with margins of 10 mm: its foot runs from 10 to 200. */
const FRAME = expectOk(paperFrame(expectOk(findPaper('A4')), 'portrait', 10, 10));

function footOf(change: Partial<Foot> = {}): Pen {
  const pen = new Pen();
  drawFoot(pen, FRAME, {
    pageName: '2-B3',
    pageNumber: 7,
    pageCount: 12,
    title: 'Lamplighter shield · revision 4',
    below: 'Pieces: 1 a3f2, 4 99e1',
    ruledHeightMm: null,
    say: inEnglish,
    ...change,
  });
  return pen;
}

describe('the foot of a page', () => {
  it('holds the name of the page, large at the right, and two lines of words at the left', () => {
    const { words, strokes } = footOf();
    expect(strokes).toEqual([]);
    expect(words).toEqual([
      { text: '2-B3', at: { x: 200, y: 11.9 }, angleRad: 0, heightMm: 5.5, align: 'right', bold: true },
      {
        text: 'Lamplighter shield · revision 4 · page 7 of 12',
        at: { x: 10, y: 14.9 },
        angleRad: 0,
        heightMm: 2.5,
        align: 'left',
      },
      { text: 'Pieces: 1 a3f2, 4 99e1', at: { x: 10, y: 10.9 }, angleRad: 0, heightMm: 2.5, align: 'left' },
    ]);
  });

  it('carries the check rule where its tile has a height to measure', () => {
    expect(footOf({ ruledHeightMm: 265 }).strokes).toHaveLength(12);
    expect(footOf({ ruledHeightMm: 265 }).words.at(-1)?.text).toBe('100 mm both ways');
    expect(footOf({ ruledHeightMm: 20 }).words.at(-1)?.text).toBe('100 mm');
  });

  it('says page and number alone where there is no title', () => {
    expect(footOf({ title: '' }).words.map(({ text }) => text)).toContain('page 7 of 12');
  });

  it('shortens what would run into the name of the page, never the number of the page', () => {
    const { words } = footOf({ title: 'Shield '.repeat(40), below: '12 abcd, '.repeat(40) });
    const [name, title, below] = words;
    expect(title.text).toMatch(/^Shield .*… · page 7 of 12$/);
    expect(below.text).toMatch(/^12 abcd, .*…$/);
    const free = 190 - textWidthMm(name.text, 5.5) - 5;
    for (const { text } of [title, below]) {
      const width = textWidthMm(text, 2.5);
      expect(width).toBeLessThanOrEqual(free + 1e-9);
      // One letter more would not have fitted.
      expect(width).toBeGreaterThan(free - 3);
    }
  });

  it('is said in the language of the paper, name and number too', () => {
    const texts = footOf({ say: (text) => text.toUpperCase(), pageName: 'map' }).words.map(({ text }) => text);
    expect(texts[0]).toBe('MAP');
    expect(texts[1]).toMatch(/ · PAGE 7 OF 12$/);
  });
});

describe('a list that fits', () => {
  const PARTS = ['1 a3f2', '4 99e1', '12 7q2f'];
  const rest = (count: number): string => `and ${count} more`;
  const fit = (widthMm: number): string => listThatFits(PARTS, 2.5, widthMm, rest);
  const widthOf = (text: string): number => textWidthMm(text, 2.5);

  it.each([
    ['1 a3f2, 4 99e1, 12 7q2f', '1 a3f2, 4 99e1, and 1 more'],
    ['1 a3f2, 4 99e1, and 1 more', '1 a3f2, and 2 more'],
    ['1 a3f2, and 2 more', 'and 3 more'],
  ])('is %s where that just fits, else shorter', (text, shorter) => {
    const longest = '1 a3f2, 4 99e1, and 1 more';
    const all = '1 a3f2, 4 99e1, 12 7q2f';
    // The whole list may be shorter than one with its end left out.
    expect(widthOf(all)).toBeLessThan(widthOf(longest));
    const room = widthOf(text);
    expect(fit(room)).toBe(text === longest ? all : text);
    if (text !== longest && text !== all) expect(fit(room - 0.01)).toBe(shorter);
  });

  it('tells how many there are where none fits', () => {
    expect(fit(1)).toBe('and 3 more');
    expect(listThatFits([], 2.5, 100, rest)).toBe('and 0 more');
  });
});
