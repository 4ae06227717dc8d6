import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseCommand } from '../../src/cli/args.ts';
import { Refused } from '../../src/cli/exit.ts';
import { withParts } from '../../src/cli/parts-option.ts';
import { emptyProject, nameFromFile } from '../../src/project/new-project.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { scratchFiles } from './run-cli.ts';

const SCHEMA = JSON.parse(readFileSync('shared/parts.schema.json', 'utf8')) as Schema;
const ROOF = 'v 0 0 0\nv 10 0 0\nv 10 0 10\nv 0 0 10\nv 0 8 5\nv 10 8 5\nf 1 2 6 5\nf 3 4 5 6\n';

const LANTERN = {
  kind: 'sculpt',
  name: 'Lantern',
  file: 'roof.obj',
  seams: 'roof.seams.json',
  unit: 'cm',
  foam: ['10 mm', '2 mm'],
  'model-is': 'back',
  off: '1/8 in',
  neutral: 0.4,
  place: { at: [600, 0, 0] },
  copies: 2,
};
const ROW = { at: [0, 40, 0], copies: [{ kind: 'line', count: 3, stepMm: [0, 0, 90] }] };
const ROOFLET = { kind: 'sculpt', name: 'Rooflet', file: 'roof.obj', size: 'x=80', up: 'z', place: ROW };
const EDGING = { kind: 'trim', name: 'Edging', foam: '2 mm', on: 'Lantern', along: 'A', width: 20 };
const KIT = { version: 1, name: 'Small roofs', parts: [LANTERN, ROOFLET, EDGING] };

const SEAMS = { version: 1, edges: [[4, 5]] };
const listFile = (value: unknown, seams: unknown = SEAMS): string =>
  scratchFiles({
    'roofs.parts.json': JSON.stringify(value),
    'roof.obj': ROOF,
    'roof.seams.json': JSON.stringify(seams),
  })[0];

describe('sculpts in a parts file', () => {
  it('are in the project as make would take each, with what is listed after them on it', async () => {
    expect(schemaFaults(SCHEMA, KIT)).toEqual([]);
    const { project, name, sources, inputs } = await withParts(emptyProject('x'), listFile(KIT));
    expect(name).toBe('Small roofs');
    const [lantern, rooflet] = project.parts;
    expect(lantern).toMatchObject({
      ...{ kind: 'sculpt', name: 'Lantern', scale: { by: 'unit', unit: 'cm' }, modelIs: 'back', copies: 2 },
      seams: { edges: [[4, 5]], paths: [] },
      layers: [
        { foam: 'eva-10', thicknessMm: 10, neutralFraction: 0.4 },
        { foam: 'eva-2', thicknessMm: 2, neutralFraction: 0.4 },
      ],
    });
    expect(lantern.offMm).toBeCloseTo(25.4 / 8, 9);
    expect(lantern.transform.slice(12)).toEqual([600, 0, 0, 1]);
    expect(new Set(lantern.layers.map(({ id }) => id)).size).toBe(2);
    expect(rooflet).toMatchObject({ scale: { by: 'size', axis: 'x', mm: 80 }, upAxis: 'z', copies: 3 });
    expect(rooflet.layers).toMatchObject([{ foam: 'eva-6', neutralFraction: 0.5 }]);
    expect(project).not.toHaveProperty('atWork');
    expect(project.plain).toMatchObject([{ kind: 'trim', on: lantern.id }]);
    expect([...sources.keys()]).toEqual([lantern.source.hash]);
    expect(inputs.map((path) => path.replace(/^.*[\\/]/, ''))).toEqual([
      ...['roofs.parts.json', 'roof.obj', 'roof.seams.json', 'roof.obj'],
    ]);
  });

  it('take the place of one of their name', async () => {
    const { project } = await withParts(emptyProject('x'), listFile(KIT));
    const other = { version: 1, parts: [{ ...LANTERN, foam: '6 mm', off: 0 }] };
    const again = (await withParts(project, listFile(other))).project;
    expect(again.parts.map(({ id, name }) => [id, name])).toEqual(project.parts.map(({ id, name }) => [id, name]));
    expect(again.parts[0].layers).toMatchObject([{ foam: 'eva-6' }]);
    expect(again.plain).toEqual(project.plain);
  });

  it.each([
    [{ unit: undefined }, '"unit" is missing'],
    [{ size: 'y=5' }, 'give "unit" or "size", not both'],
    [{ file: undefined }, '"file" is missing'],
    [{ file: 'roof.seams.json' }, 'roof.seams.json'],
    [{ shape: 'ring' }, '"shape" and "sizes" belong'],
    [{ thickness: 5 }, '"thickness" comes from its foam'],
    [{ paper: 'A3' }, '"paper" is no field of a part of the kind sculpt'],
    [{ 'model-is': 'inside' }, '"model-is" takes face, middle, back'],
    [{ place: { copies: [{ kind: 'mirror', point: [0, 0, 0], normal: [1, 0, 0] }] } }, 'no mirrored copies'],
  ])('are refused with %j', async (change, text) => {
    const made = withParts(emptyProject('x'), listFile({ version: 1, parts: [{ ...LANTERN, ...change }] }));
    await expect(made).rejects.toThrow(Refused);
    await expect(made).rejects.toThrow(text);
  });

  it('are refused with seams of another model', async () => {
    const path = listFile(KIT, { ...SEAMS, modelHash: '0'.repeat(64) });
    await expect(withParts(emptyProject('x'), path)).rejects.toThrow('drawn on another version of roof.obj');
  });

  it('stand under the name that --name gives, else that of the file', () => {
    const command = parseCommand(['make', '--parts', 'a.json', '--name', ' Two roofs ', '--out', 'x'], '2026-03-01');
    expect(command).toMatchObject({ choices: { name: 'Two roofs' } });
    expect(() => parseCommand(['make', 'a.obj', '--name', ' ', '--out', 'x'], '2026-03-01')).toThrow('--name');
    expect(nameFromFile('samples/kit_of.parts.json')).toBe('kit of');
  });
});
