import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import '../../src/app/tokens.css';
import '../../src/app/app.ts';
import type { App } from '../../src/app/app.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { HISTORY_WORDS } from '../../src/app/history/history-words.ts';
import { renameProject, setThickness } from '../../src/project/commands.ts';
import { versionsOf } from '../../src/project/kept-version.ts';
import { axeFaults, findIn, openTrayApp, restedApp, soon } from './app-element.ts';

let app: App;
let workbench: Workbench;

beforeAll(async () => {
  ({ app, workbench } = await openTrayApp());
  await restedApp(app);
});

afterAll(() => {
  app.remove();
});

const inLine = <T extends HTMLElement = HTMLElement>(...path: string[]): T =>
  findIn<T>(app, 'fl-job-sheet', 'fl-history-line', ...path);
const all = (element: string, path: string): HTMLElement[] => [
  ...(inLine(element).shadowRoot?.querySelectorAll<HTMLElement>(path) ?? []),
];
const marks = (): string[] => all('fl-step-list', '.line button').map((row) => row.lastElementChild?.textContent ?? '');
const thickness = (): number => workbench.part?.layers[0].thicknessMm ?? 0;

describe('walking the history', () => {
  it('is opened by its key, at the step that is marked', async () => {
    workbench.run(setThickness(7));
    workbench.run(renameProject('tray of the lamp'));
    await restedApp(app);
    await userEvent.keyboard('y');
    await restedApp(app);
    expect(inLine<HTMLDetailsElement>('fl-step-list', 'details').open).toBe(true);
    expect(marks()).toEqual(['', '', '', '', HISTORY_WORDS.steps.here]);
    expect(inLine('fl-step-list').shadowRoot?.activeElement?.getAttribute('aria-current')).toBe('step');
  });

  it('goes back by the arrow keys, with the bench, the keyboard on the step and its place spoken', async () => {
    await userEvent.keyboard('{ArrowUp}');
    await restedApp(app);
    await userEvent.keyboard('{ArrowUp}');
    await restedApp(app);
    expect([workbench.project?.name, thickness()]).toEqual(['tool tray', 6]);
    const { here, undone } = HISTORY_WORDS.steps;
    expect(marks()).toEqual(['', '', here, undone, undone]);
    expect(inLine('fl-step-list').shadowRoot?.activeElement?.getAttribute('aria-current')).toBe('step');
    expect(workbench.spoken).toContain('Step 2 of 4');
    expect(workbench.bench.shell?.thicknessMm).toBe(6);
    await userEvent.keyboard('{End}');
    await restedApp(app);
    expect(thickness()).toBe(7);
  });

  it('keeps what was left behind, and a click fetches it', async () => {
    workbench.undo();
    workbench.undo();
    workbench.run(setThickness(9));
    await restedApp(app);
    const left = all('fl-step-list', 'section button');
    expect(left).toHaveLength(2);
    left[1].click();
    await restedApp(app);
    expect([workbench.project?.name, thickness()]).toEqual(['tray of the lamp', 7]);
    expect(all('fl-step-list', 'section button')).toHaveLength(1);
  });
});

describe('kept versions', () => {
  it('are kept by Enter, refuse a name that is taken, and stay when a step is undone', async () => {
    const field = inLine<HTMLInputElement>('fl-version-list', '.keep input');
    field.focus();
    await userEvent.fill(field, 'thin');
    await userEvent.keyboard('{Enter}');
    await restedApp(app);
    await userEvent.fill(inLine<HTMLInputElement>('fl-version-list', '.keep input'), 'thin');
    await userEvent.keyboard('{Enter}');
    await restedApp(app);
    expect(inLine('fl-version-list', '#taken').textContent).toContain('thin');
    workbench.run(setThickness(10));
    workbench.undo();
    workbench.undo();
    await restedApp(app);
    expect(versionsOf(workbench.project!).map(({ name }) => name)).toEqual(['thin']);
  });

  it('are compared with how it is now: figures, and each piece that differs by its name', async () => {
    workbench.run(setThickness(12));
    await restedApp(app);
    const [compare] = all('fl-version-list', `button[aria-label="${HISTORY_WORDS.versions.compareOf('thin')}"]`);
    compare.click();
    await soon(() => expect(all('fl-compare-two', 'tbody tr').length).toBeGreaterThan(10));
    await restedApp(app);
    const text = inLine('fl-compare-two', 'table').textContent ?? '';
    expect(text).toContain(HISTORY_WORDS.compare.rows.seamMm);
    expect(all('fl-compare-two', '.differs').length).toBeGreaterThan(0);
    expect(all('fl-compare-two', '.pieces li')).toHaveLength(workbench.bench.pieces?.pieces.length ?? 0);
    expect(all('fl-compare-two', '.pieces svg path')).toHaveLength(2 * all('fl-compare-two', '.pieces li').length);
    expect(await axeFaults(app)).toEqual([]);
  });

  it('are fetched back as a step, and removed with undo right after', async () => {
    const named = (name: string) => all('fl-version-list', `button[aria-label="${name}"]`)[0];
    named(HISTORY_WORDS.versions.fetchOf('thin')).click();
    await restedApp(app);
    expect(thickness()).toBe(7);
    named(HISTORY_WORDS.versions.removeOf('thin')).click();
    await restedApp(app);
    expect(versionsOf(workbench.project!)).toEqual([]);
    workbench.undo();
    await restedApp(app);
    expect(versionsOf(workbench.project!).map(({ name }) => name)).toEqual(['thin']);
    expect(thickness()).toBe(7);
  });
});
