import { expect, it } from 'vitest';
import { partId } from '../../src/base/ids.ts';
import { addJoin } from '../../src/project/joins-commands.ts';
import { emptyProject, newProject } from '../../src/project/new-project.ts';
import { MOST_JOINS, MOST_PARTS, MOST_SCULPTS } from '../../src/project/part-limits.ts';
import { addPlain, removePlain, type NewPlain } from '../../src/project/plain-commands.ts';
import { readProjectFile, writeProjectFile } from '../../src/project/project-file.ts';
import type { Project } from '../../src/project/project.ts';
import { addSculpt, removeSculpt } from '../../src/project/sculpt-commands.ts';
import { contentHash } from '../../src/base/hash.ts';
import { IN_PLACE } from '../../src/geom/matrix4.ts';
import { expectOk } from '../support/expect-ok.ts';

const bytes = new TextEncoder().encode('v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n');
const disc: NewPlain = {
  kind: 'shape',
  name: 'disc',
  shape: 'ring',
  sizes: {},
  transform: IN_PLACE,
  copies: 1,
  foams: [emptyProject('').foams[0].id],
};

it('no command makes a document that its own file could not bring back: as many as a file holds and no more, and one part at least', async () => {
  const source = { hash: await contentHash(bytes), fileName: 'helm.obj', format: 'obj' } as const;
  let project: Project = newProject('helm', source);
  expect(removeSculpt(partId('part-1')).apply(project)).toBe(project);
  for (let i = 0; i < MOST_SCULPTS + 2; i += 1) project = addSculpt('another', source).apply(project);
  for (let i = 0; i < MOST_PARTS + 2; i += 1) project = addPlain(disc).apply(project);
  for (let i = 0; i < MOST_JOINS + 2; i += 1)
    project = addJoin({ kind: 'seat', part: partId(`a ${i}`), on: partId('part-1') }).apply(project);
  const text = writeProjectFile(project, new Map([[source.hash, { fileName: 'helm.obj', bytes }]]));
  expect(expectOk(await readProjectFile(text, 'full')).project).toEqual(project);
  expect([project.parts.length, project.plain?.length, project.joins?.length]).toEqual([
    MOST_SCULPTS,
    MOST_PARTS,
    MOST_JOINS,
  ]);
  const alone = addPlain(disc).apply(emptyProject('alone'));
  expect(removePlain(partId('part-1')).apply(alone)).toBe(alone);
});
