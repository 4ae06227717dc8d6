import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, rmdirSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { Refused } from '../../src/cli/exit.ts';
import { clearDrafts, makeDraft, UNFINISHED_NAME, UNFINISHED_TEXT } from '../../src/cli/output-draft.ts';
import { writeAll } from '../../src/cli/output-folder.ts';
import { scratchFolder } from './run-cli.ts';

/** A draft as a run leaves it that was ended: its name tells of a process that is there no more. */
async function strayIn(folder: string): Promise<string> {
  const { pid } = spawnSync(process.execPath, ['--version']);
  const name = basename(await makeDraft(folder)).replace(`-${process.pid}-`, `-${pid}-`);
  for (const draft of readdirSync(folder).filter((one) => one.includes(`-${process.pid}-`)))
    rmdirSync(join(folder, draft));
  mkdirSync(join(folder, name));
  writeFileSync(join(folder, name, 'sheet-1.svg'), 'half');
  return name;
}

describe('what a run leaves that was ended while it wrote', () => {
  it('goes with the next run, which says so', async () => {
    const folder = scratchFolder();
    const stray = await strayIn(folder);
    writeFileSync(join(folder, UNFINISHED_NAME), UNFINISHED_TEXT);
    writeFileSync(join(folder, 'a'), 'new already');
    const said: string[] = [];
    const write = vi.spyOn(process.stderr, 'write').mockImplementation((text) => said.push(String(text)) > 0);
    await writeAll(folder, new Map([['a', '1'], ['b', '2']])).finally(() => write.mockRestore()); // prettier-ignore
    expect(readdirSync(folder).sort()).toEqual(['a', 'b']);
    expect(said.join('')).toContain(stray);
    expect(said.join('')).toContain('an earlier run was ended while it put its files');
  });

  it('stays where its process is still at work, or is of another machine', async () => {
    const folder = scratchFolder();
    const own = basename(await makeDraft(folder));
    const parents = own.replace(`-${process.pid}-`, `-${process.ppid}-`);
    const elsewhere = '.draft-other-1-abcdef';
    for (const name of [parents, elsewhere, '.draft-notes']) mkdirSync(join(folder, name));
    expect(await clearDrafts(folder)).toEqual([]);
    expect(readdirSync(folder)).toHaveLength(4);
  });

  it('is a note as long as files of two runs lie in one folder, and none where a run failed and put the old ones back', async () => {
    const folder = scratchFolder();
    writeFileSync(join(folder, 'a'), 'old');
    mkdirSync(join(folder, 'b'));
    mkdirSync(join(folder, 'b', 'full'));
    await expect(writeAll(folder, new Map([['a', 'new'], ['b', 'new']]))).rejects.toThrow(Refused); // prettier-ignore
    expect(readFileSync(join(folder, 'a'), 'utf8')).toBe('old');
    expect(readdirSync(folder).sort()).toEqual(['a', 'b']);
    // Where it lay already it is still true.
    writeFileSync(join(folder, UNFINISHED_NAME), UNFINISHED_TEXT);
    await expect(writeAll(folder, new Map([['a', 'new'], ['b', 'new']]))).rejects.toThrow(Refused); // prettier-ignore
    expect(readdirSync(folder).sort()).toEqual(['a', 'b', UNFINISHED_NAME]);
  });
});
