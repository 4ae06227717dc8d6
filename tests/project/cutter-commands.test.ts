import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { contentHash } from '../../src/base/hash.ts';
import { cutterOfProject } from '../../src/pipeline/machine-files.ts';
import { setBridges, setCutter, setCutWidth } from '../../src/project/cutter-commands.ts';
import { newProject } from '../../src/project/new-project.ts';
import { readProjectFile, writeProjectFile } from '../../src/project/project-file.ts';
import { expectOk, expectProblem } from '../support/expect-ok.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';

const SCHEMA = JSON.parse(readFileSync('shared/project.schema.json', 'utf8')) as Schema;

it('what cuts the sheets is kept in the file and read again, within its limits', async () => {
  const bytes = new TextEncoder().encode('v 0 0 0\n');
  const hash = await contentHash(bytes);
  const sources = new Map([[hash, { fileName: 'x.obj', bytes }]]);
  const first = newProject('x', { hash, fileName: 'x.obj', format: 'obj' });
  const commands = [setCutter('laser'), setCutWidth(0.15), setBridges({ count: 3, widthMm: 2 })];
  const said = commands.reduce((changed, command) => command.apply(changed), first);
  const text = writeProjectFile(said, sources);
  expect(expectOk(await readProjectFile(text, 'x')).project).toEqual(JSON.parse(JSON.stringify(said)));
  expect(schemaFaults(SCHEMA, JSON.parse(text))).toEqual([]);
  const broken = text.replace('"cutWidthMm": 0.15', '"cutWidthMm": 11');
  expect(broken).not.toBe(text);
  expect(expectProblem(await readProjectFile(broken, 'x'), 'project/broken').text).toContain('cutWidthMm');
  expect(schemaFaults(SCHEMA, JSON.parse(broken))).not.toEqual([]);
});

it('another cutter cuts as wide as is usual for it, and keeps the bridges', () => {
  const first = newProject('x', { hash: 'a', fileName: 'x.obj', format: 'obj' });
  expect(cutterOfProject(first)).toEqual({ kind: 'unknown', cutWidthMm: 0 });
  const commands = [setCutter('laser'), setCutWidth(0.15), setBridges({ count: 3, widthMm: 2 })];
  const said = commands.reduce((changed, command) => command.apply(changed), first);
  expect(setCutter('laser').apply(said)).toBe(said);
  expect(setCutWidth(0.15).apply(said)).toBe(said);
  expect(cutterOfProject(setCutter('blade').apply(said))).toEqual({
    kind: 'blade',
    cutWidthMm: 0,
    bridges: { count: 3, widthMm: 2 },
  });
  const back = [setBridges(null), setCutWidth(null), setCutter(null)];
  expect(back.reduce((changed, command) => command.apply(changed), said)).toEqual(first);
  for (const mm of [-0.1, 10.1, NaN]) expect(() => setCutWidth(mm)).toThrow(RangeError);
  for (const count of [0, 1.5, 101]) expect(() => setBridges({ count, widthMm: 2 })).toThrow(RangeError);
  for (const widthMm of [0, 51, NaN]) expect(() => setBridges({ count: 2, widthMm })).toThrow(RangeError);
});
