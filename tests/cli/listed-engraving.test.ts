import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { Refused } from '../../src/cli/exit.ts';
import { withParts } from '../../src/cli/parts-option.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { block, solidProject } from '../support/run-solid.ts';

const SCHEMA = JSON.parse(await readFile('shared/parts.schema.json', 'utf8')) as Schema;

it('reads artwork drawn on a sculpt, and says what is wrong with it', async () => {
  const { project } = await solidProject(block([0, 0, 0], [60, 50, 40]));
  const folder = await mkdtemp(join(tmpdir(), 'parts-'));
  const path = join(folder, 'parts.json');
  const write = async (...parts: readonly object[]): Promise<typeof project> => {
    await writeFile(path, JSON.stringify({ version: 1, parts }));
    return (await withParts(project, path)).project;
  };
  await writeFile(join(folder, 'line.svg'), '<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0L9 9"/></svg>');
  const flame = { kind: 'engraving', name: 'Flame', file: 'line.svg', at: [30, 25, 40], width: '1 in' };
  const other = { kind: 'engraving', name: 'Rune', file: 'line.svg', corner: 3, up: [0, 0, -2], 'true-on': 'piece' };
  expect(schemaFaults(SCHEMA, { version: 1, parts: [flame, other] })).toEqual([]);
  expect((await write(flame, other)).plain).toMatchObject([
    {
      kind: 'engraving',
      on: 'part-1',
      source: { fileName: 'line.svg' },
      drawing: { from: 'svg', choice: { size: { by: 'width', mm: 25.4 } } },
      at: { by: 'nearest', mm: [30, 25, 40] },
      trueOn: 'surface',
    },
    { at: { by: 'point', point: { vertex: 3 } }, up: [0, 0, -2], trueOn: 'piece' },
  ]);
  const { at: _, ...noPlace } = flame;
  const { file: __, ...noFile } = flame;
  const wrong: readonly object[] = [
    noPlace,
    noFile,
    { ...flame, corner: 3 },
    { ...flame, at: [1, 2] },
    { ...noPlace, corner: 1.5 },
    { ...flame, up: [0, 0, 0] },
    { ...flame, 'true-on': 'paper' },
    { ...flame, offset: 3 },
    { ...flame, colour: 'red' },
    { ...flame, on: 'Hat' },
  ];
  for (const one of wrong) await expect(write(one), JSON.stringify(one)).rejects.toThrow(Refused);
  await rm(folder, { recursive: true });
});
