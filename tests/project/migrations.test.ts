import { expect, it } from 'vitest';
import { contentHash } from '../../src/base/hash.ts';
import { keepVersion } from '../../src/project/kept-commands.ts';
import { versionsOf } from '../../src/project/kept-version.ts';
import {
  migrated,
  MIGRATIONS,
  SCHEMA_VERSION,
  type Migration,
  type RawDocument,
} from '../../src/project/migrations.ts';
import { newProject } from '../../src/project/new-project.ts';
import { renameProject } from '../../src/project/commands.ts';
import { readProjectFile, writeProjectFile } from '../../src/project/project-file.ts';
import { expectOk } from '../support/expect-ok.ts';

const bytes = new TextEncoder().encode('v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n');

/** A version before the first, made up for this test: the name stood under another word, and lengths were in one unit. */
const TABLE: ReadonlyMap<number, Migration> = new Map<number, Migration>([
  [-1, ({ called, ...rest }) => ({ ...rest, title: called })],
  [0, ({ title, ...rest }) => ({ ...rest, name: title, lengthUnit: 'mm' })],
]);

const asBefore = ({ name, lengthUnit: _, ...rest }: RawDocument, word: string, version: number): RawDocument => ({
  ...rest,
  [word]: name,
  schemaVersion: version,
});

async function fileOf() {
  const source = { hash: await contentHash(bytes), fileName: 'helm.obj', format: 'obj' } as const;
  const kept = keepVersion('first', '2030-01-01T00:00:00.000Z').apply(newProject('helm', source));
  const project = renameProject('helm of now').apply(kept);
  return { project, text: writeProjectFile(project, new Map([[source.hash, { fileName: 'helm.obj', bytes }]])) };
}

it('a table that leads to the newest version has no gap in it', () => {
  const versions = [...MIGRATIONS.keys()].sort((a, b) => a - b);
  expect(versions).toEqual(versions.map((_, i) => SCHEMA_VERSION - versions.length + i));
});

it.each([
  ['title', 0],
  ['called', -1],
] as const)('an older file (%s) is brought on, and so are the versions that are kept in it', async (word, version) => {
  const { project, text } = await fileOf();
  const file = JSON.parse(text) as { project: RawDocument; versions: { changes: { path: string }[] }[] };
  const old = {
    ...file,
    project: asBefore(file.project, word, version),
    versions: file.versions.map((kept) => ({
      ...kept,
      changes: kept.changes.map((change) => ({ ...change, path: change.path.replace(/^\/name$/, `/${word}`) })),
    })),
  };
  const read = expectOk(await readProjectFile(JSON.stringify(old), 'old.json', TABLE)).project;
  expect(read).toEqual(project);
  expect(versionsOf(read).map(({ document }) => document.name)).toEqual(['helm']);
  // Without what leads on from it, it is told and not guessed at.
  const refused = await readProjectFile(JSON.stringify(old), 'old.json');
  expect(!refused.ok && refused.problem).toMatchObject({
    code: 'project/broken',
    text: `old.json cannot be used: at project.schemaVersion there is ${version} where 1 belongs.`,
  });
});

it('nothing is done to a document of now', () => {
  const now = { schemaVersion: SCHEMA_VERSION, name: 'helm' };
  expect(migrated(now, TABLE)).toBe(now);
});

it('names fields that are not known, with where they stand', async () => {
  const { text } = await fileOf();
  const more = (fields: string): Promise<Awaited<ReturnType<typeof readProjectFile>>> =>
    readProjectFile(text.replace('"name": "helm of now"', `${fields}"name": "helm of now"`), 'a.json');
  const told = async (fields: string) => {
    const read = await more(fields);
    return read.ok && read.notes.map((note) => note.text);
  };
  expect(await told('')).toEqual([]);
  expect(await told('"colour": 1, ')).toEqual([
    'a.json holds fields that are not known here: colour; they are left out when it is saved.',
  ]);
  expect(await told('"a": 1, "b": 1, "c": {"d": 2}, "e": 1, ')).toEqual([
    'a.json holds fields that are not known here: a, b, c and 1 more; they are left out when it is saved.',
  ]);
  const deep = await readProjectFile(text.replace('"squashPrice"', '"squashCost": 3, "squashPrice"'), 'a.json');
  expect(deep.ok && deep.notes[0].text).toContain('parts.0.flatten.squashCost');
});
