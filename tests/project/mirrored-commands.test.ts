import { describe, expect, it } from 'vitest';
import { contentHash } from '../../src/base/hash.ts';
import { setPaper } from '../../src/project/commands.ts';
import { History } from '../../src/project/history.ts';
import { setMirrored } from '../../src/project/mirrored-commands.ts';
import { newProject } from '../../src/project/new-project.ts';
import { readProjectFile, writeProjectFile } from '../../src/project/project-file.ts';
import { expectOk } from '../support/expect-ok.ts';

const SOURCE = { hash: '0'.repeat(64), fileName: 'shield.obj', format: 'obj' } as const;

describe('paper of pieces that mirror each other', () => {
  it('is a change of its own, taken back alone', () => {
    const history = new History(newProject('shield', SOURCE));
    history.run(setPaper({ ...history.project.paper, name: 'A3' }));
    history.run(setMirrored('each'));
    expect(history.project.paper).toMatchObject({ name: 'A3', mirrored: 'each' });
    history.undo();
    expect(history.project.paper.name).toBe('A3');
    expect(history.project.paper.mirrored).toBeUndefined();
  });

  it('is no change where it is so already', () => {
    const project = newProject('shield', SOURCE);
    expect(setMirrored('once').apply(project)).toBe(project);
    const each = setMirrored('each').apply(project);
    expect(setMirrored('each').apply(each)).toBe(each);
    expect(setMirrored('once').apply(each).paper.mirrored).toBe('once');
  });

  it('is saved with the job, and read in no other words', async () => {
    const bytes = new TextEncoder().encode('v 0 0 0\n');
    const source = { ...SOURCE, hash: await contentHash(bytes) };
    const each = setMirrored('each').apply(newProject('shield', source));
    const text = writeProjectFile(each, new Map([[source.hash, { fileName: source.fileName, bytes }]]));
    expect(expectOk(await readProjectFile(text, 'shield')).project.paper.mirrored).toBe('each');
    expect((await readProjectFile(text.replace('"each"', '"twice"'), 'shield')).ok).toBe(false);
  });
});
