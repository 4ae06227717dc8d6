import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { foamId, partId } from '../../src/base/ids.ts';
import { WrongUsage } from '../../src/cli/exit.ts';
import { coversOf, strapOf, trimOf } from '../../src/cli/listed-trim.ts';
import { IN_PLACE } from '../../src/geom/matrix4.ts';
import { withParts } from '../../src/cli/parts-option.ts';
import type { ListedPart } from '../../src/project/parts-file.ts';
import { PLAIN_STRIP } from '../../src/project/trim-part.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { block, solidProject } from '../support/run-solid.ts';

const SCHEMA = JSON.parse(await readFile('shared/parts.schema.json', 'utf8')) as Schema;
const base = { name: 'Band', transform: IN_PLACE, copies: 1, foams: [foamId('eva-2')] };
const sculptOf = (text: string | undefined) => partId(text ?? 'part-1');
const usual = PLAIN_STRIP;
/** The kind is told by which function reads it. */
const listed = (figures: ListedPart['figures']): ListedPart => ({ kind: 'shape', name: 'Band', figures });

it('reads strips along seams, edges and lines', () => {
  expect(trimOf(listed({ along: ['A', 'o1'], width: '1 in', marks: false }), base, sculptOf)).toMatchObject({
    kind: 'trim',
    on: 'part-1',
    along: { by: 'seams', ids: ['A', 'o1'] },
    strip: { ...usual, widthMm: 25.4, hasMarks: false },
  });
  expect(trimOf(listed({ on: 'part-2', along: '12-13', end: 'mitre 30' }), base, sculptOf)).toMatchObject({
    on: 'part-2',
    along: { by: 'edges', edges: [[12, 13]] },
    strip: { start: { kind: 'square' }, end: { kind: 'mitre', turnDeg: 30 } },
  });
  expect(trimOf(listed({ line: [3, 9, 4], closed: true, profile: 'half-round' }), base, sculptOf)).toMatchObject({
    along: { by: 'line', points: [{ vertex: 3 }, { vertex: 9 }, { vertex: 4 }], closed: true },
    strip: { profile: { kind: 'half-round', from: 'cut' } },
  });
});

it('reads covers and straps, with what is usual where nothing is said', () => {
  expect(coversOf(listed({ width: 12, without: ['1-2', '7-9'] }), base, sculptOf)).toMatchObject({
    kind: 'covers',
    strip: { widthMm: 12 },
    mostTurnDeg: 30,
    without: [
      [1, 2],
      [7, 9],
    ],
  });
  expect(strapOf(listed({ girth: 900, width: 40, tip: 25, reinforced: true }), base)).toMatchObject({
    strap: { girthMm: 900, widthMm: 40, tip: { kind: 'pointed', lengthMm: 25 }, isReinforced: true },
  });
});

it('says which field is wrong', () => {
  const wrong: readonly ListedPart['figures'][] = [
    {},
    { along: 'A', line: [1, 2] },
    { line: [1] },
    { along: 'A', colour: 'red' },
    { along: 'A', profile: 'round' },
    { along: 'A', profile: 'edge-roll' },
    { along: 'A', end: 'mitre' },
    { along: 'A', marks: 'no' },
  ];
  for (const figures of wrong)
    expect(() => trimOf(listed(figures), base, sculptOf), JSON.stringify(figures)).toThrow(WrongUsage);
  expect(() => coversOf(listed({ without: 'A' }), base, sculptOf)).toThrow(WrongUsage);
  expect(() => strapOf(listed({ girth: 900 }), base)).toThrow(WrongUsage);
});

it('is part of a parts file, on the sculpt that is worked on', async () => {
  const { project } = await solidProject(block([0, 0, 0], [60, 50, 40]));
  const folder = await mkdtemp(join(tmpdir(), 'parts-'));
  const path = join(folder, 'trim.json');
  const parts = [
    { kind: 'trim', name: 'Band', foam: '2 mm', along: ['A'], width: 12 },
    { kind: 'covers', name: 'Covers', on: project.parts[0].name, foam: '2 mm', 'most-turn': 45 },
    { kind: 'strap', name: 'Belt', girth: '30 in', width: 40 },
  ];
  expect(schemaFaults(SCHEMA, { version: 1, parts })).toEqual([]);
  await writeFile(path, JSON.stringify({ version: 1, parts }));
  const { plain } = (await withParts(project, path)).project;
  expect(plain).toMatchObject([
    { kind: 'trim', on: 'part-1', strip: { widthMm: 12 } },
    { kind: 'covers', on: 'part-1', mostTurnDeg: 45 },
    { kind: 'strap', strap: { girthMm: 762 } },
  ]);
  await writeFile(path, JSON.stringify({ version: 1, parts: [{ ...parts[0], on: 'Hat' }] }));
  await expect(withParts(project, path)).rejects.toThrow('"on" names a sculpt of the project, the project has');
  await rm(folder, { recursive: true });
});
