import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { readSeamFile } from '../../src/project/seam-file.ts';
import { readProjectFile } from '../../src/project/project-file.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { objOf, tube } from './handbook/polygon-solids.ts';
import { runChain, type ChainOutput } from './run-chain.ts';

const schemaOf = (name: string): Schema =>
  JSON.parse(readFileSync(new URL(`../../shared/${name}.schema.json`, import.meta.url), 'utf8')) as Schema;

const REPORT = schemaOf('report');
const SEAM_FILE = schemaOf('seam-file');
const PROJECT = schemaOf('project');

/** Any JSON value, for changing single places. */
type Json = Record<string, any>; // eslint-disable-line @typescript-eslint/no-explicit-any

/** The text's value with one place changed. */
function changed(text: string, change: (value: Json) => void): Json {
  const value = JSON.parse(text) as Json;
  change(value);
  return value;
}

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

  it.each<[string, (report: Json) => void]>([
    ['a piece without its stretch', (r) => delete r.pieces[0].stretchPct],
    ['a flat point of three numbers', (r) => r.pieces[0].flat.uvMm[0].push(0)],
    ['a length in words', (r) => (r.seams[0].lengthMm[0] = '90 mm')],
    ['a seam of an unknown kind', (r) => (r.seams[0].kind = 'glued')],
    ['half a triangle', (r) => (r.pieces[0].triangles = 1.5)],
    ['foam without thickness', (r) => (r.pieces[0].thicknessMm = 0)],
    ['a hash that is none', (r) => (r.modelHash = 'abc')],
    [
      'a finding without a place',
      (r) => r.findings.push({ code: 'a/b', severity: 'note', text: 'x', value: null, limit: null, unit: null }),
    ],
    ['another version', (r) => (r.schemaVersion = 2)],
    ['a number that became null', (r) => (r.pieces[0].flat.neutralMm[3][1] = null)],
  ])('refuse a report with %s', (_, change) => {
    expect(schemaFaults(REPORT, changed(made.reportText, change))).toHaveLength(1);
  });

  it('describe the project file that is written', async () => {
    expect(schemaFaults(PROJECT, JSON.parse(made.projectText))).toEqual([]);
    expect((await readProjectFile(made.projectText, 'p')).ok).toBe(true);
  });

  it.each<[string, (file: Json) => void]>([
    ['no sources', (f) => delete f.sources],
    ['a scale of nothing', (f) => (f.project.parts[0].scale = { by: 'size', axis: 'x', mm: 0 })],
    ['two layers', (f) => f.project.parts[0].layers.push(f.project.parts[0].layers[0])],
    ['a repair it does not know', (f) => f.project.parts[0].repairs.push({ kind: 'melt' })],
    ['a foam with k 2', (f) => (f.project.foams[0].neutralFraction = 2)],
    ['a paper that hangs', (f) => (f.project.paper.orientation = 'hanging')],
  ])('and the reader agree to refuse a project with %s', async (_, change) => {
    const value = changed(made.projectText, change);
    expect(schemaFaults(PROJECT, value)).not.toEqual([]);
    expect((await readProjectFile(JSON.stringify(value), 'p')).ok).toBe(false);
  });

  it.each([
    '{"version":1,"edges":[[0,1],[1,2]]}',
    '{"version":1}',
    `{"version":1,"modelHash":"${'0'.repeat(64)}","edges":[],"paths":[{"points":[{"vertex":3},{"face":2,"bary":[0.5,0.5,0]}],"kind":"lap","lapSide":"left","locked":true}]}`,
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
