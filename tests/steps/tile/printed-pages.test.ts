import { describe, expect, it } from 'vitest';
import { runAtOnce } from '../../../src/base/stepwise.ts';
import type { Page, PageSet } from '../../../src/model/page.ts';
import type { PrinterProfile } from '../../../src/model/printer.ts';
import { findPaper } from '../../../src/model/papers.ts';
import type { PageInput } from '../../../src/steps/tile/page-input.ts';
import { printedPageSteps, printedStripPages } from '../../../src/steps/tile/printed-pages.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { shieldTemplate, stripTemplate } from '../../support/hand-made-templates.ts';
import { IS_LONG } from '../../support/long.ts';
import { PAPER_CASES, pageInput, rejoinError, segmentsOf } from './support.ts';

const TEMPLATES = [shieldTemplate('shield'), stripTemplate('rim', 620, 40), stripTemplate('strap', 120, 35)];

const PRINTERS: readonly PrinterProfile[] = [
  { name: 'long and short', acrossShare: 1.031, upShare: 0.988, leanRad: 0 },
  { name: 'short', acrossShare: 0.97, upShare: 0.964, leanRad: 0 },
  { name: 'leaning', acrossShare: 0.995, upShare: 1.004, leanRad: 0.009 },
  { name: 'leaning back', acrossShare: 1.02, upShare: 0.96, leanRad: -0.02 },
];

/** The page as that printer puts it on paper: its middle on the paper's, all else stretched and leaning. Corners told apart by hand. */
function print(page: Page, { acrossShare, upShare, leanRad }: PrinterProfile): Page {
  const heightMm = page.heightMm * upShare * Math.cos(leanRad);
  const paperHeightMm =
    Math.abs(heightMm - page.heightMm) / page.heightMm < 0.2 && !isRoll(page) ? page.heightMm : heightMm;
  const place = (x: number, y: number): readonly [number, number] => {
    const [u, v] = [x - page.widthMm / 2, y - page.heightMm / 2];
    return [
      page.widthMm / 2 + acrossShare * u + upShare * Math.sin(leanRad) * v,
      paperHeightMm / 2 + upShare * Math.cos(leanRad) * v,
    ];
  };
  const strokes = page.drawing.strokes.map((stroke) => {
    const points = Float64Array.from(stroke.points);
    for (let i = 0; i < points.length; i += 2) [points[i], points[i + 1]] = place(points[i], points[i + 1]);
    return { ...stroke, points };
  });
  return { ...page, heightMm: paperHeightMm, drawing: { ...page.drawing, strokes } };
}

const rollWidths = new Set([310, 610, 914]);
const isRoll = ({ widthMm }: Page): boolean => rollWidths.has(widthMm);

const make = (change: Partial<PageInput>, printer: PrinterProfile): PageSet =>
  expectOk(runAtOnce(printedPageSteps({ ...pageInput({ templates: TEMPLATES, ...change }), printer })));

/** Sides of boxes drawn with the ruler: the square of the scale page. */
function squareOf(page: Page): readonly number[] {
  const rings = page.drawing.strokes.filter(
    ({ role, closed, points }) => role === 'ruler' && closed && points.length === 8,
  );
  expect(rings).toHaveLength(1);
  return segmentsOf(rings[0]).map(([ax, ay, bx, by]) => Math.hypot(bx - ax, by - ay));
}

function spread(page: Page): readonly [number, number, number, number] {
  const xs = page.drawing.strokes.flatMap(({ points }) => [...points].filter((_, i) => i % 2 === 0));
  const ys = page.drawing.strokes.flatMap(({ points }) => [...points].filter((_, i) => i % 2 === 1));
  return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
}

describe.each(PAPER_CASES.map((one, turn) => ({ ...one, turn })))('corrected pages on $name', ({ change, turn }) => {
  // Every day each paper from one of the printers, which take turns.
  it.each(IS_LONG ? PRINTERS : [PRINTERS[turn % PRINTERS.length]])(
    'measure true from the printer that is $name',
    (printer) => {
      const set = make(change, printer);
      const { pages } = set;
      const onPaper = pages.map((page) => print(page, printer));
      const side = Math.min(...squareOf(onPaper[0])) > 75 ? 100 : 50;
      for (const mm of squareOf(onPaper[0])) expect(Math.abs(mm - side)).toBeLessThan(1e-9);
      for (const role of ['cut', 'bevel'] as const)
        expect(rejoinError(TEMPLATES, { ...set, pages: onPaper }, role)).toBeLessThan(0.01);
      for (const [i, page] of pages.entries()) {
        // Nothing leaves the page that is sent, and nothing the paper that comes out.
        const [left, right, low, high] = spread(page);
        expect(Math.min(left, low, page.widthMm - right, page.heightMm - high)).toBeGreaterThanOrEqual(0);
        const [l, r, b, t] = spread(onPaper[i]);
        expect(Math.min(l, b, onPaper[i].widthMm - r, onPaper[i].heightMm - t)).toBeGreaterThanOrEqual(0);
        expect(page.heightMm).toBeLessThanOrEqual(5080);
      }
    },
  );
});

describe('corrected pages', () => {
  const printer = PRINTERS[0];
  const words = (page: Page): string => page.drawing.words.map(({ text }) => text).join(' ');

  it('say on each whom they are for, and on the first how they are drawn', () => {
    const { pages } = make({}, printer);
    for (const page of pages) expect(words(page)).toContain(`for ${printer.name}`);
    expect(words(pages[0])).toContain('3.01 % smaller across');
    expect(words(pages[0])).toContain('1.21 % larger up');
  });

  it('tell a margin that had to grow', () => {
    const made = runAtOnce(
      printedPageSteps({ ...pageInput({ paper: expectOk(findPaper('A0')) }), printer: PRINTERS[1] }),
    );
    expectOk(made);
    expect(made.ok && made.notes.find(({ code }) => code === 'tile/wider-margin')?.text).toMatch(
      /margin of \d+\.?\d* mm instead of 10/,
    );
  });

  it('are the plain pages where no printer is named', () => {
    const plain = expectOk(runAtOnce(printedPageSteps(pageInput({ templates: TEMPLATES }))));
    expect(words(plain.pages[0])).not.toContain('larger');
    for (const mm of squareOf(plain.pages[0])) expect(mm).toBe(100);
  });

  it('hold for the test strip too', () => {
    const strip = {
      paper: expectOk(findPaper('A4')),
      marginMm: 10,
      foams: [{ name: 'EVA', thicknessMm: 6 }],
      cautions: [],
    };
    const [plain] = expectOk(printedStripPages(strip, null));
    const [page] = expectOk(printedStripPages(strip, PRINTERS[0])).map((drawn) => print(drawn, PRINTERS[0]));
    const cut = (drawn: Page): readonly number[] =>
      drawn.drawing.strokes
        .filter(({ role }) => role === 'cut')
        .flatMap((stroke) => segmentsOf(stroke).map(([ax, ay, bx, by]) => Math.hypot(bx - ax, by - ay)));
    expect(cut(page).map((mm) => mm.toFixed(9))).toEqual(cut(plain).map((mm) => mm.toFixed(9)));
  });
});
