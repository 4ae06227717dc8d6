import { beforeEach, describe, expect, it } from 'vitest';
import { askState } from '../../../src/app/files/keep-actions.ts';
import { KEEP_WORDS } from '../../../src/app/files/keep-words.ts';
import { RING } from '../../../src/app/files/ring.ts';
import { restoreLast } from '../../../src/app/opening.ts';
import { Workbench } from '../../../src/app/workbench.ts';
import { renameProject } from '../../../src/project/commands.ts';
import type { MemoryStorage } from '../../support/memory-storage.ts';
import { makeWorkbench, openObj, openTray, shown } from '../../support/tray-workbench.ts';
import { TRAY_OBJ } from '../../browser/open-tray.ts';

describe('earlier states of jobs', () => {
  let bench: Workbench;
  let storage: MemoryStorage;

  beforeEach(async () => {
    ({ workbench: bench, storage } = makeWorkbench());
    await openTray(bench);
    await bench.autosave.flush();
  });

  /** A change after a pause in the work. */
  async function later(name: string): Promise<void> {
    storage.atMs += RING.quietMs;
    bench.run(renameProject(name));
    await bench.autosave.flush();
  }
  const told = async (): Promise<string[]> =>
    (await storage.states()).map(({ isNow, name, what }) => `${isNow ? 'now ' : ''}${name}: ${what}`);

  it('are the ends of stretches of work', async () => {
    await later('one');
    bench.run(renameProject('one and a half'));
    await bench.autosave.flush();
    await later('two');
    expect(await told()).toEqual(['now two: rename', 'one and a half: rename', 'tool tray: ']);
  });

  it('come back as a step that can be undone', async () => {
    await later('one');
    const [, first] = await storage.states();
    await askState(bench, { kind: 'bring', id: first.id });
    expect(bench.project?.name).toBe('tool tray');
    bench.undo();
    expect(bench.project?.name).toBe('one');
  });

  it('of another job open that one, whose newest state is one step back; the job in hand is not lost', async () => {
    await later('one');
    await openObj(bench, 'other tray', TRAY_OBJ);
    await bench.autosave.flush();
    expect(await told()).toEqual(['now other tray: ', 'now one: rename', 'tool tray: ']);
    const first = (await storage.states()).find(({ name }) => name === 'tool tray');
    await askState(bench, { kind: 'bring', id: first!.id });
    await shown(bench);
    expect(bench.project?.name).toBe('tool tray');
    bench.undo();
    expect(bench.project?.name).toBe('one');
    await bench.autosave.flush();
    expect((await storage.states()).filter(({ isNow }) => isNow).map(({ name }) => name)).toEqual([
      'one',
      'other tray',
    ]);
    expect(bench.before?.name).toBe('other tray');
  });

  it('the same file opened anew leaves the work on it as an earlier state', async () => {
    await later('one');
    await openTray(bench);
    await bench.autosave.flush();
    expect(await told()).toEqual(['now tool tray: ', 'one: rename', 'tool tray: ']);
  });

  it('are not added by a visit that changes nothing', async () => {
    await later('one');
    const before = await told();
    storage.atMs += 10 * RING.quietMs;
    const again = new Workbench(makeWorkbench().workbench.workshop, storage);
    await restoreLast(again);
    await shown(again);
    await again.autosave.flush();
    expect(again.project?.name).toBe('one');
    expect((await told()).length).toBe(before.length);
  });

  it('are forgotten with their job, and one that is gone is told', async () => {
    await later('one');
    const [{ job }, first] = await storage.states();
    await askState(bench, { kind: 'forget', job });
    expect(await told()).toEqual([]);
    await askState(bench, { kind: 'bring', id: first.id });
    expect(bench.notice?.text).toBe(KEEP_WORDS.earlier.missing);
  });
});
