import { expect, it } from 'vitest';
import { HIDDEN_SIDES } from '../../src/model/hidden-side.ts';
import { setHiddenSide } from '../../src/project/hidden-commands.ts';
import { History } from '../../src/project/history.ts';
import { newProject } from '../../src/project/new-project.ts';
import { readProjectFile, writeProjectFile } from '../../src/project/project-file.ts';
import { contentHash } from '../../src/base/hash.ts';
import { expectOk } from '../support/expect-ok.ts';

const bytes = new TextEncoder().encode('v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n');
const source = { hash: await contentHash(bytes), fileName: 'helm.obj', format: 'obj' } as const;

it('says and forgets the side seams are hidden on, and undoes as one', () => {
  const history = new History(newProject('helm', source));
  const before = history.project;
  expect(history.run(setHiddenSide(null)).parts).toBe(before.parts);
  history.run(setHiddenSide('under'));
  expect(history.project.parts[0].hiddenSide).toBe('under');
  history.run(setHiddenSide(null));
  expect('hiddenSide' in history.project.parts[0]).toBe(false);
  history.undo();
  history.undo();
  expect(history.project.parts[0].hiddenSide).toBeUndefined();
});

it.each(HIDDEN_SIDES)('keeps %s in the file of the job', async (side) => {
  const project = setHiddenSide(side).apply(newProject('helm', source));
  const text = writeProjectFile(project, new Map([[source.hash, { fileName: source.fileName, bytes }]]));
  const read = await readProjectFile(text, 'helm.foamloft.json');
  expect(expectOk(read).project.parts[0].hiddenSide).toBe(side);
  expect((await readProjectFile(text.replace(`"${side}"`, '"elsewhere"'), 'helm.foamloft.json')).ok).toBe(false);
});
