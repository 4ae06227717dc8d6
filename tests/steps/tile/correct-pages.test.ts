import { describe, expect, it } from 'vitest';
import type { Page } from '../../../src/model/page.ts';
import type { PrinterProfile } from '../../../src/model/printer.ts';
import { correctedFrame, correctPage } from '../../../src/steps/tile/correct-pages.ts';
import { handMadeWords, straight } from '../../support/hand-made-templates.ts';

const TRUE: PrinterProfile = { name: 'true', acrossShare: 1, upShare: 1, leanRad: 0 };

/** 200 × 300 mm, so its middle lies at 100, 150. */
const pageWith = (drawing: Partial<Page['drawing']>): Page => ({
  kind: 'tile',
  name: 'A1',
  widthMm: 200,
  heightMm: 300,
  drawing: { strokes: [], words: [], ...drawing },
  pieces: [],
});

function lineOn(profile: Partial<PrinterProfile>, roll: boolean, ...xy: number[]): readonly number[] {
  const page = pageWith({ strokes: [straight('cut', ...xy)] });
  const [stroke] = correctPage(page, { ...TRUE, ...profile }, roll).drawing.strokes;
  expect(stroke).toMatchObject({ role: 'cut', closed: false });
  return Array.from(stroke.points);
}

const expectNear = (found: readonly number[], wanted: readonly number[]): void => {
  expect(found).toHaveLength(wanted.length);
  found.forEach((mm, i) => expect(mm).toBeCloseTo(wanted[i], 9));
};

/** A lean of which sine and cosine are 0.6 and 0.8. */
const LEAN_RAD = Math.atan(0.75);

describe('a page for a printer that errs', () => {
  it('is drawn longer where that prints short, and shorter where it prints long, about its middle', () => {
    // 50 mm right of the middle: 50 / 0.8; 100 mm over it: 100 / 1.25.
    expectNear(lineOn({ acrossShare: 0.8, upShare: 1.25 }, false, 150, 250, 60, 130), [162.5, 230, 50, 134]);
  });

  it('leans the other way', () => {
    // 10 right, 20 up of the middle on a printer that leans to the right by 0.75 a mm: 10 - 15, and 20 / 0.8.
    expectNear(lineOn({ leanRad: LEAN_RAD }, false, 110, 170), [95, 175]);
    // Across it prints half as long, so the lean is made up for twice over; up it prints twice as long.
    expectNear(lineOn({ leanRad: LEAN_RAD, acrossShare: 0.5, upShare: 2 }, false, 110, 170), [90, 162.5]);
  });

  it('is on a roll as much longer itself, its lower edge staying where it is', () => {
    const profile = { ...TRUE, upShare: 1.25 };
    const page = correctPage(pageWith({}), profile, true);
    expect(page).toMatchObject({ kind: 'tile', name: 'A1', widthMm: 200, pieces: [] });
    expect(page.heightMm).toBeCloseTo(240, 9);
    expectNear(lineOn(profile, true, 150, 250, 40, 0), [150, 200, 40, 0]);
    expect(correctPage(pageWith({}), profile, false).heightMm).toBe(300);
  });

  it('sets level words wider or narrower, higher or lower', () => {
    const page = pageWith({ words: [handMadeWords('cut 2', 150, 250, { heightMm: 4, bold: true })] });
    const [words] = correctPage(page, { ...TRUE, acrossShare: 0.8, upShare: 1.25 }, false).drawing.words;
    expect(words).toMatchObject({ text: 'cut 2', align: 'centre', bold: true, angleRad: 0 });
    expectNear([words.at.x, words.at.y, words.heightMm, words.wide ?? 1], [162.5, 230, 3.2, 1.5625]);
  });

  it('sets upright words by the other way', () => {
    const page = pageWith({ words: [handMadeWords('glue', 100, 150, { heightMm: 4, angleRad: Math.PI / 2 })] });
    const [words] = correctPage(page, { ...TRUE, acrossShare: 0.8, upShare: 1.25 }, false).drawing.words;
    expectNear(
      [words.at.x, words.at.y, words.heightMm, words.wide ?? 1, words.angleRad],
      [100, 150, 5, 0.64, Math.PI / 2],
    );
  });

  it('leans words as it leans lines', () => {
    const page = pageWith({ words: [handMadeWords('up', 110, 170, { heightMm: 4, angleRad: Math.PI / 2 })] });
    const [words] = correctPage(page, { ...TRUE, leanRad: LEAN_RAD }, false).drawing.words;
    // What ran 1 up runs -0.75, 1.25 now; an area grows by 1.25.
    const length = Math.sqrt(0.5625 + 1.5625);
    expectNear([words.at.x, words.at.y, words.angleRad], [95, 175, Math.atan2(1.25, -0.75)]);
    expectNear([words.heightMm, words.wide ?? 1], [(4 * 1.25) / length, (length * length) / 1.25]);
  });
});

describe('the margin for a printer that errs', () => {
  const SHEET = { widthMm: 210, heightMm: 297, roll: false };
  const marginFor = (profile: Partial<PrinterProfile>, wished: number, least = 5.1, page = SHEET): number =>
    correctedFrame({ ...TRUE, ...profile }, page, wished, least).marginMm;

  it('is the one that is wished for where the drawing does not grow past the white edge', () => {
    expect(marginFor({}, 10)).toBe(10);
    expect(marginFor({ acrossShare: 1.05, upShare: 1.1 }, 10)).toBe(10);
    // The frame of 95 mm from the middle grows to 97.9, of the 99.9 there are.
    expect(marginFor({ acrossShare: 0.97 }, 10)).toBe(10);
  });

  it('is as wide as keeps the white edge, up to the next tenth of a mm', () => {
    // 105 - 0.97 · (105 - 5.1) = 8.097 across; 148.5 - 0.9 · (148.5 - 5.1) = 19.44 up.
    expect(marginFor({ acrossShare: 0.97 }, 6)).toBe(8.1);
    expect(marginFor({ upShare: 0.9 }, 6)).toBe(19.5);
    expect(marginFor({ acrossShare: 0.97, upShare: 0.9 }, 6)).toBe(19.5);
    // Exactly a tenth stays that tenth: 105 - 0.96 · 100.
    expect(marginFor({ acrossShare: 0.96 }, 6, 5)).toBe(9);
  });

  it('keeps no more white than is wished for', () => {
    // 105 - 0.97 · 103 = 5.09.
    expect(marginFor({ acrossShare: 0.97 }, 2)).toBe(5.1);
  });

  it('makes room for the lean, to whichever side', () => {
    // A tenth of a mm a mm: 100 - m + 0.1 (150 - m) = 95, so m = 20 / 1.1 = 18.18.
    const page = { widthMm: 200, heightMm: 300, roll: false };
    const lean = Math.atan(0.1);
    expect(marginFor({ leanRad: lean, upShare: 1.2 }, 6, 5, page)).toBe(18.2);
    expect(marginFor({ leanRad: -lean, upShare: 1.2 }, 6, 5, page)).toBe(18.2);
  });

  it('does not grow along a roll: there its longest page is drawn shorter, so that it prints within the roll', () => {
    const roll = { widthMm: 610, heightMm: 5000, roll: true };
    expect(correctedFrame({ ...TRUE, upShare: 0.9 }, roll, 10, 5.1)).toEqual({ marginMm: 10, longestMm: 4500 });
    expect(correctedFrame({ ...TRUE, upShare: 1.25 }, roll, 10, 5.1)).toEqual({ marginMm: 10, longestMm: 5000 });
  });
});
