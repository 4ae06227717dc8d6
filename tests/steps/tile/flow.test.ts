import { describe, expect, it } from 'vitest';
import { inEnglish } from '../../../src/base/paper-language.ts';
import { Flow, lineItem, type FlowItem } from '../../../src/steps/tile/flow.ts';
import { frontPage } from '../../../src/steps/tile/front-page.ts';
import { paperFrame } from '../../../src/steps/tile/paper-frame.ts';
import { Pen } from '../../../src/steps/tile/pen.ts';
import { rowItem } from '../../../src/steps/tile/table-row.ts';
import { expectOk } from '../../support/expect-ok.ts';

/** 100 mm wide and high, from 10, 20. */
const AREA = { minX: 10, minY: 20, maxX: 110, maxY: 120 };

/** An item that writes its name at its upper left corner. */
const item = (text: string, heightMm: number, gapMm = 0): FlowItem => ({
  heightMm,
  gapMm,
  draw: (pen, left, top) => pen.write(text, { x: left, y: top }),
});

/** What stands where, page by page, to a thousandth of a mm. */
const written = (flow: Flow): readonly (readonly string[])[] =>
  flow
    .pages()
    .map(({ pen }) => pen.words.map(({ text, at }) => `${text} ${[at.x, at.y].map((mm) => +mm.toFixed(3)).join(' ')}`));

describe('what flows over pages', () => {
  it('stands one under the other with white between, none at the head', () => {
    const flow = new Flow(AREA);
    flow.put(item('a', 30, 7));
    flow.put(item('b', 20, 5));
    flow.put(item('c', 10, 3));
    expect(written(flow)).toEqual([['a 10 120', 'b 10 85', 'c 10 62']]);
    expect(flow.pages().map(({ lowestMm }) => lowestMm)).toEqual([52]);
    expect(flow.restMm).toBe(32);
    expect(flow.width).toBe(100);
  });

  it('goes on at the head of a new page where it does not fit, and just fits', () => {
    const flow = new Flow(AREA);
    flow.put(item('a', 60));
    flow.put(item('b', 35, 5));
    expect(flow.restMm).toBe(0);
    flow.put(item('c', 10, 5));
    expect(written(flow)).toEqual([['a 10 120', 'b 10 55'], ['c 10 120']]);
    expect(flow.pages().map(({ lowestMm }) => lowestMm)).toEqual([20, 110]);
  });

  it('parts nothing: what is higher than a page stands alone on one', () => {
    const flow = new Flow(AREA);
    flow.put(item('a', 10));
    flow.put(item('b', 150));
    expect(written(flow)).toEqual([['a 10 120'], ['b 10 120']]);
  });

  it('repeats the heading of a list where that goes on', () => {
    const flow = new Flow(AREA);
    flow.put(item('a', 95), item('head', 8, 4));
    flow.put(item('b', 20, 3), item('head', 8, 4));
    flow.put(item('c', 20, 3), item('head', 8, 4));
    expect(written(flow)).toEqual([['a 10 120'], ['head 10 120', 'b 10 109', 'c 10 86']]);
  });

  it('fills columns from left to right under what is there, those on the right 5 mm off', () => {
    const flow = new Flow(AREA);
    flow.put(item('a', 30));
    flow.columns([40, 45], 15);
    expect(flow.width).toBe(40);
    flow.put(item('b', 10));
    flow.breakColumn();
    expect(flow.width).toBe(45);
    flow.put(item('c', 50));
    flow.put(item('d', 30));
    expect(written(flow)).toEqual([['a 10 120', 'b 10 90', 'c 65 85'], ['d 10 120']]);
    flow.columns([100], 0);
    flow.put(item('e', 10));
    // Under the lowest of the page it is on.
    expect(written(flow)[1]).toEqual(['d 10 120', 'e 10 90']);
  });

  it('begins columns at the head of an empty page, and after them under the longest', () => {
    const flow = new Flow(AREA);
    flow.columns([40, 45], 15);
    flow.put(item('a', 50));
    flow.breakColumn();
    flow.put(item('b', 20));
    flow.breakColumn();
    flow.put(item('c', 5));
    flow.columns([100], 0);
    flow.put(item('d', 10));
    expect(written(flow)).toEqual([['a 10 120', 'b 65 120', 'c 65 100', 'd 10 70']]);
  });

  it('leaves no heading alone at the foot', () => {
    // A heading takes 5 + 3.2 · 1.85 mm, and three lines under it 3 · 2.5 · 1.85: 24.795 mm.
    const room = (left: number): number => {
      const flow = new Flow(AREA);
      flow.put(item('a', 100 - left));
      flow.heading('Lines');
      return flow.pages().length;
    };
    expect(room(24.8)).toBe(1);
    expect(room(24.7)).toBe(2);
  });

  it('says headings and paragraphs in the language of the paper, wrapped to the column', () => {
    const flow = new Flow({ ...AREA, maxX: 40 }, (text) => text.toUpperCase());
    flow.heading('joining');
    flow.paragraph('lay it on the strip of its neighbour', {}, 2);
    const [{ pen }] = flow.pages();
    expect(pen.words[0]).toMatchObject({ text: 'JOINING', heightMm: 3.2, bold: true });
    const lines = pen.words.slice(1);
    expect(lines.map(({ text }) => text).join(' ')).toBe('LAY IT ON THE STRIP OF ITS NEIGHBOUR');
    expect(lines.length).toBeGreaterThan(1);
    // Heading 5.92 mm, 2 mm of white, 1.3 capital heights to the baseline; then 4.625 mm a line.
    expect(lines[0].at.y).toBeCloseTo(120 - 5.92 - 2 - 3.25, 9);
    expect(lines[1].at.y).toBeCloseTo(120 - 5.92 - 2 - 3.25 - 4.625, 9);
  });

  it('has lines as items, with room for accents over them', () => {
    const pen = new Pen();
    const line = lineItem('Ärmel', { heightMm: 4, bold: true }, 3);
    line.draw(pen, 12, 50);
    expect(line).toMatchObject({ heightMm: 7.4, gapMm: 3 });
    expect(pen.words).toEqual([
      { text: 'Ärmel', at: { x: 12, y: 44.8 }, angleRad: 0, heightMm: 4, align: 'left', bold: true },
    ]);
  });
});

describe('a row of a table', () => {
  it('sets its cells side by side, as high as the one with most lines, with a line under it', () => {
    const pen = new Pen();
    const row = rowItem([['1'], ['Rim', 'left'], []], [10, 30, 20], true);
    expect(row.heightMm).toBeCloseTo(2 * 4.625 + 0.8, 9);
    expect(row.gapMm).toBe(0.4);
    row.draw(pen, 15, 100);
    const told = pen.words.map(({ text, at, bold }) => [text, at.x, +at.y.toFixed(6), bold]);
    expect(told).toEqual([
      ['1', 15, 96.75, true],
      ['Rim', 27, 96.75, true],
      ['left', 27, 92.125, true],
    ]);
    const [stroke, ...others] = pen.strokes;
    expect(others).toEqual([]);
    expect(stroke.role).toBe('frame');
    [15, 89.95, 79, 89.95].forEach((mm, i) => expect(stroke.points[i]).toBeCloseTo(mm, 9));
    expect(rowItem([[], []], [10, 20], false).heightMm).toBeCloseTo(4.625 + 0.8, 9);
  });
});

describe('a page that stands by itself', () => {
  const foot = { title: 'Shield', pageNumber: 2, pageCount: 9, say: inEnglish };
  const paper = { name: 'own', widthMm: 200, heightMm: 300, roll: false };

  it('is as large as its paper, with its foot', () => {
    const pen = new Pen();
    pen.line('map', 20, 200, 30, 200);
    const page = frontPage('map', 'map', { pen, lowestMm: 150 }, expectOk(paperFrame(paper, 'portrait', 10, 0)), foot);
    expect(page).toMatchObject({ kind: 'map', name: 'map', widthMm: 200, heightMm: 300, pieces: [] });
    expect([...page.drawing.strokes[0].points]).toEqual([20, 200, 30, 200]);
    expect(page.drawing.words.map(({ text }) => text)).toEqual(['map', 'Shield · page 2 of 9']);
  });

  it('is cut off on a roll where it ends', () => {
    const pen = new Pen();
    pen.line('map', 20, 200, 30, 200);
    const frame = expectOk(paperFrame({ ...paper, roll: true }, 'portrait', 10, 0));
    const page = frontPage('map', 'map', { pen, lowestMm: 150 }, frame, foot);
    // Under 150 mm only the foot of 12 and the margin of 10 mm are left: 128 mm are not used.
    expect(page.heightMm).toBe(172);
    expect([...page.drawing.strokes[0].points]).toEqual([20, 72, 30, 72]);
    expect(page.drawing.words[0].at.y).toBeCloseTo(11.9, 9);
  });
});
