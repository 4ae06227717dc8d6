import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { contentHash } from '../../src/base/hash.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import { reportOf } from '../../src/pipeline/write-files.ts';
import {
  addRegion,
  setAllowForShrinkage,
  setScale,
  setSeams,
  setShrinkage,
  type Command,
} from '../../src/project/commands.ts';
import { setGrain } from '../../src/project/piece-commands.ts';
import { newProject } from '../../src/project/new-project.ts';
import type { Project } from '../../src/project/project.ts';
import { changeJson } from '../reference/change-json.ts';
import { recompute } from '../reference/recompute.mjs';
import type { Report } from '../reference/report-shape.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';

const file = (path: string): Uint8Array => readFileSync(new URL(`../../${path}`, import.meta.url));
const json = (path: string): unknown => JSON.parse(new TextDecoder().decode(file(path)));

const SCHEMA = json('shared/report.schema.json') as Schema;
const BRACER = file('samples/bracer.obj');
const SEAMS = (json('samples/bracer.seams.json') as { edges: [number, number][] }).edges;
const UNEVEN = { alongPct: 3, acrossPct: 1 };

describe('heat shrinkage through the whole chain', () => {
  const pipeline = new Pipeline();
  let [plain, larger, turned]: Outcome[] = [];
  let reports: Report[] = [];
  beforeAll(async () => {
    const hash = await contentHash(BRACER);
    pipeline.putSource(hash, { fileName: 'bracer.obj', bytes: BRACER });
    let project: Project = newProject('bracer', { hash, fileName: 'bracer.obj', format: 'obj' });
    const run = (...commands: Command[]): Promise<Outcome> => {
      project = commands.reduce((before, command) => command.apply(before), project);
      return pipeline.run(project, QUIET_WORK, { date: '2026-11-25' });
    };
    plain = await run(setScale({ by: 'unit', unit: 'mm' }), setSeams({ edges: SEAMS, paths: [] }));
    larger = await run(setShrinkage(project.parts[0].layers[0].foam, UNEVEN), setAllowForShrinkage(true));
    turned = await run(setGrain([0], { angleDeg: 30, stretch: 'any' }), addRegion('badge', [3, 1], 'stiff'));
    reports = [plain, larger, turned].map((outcome) => JSON.parse(reportOf(outcome)) as Report);
  });

  it('moves and flattens nothing again: only what is cut is new', () => {
    expect(larger.stopped).toBeNull();
    for (const step of ['shell', 'cut', 'flatten'] as const) expect(larger.madeNew).not.toContain(step);
    expect(larger.madeNew).toContain('foam');
    expect(larger.flats).toEqual(plain.flats);
    expect(larger.seams).toEqual(plain.seams);
  });

  it('is told in the report beside the finished piece', () => {
    const [before, after] = reports;
    expect([before, after].map(({ layers }) => layers[0].shrinkage)).toEqual([null, UNEVEN]);
    expect(after.seams).toEqual(before.seams);
    after.pieces.forEach((piece, i) => {
      expect(piece.outlineMm).toEqual(before.pieces[i].outlineMm);
      expect(piece.shrinkage).toEqual(UNEVEN);
      expect(piece.cutOutlineMm).toHaveLength(piece.outlineMm.length);
      expect(before.pieces[i]).not.toHaveProperty('cutOutlineMm');
    });
  });

  it('fits the schema, and is found again by whoever warms the cut outline', () => {
    for (const report of reports) {
      expect(schemaFaults(SCHEMA, report)).toEqual([]);
      expect(recompute(BRACER, report).faults).toEqual([]);
    }
    const text = JSON.stringify(reports[2]);
    for (const [path, change] of [
      ['pieces.0.cutOutlineMm.0.0', (x: unknown) => Number(x) + 0.002],
      ['pieces.0.grainDeg', (x: unknown) => Number(x) + 1],
      ['pieces.0.grainDeg', () => undefined],
      ['pieces.0.scaleRatio', (x: unknown) => Number(x) - 1e-4],
    ] as const)
      expect(recompute(BRACER, changeJson(text, path, change)).faults).not.toEqual([]);
  });

  it('follows the grain of the piece that wishes for one', () => {
    const at = turned.pieces?.findIndex(({ grainRad }, i) => grainRad !== larger.pieces?.[i].grainRad) ?? -1;
    expect(at).toBeGreaterThanOrEqual(0);
    const [before, after] = [reports[1].pieces[at], reports[2].pieces[at]];
    expect((after.grainDeg ?? 0) - (before.grainDeg ?? 0)).toBeCloseTo(30, 9);
    expect(reports[2].parts[0].regions).toEqual([{ id: 'area-1', name: 'badge', faces: [1, 3], give: 'stiff' }]);
  });
});
