import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import { mirroredSculpt } from '../support/mirrored-sculpt.ts';
import { changeJson } from './change-json.ts';
import { objOf, tube } from './handbook/polygon-solids.ts';
import { recompute } from './recompute.mjs';
import { runChain, type ChainOutput } from './run-chain.ts';

const SAMPLE = fileURLToPath(new URL('../../samples/bracer.obj', import.meta.url));
const SEAMS = fileURLToPath(new URL('../../samples/bracer.seams.json', import.meta.url));
const SCRIPT = fileURLToPath(new URL('./recompute.mjs', import.meta.url));

const add =
  (step: number) =>
  (old: unknown): number =>
    Number(old) + step;
const gone = (): undefined => undefined;

describe('recomputing a report', () => {
  const bytes = readFileSync(SAMPLE);
  const folder = mkdtempSync(join(tmpdir(), 'recompute-'));
  let made: ChainOutput;
  beforeAll(async () => {
    made = await runChain({
      fileName: 'bracer.obj',
      bytes,
      seams: (JSON.parse(readFileSync(SEAMS, 'utf8')) as { edges: [number, number][] }).edges,
      scale: { by: 'unit', unit: 'mm' },
      thicknessMm: 6,
      modelIs: 'face',
      neutralFraction: 0.5,
    });
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  it('agrees with the product on a sample', () => {
    const { faults, checks } = recompute(bytes, made.report);
    expect(faults).toEqual([]);
    expect(checks).toBeGreaterThan(500);
  });

  it.each<[string, string, (old: unknown) => unknown, RegExp]>([
    ['a flat corner 2 µm off', 'pieces.0.flat.uvMm.0.0', add(0.002), /stretchPct|neutral outline/],
    ['a corner in space 10 µm off', 'pieces.0.flat.neutralMm.0.2', add(0.01), /neutralMm|surfaceArea/],
    ['a prettier stretch', 'pieces.0.stretchPct.max', add(-1e-3), /stretchPct\.max/],
    ['a prettier squash', 'pieces.0.squashPct.p99', add(-1e-3), /squashPct\.p99/],
    ['a prettier mean', 'pieces.0.squashPct.mean', add(-1e-3), /squashPct\.mean/],
    ['another energy', 'pieces.0.energy', add(1e-4), /energy/],
    ['a flip that is none', 'pieces.0.flipped', add(1), /flipped/],
    ['a triangle too few', 'pieces.0.flat.triangles.-1', gone, /triangles|covered/],
    ['a triangle turned over', 'pieces.0.flat.triangles.0', (old) => (old as number[]).toReversed(), /no triangle of/],
    ['an overlap that is none', 'pieces.0.overlaps', add(3), /overlaps/],
    ['a larger area', 'pieces.0.areaMm2', add(0.1), /areaMm2/],
    ['a shorter seam', 'seams.0.lengthMm.0', add(-0.001), /lengthMm/],
    ['a larger difference', 'seams.0.differenceMm', add(0.001), /differenceMm/],
    ['a wrong station', 'pieces.0.edges.0.stationMm.1', add(0.001), /station/],
    ['an edge left out', 'pieces.0.edges.-1', gone, /cover its border|sides/],
    ['another vertex', 'pieces.0.flat.sourceVertices.0', add(1), /vertex|triangle of the model/],
    ['another scale', 'scaleMmPerUnit', add(9), /boxMm/],
  ])('finds %s', (_, path, change, fault) => {
    expect(recompute(bytes, changeJson(made.reportText, path, change)).faults.join('\n')).toMatch(fault);
  });

  it('holds the neutral surface against the planes it was moved with', async () => {
    const solid = tube(8, 60, 40, () => 90);
    const { report, reportText } = await runChain({
      fileName: 'solid.obj',
      bytes: objOf(solid),
      seams: solid.seams,
      scale: { by: 'unit', unit: 'mm' },
      thicknessMm: 10,
      modelIs: 'face',
      neutralFraction: 0.4,
    });
    const { faults, heldPlanes } = recompute(objOf(solid), report);
    expect(faults).toEqual([]);
    // All 16 corners: two flats meet at each.
    expect(heldPlanes).toBe(16);
    const thicker = changeJson(reportText, 'layers.0.thicknessMm', add(0.001));
    expect(recompute(objOf(solid), thicker).faults.join('\n')).toMatch(/neutralMm/);
  });

  describe('of pieces that are cut with the template of their twin turned over', () => {
    const solid = mirroredSculpt(seededRandom(5));
    let report: ChainOutput;
    beforeAll(async () => {
      report = await runChain({
        fileName: 'solid.obj',
        bytes: objOf(solid),
        seams: solid.seams,
        scale: { by: 'unit', unit: 'mm' },
        thicknessMm: 6,
        modelIs: 'face',
        neutralFraction: 0.5,
      });
    });

    it('agrees', () => {
      const { pieces } = JSON.parse(report.reportText) as { pieces: { printedWith?: string; marks: unknown[] }[] };
      expect(pieces.filter(({ printedWith }) => printedWith !== undefined).length).toBeGreaterThan(0);
      expect(pieces[0].marks.length).toBeGreaterThan(0);
      expect(recompute(objOf(solid), report.report).faults).toEqual([]);
    });

    it.each<[string, string, (old: unknown) => unknown, RegExp]>([
      ['a line to cut elsewhere', 'pieces.0.outlineMm.0.0', add(0.3), /printed with .*outlineMm/],
      ['a mark elsewhere', 'pieces.0.marks.0.at.0', add(0.2), /printed with .*mark .* has none that mirrors it/],
      ['another number at a mark', 'pieces.0.marks.0.index', add(7), /printed with .*mark .* has none that mirrors it/],
      ['another bevel', 'pieces.0.edges.0.bevelDeg.0', add(0.7), /printed with .*bevels of/],
      ['another lap', 'pieces.0.edges.0.allowanceMm', add(1), /printed with .*allowance/],
      ['another turn', 'pieces.0.twinMove.turnRad', add(0.002), /printed with .*outlineMm/],
      ['no twin', 'pieces.0.twinOf', () => 'nobody', /printed with .*no twins/],
    ])('finds %s', (_, path, change, fault) => {
      expect(recompute(objOf(solid), changeJson(report.reportText, path, change)).faults.join('\n')).toMatch(fault);
    });
  });

  it('runs from the command line', () => {
    const file = join(folder, 'report.json');
    writeFileSync(file, made.reportText);
    expect(execFileSync('node', [SCRIPT, SAMPLE, file], { encoding: 'utf8' })).toMatch(/, 0 disagree/);
    writeFileSync(file, JSON.stringify(changeJson(made.reportText, 'pieces.0.flipped', add(1))));
    const refused = spawnSync('node', [SCRIPT, SAMPLE, file], { encoding: 'utf8' });
    expect(refused.status).toBe(1);
    expect(refused.stderr).toMatch(/flipped: the report says 1, recomputed 0/);
    expect(spawnSync('node', [SCRIPT], { encoding: 'utf8' }).status).toBe(2);
  });
});
