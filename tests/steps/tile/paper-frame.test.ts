import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/base/finding.ts';
import type { Paper } from '../../../src/model/foam-stock.ts';
import { findPaper } from '../../../src/model/papers.ts';
import { paperFrame } from '../../../src/steps/tile/paper-frame.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';

const A4 = expectOk(findPaper('A4'));
const ROLL: Paper = { name: 'roll', widthMm: 610, heightMm: 5000, roll: true };

describe('the frame of a paper', () => {
  it('is all inside the margin but the foot of 12 mm', () => {
    expect(expectOk(paperFrame(A4, 'portrait', 10, 15))).toEqual({
      paperName: 'A4',
      orientation: 'portrait',
      roll: false,
      widthMm: 210,
      heightMm: 297,
      marginMm: 10,
      overlapMm: 15,
      tileWidthMm: 190,
      tileHeightMm: 265,
    });
  });

  it('is turned with the paper, a roll never', () => {
    expect(expectOk(paperFrame(A4, 'landscape', 10, 0))).toMatchObject({
      orientation: 'landscape',
      widthMm: 297,
      heightMm: 210,
      tileWidthMm: 277,
      tileHeightMm: 178,
    });
    expect(expectOk(paperFrame(ROLL, 'landscape', 10, 0))).toMatchObject({
      roll: true,
      widthMm: 610,
      heightMm: 5000,
      tileWidthMm: 590,
      tileHeightMm: 4968,
    });
  });

  it('leaves 60 mm each way, or says which margin would', () => {
    // (210 - 60) / 2 across; across the long way (210 - 12 - 60) / 2 up.
    expect(expectOk(paperFrame(A4, 'portrait', 75, 0))).toMatchObject({ tileWidthMm: 60, tileHeightMm: 135 });
    expect(expectProblem(paperFrame(A4, 'portrait', 75.1, 0), 'tile/margin').text).toContain('choose 0 to 75 mm');
    expect(expectOk(paperFrame(A4, 'landscape', 69, 0))).toMatchObject({ tileHeightMm: 60 });
    expect(expectProblem(paperFrame(A4, 'landscape', 69.1, 0), 'tile/margin').text).toBe(
      'A margin of 69.1 mm leaves too little of A4 to print on: choose 0 to 69 mm.',
    );
    for (const margin of [-0.1, NaN, Infinity]) expectProblem(paperFrame(A4, 'portrait', margin, 0), 'tile/margin');
  });

  it('tells the greatest margin down to a tenth of a mm, and 0 where none would do', () => {
    const odd: Paper = { name: 'own', widthMm: 100.5, heightMm: 200, roll: false };
    expect(expectProblem(paperFrame(odd, 'portrait', 30, 0), 'tile/margin').text).toContain('choose 0 to 20.2 mm');
    const tiny: Paper = { name: 'own', widthMm: 50, heightMm: 200, roll: false };
    expect(expectProblem(paperFrame(tiny, 'portrait', 5, 0), 'tile/margin').text).toContain('choose 0 to 0 mm');
  });

  it('leaves each page 30 mm of its own, or says which overlap would', () => {
    expect(expectOk(paperFrame(A4, 'portrait', 10, 160)).overlapMm).toBe(160);
    expect(expectProblem(paperFrame(A4, 'portrait', 10, 160.1), 'tile/overlap').text).toBe(
      'An overlap of 160.1 mm leaves each page too little of its own: choose 0 to 160 mm on A4 with this margin.',
    );
    expect(expectProblem(paperFrame(A4, 'landscape', 10, 150), 'tile/overlap').text).toContain('choose 0 to 148 mm');
    for (const overlap of [-1, NaN]) expectProblem(paperFrame(A4, 'portrait', 10, overlap), 'tile/overlap');
  });

  it('warns of a margin thinner than what many printers leave white', () => {
    const notesOf = (margin: number): readonly Finding[] => {
      const framed = paperFrame(A4, 'portrait', margin, 0);
      return framed.ok ? framed.notes : [];
    };
    expect(notesOf(5.1)).toEqual([]);
    expect(notesOf(5)).toMatchObject([
      { code: 'tile/thin-margin', severity: 'warning', value: 5, limit: 5.1, unit: 'mm', where: {} },
    ]);
  });
});
