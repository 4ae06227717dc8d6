import { afterEach, describe, expect, it } from 'vitest';
import { emFromCapHeight, textWidthMm } from '../../../src/geom/text-width.ts';
import { LINE_STYLES } from '../../../src/model/line-style.ts';
import type { Page } from '../../../src/model/page.ts';
import { findPaper, PAPERS } from '../../../src/model/papers.ts';
import { PAPER_LAYERS, type LineRole, type Stroke, type Words } from '../../../src/model/template.ts';
import { makePages } from '../../../src/steps/tile/make-pages.ts';
import { writePdf, type PdfOptions } from '../../../src/steps/write/pdf.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { handMadeWords, straight } from '../../support/hand-made-templates.ts';
import { readPdf, type ReadPage } from '../../support/read-pdf.ts';
import { testFont } from '../../support/run-sample.ts';
import { pageInput } from '../tile/support.ts';

/** 1 in = 25.4 mm = 72 pt. */
const PT_PER_MM = 72 / 25.4;
const OPTIONS: PdfOptions = { font: testFont(), title: 'Lamplighter shield', date: '2026-11-25', revision: 4 };

function page(strokes: readonly Stroke[], words: readonly Words[] = [], widthMm = 210, heightMm = 297): Page {
  return { kind: 'tile', name: 'A1', widthMm, heightMm, drawing: { strokes, words }, pieces: [] };
}

const latin = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1');

async function onePage(strokes: readonly Stroke[], words: readonly Words[] = []): Promise<ReadPage> {
  const [read] = (await readPdf(await writePdf([page(strokes, words)], OPTIONS))).pages;
  return read;
}

describe('lines', () => {
  it('are as long as they are: 100 mm is 283.4646 pt, wherever and whichever way', async () => {
    const { paths } = await onePage([
      straight('cut', 55, 100, 155, 100),
      straight('mark', 20, 17.3, 20, 117.3),
      straight('fold-in', 30, 30, 90, 110),
    ]);
    const lengths = paths.map(({ points: [ax, ay, bx, by] }) => Math.hypot(bx - ax, by - ay));
    expect(lengths.length).toBe(3);
    for (const length of lengths) expect(Math.abs(length - 283.464567)).toBeLessThan(2e-5);
  });

  it('stand where they are, y up from the lower edge', async () => {
    const { paths } = await onePage([{ role: 'cut', points: Float64Array.of(0, 0, 210, 0, 210, 297), closed: true }]);
    expect(paths[0].closed).toBe(true);
    const expected = [0, 0, 210, 0, 210, 297].map((mm) => mm * PT_PER_MM);
    paths[0].points.forEach((pt, i) => expect(pt).toBeCloseTo(expected[i], 4));
  });

  it('have the width, dash, grey and layer of their kind', async () => {
    const roles = Object.keys(LINE_STYLES) as LineRole[];
    const { paths } = await onePage(roles.map((role, i) => straight(role, 20, 20 + 10 * i, 120, 20 + 10 * i)));
    expect(paths.length).toBe(roles.length);
    for (const [i, role] of roles.entries()) {
      const found = paths.find(({ points }) => Math.abs(points[1] / PT_PER_MM - 20 - 10 * i) < 0.01);
      const { widthMm, dashMm, grey, layer } = LINE_STYLES[role];
      expect(found?.layer?.toLowerCase(), role).toBe(layer);
      expect(found?.widthPt, role).toBeCloseTo(widthMm * PT_PER_MM, 4);
      expect(found?.grey, role).toBe(Math.round(255 * grey));
      expect(found?.dashPt.length, role).toBe(dashMm.length);
      dashMm.forEach((mm, k) => expect(found?.dashPt[k], role).toBeCloseTo(mm * PT_PER_MM, 4));
    }
  });
});

describe('words', () => {
  it('begin where their width says, turned about their place', async () => {
    const text = 'bevel 12° in under';
    const width = textWidthMm(text, 3);
    const { texts } = await onePage(
      [],
      [
        handMadeWords(text, 100, 200, { heightMm: 3 }),
        handMadeWords(text, 100, 150, { heightMm: 3, align: 'left' }),
        handMadeWords(text, 100, 100, { heightMm: 3, align: 'right' }),
        handMadeWords(text, 40, 60, { heightMm: 3, angleRad: Math.PI / 3 }),
      ],
    );
    const places = texts.map(({ xPt, yPt }) => [xPt / PT_PER_MM, yPt / PT_PER_MM]);
    const half = [(width / 2) * Math.cos(Math.PI / 3), (width / 2) * Math.sin(Math.PI / 3)];
    [
      [100 - width / 2, 200],
      [100, 150],
      [100 - width, 100],
      [40 - half[0], 60 - half[1]],
    ].forEach(([x, y], i) => {
      expect(Math.hypot(places[i][0] - x, places[i][1] - y), `${i}`).toBeLessThan(0.001);
      expect(texts[i].sizePt).toBeCloseTo(emFromCapHeight(3) * PT_PER_MM, 3);
      expect(texts[i].text).toBe(text);
    });
  });

  it('come out in every script the font has', async () => {
    const lines = ['Größe Ø žluťoučký Łódź', 'Ελλάδα', 'Жизнь', '½ ± 90° × 2 → “–”'];
    const { texts } = await onePage(
      [],
      lines.map((line, i) => handMadeWords(line, 100, 200 - 20 * i)),
    );
    expect(texts.map(({ text }) => text)).toEqual(lines);
  });

  it('survive anything a file may have had for a name', async () => {
    const odd = ['鐘楼', 'fire 🔥', 'a\u0000b\nc\td', '\ud800 half', '   ', '', '(\\)%<>', 'שלום', 'مرحبا'];
    const { texts } = await onePage(
      [],
      odd.map((line, i) => handMadeWords(line, 100, 200 - 10 * i, { bold: i % 2 === 0 })),
    );
    expect(texts.length).toBeGreaterThanOrEqual(6);
    expect(texts.map(({ text }) => text)).toContain('(\\)%<>');
  });

  it('are as wide as a corrected page wants them, and the next ones as they are', async () => {
    const wide = handMadeWords('6° out', 100, 200, { wide: 1.044, align: 'right' });
    const { texts } = await onePage([], [wide, { ...wide, at: { x: 100, y: 100 }, wide: undefined }]);
    const width = textWidthMm('6° out', 2.5) * PT_PER_MM;
    expect(texts[0].widthPt / texts[1].widthPt).toBeCloseTo(1.044, 4);
    expect(texts[0].xPt).toBeCloseTo(100 * PT_PER_MM - 1.044 * width, 3);
    expect(texts[1].widthPt / width).toBeCloseTo(1, 2);
  });

  it('run no longer when they are bold', async () => {
    const bytes = await writePdf([page([], [handMadeWords('2-B3', 50, 50, { heightMm: 6, bold: true })])], OPTIONS);
    const [{ texts }] = (await readPdf(bytes)).pages;
    expect(texts[0].xPt / PT_PER_MM).toBeCloseTo(50 - textWidthMm('2-B3', 6) / 2, 3);
  });
});

describe('the file', () => {
  const { pages } = expectOk(makePages(pageInput()));
  const zone = process.env.TZ;
  afterEach(() => {
    if (zone === undefined) delete process.env.TZ;
    else process.env.TZ = zone;
  });

  it('has pages of exactly the paper’s size and no box that says otherwise', async () => {
    const papers = [...PAPERS, expectOk(findPaper('roll', 914)), expectOk(findPaper('custom', 123.4, 321))];
    const line = [straight('cut', 20, 20, 50, 50)];
    const set = papers.flatMap(({ widthMm, heightMm }) => [
      page(line, [], widthMm, heightMm),
      page(line, [], heightMm, widthMm),
    ]);
    const bytes = await writePdf(set, OPTIONS);
    const read = await readPdf(bytes);
    expect(read.pages.length).toBe(set.length);
    set.forEach(({ widthMm, heightMm }, i) => {
      expect(Math.abs(read.pages[i].widthPt - widthMm * PT_PER_MM), `${widthMm}`).toBeLessThan(1e-4);
      expect(Math.abs(read.pages[i].heightPt - heightMm * PT_PER_MM), `${heightMm}`).toBeLessThan(1e-4);
    });
    const pageObjects = latin(bytes).split('/Type /Page\n').slice(1);
    expect(pageObjects.length).toBe(set.length);
    for (const object of pageObjects) {
      const boxes = [...object.split('endobj')[0].matchAll(/\/(\w+Box) \[([^\]]*)\]/g)];
      expect(boxes.map(([, name]) => name)).toContain('MediaBox');
      expect(new Set(boxes.map(([, , numbers]) => numbers)).size).toBe(1);
    }
    expect(latin(bytes)).not.toContain('/UserUnit');
  });

  it('asks not to be scaled, says its language, title, subject and date, and has a layer for each kind', async () => {
    const title = 'Wächters Größe — Ж';
    const read = await readPdf(await writePdf(pages, { ...OPTIONS, title, date: '2026-11-25T08:30:00Z' }));
    expect(read.preferences).toMatchObject({ PrintScaling: 'None', PickTrayByPDFSize: true, DisplayDocTitle: true });
    expect(read.info).toMatchObject({ Title: title, Creator: 'Foamloft', Language: 'en-GB' });
    expect(String(read.info.Subject)).toContain('revision 4');
    expect(String(read.info.CreationDate)).toMatch(/^D:20261125083000/);
    expect(read.layers).toEqual(['Words', 'Frame', 'Ruler', 'Marks', 'Groove', 'Fold', 'Bevel', 'Cut']);
  });

  it('leads to pages by bookmarks, in any letters, and to no page that is not there', async () => {
    const bookmarks = [
      { title: 'Scale square', page: 0 },
      { title: '2 Größe Ж', page: 2 },
    ];
    const { pages } = expectOk(makePages(pageInput()));
    expect((await readPdf(await writePdf(pages, { ...OPTIONS, bookmarks }))).bookmarks).toEqual(bookmarks);
    await expect(writePdf(pages, { ...OPTIONS, bookmarks: [{ title: 'x', page: 999 }] })).rejects.toThrow('999');
  });

  it('holds every line of every page within 0.001 mm, each on the layer of its kind', async () => {
    const read = await readPdf(await writePdf(pages, OPTIONS));
    let worst = 0;
    let count = 0;
    pages.forEach(({ drawing }, i) => {
      for (const layer of PAPER_LAYERS) {
        const strokes = drawing.strokes.filter(({ role }) => LINE_STYLES[role].layer === layer);
        const found = read.pages[i].paths.filter((path) => path.layer?.toLowerCase() === layer);
        expect(found.length).toBe(strokes.length);
        strokes.forEach(({ points }, k) => {
          expect(found[k].points.length).toBe(points.length);
          points.forEach((mm, p) => (worst = Math.max(worst, Math.abs(found[k].points[p] / PT_PER_MM - mm))));
          count += points.length / 2;
        });
      }
    });
    expect(count).toBeGreaterThan(1000);
    expect(worst).toBeLessThan(0.001);
  });

  it('carries its letters and needs no others', async () => {
    const text = latin(await writePdf(pages, OPTIONS));
    expect(text.match(/\/FontFile2/g)?.length).toBe(1);
    expect(text).not.toMatch(/Helvetica|Times|Courier/);
  });

  it('is the same to the byte for the same pages and date, in every time zone', async () => {
    const first = Buffer.from(await writePdf(pages, OPTIONS));
    expect(first.equals(Buffer.from(await writePdf(pages, OPTIONS)))).toBe(true);
    process.env.TZ = 'Pacific/Kiritimati';
    expect(new Date('2026-11-25T00:00:00Z').getHours()).toBe(14);
    expect(first.equals(Buffer.from(await writePdf(pages, OPTIONS)))).toBe(true);
    expect(first.equals(Buffer.from(await writePdf(pages, { ...OPTIONS, date: '2026-11-26' })))).toBe(false);
  });

  it('takes dates of any century, and refuses what is none: our mistake', async () => {
    const read = await readPdf(await writePdf([page([])], { ...OPTIONS, date: '2077-01-01' }));
    expect(String(read.info.CreationDate)).toMatch(/^D:20770101000000/);
    await expect(writePdf([page([])], { ...OPTIONS, date: 'soon' })).rejects.toThrow('soon');
    await expect(writePdf([], OPTIONS)).rejects.toThrow('no pages');
  });
});
