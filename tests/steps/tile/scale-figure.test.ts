import { describe, expect, it } from 'vitest';
import { inEnglish } from '../../../src/base/paper-language.ts';
import { Pen } from '../../../src/steps/tile/pen.ts';
import { scaleFigure, scaleFigureSide, type ScaleSize } from '../../../src/steps/tile/scale-figure.ts';

const LARGE: ScaleSize = { squareMm: 100, ruleIn: 4 };
const SMALL: ScaleSize = { squareMm: 50, ruleIn: 2 };

/** Drawn with its upper left corner at 20, 250: so the large square has its lower left corner at 43, 150, the small one at 43, 200. */
function drawn(size: ScaleSize): Pen {
  const pen = new Pen();
  scaleFigure(size, inEnglish).draw(pen, 20, 250);
  return pen;
}

/** A line as it is told apart, to a ten-thousandth of a mm. */
const told = (xy: ArrayLike<number>): string => Array.from(xy, (mm) => Math.round(mm * 1e4) / 1e4).join(' ');

const linesOf = (pen: Pen): ReadonlySet<string> =>
  new Set(pen.strokes.filter(({ closed }) => !closed).map(({ points }) => told(points)));

describe('the figure of the scale page', () => {
  it('takes the room of the larger of square and rule, beside 23 mm for the rules', () => {
    expect(scaleFigureSide(LARGE)).toBeCloseTo(124.6, 9);
    expect(scaleFigureSide(SMALL)).toBeCloseTo(73.8, 9);
    expect(scaleFigure(LARGE, inEnglish)).toMatchObject({ gapMm: 5 });
    expect(scaleFigure(LARGE, inEnglish).heightMm).toBeCloseTo(124.6, 9);
  });

  it.each([
    [LARGE, [43, 150, 143, 150, 143, 250, 43, 250]],
    [SMALL, [43, 200, 93, 200, 93, 250, 43, 250]],
  ])('has a square whose sides are as long as is said: %j', (size, corners) => {
    const squares = drawn(size).strokes.filter(({ closed }) => closed);
    expect(squares.map(({ points }) => [...points])).toEqual([corners]);
    for (const stroke of drawn(size).strokes) expect(stroke.role).toBe('ruler');
  });

  it('rules all four sides in mm, longer ticks at 5 and longest at 10 mm, inward', () => {
    const lines = linesOf(drawn(LARGE));
    const wanted: number[][] = [];
    for (const [mm, tick] of [
      [1, 1.4],
      [5, 2.4],
      [10, 3.5],
      [37, 1.4],
      [45, 2.4],
      [99, 1.4],
    ]) {
      wanted.push([43 + mm, 150, 43 + mm, 150 + tick]);
      wanted.push([43 + mm, 250, 43 + mm, 250 - tick]);
      wanted.push([43, 150 + mm, 43 + tick, 150 + mm]);
      wanted.push([143, 150 + mm, 143 - tick, 150 + mm]);
    }
    expect(wanted.filter((line) => !lines.has(told(line)))).toEqual([]);
    // 99 ticks a side; two rules of 65 ticks and a line.
    expect(lines.size).toBe(4 * 99 + 2 * 66);
    expect(linesOf(drawn(SMALL)).size).toBe(4 * 49 + 2 * 34);
  });

  it('numbers every 20 mm across and up, and says how long the sides are', () => {
    const { words } = drawn(LARGE);
    const at = (text: string) => words.filter((line) => line.text === text);
    for (const mm of [20, 40, 60, 80]) {
      const [across, up, ...others] = at(String(mm));
      expect(others).toEqual([]);
      expect(across).toMatchObject({ at: { x: 43 + mm, y: 154.6 }, align: 'centre', heightMm: 2.5 });
      expect(up).toMatchObject({ at: { x: 47.4, y: 148.75 + mm }, align: 'left' });
    }
    expect(at('100')).toEqual([]);
    expect(at('100 mm')).toEqual([
      { text: '100 mm', at: { x: 93, y: 199 }, angleRad: 0, heightMm: 5.5, align: 'centre', bold: true },
    ]);
    expect(at('across and up')).toMatchObject([{ at: { x: 93, y: 192.5 }, align: 'centre' }]);
    expect(drawn(SMALL).words.map(({ text }) => text)).toContain('50 mm');
  });

  it('has an inch rule under the square and one to its left, 13 mm off, with ticks to sixteenths', () => {
    const lines = linesOf(drawn(LARGE));
    const wanted: number[][] = [];
    wanted.push([43, 137, 144.6, 137]);
    wanted.push([30, 150, 30, 251.6]);
    for (const [sixteenths, tick] of [
      [0, 4.5],
      [1, 1],
      [2, 1.6],
      [4, 2.3],
      [6, 1.6],
      [8, 3.2],
      [12, 2.3],
      [16, 4.5],
      [63, 1],
      [64, 4.5],
    ]) {
      const along = sixteenths * 1.5875;
      wanted.push([43 + along, 137, 43 + along, 137 + tick]);
      wanted.push([30, 150 + along, 30 + tick, 150 + along]);
    }
    expect(wanted.filter((line) => !lines.has(told(line)))).toEqual([]);
  });

  it('numbers the inches, the last with its unit in bold', () => {
    const { words } = drawn(LARGE);
    const rules = words.filter(({ text }) => /^[1-4]( in)?$/.test(text));
    expect(rules.map(({ text, align, bold }) => [text, align, bold ?? false])).toEqual([
      ...['1', '2', '3'].map((text) => [text, 'centre', false]),
      ['4 in', 'right', true],
      ...['1', '2', '3'].map((text) => [text, 'right', false]),
      ['4 in', 'right', true],
    ]);
    const places = rules.map(({ at: { x, y } }) => [x, y].map((mm) => Math.round(mm * 100) / 100));
    expect(places).toEqual([
      [68.4, 133.1],
      [93.8, 133.1],
      [119.2, 133.1],
      [144.6, 133.1],
      [28.6, 174.15],
      [28.6, 199.55],
      [28.6, 224.95],
      [28.6, 249.1],
    ]);
    expect(drawn(SMALL).words.filter(({ text }) => text === '2 in')).toHaveLength(2);
  });
});
