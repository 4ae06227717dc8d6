import { describe, expect, it } from 'vitest';
import { inEnglish, type Say } from '../../../src/base/paper-language.ts';
import type { Paper } from '../../../src/model/foam-stock.ts';
import { drawLevelRule, drawUprightRule } from '../../../src/steps/tile/check-rules.ts';
import { paperFrame, type PaperFrame } from '../../../src/steps/tile/paper-frame.ts';
import { Pen } from '../../../src/steps/tile/pen.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { handMadeWords } from '../../support/hand-made-templates.ts';

const inInches: Say = Object.assign((text: string): string => text, { unit: 'in' as const });

/** Paper with margins of 10 mm: its tile is 20 mm narrower, its lower left corner at 10, 22. */
function frameOf(widthMm: number, heightMm = 297): PaperFrame {
  const paper: Paper = { name: 'own', widthMm, heightMm, roll: false };
  return expectOk(paperFrame(paper, 'portrait', 10, 0));
}

interface Drawn {
  /** x0 y0 x1 y1 of every line, to a thousandth of a mm; the first is the rule itself. */
  readonly lines: readonly (readonly number[])[];
  readonly words: readonly { readonly text: string; readonly at: { readonly x: number; readonly y: number } }[];
}

function drawnBy(draw: (pen: Pen) => void): Drawn {
  const pen = new Pen();
  draw(pen);
  for (const stroke of pen.strokes) expect(stroke).toMatchObject({ role: 'ruler', closed: false });
  const lines = pen.strokes.map(({ points }) => Array.from(points, (mm) => Math.round(mm * 1000) / 1000));
  return { lines, words: pen.words };
}

const level = (frame: PaperFrame, heightMm: number, say: Say = inEnglish): Drawn =>
  drawnBy((pen) => drawLevelRule(pen, frame, heightMm, say));
const upright = (frame: PaperFrame, heightMm: number, say: Say = inEnglish): Drawn =>
  drawnBy((pen) => drawUprightRule(pen, frame, heightMm, { words: [], say }));

describe('the rule along the lower edge', () => {
  it('is 100 mm long, with a tick every 10 mm down into the foot, longer at its ends and in the middle', () => {
    const { lines, words } = level(frameOf(210), 265);
    const [rule, ...ticks] = lines;
    expect(rule).toEqual([10, 22, 110, 22]);
    expect(ticks).toEqual([
      ...[
        [10, 22, 10, 19],
        [20, 22, 20, 20.5],
        [30, 22, 30, 20.5],
        [40, 22, 40, 20.5],
        [50, 22, 50, 20.5],
      ],
      ...[
        [60, 22, 60, 19.6],
        [70, 22, 70, 20.5],
        [80, 22, 80, 20.5],
        [90, 22, 90, 20.5],
        [100, 22, 100, 20.5],
      ],
      [110, 22, 110, 19],
    ]);
    expect(words).toEqual([expect.objectContaining({ text: '100 mm both ways', at: { x: 112, y: 18.7 } })]);
  });

  it('is 50 mm long on a tile narrower than 145 mm', () => {
    const wide = level(frameOf(165), 265);
    expect(wide.lines[0]).toEqual([10, 22, 110, 22]);
    const { lines, words } = level(frameOf(164.9), 265);
    expect(lines[0]).toEqual([10, 22, 60, 22]);
    expect(lines).toHaveLength(7);
    expect(lines[6]).toEqual([60, 22, 60, 19]);
    expect(words[0]).toMatchObject({ text: '50 mm both ways', at: { x: 62, y: 18.7 } });
  });

  it('says what the upright one measures where a page is too low for as much', () => {
    expect(level(frameOf(210), 100).words[0].text).toBe('100 mm both ways');
    expect(level(frameOf(210), 99.9).words[0].text).toBe('100 mm, 50 upright');
    expect(level(frameOf(210), 50).words[0].text).toBe('100 mm, 50 upright');
    expect(level(frameOf(210), 49.9).words[0].text).toBe('100 mm');
    expect(level(frameOf(150), 49.9).words[0].text).toBe('50 mm');
  });

  it('is 4 in long for who works in inches, with ticks every quarter', () => {
    const { lines, words } = level(frameOf(210), 265, inInches);
    expect(lines[0]).toEqual([10, 22, 111.6, 22]);
    // 0, 1/4, 1/2, 3/4 and 1 in.
    expect(lines.slice(1, 6)).toEqual([
      [10, 22, 10, 19],
      [16.35, 22, 16.35, 20.5],
      [22.7, 22, 22.7, 19.6],
      [29.05, 22, 29.05, 20.5],
      [35.4, 22, 35.4, 19],
    ]);
    expect(lines).toHaveLength(18);
    expect(words[0]).toMatchObject({ text: '4 in both ways', at: { x: 113.6, y: 18.7 } });
    expect(level(frameOf(150), 265, inInches).lines[0]).toEqual([10, 22, 60.8, 22]);
    // 4 in are 101.6 mm.
    expect(level(frameOf(210), 101.5, inInches).words[0].text).toBe('4 in, 2 upright');
    expect(level(frameOf(210), 50.7, inInches).words[0].text).toBe('4 in');
  });

  it('is said in the language of the paper', () => {
    const { words } = level(frameOf(210), 265, (text) => `«${text}»`);
    expect(words[0].text).toBe('«100 mm both ways»');
  });
});

describe('the rule up the left edge', () => {
  it('begins at the foot of the tile, with ticks half as long into it', () => {
    const { lines, words } = upright(frameOf(210), 265);
    expect(lines[0]).toEqual([10, 22, 10, 122]);
    expect(lines.slice(1)).toEqual([
      ...[
        [10, 32, 10.75, 32],
        [10, 42, 10.75, 42],
        [10, 52, 10.75, 52],
        [10, 62, 10.75, 62],
        [10, 72, 11.2, 72],
      ],
      ...[
        [10, 82, 10.75, 82],
        [10, 92, 10.75, 92],
        [10, 102, 10.75, 102],
        [10, 112, 10.75, 112],
        [10, 122, 11.5, 122],
      ],
    ]);
    expect(words).toEqual([]);
  });

  it('is shorter on a lower page, and is left out where 50 mm do not fit', () => {
    expect(upright(frameOf(210), 100).lines[0]).toEqual([10, 22, 10, 122]);
    expect(upright(frameOf(210), 99.9).lines[0]).toEqual([10, 22, 10, 72]);
    expect(upright(frameOf(210), 50).lines[0]).toEqual([10, 22, 10, 72]);
    expect(upright(frameOf(210), 49.9).lines).toEqual([]);
    // On a narrow page it is no longer than the level one.
    expect(upright(frameOf(150), 265).lines[0]).toEqual([10, 22, 10, 72]);
    expect(upright(frameOf(210), 101.5, inInches).lines[0]).toEqual([10, 22, 10, 72.8]);
    expect(upright(frameOf(210), 101.7, inInches).lines).toHaveLength(17);
  });

  it('leaves out a tick that would run into words, and no other', () => {
    const words = handMadeWords('K1', 10.6, 51, { align: 'left' });
    const { lines } = drawnBy((pen) => drawUprightRule(pen, frameOf(210), 265, { words: [words], say: inEnglish }));
    const ticks = lines.slice(1).map(([, y]) => y);
    expect(ticks).toEqual([32, 42, 62, 72, 82, 92, 102, 112, 122]);
  });
});
