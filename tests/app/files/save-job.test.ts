import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { KEEP_WORDS } from '../../../src/app/files/keep-words.ts';
import { openHandle } from '../../../src/app/files/open-handle.ts';
import { saveJob } from '../../../src/app/files/save-job.ts';
import { restoreLast } from '../../../src/app/opening.ts';
import { Workbench } from '../../../src/app/workbench.ts';
import { renameProject } from '../../../src/project/commands.ts';
import { readProjectFile } from '../../../src/project/project-file.ts';
import { FakeHandle } from '../../support/fake-handle.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { makeWorkbench, openTray, shown } from '../../support/tray-workbench.ts';

const DAY = '2030-01-01';

describe('saving the job in place', () => {
  let bench: Workbench;
  let handle: FakeHandle;
  const chosen = vi.fn<(wish: { suggestedName: string }) => Promise<FakeHandle>>();
  const isInFile = (): boolean => bench.keeping.place.inFile === bench.project;
  const nameOnDisk = async (): Promise<string> =>
    expectOk(await readProjectFile(handle.text, handle.name)).project.name;

  beforeEach(async () => {
    handle = new FakeHandle('tray.foamloft.json');
    chosen.mockReset().mockImplementation(() => Promise.resolve(handle));
    vi.stubGlobal('showSaveFilePicker', chosen);
    ({ workbench: bench } = makeWorkbench());
    await openTray(bench);
  });
  afterEach(() => void vi.unstubAllGlobals());

  it('asks for a file once, and writes to it from then on', async () => {
    expect(bench.keeping.place.file).toBeNull();
    await saveJob(bench, DAY);
    expect(chosen.mock.calls[0][0].suggestedName).toBe('tool-tray.foamloft.json');
    expect(isInFile()).toBe(true);
    bench.run(renameProject('second'));
    expect(isInFile()).toBe(false);
    await saveJob(bench, DAY);
    expect(chosen).toHaveBeenCalledTimes(1);
    expect(await nameOnDisk()).toBe('second');
    expect(isInFile()).toBe(true);
    bench.undo();
    expect(isInFile()).toBe(false);
    bench.redo();
    expect(isInFile()).toBe(true);
  });

  it('leaves all as it is when the maker thinks better of it', async () => {
    chosen.mockRejectedValue(new DOMException('no', 'AbortError'));
    await saveJob(bench, DAY);
    expect(bench.keeping.place.file).toBeNull();
    expect(bench.notice).toBeNull();
  });

  it('asks before it writes over a file that was changed on the disk, and loses neither', async () => {
    await saveJob(bench, DAY);
    handle.text = 'by someone else';
    handle.lastModified += 1;
    bench.run(renameProject('mine'));
    await saveJob(bench, DAY);
    expect(handle.text).toBe('by someone else');
    expect(bench.notice?.tone).toBe('problem');
    expect(bench.notice?.text).toContain(handle.name);
    bench.notice?.also?.find(({ label }) => label === KEEP_WORDS.writeOver)?.run();
    await expect.poll(() => isInFile()).toBe(true);
    expect(await nameOnDisk()).toBe('mine');
  });

  it.each([
    ['the disk is full', 'writeFault', new DOMException('', 'QuotaExceededError'), KEEP_WORDS.reasons.full],
    ['the swap fails', 'closeFault', new Error('busy'), KEEP_WORDS.reasons.other],
  ] as const)('says that nothing was written when %s, and the file is as it was', async (_, fault, error, reason) => {
    await saveJob(bench, DAY);
    const before = handle.text;
    bench.run(renameProject('mine'));
    handle[fault] = error;
    await saveJob(bench, DAY);
    expect(bench.notice?.text).toBe(KEEP_WORDS.failed(handle.name, reason));
    expect(handle.text).toBe(before);
    expect(isInFile()).toBe(false);
    handle[fault] = null;
    bench.notice?.remedy?.run();
    await expect.poll(() => isInFile()).toBe(true);
    expect(await nameOnDisk()).toBe('mine');
  });

  it('says it when it may not write, or the file is gone, and offers another', async () => {
    await saveJob(bench, DAY);
    handle.permission = 'denied';
    await saveJob(bench, DAY);
    expect(bench.notice?.text).toBe(KEEP_WORDS.notAllowed(handle.name));
    handle.permission = 'granted';
    handle.isGone = true;
    await saveJob(bench, DAY);
    expect(bench.notice?.text).toBe(KEEP_WORDS.gone(handle.name));
    handle = new FakeHandle('other.foamloft.json');
    bench.notice?.remedy?.run();
    await expect.poll(() => bench.keeping.place.file?.name).toBe('other.foamloft.json');
  });

  it('knows at the next visit which file the job is in, and notices that it was changed in between', async () => {
    await saveJob(bench, DAY);
    await bench.autosave.flush();
    const again = new Workbench(makeWorkbench().workbench.workshop, bench.storage);
    expect(await restoreLast(again)).toBe(true);
    bench = again;
    expect(bench.keeping.place.file?.handle).toBe(handle);
    expect(isInFile()).toBe(true);
    expect((await bench.storage.states()).filter(({ isNow }) => isNow)).toHaveLength(1);
    handle.lastModified += 1;
    await saveJob(bench, DAY);
    expect(bench.notice?.text).toMatch(/changed on the disk/);
  });

  it('goes on with the file a job was opened from', async () => {
    await saveJob(bench, DAY);
    const { workbench } = makeWorkbench();
    bench = workbench;
    await openHandle(bench, handle);
    await shown(bench);
    expect(isInFile()).toBe(true);
    bench.run(renameProject('opened'));
    await saveJob(bench, DAY);
    expect(await nameOnDisk()).toBe('opened');
    expect(chosen).toHaveBeenCalledTimes(1);
  });
});
