import { describe, expect, it } from 'vitest';
import { findPaper } from '../../../src/model/papers.ts';
import { stripPages } from '../../../src/steps/tile/strip-pages.ts';
import { expectOk } from '../../support/expect-ok.ts';

const EVA = { name: 'EVA sheet', thicknessMm: 10 };

const pagesOn = (paper: string, size?: readonly [number, number], foams = [EVA]) =>
  stripPages({
    paper: expectOk(findPaper(paper, ...(size ?? []))),
    marginMm: 10,
    foams,
    date: '2026-01-01',
    cautions: ['Blades: cut away from yourself.'],
  });

/** Length and width of the strip that is cut out, mm. */
function stripOn(paper: string): readonly [number, number] {
  const [cut, ...others] = expectOk(pagesOn(paper))[0].drawing.strokes.filter(({ role }) => role === 'cut');
  expect(others).toEqual([]);
  const [xs, ys] = [0, 1].map((k) => Array.from(cut.points).filter((_, i) => i % 2 === k));
  return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
}

describe('the page of the test strip', () => {
  it.each([
    ['A4', 240],
    ['A3', 240],
    ['Letter', 240],
    ['Legal', 240],
    ['roll', 240],
  ])('draws it in true size on %s', (paper, length) => {
    const [long, wide] = stripOn(paper);
    expect(long).toBeCloseTo(length, 9);
    expect(wide).toBeCloseTo(40, 9);
  });

  it.each(['A4', 'A3', 'Letter', 'roll', 'A0'])('keeps everything on the paper and one page of %s', (paper) => {
    const pages = expectOk(pagesOn(paper));
    expect(pages).toHaveLength(1);
    const [{ drawing, widthMm, heightMm }] = pages;
    for (const { points } of drawing.strokes) {
      for (let i = 0; i < points.length; i += 2) {
        expect(points[i]).toBeGreaterThanOrEqual(0);
        expect(points[i]).toBeLessThanOrEqual(widthMm);
        expect(points[i + 1]).toBeGreaterThanOrEqual(0);
        expect(points[i + 1]).toBeLessThanOrEqual(heightMm);
      }
    }
    const words = drawing.words.map(({ text }) => text).join(' ');
    for (const part of ['Test strip: EVA sheet, 10 mm', '5.  across', 'Blades: cut away', 'page 1 of 1']) {
      expect(words).toContain(part);
    }
  });

  it('draws one for each foam, counted together', () => {
    const pages = expectOk(pagesOn('A4', undefined, [{ name: 'EVA sheet', thicknessMm: 2 }, EVA]));
    const said = pages.map(({ name, drawing }) => [name, ...drawing.words.map(({ text }) => text)].join(' '));
    expect(said).toEqual([
      expect.stringMatching(/^strip .*Test strip: EVA sheet, 2 mm.*page 1 of 2/),
      expect.stringMatching(/^strip 2 .*Test strip: EVA sheet, 10 mm.*page 2 of 2/),
    ]);
  });

  it('says what is too small for it', () => {
    expect(pagesOn('custom', [100, 110])).toMatchObject({ ok: false, problem: { code: 'tile/strip' } });
  });
});
