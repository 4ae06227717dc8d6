import { beforeAll, describe, expect, it } from 'vitest';
import { movePoints } from '../../src/geom/turn-and-move.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { Page, PageSet } from '../../src/model/page.ts';
import type { Template } from '../../src/model/template.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { pdfOf, svgOf } from '../../src/pipeline/write-files.ts';
import type { PaperChoice } from '../../src/project/project.ts';
import { readPdf, type ReadPdf } from '../support/read-pdf.ts';
import { expectOk } from '../support/expect-ok.ts';
import { IS_LONG } from '../support/long.ts';
import { madeSample, makeSample, runSample, SAMPLE_NAMES, testFont } from '../support/run-sample.ts';
import { readSvg } from '../support/read-svg.ts';

/** 1 in = 25.4 mm = 72 pt. */
const PT_PER_MM = 72 / 25.4;

const PAPERS: Partial<PaperChoice>[] = [
  { name: 'A4', orientation: 'portrait' },
  { name: 'A4', orientation: 'landscape' },
  { name: 'A3', orientation: 'portrait' },
  { name: 'A0', orientation: 'landscape' },
  { name: 'Letter', orientation: 'portrait' },
  { name: 'Tabloid', orientation: 'landscape' },
  { name: 'roll', widthMm: 610, orientation: 'portrait' },
];

/** Every paper for one sample, one other for each of the rest, which are larger. */
const CASES = SAMPLE_NAMES.map(
  (name, i) => [name, IS_LONG || name === 'shoulder-plate' ? PAPERS : [PAPERS[1 + i]]] as const,
);

/** Every cut line of a template laid in its block, sampled at corners and middles, packed x, y. */
function cutPoints(template: Template, move: { x: number; y: number; turnRad: number }): number[][] {
  return template.drawing.strokes
    .filter(({ role }) => role === 'cut')
    .flatMap(({ points, closed }) => {
      const moved = movePoints(points, move);
      const count = moved.length / 2;
      return Array.from({ length: closed ? count : count - 1 }, (_, i) => {
        const j = (i + 1) % count;
        return [
          moved[2 * i],
          moved[2 * i + 1],
          (moved[2 * i] + moved[2 * j]) / 2,
          (moved[2 * i + 1] + moved[2 * j + 1]) / 2,
        ];
      });
    });
}

/** Greatest distance from any cut point of any template to the nearest cut line printed on any page, tiles laid where they belong, mm. */
function rejoinError(templates: readonly Template[], { pages, blocks }: PageSet): number {
  let worst = 0;
  for (const block of blocks) {
    const segments: number[][] = [];
    block.pageOfTile.forEach((pageIndex, tile) => {
      if (pageIndex < 0) return;
      const dx = (tile % block.columns) * block.stepXMm - block.originXMm;
      const dy = Math.floor(tile / block.columns) * block.stepYMm - block.originYMm;
      for (const { role, points, closed } of pages[pageIndex].drawing.strokes) {
        if (role !== 'cut') continue;
        const count = points.length / 2;
        for (let i = 0; i < (closed ? count : count - 1); i += 1) {
          const j = (i + 1) % count;
          segments.push([points[2 * i] + dx, points[2 * i + 1] + dy, points[2 * j] + dx, points[2 * j + 1] + dy]);
        }
      }
    });
    for (const placement of block.placements) {
      const template = templates.find(({ piece }) => piece === placement.piece);
      if (template === undefined) throw new Error('no template');
      for (const [ax, ay, bx, by] of cutPoints(template, placement)) {
        for (const [x, y] of [
          [ax, ay],
          [bx, by],
        ])
          worst = Math.max(worst, nearest(x, y, segments));
      }
    }
  }
  return worst;
}

function nearest(x: number, y: number, segments: readonly number[][]): number {
  let best = Infinity;
  for (const [ax, ay, bx, by] of segments) {
    const [dx, dy] = [bx - ax, by - ay];
    const length2 = dx * dx + dy * dy;
    const t = length2 > 0 ? Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / length2)) : 0;
    best = Math.min(best, Math.hypot(ax + t * dx - x, ay + t * dy - y));
  }
  return best;
}

const isOnPaper = ({ widthMm, heightMm, drawing }: Page): boolean =>
  drawing.strokes.every(({ points }) =>
    points.every((v, i) => v > -1e-9 && v < (i % 2 === 0 ? widthMm : heightMm) + 1e-9),
  );

describe('pages of every sample', () => {
  it.each(CASES)('%s: tiles rejoin within 0.01 mm, nothing off the paper, no page empty', async (name, papers) => {
    const { project, pipeline } = await madeSample(name);
    for (const paper of papers) {
      const outcome = await pipeline.run({ ...project, paper: { ...project.paper, ...paper } }, QUIET_WORK);
      const said = `${paper.name} ${paper.orientation}`;
      expect(outcome.stopped, said).toBeNull();
      const set = outcome.paper as PageSet;
      const templates = outcome.templates as Template[];
      const served = [...set.blocks.flatMap((block) => block.placements), ...set.turned].map(({ piece }) => piece);
      expect([...served].sort(), said).toEqual(templates.map(({ piece }) => piece).sort());
      expect(rejoinError(templates, set), said).toBeLessThan(0.01);
      expect(set.pages.every(isOnPaper), said).toBe(true);
      for (const page of set.pages) {
        if (page.kind === 'tile')
          expect(
            page.drawing.strokes.some(({ role }) => role !== 'frame' && role !== 'ruler'),
            said,
          ).toBe(true);
      }
    }
  });
});

describe('templates.pdf read by an independent reader', () => {
  let outcome: Outcome;
  let pdf: ReadPdf;
  let bytes: Uint8Array;

  beforeAll(async () => {
    outcome = await runSample('helm');
    bytes = expectOk(await pdfOf(outcome, { font: testFont(), date: '2026-01-01' }));
    pdf = await readPdf(bytes);
  });

  it('has pages of exactly the paper’s size', () => {
    const pages = outcome.paper?.pages ?? [];
    expect(pdf.pages.length).toBe(pages.length);
    pdf.pages.forEach((page, i) => {
      expect(Math.abs(page.widthPt - pages[i].widthMm * PT_PER_MM)).toBeLessThan(0.01);
      expect(Math.abs(page.heightPt - pages[i].heightMm * PT_PER_MM)).toBeLessThan(0.01);
    });
    // A4 in points: ISO 216 and ISO 32000-1.
    expect(pdf.pages[0].widthPt).toBeCloseTo(595.2756, 2);
    expect(pdf.pages[0].heightPt).toBeCloseTo(841.8898, 2);
  });

  it('draws 100 mm as 283.4646 pt', () => {
    const lengths = pdf.pages[0].paths.flatMap(({ points, closed }) => {
      const count = points.length / 2;
      return Array.from({ length: closed ? count : count - 1 }, (_, i) => {
        const j = (i + 1) % count;
        return Math.hypot(points[2 * j] - points[2 * i], points[2 * j + 1] - points[2 * i + 1]);
      });
    });
    const sides = lengths.filter((length) => Math.abs(length - 283.4646) < 1);
    expect(sides.length).toBeGreaterThanOrEqual(4);
    for (const side of sides) expect(Math.abs(side - 283.46457)).toBeLessThan(0.0005);
  });

  it('asks the printer not to scale, names its layers and puts each line on its own', () => {
    expect(pdf.preferences.PrintScaling).toBe('None');
    expect([...pdf.layers].sort()).toEqual(['Bevel', 'Cut', 'Fold', 'Frame', 'Groove', 'Marks', 'Ruler', 'Words']);
    const layersUsed = new Set(pdf.pages.flatMap(({ paths }) => paths.map(({ layer }) => layer)));
    expect([...layersUsed].filter((layer) => layer === null)).toEqual([]);
  });

  it('leads to the first page of every piece', () => {
    const { pieces, paper } = outcome;
    expect(pdf.bookmarks.map(({ title }) => title)).toEqual([
      'Scale square',
      'Map',
      ...(pieces ?? []).map(({ number, name }) => `${number} ${name}`),
    ]);
    for (const [i, { page }] of pdf.bookmarks.slice(2).entries()) {
      const { id } = (pieces ?? [])[i];
      const twin = outcome.turned.find(({ turned }) => turned === id)?.piece;
      expect(paper?.pages.findIndex((drawn) => drawn.pieces.includes(twin ?? id))).toBe(page);
    }
  });

  it('holds every cut line where the page has it, within 0.01 mm', () => {
    const pages = outcome.paper?.pages ?? [];
    let compared = 0;
    pdf.pages.forEach((read, i) => {
      const cuts = pages[i].drawing.strokes.filter(({ role }) => role === 'cut');
      const found = read.paths.filter(
        ({ layer, widthPt }) => layer === 'Cut' && Math.abs(widthPt - 0.35 * PT_PER_MM) < 1e-3,
      );
      expect(found.length).toBe(cuts.length);
      cuts.forEach(({ points }, k) => {
        expect(found[k].points.length).toBe(points.length);
        points.forEach((mm, p) => expect(Math.abs(found[k].points[p] / PT_PER_MM - mm)).toBeLessThan(0.01));
        compared += points.length / 2;
      });
    });
    expect(compared).toBeGreaterThan(250);
  });

  it('is the same to the byte for the same project and date', async () => {
    const [one, other] = await Promise.all(
      [await runSample('bracer'), (await makeSample('bracer')).outcome].map((made) =>
        pdfOf(made, { font: testFont(), date: '2026-01-01' }),
      ),
    );
    expect(Buffer.from(expectOk(one)).equals(Buffer.from(expectOk(other)))).toBe(true);
  });

  it('has its words in it, in letters that are embedded', () => {
    const words = pdf.pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
    expect(words).toContain('Helm');
    expect(words).toContain('100 mm');
    expect(Buffer.from(bytes).toString('latin1')).toContain('/FontFile2');
  });

  it('agrees with pieces.svg on every outline within 0.01 mm', () => {
    const { unitMm, paths } = readSvg(svgOf(outcome));
    expect(unitMm).toBeCloseTo(1, 9);
    const sheets = outcome.sheets?.sheets ?? [];
    for (const template of outcome.templates ?? []) {
      const placement = sheets.flatMap((sheet) => sheet.placements).find(({ piece }) => piece === template.piece);
      if (placement === undefined) throw new Error('not on a sheet');
      const group = paths.filter(
        ({ groups, name }) => name === 'cut' && groups.some((id) => id === `piece-${template.piece}`),
      );
      const cuts = template.drawing.strokes.filter(({ role }) => role === 'cut');
      expect(group.length).toBe(cuts.length);
      const sheetIndex = sheets.findIndex((sheet) => sheet.placements.includes(placement));
      const left = sheets.slice(0, sheetIndex).reduce((sum, sheet) => sum + sheet.widthMm + 50, 0);
      cuts.forEach(({ points }, k) => {
        const moved = movePoints(points, { ...placement, x: placement.x + left });
        moved.forEach((mm, p) => expect(Math.abs((p % 2 === 0 ? 1 : -1) * group[k].points[p] - mm)).toBeLessThan(0.01));
      });
    }
  });
});
