import { describe, expect, it } from 'vitest';
import { pieceId } from '../../../src/base/ids.ts';
import { textWidthMm } from '../../../src/geom/text-width.ts';
import { SMALLEST_WORDS_MM } from '../../../src/model/line-style.ts';
import { moveDrawing, placeTemplate, sizeOf } from '../../../src/steps/tile/block.ts';
import type { Cell } from '../../../src/steps/tile/label-place.ts';
import { Obstacles } from '../../../src/steps/tile/obstacles.ts';
import { refitLine } from '../../../src/steps/tile/refit-line.ts';
import { drawnBox, fullBox, isBoxInside, wordsBox } from '../../../src/steps/tile/words-box.ts';
import { handMadeTemplate, handMadeWords, straight } from '../../support/hand-made-templates.ts';

const cell = (width: number, height = 60): Cell => ({ minX: 5, minY: 7, maxX: 5 + width, maxY: 7 + height });

describe('words too long for any cell', () => {
  const words = handMadeWords('traced on the face', 50, 30, { heightMm: 2 * SMALLEST_WORDS_MM });
  const widthAt = (heightMm: number): number => textWidthMm(words.text, heightMm);

  it('are set as much smaller as lets them fit the largest cell', () => {
    const room = widthAt(1.5 * SMALLEST_WORDS_MM);
    const lines = refitLine(words, [cell(10), cell(room)]);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatchObject({ text: words.text, at: words.at, align: 'centre' });
    expect(lines[0].heightMm).toBeCloseTo(1.5 * SMALLEST_WORDS_MM, 4);
    expect(wordsBox(lines[0]).maxX - wordsBox(lines[0]).minX).toBeLessThanOrEqual(room);
  });

  it('are set smaller too where the cell is too low', () => {
    // Letters take 1.43 capital heights.
    const [line] = refitLine(words, [cell(500, 1.43 * 1.25 * SMALLEST_WORDS_MM)]);
    expect(line.heightMm).toBeCloseTo(1.25 * SMALLEST_WORDS_MM, 4);
  });

  it('are never made larger', () => {
    expect(refitLine(words, [cell(500)])).toEqual([words]);
  });

  it('are parted into lines where they could no longer be read, one under the other', () => {
    const lines = refitLine(words, [cell(widthAt(SMALLEST_WORDS_MM) * 0.7)]);
    expect(lines.length).toBeGreaterThan(1);
    expect(lines.map(({ text }) => text).join(' ')).toBe(words.text);
    lines.forEach((line, i) => {
      expect(line.heightMm).toBe(SMALLEST_WORDS_MM);
      expect(line.at.x).toBeCloseTo(50, 9);
      expect(line.at.y).toBeCloseTo(30 - i * 1.85 * SMALLEST_WORDS_MM, 9);
      expect(textWidthMm(line.text, SMALLEST_WORDS_MM)).toBeLessThan(widthAt(SMALLEST_WORDS_MM) * 0.7);
    });
    // Upright ones beside one another, the next to the right.
    const upright = refitLine({ ...words, angleRad: Math.PI / 2 }, [cell(60, widthAt(SMALLEST_WORDS_MM) * 0.7)]);
    expect(upright.length).toBe(lines.length);
    expect(upright[1].at.x).toBeCloseTo(50 + 1.85 * SMALLEST_WORDS_MM, 9);
    expect(upright[1].at.y).toBeCloseTo(30, 9);
  });
});

describe('what words keep off', () => {
  const box = { x: 50, y: 30, halfWidth: 10, halfHeight: 2, angleRad: 0 };

  it('is other words, with 0.6 mm of white', () => {
    const obstacles = new Obstacles();
    obstacles.addBox(box);
    for (const [x, y, isFree] of [
      [50, 34.5, false],
      [50, 34.7, true],
      [50, 25.5, false],
      [70.5, 30, false],
      [70.7, 30, true],
      [29.3, 30, true],
    ] as const)
      expect(obstacles.isFree({ ...box, x, y }), `${x} ${y}`).toBe(isFree);
  });

  it('is lines, with as much', () => {
    const obstacles = new Obstacles();
    obstacles.addStrokes([straight('cut', 0, 20, 200, 20)]);
    expect(obstacles.isFree({ ...box, y: 22.5 })).toBe(false);
    expect(obstacles.isFree({ ...box, y: 22.7 })).toBe(true);
    expect(obstacles.isFree({ ...box, y: 17.3 })).toBe(true);
  });

  it('is the side that closes a line', () => {
    const obstacles = new Obstacles();
    obstacles.addStrokes([{ ...straight('cut', 0, 0, 100, 0, 100, 100), closed: true }]);
    expect(obstacles.isFree({ ...box, x: 50, y: 50 })).toBe(false);
    expect(obstacles.isFree({ ...box, x: 30, y: 80 })).toBe(true);
  });

  it('bars thin lines by words alone', () => {
    const obstacles = new Obstacles();
    obstacles.addBox(box);
    obstacles.addStrokes([straight('cut', 0, 10, 200, 10)]);
    expect(obstacles.isOpen({ x: 50, y: 0 }, { x: 50, y: 60 })).toBe(false);
    expect(obstacles.isOpen({ x: 61, y: 0 }, { x: 61, y: 60 })).toBe(true);
    expect(obstacles.isOpen({ x: 50, y: 0 }, { x: 50, y: 27.9 })).toBe(true);
  });
});

describe('a template in a block', () => {
  const move = { x: 100, y: 7, turnRad: Math.PI / 2 };

  it('is turned, then moved, words too', () => {
    const drawing = {
      strokes: [straight('fold-in', 1, 2, 30, 4)],
      words: [handMadeWords('A', 3, 5, { angleRad: 0.2 })],
    };
    const { strokes, words } = moveDrawing(drawing, move);
    expect(strokes[0]).toMatchObject({ role: 'fold-in', closed: false });
    [98, 8, 96, 37].forEach((mm, i) => expect(strokes[0].points[i]).toBeCloseTo(mm, 9));
    expect(words[0]).toMatchObject({ text: 'A', align: 'centre' });
    expect(words[0].at.x).toBeCloseTo(95, 9);
    expect(words[0].at.y).toBeCloseTo(10, 9);
    expect(words[0].angleRad).toBeCloseTo(0.2 + Math.PI / 2, 12);
  });

  it('keeps whose it is, and its twin', () => {
    const template = handMadeTemplate('rim', [0, 0, 10, 0, 10, 5]);
    expect(placeTemplate(template, move)).toMatchObject({ piece: 'rim', move });
    expect('turned' in placeTemplate(template, move)).toBe(false);
    expect(placeTemplate({ ...template, turned: pieceId('other') }, move).turned).toBe('other');
  });

  it('has the box of all that is drawn, words that stick out of it too', () => {
    const template = handMadeTemplate('rim', [0, 0, 10, 0, 10, 5], [], [handMadeWords('M', 5, 30, { heightMm: 4 })]);
    const box = fullBox(template);
    expect([box.minX, box.minY, box.maxX]).toEqual([0, 0, 10]);
    expect(box.maxY).toBeCloseTo(34.4, 9);
    expect(drawnBox(template.drawing)).toEqual(box);
    expect(sizeOf({ minX: 2, minY: 3, maxX: 12, maxY: 34 })).toEqual({ width: 10, height: 31 });
  });

  it('lies in a box or sticks out of one side', () => {
    const outer = { minX: 0, minY: 10, maxX: 100, maxY: 60 };
    expect(isBoxInside(outer, outer)).toBe(true);
    for (const change of [{ minX: -1 }, { minY: 9 }, { maxX: 101 }, { maxY: 61 }])
      expect(isBoxInside({ ...outer, ...change }, outer)).toBe(false);
  });
});
