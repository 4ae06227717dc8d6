// Samples and seam shapes on sheets of foam, against shelves: npm run bench:sheets -- [moves] [names…]
import { readFileSync } from 'node:fs';
import { contentHash } from '../../src/base/hash.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { layRing } from '../../src/geom/lay-over.ts';
import { coveredRegions } from '../../src/geom/polygon-boolean.ts';
import type { SheetLayout } from '../../src/model/sheet.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import { SheetCrew } from '../../src/pipeline/sheet-crew.ts';
import { sheetTaskOf } from '../../src/pipeline/sheet-task.ts';
import { newProject } from '../../src/project/new-project.ts';
import { areaOfRegion, foamArea } from '../../src/steps/nest/foam-area.ts';
import { foamTasks, joinedLayout, layOnSheets, type SheetTask } from '../../src/steps/nest/lay-on-sheets.ts';
import { shelfLayout } from '../../src/steps/nest/shelf-layout.ts';
import { runSample, SAMPLE_NAMES } from '../support/run-sample.ts';
import { textTable } from './text-table.ts';
import { msText } from './times.ts';

const SHAPES = ['bracer_cone', 'breastplate', 'greave', 'hammer', 'helmet', 'helmet_low', 'horn', 'pauldron'];
const SIZES = [
  { sheetWidthMm: 1000, sheetHeightMm: 2000 },
  { sheetWidthMm: 600, sheetHeightMm: 900 },
];
const [movesWord = '2000', ...only] = process.argv.slice(2);
const moves = Number(movesWord);
/** The first layout is made so often: a maker sees it after every change. */
const ROUNDS = 5;

async function runShape(name: string): Promise<Outcome> {
  const at = (ending: string): URL => new URL(`../reference/seam-shapes/${name}${ending}`, import.meta.url);
  const bytes = new Uint8Array(readFileSync(at('.obj')));
  const { edges } = JSON.parse(readFileSync(at('.seams.json'), 'utf8')) as { edges: [number, number][] };
  const hash = await contentHash(bytes);
  const first = newProject(name, { hash, fileName: `${name}.obj`, format: 'obj' });
  const pipeline = new Pipeline();
  pipeline.putSource(hash, { fileName: `${name}.obj`, bytes });
  const part = { ...first.parts[0], scale: { by: 'unit', unit: 'cm' } as const, seams: { edges, paths: [] } };
  return await pipeline.run({ ...first, parts: [part] }, QUIET_WORK, { date: '2026-01-01' });
}

/** What each has in common with the others, and what it has over the edge of its sheet, by the unions of what is cut: pairs and pieces. */
function faultsOf({ items }: SheetTask, { sheets }: SheetLayout): number {
  let faults = 0;
  for (const sheet of sheets) {
    const laid = sheet.placements.map((place) => {
      const { outer, holes } = foamArea(items.find(({ piece }) => piece === place.piece)?.template ?? noTemplate());
      return [outer, ...holes].map((ring) => layRing(ring, place));
    });
    const areaOf = (rings: readonly Float64Array[]): number =>
      coveredRegions(rings).reduce((sum, region) => sum + areaOfRegion(region), 0);
    const areas = laid.map(areaOf);
    for (const [i, rings] of laid.entries()) {
      const isOut = rings[0].some((mm, k) => mm < 0 || mm > (k % 2 === 0 ? sheet.widthMm : sheet.heightMm));
      if (isOut) faults += 1;
      for (let j = i + 1; j < laid.length; j += 1)
        if (areas[i] + areas[j] - areaOf([...rings, ...laid[j]]) > 1e-3) faults += 1;
    }
  }
  return faults;
}

function noTemplate(): never {
  throw new Error('a piece on a sheet has no template');
}

/** Sheets, how far the last is filled, and what is cut over all sheets, the last up to where it is filled. */
function figuresOf({ sheets }: SheetLayout): readonly [string, string, string] {
  const last = sheets[sheets.length - 1];
  const size = last.widthMm * last.heightMm;
  const cut = sheets.reduce((sum, { usedShare }) => sum + usedShare * size, 0);
  const begun = size * (sheets.length - 1) + last.widthMm * last.filledMm;
  return [String(sheets.length), last.filledMm.toFixed(0), ((100 * cut) / begun).toFixed(1)];
}

const rows: string[][] = [];
for (const name of [...SAMPLE_NAMES, ...SHAPES].filter((each) => only.length === 0 || only.includes(each))) {
  const outcome = (SAMPLE_NAMES as readonly string[]).includes(name) ? await runSample(name) : await runShape(name);
  const { project, pieces, strips, templates } = outcome;
  for (const size of SIZES) {
    const foams = project.foams.map((foam) => ({ ...foam, ...size }));
    const task = sheetTaskOf({ foams }, [...(pieces ?? []), ...strips], templates ?? []);
    const onShelves = foamTasks(task, false).map((one) => {
      const open = one.copies.map((_, i) => i).filter((i) => !one.isTooLarge[one.copies[i].part]);
      return { task: one, places: shelfLayout(one, open) ?? one.copies.map(() => null), movedOn: [] };
    });
    const shelves = joinedLayout(task, onShelves);
    const times: number[] = [];
    let first = layOnSheets(task);
    for (let round = 0; round < ROUNDS; round += 1) {
      const begin = performance.now();
      first = layOnSheets(task);
      times.push(performance.now() - begin);
    }
    times.sort((a, b) => a - b);
    const begin = performance.now();
    const crew = new SheetCrew(task, 1);
    crew.step(moves);
    const ms = performance.now() - begin;
    const all = [shelves, first, crew.layout].map(figuresOf);
    const copies = crew.layout.sheets.reduce((sum, { placements }) => sum + placements.length, 0);
    rows.push([
      `${name} ${size.sheetWidthMm} × ${size.sheetHeightMm}`,
      String(copies),
      ...[0, 1, 2].map((k) => all.map((figures) => figures[k]).join(' / ')),
      String(crew.layout.tooLarge.length),
      String(faultsOf(task, first) + faultsOf(task, crew.layout)),
      msText(times[Math.floor(ROUNDS / 2)]),
      msText(ms),
      (await contentHash(new TextEncoder().encode(JSON.stringify(rounded(crew.layout))))).slice(0, 8),
    ]);
    process.stderr.write(`${rows[rows.length - 1].join('  ')}\n`);
  }
}
process.stdout.write(
  textTable(
    [
      'shelves / first / better',
      'pieces',
      'sheets',
      'last sheet mm',
      'density %',
      'too large',
      'faults',
      'first ms',
      `${moves} moves ms`,
      'checksum',
    ],
    rows,
  ),
);

function rounded({ sheets }: SheetLayout): unknown {
  return sheets.map(({ placements }) =>
    placements.map(({ piece, copy, x, y, turnRad, isFlipped }) => [
      piece,
      copy,
      ...[x, y, turnRad].map((value) => Math.round(1000 * value)),
      isFlipped ?? false,
    ]),
  );
}
