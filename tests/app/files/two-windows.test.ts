import { describe, expect, it, vi } from 'vitest';
import { openCopy, workHere } from '../../../src/app/files/keep-actions.ts';
import { KEEP_WORDS } from '../../../src/app/files/keep-words.ts';
import { restoreLast } from '../../../src/app/opening.ts';
import { Workbench } from '../../../src/app/workbench.ts';
import { renameProject } from '../../../src/project/commands.ts';
import { FakeWindows } from '../../support/fake-locks.ts';
import { MemoryStorage } from '../../support/memory-storage.ts';
import { makeWorkbench, openTray, shown } from '../../support/tray-workbench.ts';

/** Two windows of one browser: the first works on the tray, the second finds it as it opens. */
async function twoWindows() {
  const windows = new FakeWindows();
  const storage = new MemoryStorage();
  const doors = [windows.open(), windows.open()];
  const [one, two] = doors.map((door) => new Workbench(makeWorkbench().workbench.workshop, storage, door));
  await openTray(one);
  await one.autosave.flush();
  await restoreLast(two);
  await shown(two);
  await two.autosave.flush();
  return { windows, doors, storage, one, two };
}

const rename = (bench: Workbench, name: string): Promise<void> => {
  bench.run(renameProject(name));
  return bench.autosave.flush();
};
const inStorage = async (storage: MemoryStorage): Promise<string[]> =>
  await Promise.all((await storage.states()).map(async ({ id }) => (await storage.fetch(id))!.project.name));

describe('two windows on one job', () => {
  it('let only the first change it, and say so in the second', async () => {
    const { storage, one, two } = await twoWindows();
    expect([one.keeping.hold, two.keeping.hold]).toEqual(['mine', 'elsewhere']);
    for (const change of [() => two.run(renameProject('from the second')), () => two.keeping.lock.look()]) change();
    two.run(renameProject('from the second'));
    two.say('renamed');
    two.setNotice({ tone: 'note', text: 'renamed' });
    expect([two.project?.name, two.refusals, two.spoken]).toEqual(['tool tray', 2, '']);
    expect(two.notice?.text).not.toBe('renamed');
    await rename(one, 'from the first');
    expect(storage.saves.map(({ name }) => name)).not.toContain('from the second');
    expect(storage.saves.at(-1)?.name).toBe('from the first');
  });

  it('work goes over to the second with the newest state, what waited in the first among it', async () => {
    const { storage, one, two } = await twoWindows();
    one.run(renameProject('newest'));
    await workHere(two);
    await shown(two);
    expect([one.keeping.hold, two.keeping.hold]).toEqual(['elsewhere', 'mine']);
    expect(two.project?.name).toBe('newest');
    await rename(two, 'later still');
    one.undo();
    expect([one.project?.name, one.refusals]).toEqual(['newest', 1]);
    expect(storage.saves.at(-1)?.name).toBe('later still');
  });

  it('what both changed is kept: theirs in force, mine as an earlier state and one step back', async () => {
    const { windows, doors, storage, one, two } = await twoWindows();
    windows.deaf.add(doors[0]);
    vi.useFakeTimers();
    const over = two.keeping.lock.takeOver();
    await vi.advanceTimersByTimeAsync(1900);
    // Too late to be written before the job is taken.
    one.run(renameProject('mine'));
    await vi.advanceTimersByTimeAsync(100);
    await over;
    vi.useRealTimers();
    await rename(two, 'theirs');
    await workHere(one);
    await shown(one);
    await one.autosave.flush();
    expect(one.project?.name).toBe('theirs');
    expect(one.before?.name).toBe('mine');
    expect(await inStorage(storage)).toEqual(expect.arrayContaining(['mine', 'theirs']));
  });

  it('takes a job from a window that does not answer', async () => {
    const { windows, doors, one, two } = await twoWindows();
    windows.deaf.add(doors[0]);
    vi.useFakeTimers();
    const over = two.keeping.lock.takeOver();
    await vi.advanceTimersByTimeAsync(2000);
    await over;
    vi.useRealTimers();
    expect([one.keeping.hold, two.keeping.hold]).toEqual(['elsewhere', 'mine']);
  });

  it('goes on in a copy that the first window knows nothing of', async () => {
    const { storage, one, two } = await twoWindows();
    openCopy(two);
    await expect.poll(() => two.project?.name).toBe(KEEP_WORDS.windows.copyName('tool tray'));
    await shown(two);
    await two.autosave.flush();
    expect([one.keeping.hold, two.keeping.hold]).toEqual(['mine', 'mine']);
    await rename(two, 'the copy');
    await rename(one, 'the first');
    expect(new Set((await storage.states()).filter(({ isNow }) => isNow).map(({ name }) => name))).toEqual(
      new Set(['the copy', 'the first']),
    );
  });

  it('a job is free again when its window has gone on to another', async () => {
    const { one, two } = await twoWindows();
    openCopy(one);
    await expect.poll(() => one.project?.name).toBe(KEEP_WORDS.windows.copyName('tool tray'));
    await shown(one);
    await one.autosave.flush();
    await workHere(two);
    expect(two.keeping.hold).toBe('mine');
    expect(one.keeping.hold).toBe('mine');
  });
});
