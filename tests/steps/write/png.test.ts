import { decode } from 'fast-png';
import { describe, expect, it } from 'vitest';
import { textWidthMm } from '../../../src/geom/text-width.ts';
import type { Drawing, Stroke, Words } from '../../../src/model/template.ts';
import { PngBand } from '../../../src/steps/write/png-band.ts';
import { FontOutlines } from '../../../src/steps/write/png-font.ts';
import { writePng } from '../../../src/steps/write/png.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { forAll } from '../../support/for-all.ts';
import { handMadeWords, straight } from '../../support/hand-made-templates.ts';
import { testFont } from '../../support/run-sample.ts';

const FONT = new FontOutlines(testFont());
const ring = (...xy: readonly number[]): Float64Array => Float64Array.from(xy);

/** A picture of 100 × 60 mm, or another size, read back by another program. */
function read(drawing: Partial<Drawing>, dpi: number, widthMm = 100, heightMm = 60) {
  const picture = { name: 'it', widthMm, heightMm, drawing: { strokes: [], words: [], ...drawing } };
  const { data, width, height, depth, channels, resolution } = decode(expectOk(writePng(picture, dpi, FONT)));
  const inkAt = (x: number, y: number): number => 1 - data[y * width + x] / 255;
  /** Sum of ink and its middle, mm from the lower left of the drawing. */
  const ink = () => {
    let [sum, x, y] = [0, 0, 0];
    for (let row = 0; row < height; row += 1) {
      for (let column = 0; column < width; column += 1) {
        const share = inkAt(column, row);
        sum += share;
        x += share * (column + 0.5);
        y += share * (row + 0.5);
      }
    }
    const mm = 1000 / (resolution?.x ?? NaN);
    return { mm2: sum * mm * mm, x: (x / sum) * mm, y: heightMm - (y / sum) * mm };
  };
  return { width, height, depth, channels, resolution, ink, inkAt };
}

describe('writePng', () => {
  it('says its resolution, and is as large as it says', () => {
    const { width, height, depth, channels, resolution } = read({}, 300);
    expect(resolution).toEqual({ x: 11811, y: 11811, unit: 1 });
    expect([width, height, depth, channels]).toEqual([1182, 709, 8, 1]);
    expect((width / 11811) * 1000).toBeGreaterThanOrEqual(100);
  });

  it.each([100, 300])('puts lines where they are within 0.01 mm and as wide as they are, at %s dpi', (dpi) =>
    forAll(
      (rand) => ({ x: 15 + 10 * rand(), y: 15 + 10 * rand(), turn: Math.PI * rand(), half: 5 + 8 * rand() }),
      ({ x, y, turn, half }) => {
        const [dx, dy] = [half * Math.cos(turn), half * Math.sin(turn)];
        const found = read({ strokes: [straight('cut', x - dx, y - dy, x + dx, y + dy)] }, dpi, 40, 40).ink();
        expect(Math.abs(found.x - x)).toBeLessThan(0.01);
        expect(Math.abs(found.y - y)).toBeLessThan(0.01);
        expect(Math.abs(found.mm2 / (2 * half * 0.35) - 1)).toBeLessThan(0.03);
      },
      { runs: 8 },
    ),
  );

  it('draws across the bands it works in without a seam', () => {
    const { inkAt, height, width } = read({ strokes: [straight('cut', 50, 0, 50, 60)] }, 300);
    const column = Math.round((50 / 1000) * 11811);
    for (let row = 1; row < height - 2; row += 1) expect(inkAt(column, row)).toBe(1);
    expect(inkAt(Math.round(width / 4), 128)).toBe(0);
  });

  it('fills heads of arrows, dashes lines, and greys what is grey', () => {
    const head: Stroke = { role: 'mark', points: ring(40, 20, 60, 20, 50, 40), closed: true, filled: true };
    const filled = read({ strokes: [head] }, 100).ink();
    expect(filled.mm2).toBeCloseTo(200, 0);
    expect([filled.x, filled.y]).toEqual([expect.closeTo(50, 2), expect.closeTo(26.667, 2)]);
    const dashed = read({ strokes: [straight('fold-in', 5, 30, 95, 30)] }, 300).ink();
    expect(dashed.mm2 / (90 * 0.25)).toBeCloseTo(3 / 4.5, 1);
    const grey = read({ strokes: [straight('bevel', 5, 30, 95, 30)] }, 300).ink();
    expect(grey.mm2 / (90 * 0.18)).toBeCloseTo(0.65, 1);
  });

  it('sets words as every writer does', () => {
    const word = (change: Partial<Words>): Words => handMadeWords('HHHH', 50, 30, { heightMm: 5, ...change });
    const width = textWidthMm('HHHH', 5);
    const centred = read({ words: [word({})] }, 150).ink();
    expect([centred.x, centred.y]).toEqual([expect.closeTo(50, 1), expect.closeTo(32.5, 1)]);
    const left = read({ words: [word({ align: 'left' })] }, 150).ink();
    expect(left.x).toBeCloseTo(50 + width / 2, 1);
    const turned = read({ words: [word({ angleRad: Math.PI / 2, align: 'right' })] }, 150).ink();
    expect([turned.x, turned.y]).toEqual([expect.closeTo(47.5, 1), expect.closeTo(30 - width / 2, 1)]);
    expect(read({ words: [word({ bold: true })] }, 150).ink().mm2).toBeGreaterThan(1.2 * centred.mm2);
    // Letters with holes, of several outlines, and one the font has not.
    expect(read({ words: [handMadeWords('O', 50, 30, { heightMm: 30 })] }, 100).inkAt(197, 60)).toBe(0);
    expect(read({ words: [handMadeWords('é\u{1f525}', 50, 30)] }, 150).ink().mm2).toBeGreaterThan(1);
  });

  it('keeps what is darker where lines lie on each other, whichever comes last', () => {
    const [cut, bevel] = [straight('cut', 10, 30, 90, 30), straight('bevel', 10, 30, 90, 30)];
    const alone = read({ strokes: [cut] }, 150).ink().mm2;
    expect(read({ strokes: [cut, bevel] }, 150).ink().mm2).toBe(alone);
    expect(read({ strokes: [bevel, cut] }, 150).ink().mm2).toBe(alone);
  });

  it('draws no line from one part of a letter to the next', () => {
    const { inkAt, width } = read({ words: [handMadeWords('i', 50, 10, { heightMm: 40, bold: true })] }, 50);
    // The dot of an i is parted from its stem by a white gap.
    const columns = Array.from({ length: width }, (_, column) => column);
    const rows = Array.from({ length: 118 }, (_, row) => columns.some((column) => inkAt(column, row) > 0));
    const runs = rows.filter((isInk, row) => isInk && !rows[row - 1]).length;
    expect(runs).toBe(2);
  });

  it('refuses more dots than programs open, and names the finest that works', () => {
    const picture = { name: 'sheet 1', widthMm: 1000, heightMm: 2000, drawing: { strokes: [], words: [] } };
    const made = writePng(picture, 1200, FONT);
    expect(made.ok ? null : made.problem).toMatchObject({
      code: 'png/too-large',
      text: 'At 1200 dpi sheet 1 would be 47244 × 94488 dots, which few programs open: take 359 dpi or less.',
    });
    for (const dpi of [0, -1, NaN]) expect(() => writePng(picture, dpi, FONT)).toThrow(RangeError);
  });

  it('is the same for the same drawing', () => {
    const picture = {
      name: 'it',
      widthMm: 50,
      heightMm: 20,
      drawing: { strokes: [], words: [handMadeWords('Visor', 25, 10)] },
    };
    expect(expectOk(writePng(picture, 100, FONT))).toEqual(expectOk(writePng(picture, 100, FONT)));
  });
});

describe('PngBand', () => {
  it('covers exactly the area of what it fills, wherever it lies, cut off at its edges', () =>
    forAll(
      (rand) => Array.from({ length: 3 }, () => [-5 + 30 * rand(), 25 + 30 * rand()]).flat(),
      (corners) => {
        const whole = new PngBand(40, 0, 80);
        const [upper, lower] = [new PngBand(40, 0, 40), new PngBand(40, 40, 40)];
        for (const band of [whole, upper, lower]) band.fill([Float64Array.from(corners)], 1);
        expect([...upper.dots, ...lower.dots]).toEqual([...whole.dots]);
        if (Math.min(corners[0], corners[2], corners[4]) < 0) return;
        const [ax, ay, bx, by, cx, cy] = corners;
        const area = Math.abs((bx - ax) * (cy - ay) - (cx - ax) * (by - ay)) / 2;
        const ink = whole.dots.reduce((sum, dot) => sum + 1 - dot / 255, 0);
        // Each dot on the border is rounded to a 255th.
        expect(Math.abs(ink - area)).toBeLessThan(0.2);
      },
    ));
});
