import { describe, expect, it } from 'vitest';
import { inEnglish } from '../../../src/base/paper-language.ts';
import { seamId } from '../../../src/base/ids.ts';
import { depthInside } from '../../../src/geom/widest-spot.ts';
import type { MatchMark } from '../../../src/model/foam-piece.ts';
import { tellBevelSteps } from '../../../src/steps/foam/bevel-steps.ts';
import { nameMarks } from '../../../src/steps/foam/mark-names.ts';
import { onPaper, pieceStrokes } from '../../../src/steps/foam/template-lines.ts';
import { bothNames, markKey, type TwinReading } from '../../../src/steps/foam/twin-reading.ts';
import { blockOf, boxAt, oneLine, wordsInBox } from '../../../src/steps/foam/word-block.ts';
import { WordBoard } from '../../../src/steps/foam/word-board.ts';
import { handMadeTemplate, pieceOf } from '../../support/hand-made-templates.ts';

const markAt = (x: number, y: number, change: Partial<MatchMark> = {}): MatchMark => ({
  seam: seamId('s1'),
  letter: 'A',
  index: 2,
  side: 0,
  stationMm: 0,
  at: { x, y },
  outward: { x: 0, y: -1 },
  ...change,
});

function named(ring: readonly number[], marks: readonly MatchMark[], twin?: TwinReading) {
  const piece = pieceOf(handMadeTemplate('plate', ring), 1, { marks });
  const paper = onPaper(piece);
  const board = new WordBoard(paper, pieceStrokes(paper));
  nameMarks(board, paper, twin);
  return { board, ring: Float64Array.from(ring) };
}

const WIDE = [0, 0, 100, 0, 100, 60, 0, 60];

describe('names of match marks', () => {
  it('stand inside the piece straight behind their tick, 0.8 mm off the line to cut', () => {
    const [words, ...others] = named(WIDE, [markAt(40, 0)]).board.words;
    expect(others).toEqual([]);
    expect(words).toMatchObject({ text: 'A2', angleRad: 0, align: 'centre' });
    expect(words.at.x).toBeCloseTo(40, 9);
    // Letters reach a third of a capital height under their baseline.
    expect(words.at.y).toBeCloseTo(0.8 + 0.33 * words.heightMm, 9);
  });

  it('go farther in and aside where something is in the way', () => {
    const { board } = named(WIDE, [markAt(40, 0), markAt(40, 0, { index: 3 })]);
    const [first, second] = board.words.map(({ at }) => at);
    expect(Math.hypot(first.x - second.x, first.y - second.y)).toBeGreaterThan(2);
    expect(second.y).toBeGreaterThan(0.8);
  });

  it('stand outside at the end of their tick where the piece is too narrow', () => {
    const narrow = [0, 0, 100, 0, 100, 2, 0, 2];
    const [words] = named(narrow, [markAt(40, 0)]).board.words;
    expect(words.at.x).toBeCloseTo(40, 9);
    // The tick ends 4 mm out; 0.8 mm of white.
    expect(words.at.y + 1.1 * words.heightMm).toBeCloseTo(-4.8, 9);
  });

  it('set a point between letter and number where the letter ends in a number', () => {
    expect(named(WIDE, [markAt(40, 0, { letter: '2B' })]).board.words[0].text).toBe('2B2');
    expect(named(WIDE, [markAt(40, 0, { letter: 'B2' })]).board.words[0].text).toBe('B2·2');
  });

  it('tell a second name on a template that is turned over for its twin', () => {
    const own = markAt(40, 0);
    const twin = {
      piece: pieceOf(handMadeTemplate('twin', WIDE), 2),
      edges: new Map(),
      marks: new Map([[markKey(own), markAt(0, 0, { letter: 'C', index: 5 })]]),
    };
    expect(named(WIDE, [own], twin).board.words[0].text).toBe('A2/C5');
    const same = { ...twin, marks: new Map([[markKey(own), markAt(0, 0)]]) };
    expect(named(WIDE, [own], same).board.words[0].text).toBe('A2');
    expect([bothNames('A'), bothNames('A', 'B')]).toEqual(['A', 'A/B']);
    expect(markKey({ seam: seamId('s4'), side: 1, index: 3 })).toBe('s4 1 3');
  });
});

describe('bevels told along an edge', () => {
  it('stand inside behind the other edge of the bevel, without saying under', () => {
    const ring = Float64Array.from(WIDE);
    const board = new WordBoard({ cutRings: [ring] }, [{ role: 'cut', points: ring, closed: true }]);
    const step = { at: { x: 30, y: 0 }, end: { x: 30, y: 7 }, outward: { x: 0, y: -1 } };
    tellBevelSteps(board, [{ ...step, leanDeg: 34.6 }], inEnglish);
    const [words, ...others] = board.words;
    expect(others).toEqual([]);
    expect(words.text).toBe('35° in');
    expect(words.at.x).toBeCloseTo(30, 9);
    expect(words.at.y - 0.33 * words.heightMm).toBeCloseTo(7.8, 9);
    tellBevelSteps(board, [{ ...step, leanDeg: -12.2 }], inEnglish);
    expect(board.words[1].text).toBe('12° out');
    expect(depthInside([ring], board.words[1].at.x, board.words[1].at.y)).toBeGreaterThan(0);
  });

  it('begin at the line to cut where the other edge lies outside', () => {
    const ring = Float64Array.from(WIDE);
    const board = new WordBoard({ cutRings: [ring] }, []);
    tellBevelSteps(
      board,
      [{ at: { x: 30, y: 0 }, end: { x: 30, y: -7 }, outward: { x: 0, y: -1 }, leanDeg: -34 }],
      inEnglish,
    );
    expect(board.words[0].at.y - 0.33 * board.words[0].heightMm).toBeCloseTo(0.8, 9);
  });
});

describe('blocks of words', () => {
  it('are as wide as their widest line, and as high as their letters with white between', () => {
    const block = blockOf([
      { text: 'i', heightMm: 4 },
      { text: 'mmm', heightMm: 2, bold: true },
    ]);
    expect(block.widthMm).toBeCloseTo(oneLine('mmm', 2).widthMm, 12);
    // 1.43 · 4, then 0.3 and 1.43 of 2.
    expect(block.heightMm).toBeCloseTo(5.72 + 0.6 + 2.86, 9);
    expect(oneLine('i', 4).heightMm).toBeCloseTo(5.72, 12);
  });

  it('stand flush left in their box, a single line in its middle', () => {
    const block = blockOf([
      { text: 'i', heightMm: 4 },
      { text: 'mmm', heightMm: 2, bold: true },
    ]);
    const [first, second] = wordsInBox(block, boxAt(block, 50, 20, 0));
    const top = 20 + 9.18 / 2;
    expect(first).toMatchObject({ text: 'i', heightMm: 4, align: 'left', angleRad: 0 });
    expect(first.bold).toBeUndefined();
    expect(second).toMatchObject({ text: 'mmm', heightMm: 2, align: 'left', bold: true });
    expect(first.at.x).toBeCloseTo(50 - block.widthMm / 2, 9);
    expect(first.at.y).toBeCloseTo(top - 4.4, 9);
    expect(second.at.y).toBeCloseTo(top - 5.72 - 0.6 - 2.2, 9);
    const single = oneLine('rim', 4);
    // Upright: what is under the middle is to its right.
    const [line] = wordsInBox(single, boxAt(single, 50, 20, Math.PI / 2));
    expect(line).toMatchObject({ align: 'centre', angleRad: Math.PI / 2 });
    expect(line.at.x).toBeCloseTo(50 + 0.385 * 4, 9);
    expect(line.at.y).toBeCloseTo(20, 9);
  });
});
