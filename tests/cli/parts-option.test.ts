import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseCommand } from '../../src/cli/args.ts';
import { Refused, WrongUsage } from '../../src/cli/exit.ts';
import { withParts } from '../../src/cli/parts-option.ts';
import { sculptOption } from '../../src/cli/sculpt-options.ts';
import { emptyProject } from '../../src/project/new-project.ts';
import { readPartsFile } from '../../src/project/parts-file.ts';
import type { ArtworkPart, BuildUpPart, StackPart } from '../../src/project/plain-part.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { scratchFiles } from './run-cli.ts';

const SCHEMA = JSON.parse(readFileSync('shared/parts.schema.json', 'utf8')) as Schema;
const SVG =
  '<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="20mm" viewBox="0 0 20 20"><path d="M0 0H20V20H0Z"/></svg>';

const MAUL = {
  version: 1,
  parts: [
    {
      kind: 'build-up',
      name: 'Handle',
      foam: ['10 mm', '6 mm', '2 mm'],
      wraps: ['6 mm'],
      ...{ pipe: 'PVC 32', length: '90 cm', profile: '0:22,300:22', seats: ['head=700-860'] },
      wind: 'width=25,pitch=22',
    },
    {
      kind: 'stack',
      name: 'Pommel',
      foam: ['10 mm', '6 mm'],
      turned: ['0:30', '40:30'],
      dowel: '1/4 in',
      rule: 'middle',
    },
    {
      kind: 'artwork',
      name: 'Badge',
      foam: '2 mm',
      file: 'badge.svg',
      raised: '2x2mm',
      copies: 2,
      place: {
        at: [10, 0, 0],
        facing: [1, 0, 0],
        copies: [{ kind: 'round', count: 3, point: [0, 0, 0], axis: [0, 0, 1] }],
      },
    },
    { kind: 'shape', name: 'Ring', shape: 'ring', sizes: { width: '20 mm' } },
  ],
};

const listFile = (value: unknown): string => scratchFiles({ 'maul.json': JSON.stringify(value), 'badge.svg': SVG })[0];

describe('make --parts', () => {
  it('adds parts with the options of their kinds as fields, units and all', async () => {
    expect(schemaFaults(SCHEMA, MAUL)).toEqual([]);
    const { project, sources, inputs } = await withParts(emptyProject('maul'), listFile(MAUL));
    const [handle, pommel, badge, ring] = project.plain as [BuildUpPart, StackPart, ArtworkPart, unknown];
    // shared/pipes.json names its standard: nominal size 32 is 32 mm outside.
    expect(handle.wish.core).toMatchObject({ pipe: 'PVC 32', diameterMm: 32, overallMm: 900 });
    expect(handle.wish.core.places).toMatchObject([{ name: 'head', fromMm: 700, toMm: 860 }]);
    expect(handle.wish.windings).toMatchObject([{ widthMm: 25, by: { pitchMm: 22 } }]);
    expect(handle).toMatchObject({ foams: ['eva-10', 'eva-6', 'eva-2'], wraps: ['eva-6'] });
    expect(pommel.wish).toMatchObject({ rule: 'middle', dowels: { diameterMm: 6.35 } });
    expect(pommel.wish).not.toHaveProperty('sheetsMm');
    expect(badge).toMatchObject({ kind: 'artwork', copies: 6, craft: { kind: 'raised', layers: 2 } });
    expect(badge.craft).not.toHaveProperty('thicknessMm');
    // Its own z, the third column, has come to x.
    expect(badge.transform.slice(8, 15).map((value) => Math.round(value * 1e9) / 1e9)).toEqual([1, 0, 0, 0, 10, 0, 0]);
    expect(ring).toMatchObject({ kind: 'shape', foams: ['eva-6'], sizes: { width: '20 mm' } });
    expect([...sources.keys()]).toEqual([badge.source.hash]);
    expect(inputs).toHaveLength(2);
  });

  it('puts a part in the place of one of its name', async () => {
    const { project } = await withParts(emptyProject('maul'), listFile(MAUL));
    const [, pommel] = MAUL.parts;
    const again = await withParts(project, listFile({ version: 1, parts: [{ ...pommel, rule: 'smaller' }] }));
    expect(again.project.plain?.map(({ id }) => id)).toEqual(project.plain?.map(({ id }) => id));
    expect(again.project.plain?.[1]).toMatchObject({ name: 'Pommel', wish: { rule: 'smaller' } });
  });

  it('keeps how many copies are mirror images', async () => {
    const mirror = { kind: 'mirror', point: [0, 0, 0], normal: [1, 0, 0] };
    const place = { at: [30, 0, 0], copies: [mirror], ownHand: 'right' };
    const horn = { kind: 'shape', name: 'Horn', shape: 'cone', sizes: {}, copies: 2, place };
    const { project } = await withParts(emptyProject('kit'), listFile({ version: 1, parts: [horn] }));
    expect(project.plain).toMatchObject([{ copies: 4, mirrored: { count: 2, ownHand: 'right' } }]);
    // A project file holds no more than a thousand.
    const many = listFile({ version: 1, parts: [{ ...horn, copies: 600 }] });
    await expect(withParts(emptyProject('horns'), many)).rejects.toThrow('1200 copies');
  });

  it.each([
    [{ kind: 'stack', name: 'P', turned: '0:30,40:30', dowel: 'thick' }, 'maul.json, P: "dowel" takes a number'],
    [{ kind: 'stack', name: 'P', foam: '7 mm', turned: '0:3,4:3' }, 'maul.json, P: "foam" 7 mm is none of the project'],
    [{ kind: 'stack', name: 'P', turned: '0:3,4:3', sheets: '10' }, 'maul.json, P: "sheets" comes from its foam'],
    [{ kind: 'stack', name: 'P', turned: '0:3,4:3', profile: '0:3' }, 'maul.json, P: "profile" is no option of stack'],
    [{ kind: 'artwork', name: 'P' }, 'maul.json, P: "file" is missing'],
    [{ kind: 'artwork', name: 'P', file: 'badge.svg', dpi: 72 }, 'badge.svg is a drawing: "dpi" is not for it'],
    [{ kind: 'artwork', name: 'P', file: 'gone.svg' }, 'there is no such file'],
    [{ kind: 'build-up', name: 'P', pipe: 'PVC 9', length: 90 }, 'PVC 9'],
    [
      { kind: 'build-up', name: 'P', diameter: 32, length: 900, seats: 'head' },
      'maul.json, P: "seats" looks like head=',
    ],
    [{ kind: 'box', name: 'P' }, 'maul.json is not a parts file: at parts.0.kind'],
    [{ kind: 'shape', name: 'P', shape: 'ring', place: { at: [0, 0] } }, 'at parts.0.place.at'],
    [{ kind: 'shape', name: 'P', shape: 'ring', place: { facing: [0, 0, 0] } }, 'maul.json, P: The direction'],
  ])('refuses %j in one sentence', async (part, text) => {
    const made = withParts(emptyProject('maul'), listFile({ version: 1, parts: [part] }));
    await expect(made).rejects.toThrow(Refused);
    await expect(made).rejects.toThrow(text);
  });

  it('needs names of their own, and a list', () => {
    const twice = { version: 1, parts: [MAUL.parts[1], MAUL.parts[1]] };
    expect(readPartsFile(JSON.stringify(twice), 'x.json')).toMatchObject({ problem: { code: 'parts/broken' } });
    expect(readPartsFile('{', 'x.json')).toMatchObject({ problem: { code: 'parts/not-json' } });
    for (const broken of [
      { version: 2, parts: [] },
      { version: 1, parts: [{ kind: 'box', name: 'P' }] },
    ])
      expect(schemaFaults(SCHEMA, broken)).not.toEqual([]);
  });

  it('takes the place of a model, and then nothing that only a sculpt can be told', () => {
    const choicesOf = (...words: string[]) => {
      const command = parseCommand(['make', '--parts', join('kit', 'maul.json'), '--out', 'x', ...words], '2026-03-01');
      if (command.name !== 'make') throw new Error(command.name);
      return command.choices;
    };
    expect(choicesOf()).toMatchObject({ parts: join('kit', 'maul.json'), out: 'x' });
    expect(choicesOf().input).toBeUndefined();
    expect(choicesOf('kit.json').input).toBe('kit.json');
    expect(() => parseCommand(['make', '--out', 'x'], '2026-03-01')).toThrow(WrongUsage);
    expect(sculptOption(choicesOf('--paper', 'A3', '--dxf', '--coats', 'sealer'))).toBeNull();
    for (const [words, option] of [
      [['--seams', 's.json'], '--seams'],
      [['--thickness', '6'], '--thickness'],
      [['--even-out'], '--even-out'],
      [['--paint', 'rest=none'], '--paint'],
      [['--stl'], '--stl'],
      [['--mock-up', '1:4'], '--mock-up'],
    ] as const)
      expect(sculptOption(choicesOf(...words))).toContain(option);
  });
});
