import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { contentHash } from '../../src/base/hash.ts';
import { foamId } from '../../src/base/ids.ts';
import { setFoam, setScale, setSeams, setThickness } from '../../src/project/commands.ts';
import { History } from '../../src/project/history.ts';
import { keepVersion } from '../../src/project/kept-commands.ts';
import { MOST_VERSIONS, versionsOf } from '../../src/project/kept-version.ts';
import { newProject } from '../../src/project/new-project.ts';
import { readProjectFile, writeProjectFile, type OpenedProject } from '../../src/project/project-file.ts';
import type { Project } from '../../src/project/project.ts';
import { sourcesOfProject } from '../../src/project/sources.ts';
import { expectOk } from '../support/expect-ok.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';

const SCHEMA = JSON.parse(readFileSync(new URL('../../shared/project.schema.json', import.meta.url), 'utf8')) as Schema;
const AT = '2026-01-31T09:30:00Z';
const bytes = new TextEncoder().encode('v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n');
const other = new TextEncoder().encode('v 0 0 0\nv 2 0 0\nv 0 2 0\nf 1 2 3\n');

const EDGES = Array.from({ length: 900 }, (_, i) => [i, i + 1] as const);

async function sources(): Promise<OpenedProject['sources']> {
  const files = [bytes, other].map(
    async (one) => [await contentHash(one), { fileName: 'helm.obj', bytes: one }] as const,
  );
  return new Map(await Promise.all(files));
}

/** A project with many seams, and versions of it that differ in a few choices each. */
async function withVersionsKept(count: number): Promise<Project> {
  const hash = await contentHash(bytes);
  const history = new History(newProject('helm', { hash, fileName: 'helm.obj', format: 'obj' }));
  history.run(setSeams({ edges: EDGES, paths: [] }));
  for (let i = 0; i < count; i += 1) {
    history.run(setThickness(4 + i / 10));
    history.run(setSeams({ edges: EDGES.filter((_, e) => e !== 3 * i), paths: [] }));
    history.run(keepVersion(`version of day ${i}`, AT));
  }
  history.run(setScale({ by: 'unit', unit: 'cm' }));
  history.run(setFoam(foamId('eva-10'), 10));
  return history.project;
}

const read = async (text: string) => readProjectFile(text, 'helm.foamloft.json');

/** The file with one of its kept versions changed. */
async function changed(change: (version: Record<string, unknown>) => void): Promise<string> {
  const raw = JSON.parse(writeProjectFile(await withVersionsKept(1), await sources())) as {
    versions: Record<string, unknown>[];
  };
  change(raw.versions[0]);
  return JSON.stringify(raw);
}

describe('kept versions in a project file', () => {
  it('come back as they were kept, and share again what they have in common', async () => {
    const project = await withVersionsKept(3);
    const { project: opened } = expectOk(await read(writeProjectFile(project, await sources())));
    expect(opened).toEqual(project);
    const [one, two] = versionsOf(opened);
    expect(one.document.foams).toBe(opened.foams);
    expect(one.document.parts[0].flatten).toBe(two.document.parts[0].flatten);
  });

  it('take little room: fifty of them less than the document itself', async () => {
    const files = await sources();
    const none = writeProjectFile(await withVersionsKept(0), files);
    const many = writeProjectFile(await withVersionsKept(MOST_VERSIONS), files);
    expect(many.length - none.length).toBeLessThan(none.length);
    expect(schemaFaults(SCHEMA, JSON.parse(many))).toEqual([]);
  });

  it('bring the files they are made from, each once', async () => {
    const project = await withVersionsKept(1);
    const hash = await contentHash(other);
    const [part] = project.parts;
    const renewed = { ...project, parts: [{ ...part, source: { ...part.source, hash } }] };
    expect(sourcesOfProject(renewed).map((source) => source.hash)).toEqual([hash, part.source.hash]);
    const { sources: opened } = expectOk(await read(writeProjectFile(renewed, await sources())));
    expect([...opened.keys()].toSorted()).toEqual([hash, part.source.hash].toSorted());
    const lost = new Map([...(await sources())].filter(([key]) => key === hash));
    expect(() => writeProjectFile(renewed, lost)).toThrow('no bytes');
  });

  it('are refused with their name where they do not go with the file', async () => {
    const place = await read(await changed((version) => (version['changes'] = [{ op: 'remove', path: '/none' }])));
    expect(!place.ok && place.problem.text).toContain('“version of day 0”');
    const foam = await read(
      await changed(
        (version) => (version['changes'] = [{ op: 'replace', path: '/parts/0/layers/0/foam', value: 'felt' }]),
      ),
    );
    expect(!foam.ok && foam.problem.text).toMatch(/“version of day 0”.*names the foam felt/);
    const broken = await read(
      await changed((version) => (version['changes'] = [{ op: 'replace', path: '/revision', value: 'x' }])),
    );
    expect(!broken.ok && broken.problem.text).toMatch(/“version of day 0”.*at revision/);
    const unnamed = await read(await changed((version) => (version['name'] = ' ')));
    expect(unnamed.ok).toBe(false);
    const source = await read(
      await changed(
        (version) => (version['changes'] = [{ op: 'replace', path: '/parts/0/source/hash', value: 'b'.repeat(64) }]),
      ),
    );
    expect(!source.ok && source.problem.code).toBe('project/source');
  });
});
