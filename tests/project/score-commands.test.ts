import { expect, it } from 'vitest';
import { setSeams } from '../../src/project/commands.ts';
import { History } from '../../src/project/history.ts';
import { newProject } from '../../src/project/new-project.ts';
import { readProjectFile, writeProjectFile } from '../../src/project/project-file.ts';
import { FIRST_SCORE, partScore, removeScore, scoreSeam, setScore } from '../../src/project/score-commands.ts';
import { contentHash } from '../../src/base/hash.ts';
import { expectOk } from '../support/expect-ok.ts';

it('makes of a seam a scored line, changes it, keeps it in the file, and makes a seam of it again', async () => {
  const bytes = new TextEncoder().encode('v 0 0 0');
  const hash = await contentHash(bytes);
  const history = new History(newProject('plate', { hash, fileName: 'plate.obj', format: 'obj' }));
  history.run(setSeams({ edges: [[1, 2], [3, 2], [7, 8]], paths: [] })); // prettier-ignore
  const parted = history.project;
  history.run(scoreSeam([[1, 2], [2, 3]], FIRST_SCORE)); // prettier-ignore
  expect(history.project.parts[0].seams.edges).toEqual([[7, 8]]);
  for (const depthMm of [2.5, 2]) history.run(setScore('score-1', { depthMm }));
  const [line] = history.project.parts[0].scores ?? [];
  expect(line).toEqual({ id: 'score-1', edges: [[1, 2], [2, 3]], depthMm: 2, openMm: FIRST_SCORE.openMm }); // prettier-ignore
  const text = writeProjectFile(history.project, new Map([[hash, { fileName: 'plate.obj', bytes }]]));
  expect(expectOk(await readProjectFile(text, 'plate.json')).project).toEqual(history.project);
  const broken = await readProjectFile(text.replace('"depthMm": 2', '"depthMm": 0'), 'plate.json');
  expect(broken.ok).toBe(false);
  history.run(partScore('score-1'));
  expect(history.project.parts[0]).not.toHaveProperty('scores');
  expect(history.project.parts[0].seams.edges).toEqual([[7, 8], [1, 2], [2, 3]]); // prettier-ignore
  history.undo();
  history.run(removeScore('score-1'));
  expect(history.project.parts[0].seams.edges).toEqual([[7, 8]]);
  for (let i = 0; i < 3; i += 1) history.undo();
  expect(history.project).toBe(parted);
  history.run(removeScore('score-9'));
  history.run(setScore('score-9', { depthMm: 1 }));
  history.run(scoreSeam([], FIRST_SCORE));
  expect(history.project).toBe(parted);
});
