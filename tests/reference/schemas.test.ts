import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { readSeamFile } from '../../src/project/seam-file.ts';
import { readProjectFile } from '../../src/project/project-file.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { changeJson } from './change-json.ts';
import { objOf, tube } from './handbook/polygon-solids.ts';
import { runChain, type ChainOutput } from './run-chain.ts';

const schemaOf = (name: string): Schema =>
  JSON.parse(readFileSync(new URL(`../../shared/${name}.schema.json`, import.meta.url), 'utf8')) as Schema;

const REPORT = schemaOf('report');
const SEAM_FILE = schemaOf('seam-file');
const PROJECT = schemaOf('project');

const FINDING = { code: 'a/b', severity: 'note', text: 'x', value: null, limit: null, unit: null };

const gone = (): undefined => undefined;
const set = (value: unknown) => (): unknown => value;
const extend =
  (fields: object) =>
  (old: unknown): object => ({ ...(old as object), ...fields });
const push =
  (value: unknown) =>
  (old: unknown): unknown[] => [...(old as unknown[]), value];

describe('schemas of the files', () => {
  let made: ChainOutput;
  beforeAll(async () => {
    // A tapered box: two pieces, two seams and open edges, so every kind of element occurs.
    const solid = tube(8, 60, 40, () => 90);
    made = await runChain({
      fileName: 'solid.obj',
      bytes: objOf(solid),
      seams: [...solid.seams, [4, 12]],
      scale: { by: 'unit', unit: 'mm' },
      thicknessMm: 6,
      modelIs: 'face',
      neutralFraction: 0.5,
    });
  });

  it('describe the report that is written', () => {
    expect(schemaFaults(REPORT, JSON.parse(made.reportText))).toEqual([]);
    expect(made.report.pieces).toHaveLength(2);
  });

  it.each<[string, string, (old: unknown) => unknown]>([
    ['a piece without its stretch', 'pieces.0.stretchPct', gone],
    ['a flat point of three numbers', 'pieces.0.flat.uvMm.0', push(0)],
    ['a length in words', 'seams.0.lengthMm.0', set('90 mm')],
    ['a seam of an unknown kind', 'seams.0.kind', set('glued')],
    ['half a triangle', 'pieces.0.triangles', set(1.5)],
    ['foam without thickness', 'pieces.0.thicknessMm', set(0)],
    ['a hash that is none', 'modelHash', set('abc')],
    ['a finding without a place', 'findings', push({ ...FINDING, where: undefined })],
    ['another version', 'schemaVersion', set(2)],
    ['a number that became null', 'pieces.0.flat.neutralMm.3.1', set(null)],
  ])('refuse a report with %s', (_, path, change) => {
    const report: unknown = JSON.parse(JSON.stringify(changeJson(made.reportText, path, change)));
    expect(schemaFaults(REPORT, report)).toHaveLength(1);
  });

  it('describe the project file that is written', async () => {
    expect(schemaFaults(PROJECT, JSON.parse(made.projectText))).toEqual([]);
    expect((await readProjectFile(made.projectText, 'p')).ok).toBe(true);
  });

  it.each<[string, string, (old: unknown) => unknown]>([
    [
      'wishes for laying flat',
      'project.parts.0.flatten',
      set({ seamPrice: 0, squashPrice: 4, evenOut: true, keepApart: true }),
    ],
    ['limits of bending', 'project.foams.0', extend({ bendLimits: { noticePct: 5, tooMuchPct: 12 } })],
    ['rules of the shop', 'project.foams.0', extend({ rules: { bevelLimitDeg: 40, hingeMm: 2 } })],
    [
      'an area and wishes for an edge',
      'project.parts.0',
      extend({
        regions: [{ id: 'area-1', name: 'badge', faces: [0, 3], give: 'stiff' }],
        edgeWishes: [
          { edge: [0, 1], holdLength: true },
          { edge: [1, 2], straight: true },
        ],
      }),
    ],
    [
      'areas of which something is said of seams',
      'project.parts.0.regions',
      set([
        { id: 'area-1', name: 'face', faces: [0], give: 'normal', seams: 'clear' },
        { id: 'area-2', name: 'belt', faces: [1], give: 'stiff', seams: 'prefer' },
      ]),
    ],
    ['a sculpt made simpler', 'project.parts.0', extend({ simplify: { triangles: 900, keep: [0, 2] } })],
    ['one that moved so far', 'project.parts.0', extend({ simplify: { deviationMm: 0.4, keep: [] } })],
    ['a held seam', 'project.parts.0', extend({ heldSeams: [[0, 1]] })],
    ['a held piece', 'project.parts.0.pieceSettings', push({ face: 0, held: true })],
    ['no mirror', 'project.parts.0', extend({ mirror: { by: 'off' } })],
    ['a mirror', 'project.parts.0', extend({ mirror: { by: 'plane', pointInFile: [0, 1, 0], normal: [2, 0, 0] } })],
    ['a grain', 'project.parts.0.pieceSettings', push({ face: 0, grain: { angleDeg: -30, stretch: 'across' } })],
    [
      'a foam that shrinks one way and grows the other',
      'project.foams.0',
      extend({ shrinkage: { alongPct: 2.5, acrossPct: -1 } }),
    ],
    [
      'a foam whose strip was bent',
      'project.foams.0',
      extend({ neutralTest: { lengthMm: 240, thicknessMm: 6, readings: [{ mandrelMm: 75, arcMm: 222 }] } }),
    ],
  ])('and the reader agree to take a project with %s', async (_, path, change) => {
    const value = changeJson(made.projectText, path, change);
    expect(schemaFaults(PROJECT, value)).toEqual([]);
    const read = await readProjectFile(JSON.stringify(value), 'p');
    expect(read.ok && read.value.project).toEqual((value as { project: unknown }).project);
  });

  it('take a project of before there were wishes for laying flat', async () => {
    const value = JSON.parse(made.projectText) as { project: { parts: Record<string, unknown>[] } };
    for (const name of ['flatten', 'regions', 'edgeWishes']) delete value.project.parts[0][name];
    delete (value.project.parts[0].layers as Record<string, unknown>[])[0].allowForShrinkage;
    expect(schemaFaults(PROJECT, value)).toEqual([]);
    const read = await readProjectFile(JSON.stringify(value), 'p');
    const then = changeJson(made.projectText, 'project.parts.0.flatten', extend({ squashPrice: 1 }));
    expect(read.ok && read.value.project).toEqual((then as { project: unknown }).project);
  });

  it.each<[string, string, (old: unknown) => unknown]>([
    ['no sources', 'sources', gone],
    ['a scale of nothing', 'project.parts.0.scale', set({ by: 'size', axis: 'x', mm: 0 })],
    ['nine layers', 'project.parts.0.layers', (old) => Array.from({ length: 9 }, () => old).flat()],
    ['a repair it does not know', 'project.parts.0.repairs', push({ kind: 'melt' })],
    ['a foam with k 2', 'project.foams.0.neutralFraction', set(2)],
    ['a price below nothing', 'project.parts.0.flatten.seamPrice', set(-1)],
    ['squash cheaper than stretch', 'project.parts.0.flatten.squashPrice', set(0.5)],
    ['an area of no kind', 'project.parts.0.regions', push({ id: 'a', name: 'a', faces: [1], give: 'runny' })],
    ['a sculpt of three triangles', 'project.parts.0', extend({ simplify: { triangles: 3, keep: [] } })],
    ['a seam held by half', 'project.parts.0', extend({ heldSeams: [[0]] })],
    ['a mirror of no kind', 'project.parts.0', extend({ mirror: { by: 'magic' } })],
    [
      'an area that loves seams',
      'project.parts.0.regions',
      push({ id: 'a', name: 'a', faces: [1], give: 'soft', seams: 'love' }),
    ],
    ['an area without faces', 'project.parts.0.regions', push({ id: 'a', name: 'a', give: 'soft' })],
    ['a wish for no edge', 'project.parts.0.edgeWishes', push({ straight: true })],
    ['a wish said in words', 'project.parts.0.edgeWishes', push({ edge: [0, 1], holdLength: 'please' })],
    [
      'a grain that turns too far',
      'project.parts.0.pieceSettings',
      push({ face: 0, grain: { angleDeg: 181, stretch: 'any' } }),
    ],
    [
      'a grain that goes nowhere',
      'project.parts.0.pieceSettings',
      push({ face: 0, grain: { angleDeg: 1, stretch: 'up' } }),
    ],
    ['foam that shrinks away', 'project.foams.0', extend({ shrinkage: { alongPct: 20, acrossPct: 0 } })],
    [
      'a bend round nothing',
      'project.foams.0',
      extend({ neutralTest: { lengthMm: 240, thicknessMm: 6, readings: [{ mandrelMm: 0, arcMm: 1 }] } }),
    ],
    ['a saw that leans too far', 'project.foams.0', extend({ rules: { bevelLimitDeg: 71 } })],
    ['half a shrinkage', 'project.foams.0', extend({ shrinkage: { alongPct: 2 } })],
    ['a paper that hangs', 'project.paper.orientation', set('hanging')],
  ])('and the reader agree to refuse a project with %s', async (_, path, change) => {
    const value = changeJson(made.projectText, path, change);
    expect(schemaFaults(PROJECT, value)).not.toEqual([]);
    expect((await readProjectFile(JSON.stringify(value), 'p')).ok).toBe(false);
  });

  it.each([
    '{"version":1,"edges":[[0,1],[1,2]]}',
    '{"version":1}',
    `{"version":1,"modelHash":"${'0'.repeat(64)}","edges":[],"paths":[{"points":[{"vertex":3},{"face":2,"bary":[0.5,0.5,0]}],"kind":"lap","allowanceMm":10,"lapSide":"left","lapUnder":true,"locked":true}]}`,
    '{"version":1,"edges":[[0,1]],"joins":[{"edge":[0,1],"kind":"rebate","allowanceMm":0,"standFace":3}]}',
    '{"version":1,"joins":[{"edge":[1,0],"kind":"lap","allowanceMm":12.5,"lapFace":0,"lapUnder":true}]}',
  ])('and the reader agree to take the seam file %s', (text) => {
    expect(schemaFaults(SEAM_FILE, JSON.parse(text))).toEqual([]);
    expect(readSeamFile(text, 's').ok).toBe(true);
  });

  it.each([
    '{"edges":[[0,1]]}',
    '{"version":2,"edges":[]}',
    '{"version":1,"edges":[[0]]}',
    '{"version":1,"edges":[[0,1,2]]}',
    '{"version":1,"edges":[[0,-1]]}',
    '{"version":1,"edges":[[0,1.5]]}',
    '{"version":1,"edges":[["0","1"]]}',
    '{"version":1,"edges":{"0":1}}',
    '{"version":1,"paths":[{"points":[{"vertex":3},{"bary":[1]}]}]}',
    '{"version":1,"paths":[{"points":[{"vertex":3},{"vertex":4}],"kind":"glued"}]}',
    '{"version":1,"joins":[{"edge":[0,1],"kind":"glued","allowanceMm":0}]}',
    '{"version":1,"joins":[{"edge":[0,1],"kind":"lap"}]}',
    '{"version":1,"joins":[{"edge":[0,1],"kind":"lap","allowanceMm":-1}]}',
    '{"version":1,"joins":[{"edge":[0,1],"kind":"rebate","allowanceMm":0,"standFace":1.5}]}',
    '[]',
  ])('and the reader agree to refuse the seam file %s', (text) => {
    expect(schemaFaults(SEAM_FILE, JSON.parse(text))).not.toEqual([]);
    expect(readSeamFile(text, 's').ok).toBe(false);
  });

  it('describe the seam files of the samples', () => {
    for (const name of ['helm', 'bracer', 'shoulder-plate', 'maul-head', 'lantern']) {
      const text = readFileSync(new URL(`../../samples/${name}.seams.json`, import.meta.url), 'utf8');
      expect(schemaFaults(SEAM_FILE, JSON.parse(text))).toEqual([]);
    }
  });
});

describe('schema checks', () => {
  it('throw at a word they do not know', () => {
    expect(() => schemaFaults({ multipleOf: 2 }, 4)).toThrow('multipleOf');
    expect(() => schemaFaults({ $ref: '#/$defs/missing' }, 4)).toThrow('missing');
  });

  it('say where a value does not fit', () => {
    const schema = { type: 'object', properties: { list: { type: 'array', items: { type: 'integer' } } } };
    expect(schemaFaults(schema, { list: [1, 2.5] })).toEqual(['top.list[1]: 2.5 is not of type integer']);
  });
});
