import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { recompute } from './recompute.mjs';
import { runChain, type ChainOutput } from './run-chain.ts';

const SAMPLE = fileURLToPath(new URL('../../samples/bracer.obj', import.meta.url));
const SEAMS = fileURLToPath(new URL('../../samples/bracer.seams.json', import.meta.url));
const SCRIPT = fileURLToPath(new URL('./recompute.mjs', import.meta.url));

/** A report as any JSON value, for changing single places. */
type Json = Record<string, any>; // eslint-disable-line @typescript-eslint/no-explicit-any

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
    const { faults, checks, heldPlanes } = recompute(bytes, made.report);
    expect(faults).toEqual([]);
    expect(checks).toBeGreaterThan(1000);
    expect(heldPlanes).toBeGreaterThan(0);
  });

  const second = (r: Json): Json => r.pieces.find((piece: Json) => piece.squashPct.max > 1e-3) ?? r.pieces[0];
  it.each<[string, (report: Json) => void, RegExp]>([
    ['a flat corner 2 µm off', (r) => (r.pieces[0].flat.uvMm[0][0] += 0.002), /stretchPct|surfaceArea|neutral outline/],
    ['a corner in space 10 µm off', (r) => (r.pieces[0].flat.neutralMm[0][2] += 0.01), /neutralMm|surfaceArea/],
    ['a prettier stretch', (r) => (second(r).stretchPct.max -= 1e-3), /stretchPct\.max/],
    ['a prettier squash', (r) => (second(r).squashPct.p99 -= 1e-3), /squashPct\.p99/],
    ['a prettier mean', (r) => (second(r).squashPct.mean += 1e-3), /squashPct\.mean/],
    ['another energy', (r) => (r.pieces[0].energy += 1e-4), /energy/],
    ['a flip that is none', (r) => (r.pieces[0].flipped = 1), /flipped/],
    ['a triangle too few', (r) => r.pieces[0].flat.triangles.pop(), /triangles|covered/],
    ['a triangle turned over', (r) => r.pieces[0].flat.triangles[0].reverse(), /no triangle of the model/],
    ['an overlap that is none', (r) => (r.pieces[0].overlaps = 3), /overlaps/],
    ['a larger area', (r) => (r.pieces[0].areaMm2 *= 1.00001), /areaMm2/],
    ['a shorter seam', (r) => (r.seams[0].lengthMm[0] -= 0.001), /lengthMm/],
    ['a smaller difference', (r) => (r.seams[0].differenceMm += 0.001), /differenceMm/],
    ['a wrong station', (r) => (r.pieces[0].edges[0].stationMm[1] += 0.001), /station/],
    ['an edge left out', (r) => r.pieces[0].edges.pop(), /cover its border|sides/],
    ['another vertex', (r) => (r.pieces[0].flat.sourceVertices[0] += 1), /vertex|triangle of the model/],
    ['another scale', (r) => (r.scaleMmPerUnit = 10), /boxMm/],
  ])('finds %s', (_, change, fault) => {
    const report = JSON.parse(made.reportText) as Json;
    change(report);
    expect(recompute(bytes, report).faults.join('\n')).toMatch(fault);
  });

  it('runs from the command line', () => {
    const file = join(folder, 'report.json');
    writeFileSync(file, made.reportText);
    expect(execFileSync('node', [SCRIPT, SAMPLE, file], { encoding: 'utf8' })).toMatch(/, 0 disagree/);
    const report = JSON.parse(made.reportText) as Json;
    report.pieces[0].flipped = 1;
    writeFileSync(file, JSON.stringify(report));
    const refused = spawnSync('node', [SCRIPT, SAMPLE, file], { encoding: 'utf8' });
    expect(refused.status).toBe(1);
    expect(refused.stderr).toMatch(/flipped: the report says 1, recomputed 0/);
    expect(spawnSync('node', [SCRIPT], { encoding: 'utf8' }).status).toBe(2);
  });
});
