import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import '../../src/app/app.ts';
import '../../src/app/later-elements.ts';
import type { App } from '../../src/app/app.ts';
import type { EarlierStates } from '../../src/app/files/earlier-states.ts';
import { KEEP_WORDS } from '../../src/app/files/keep-words.ts';
import { layOutForPrint } from '../../src/app/files/print-pages.ts';
import { RING } from '../../src/app/files/ring.ts';
import type { WindowLine } from '../../src/app/files/window-line.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { renameProject } from '../../src/project/commands.ts';
import { readProjectFile } from '../../src/project/project-file.ts';
import type { MemoryStorage } from '../support/memory-storage.ts';
import { expectOk } from '../support/expect-ok.ts';
import { axeFaults, findIn, openTrayApp, restedApp, soon } from './app-element.ts';

/** Each test goes on from the one before. */
describe('where the job is kept, in the window', () => {
  let app: App;
  let workbench: Workbench;
  const facts = (): string => findIn(app, 'fl-job-sheet', 'fl-job-head', '.facts').textContent;
  const press = (key: string): boolean =>
    window.dispatchEvent(new KeyboardEvent('keydown', { key, ctrlKey: true, bubbles: true, cancelable: true }));

  beforeAll(async () => {
    ({ app, workbench } = await openTrayApp());
  });
  afterAll(() => {
    app.remove();
    vi.unstubAllGlobals();
  });

  it('saves with Ctrl S to a file of the disk, says which, and whether it is there as it stands', async () => {
    const folder = await navigator.storage.getDirectory();
    const handle = await folder.getFileHandle('tray.foamloft.json', { create: true });
    vi.stubGlobal('showSaveFilePicker', () => Promise.resolve(handle));
    expect(facts()).toContain(KEEP_WORDS.noFile);
    press('s');
    await soon(() => expect(facts()).toContain(KEEP_WORDS.file(handle.name)));
    const onDisk = async () => expectOk(await readProjectFile(await (await handle.getFile()).text(), handle.name));
    expect((await onDisk()).project).toEqual(workbench.project);
    workbench.run(renameProject('second'));
    await restedApp(app);
    expect(facts()).toContain(KEEP_WORDS.changed(handle.name));
    press('s');
    await soon(() => expect(facts()).toContain(KEEP_WORDS.file(handle.name)));
    expect((await onDisk()).project.name).toBe('second');
  });

  it('lists earlier states, and brings one back as a step that can be undone', async () => {
    await workbench.autosave.flush();
    (workbench.storage as MemoryStorage).atMs += RING.quietMs;
    workbench.run(renameProject('later'));
    await workbench.autosave.flush();
    await restedApp(app);
    const list = findIn<EarlierStates>(app, 'fl-job-sheet', 'fl-job-head', 'fl-earlier-states');
    list.focus();
    const rows = (): HTMLElement[] => [...list.renderRoot.querySelectorAll<HTMLElement>('li')];
    await soon(() => expect(rows()).not.toHaveLength(0));
    expect(rows()[0].textContent).toContain(KEEP_WORDS.earlier.pieces(6));
    rows()[0].querySelector('button')?.click();
    await soon(() => expect(workbench.project?.name).toBe('second'));
    workbench.undo();
    expect(workbench.project?.name).toBe('later');
  });

  it('says in one line that another window works on the job, with what can be done', async () => {
    const line = findIn<WindowLine>(app, 'fl-job-sheet', 'fl-window-line');
    expect(line.renderRoot.textContent?.trim()).toBe('');
    const asked: string[] = [];
    app.addEventListener('fl-verb', ({ verb }) => void asked.push(verb));
    line.hold = 'elsewhere';
    await line.updateComplete;
    expect(await axeFaults(app)).toEqual([]);
    for (const button of line.renderRoot.querySelectorAll('button')) button.click();
    expect(asked).toEqual(['work-here', 'only-look', 'open-copy']);
  });

  it('puts a field back that is changed where the job is only looked at, and says why', async () => {
    const hold = vi.spyOn(workbench.keeping, 'hold', 'get').mockReturnValue('looking');
    const before = workbench.project?.name;
    const field = findIn<HTMLInputElement>(app, 'fl-job-sheet', 'fl-job-head', 'input.name');
    // A window that is not in front is told nothing of the keyboard.
    field.dispatchEvent(new FocusEvent('focusin', { bubbles: true, composed: true }));
    field.value = 'not mine to name';
    field.dispatchEvent(new Event('change', { bubbles: true, composed: true }));
    await restedApp(app);
    expect([workbench.project?.name, field.value]).toEqual([before, before]);
    const told = findIn<WindowLine>(app, 'fl-job-sheet', 'fl-window-line').renderRoot.querySelector('[role="alert"]');
    expect(told?.textContent).toBe(KEEP_WORDS.windows.refused);
    hold.mockRestore();
    workbench.run(renameProject('mine again'));
    await restedApp(app);
    expect(field.value).toBe('mine again');
  });

  it('lays pages out for the printer in their true size, seen on paper alone', () => {
    const pages = workbench.bench.paper!.pages;
    const takeAway = layOutForPrint(pages);
    const host = document.querySelector('.fl-print')!;
    expect(getComputedStyle(host).display).toBe('none');
    const drawn = [...host.querySelectorAll('svg')];
    expect(drawn.map((svg) => svg.width.baseVal.valueAsString)).toEqual(pages.map(({ widthMm }) => `${widthMm}mm`));
    expect(drawn[0].querySelectorAll('path').length).toBeGreaterThan(0);
    takeAway();
    expect(document.querySelector('.fl-print')).toBeNull();
  });
});
