// Samples and seam shapes on sheets, against shelves: node scripts/run-ts.mjs tests/bench/nest-samples.ts [moves] [names…]
import { readFileSync } from 'node:fs';
import { contentHash } from '../../src/base/hash.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { coveredRegions } from '../../src/geom/polygon-boolean.ts';
import { ringArea, type Ring } from '../../src/geom/ring.ts';
import type { Template } from '../../src/model/template.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import { newProject } from '../../src/project/new-project.ts';
import { layOnSheets, PIECE_GAP_MM, SHEET_BORDER_MM } from '../../src/steps/nest/lay-on-sheets.ts';
import { nestOnSheets, type NestPiece } from '../../src/steps/nest/nest-on-sheets.ts';
import { turnOf, turnRing, type Stance } from '../../src/steps/nest/shape.ts';
import { runSample, SAMPLE_NAMES } from '../support/run-sample.ts';
import { textTable } from './text-table.ts';
import { msText } from './times.ts';

const SHAPES = ['bracer_cone', 'breastplate', 'greave', 'hammer', 'helmet', 'helmet_low', 'horn', 'pauldron'];
const SHEETS = [
  { lengthMm: 2000, breadthMm: 1000 },
  { lengthMm: 900, breadthMm: 600 },
];
const [movesWord = '4000', ...only] = process.argv.slice(2);
const moves = Number(movesWord);

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

const turns = (count: number, from: number): readonly Stance[] =>
  Array.from({ length: count }, (_, i) => ({ turnRad: from + (2 * Math.PI * i) / count, isFlipped: false }));

function outlineOf({ drawing }: Template): Ring {
  const rings = drawing.strokes
    .filter(({ role, closed }) => closed && (role === 'cut' || role === 'bevel'))
    .map(({ points }) => (ringArea(points) > 0 ? points : Float64Array.from(points.length ? reversed(points) : [])));
  return coveredRegions(rings)[0].outer;
}

const reversed = (ring: Ring): number[] =>
  Array.from({ length: ring.length }, (_, k) => ring[ring.length - 2 - 2 * (k >> 1) + (k & 1)]);

/** Pairs of pieces that overlap, and pieces that reach into the border: by the union of the true outlines. */
function faultsOf(
  pieces: readonly NestPiece[],
  sheet: (typeof SHEETS)[number],
  nested: ReturnType<typeof nestOnSheets>,
): number {
  let faults = 0;
  for (let on = 0; on < nested.sheets; on += 1) {
    const laid = nested.places
      .filter(({ sheet: s }) => s === on)
      .map(({ piece, stance, x, y }) =>
        turnRing(pieces[piece].outline, turnOf(stance)).map((value, k) => value + (k % 2 === 0 ? x : y)),
      );
    for (const [i, ring] of laid.entries()) {
      const isOut = ring.some((value, k) => {
        const most = k % 2 === 0 ? sheet.lengthMm : sheet.breadthMm;
        return value < SHEET_BORDER_MM - 1e-3 || value > most - SHEET_BORDER_MM + 1e-3;
      });
      if (isOut) faults += 1;
      for (const other of laid.slice(i + 1)) {
        const apart = ringArea(ring) + ringArea(other);
        const together = coveredRegions([ring, other]).reduce(
          (sum, { outer, holes }) => sum + ringArea(outer) + holes.reduce((h, hole) => h + ringArea(hole), 0),
          0,
        );
        if (apart - together > 1e-3) faults += 1;
      }
    }
  }
  return faults;
}

const rows: string[][] = [];
for (const name of [...SAMPLE_NAMES, ...SHAPES].filter((each) => only.length === 0 || only.includes(each))) {
  const outcome = (SAMPLE_NAMES as readonly string[]).includes(name) ? await runSample(name) : await runShape(name);
  const cut = [...(outcome.pieces ?? []), ...outcome.strips];
  const templates = outcome.templates ?? [];
  const { foams } = outcome.project;
  for (const size of SHEETS) {
    const pieces = templates.map((template, i): NestPiece => ({
      outline: outlineOf(template),
      quantity: cut[i].quantity,
      stances: template.grainRad === undefined ? turns(24, 0) : turns(2, -template.grainRad),
    }));
    const foam = { ...foams[0], sheetWidthMm: size.breadthMm, sheetHeightMm: size.lengthMm };
    const items = cut.map(({ id, quantity }, i) => ({ piece: id, template: templates[i], quantity, foam: foam.id }));
    const shelves = layOnSheets(items, [foam]);
    const area = pieces.reduce((sum, { outline, quantity }) => sum + quantity * ringArea(outline), 0);
    const start = performance.now();
    const nested = nestOnSheets(pieces, { ...size, borderMm: SHEET_BORDER_MM, gapMm: PIECE_GAP_MM }, moves, 1);
    const ms = performance.now() - start;
    const shelfEnd =
      shelves.sheets.length === 0 ? 0 : shelfLastMm(shelves, templates, foam.sheetWidthMm, foam.sheetHeightMm);
    const used = (sheets: number, lastMm: number): string =>
      ((100 * area) / (((sheets - 1) * size.lengthMm + lastMm) * size.breadthMm)).toFixed(1);
    rows.push([
      `${name} ${size.breadthMm} × ${size.lengthMm}`,
      String(pieces.reduce((sum, { quantity }) => sum + quantity, 0)),
      `${shelves.sheets.length} / ${nested.sheets}`,
      `${shelfEnd.toFixed(0)} / ${nested.lastMm.toFixed(0)}`,
      `${used(shelves.sheets.length, shelfEnd)} / ${used(nested.sheets, nested.lastMm)}`,
      `${shelves.tooLarge.length} / ${nested.tooLarge.length}`,
      String(faultsOf(pieces, size, nested)),
      msText(ms),
    ]);
    process.stderr.write(`${rows[rows.length - 1].join('  ')}\n`);
  }
}
process.stdout.write(
  textTable(
    ['shelves / nested', 'pieces', 'sheets', 'last sheet mm', 'density %', 'too large', 'faults', `ms, ${moves} moves`],
    rows,
  ),
);

/** How far the last sheet of a shelf layout is used along its longer side, mm. */
function shelfLastMm(
  { sheets }: ReturnType<typeof layOnSheets>,
  all: readonly Template[],
  width: number,
  height: number,
): number {
  const { placements } = sheets[sheets.length - 1];
  let end = 0;
  for (const { piece, x, y, turnRad } of placements) {
    const template = all.find((each) => each.piece === piece);
    if (template === undefined) continue;
    const ring = turnRing(outlineOf(template), turnOf({ turnRad, isFlipped: false }));
    for (let k = 0; k < ring.length; k += 2) end = Math.max(end, height >= width ? ring[k + 1] + y : ring[k] + x);
  }
  return end + SHEET_BORDER_MM;
}
