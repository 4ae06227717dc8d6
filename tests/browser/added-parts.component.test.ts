import { afterEach, beforeEach, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../src/app/tokens.css';
import '../../src/app/app.ts';
import type { App } from '../../src/app/app.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { makeWorkbench, openPartedTray, shown } from '../support/tray-workbench.ts';
import { axeFaults, findIn, restedApp, soon } from './app-element.ts';

let app: App;
let workbench: Workbench;

beforeEach(() => {
  workbench = makeWorkbench().workbench;
  app = document.createElement('fl-app');
  app.workbench = workbench;
  document.body.append(app);
});

afterEach(() => app.remove());

const inLine = (...path: string[]): HTMLElement => findIn(app, 'fl-job-sheet', 'fl-parts-line', ...path);

/** A button by its words, by keyboard alone. */
async function press(root: HTMLElement, text: string): Promise<void> {
  const buttons = [...(root.shadowRoot?.querySelectorAll('button') ?? [])];
  const button = buttons.find((one) => one.textContent?.trim() === text);
  if (button === undefined) throw new Error(`no button ${text} among ${buttons.map((one) => one.textContent).join()}`);
  button.focus();
  await userEvent.keyboard('{Enter}');
}

/** Types in the field of a label, by keyboard alone. */
async function type(root: HTMLElement, label: string, text: string): Promise<void> {
  const input = await soon(() => {
    const field = root.shadowRoot?.querySelector(`[label="${label}"]`)?.shadowRoot?.querySelector('input');
    if (field == null) throw new Error(`no field ${label}`);
    return field;
  });
  input.select();
  await userEvent.keyboard(`${text}{Enter}`);
}

const plain = (n: number): unknown => workbench.project?.plain?.[n];

it('covers seams, trims along a chosen one and adds a strap, each a step that can be undone', async () => {
  await openPartedTray(workbench);
  await restedApp(app);
  await press(inLine(), 'Cover the seams in view');
  await soon(() => inLine('fl-strip-fields'));
  await type(inLine('fl-strip-fields'), 'Width', '1/2 in');
  await soon(() => expect(plain(0)).toMatchObject({ kind: 'covers', on: 'part-1', strip: { widthMm: 12.7 } }));
  await shown(workbench);
  await restedApp(app);
  const cut = (workbench.bench.pieces?.plain ?? []).filter(({ part }) => part === 'part-2');
  expect(cut.length).toBeGreaterThan(0);
  await type(inLine('fl-strip-fields'), 'Longest strip', '3');
  const longest = inLine('fl-strip-fields').shadowRoot?.querySelector('[label="Longest strip"]')?.shadowRoot;
  await soon(() => expect(longest?.querySelector('[role=status]')?.textContent).toContain('Between 25.4'));
  expect(await axeFaults(app)).toEqual([]);

  const seam = workbench.bench.seams?.chains.find(({ kind }) => kind !== 'open');
  if (seam === undefined) throw new Error('the tray has seams');
  workbench.setView({ choice: { kind: 'seam', seam: seam.id } });
  await restedApp(app);
  await press(inLine(), `Trim along seam ${seam.letter}`);
  await soon(() => expect(plain(1)).toMatchObject({ kind: 'trim', along: { by: 'edges' } }));
  await shown(workbench);
  await restedApp(app);
  await type(inLine('fl-strip-fields'), 'Left of the seam', '100');
  await soon(() => expect(plain(1)).toMatchObject({ strip: { leftShare: 1 } }));

  await press(inLine(), 'Add a strap');
  await soon(() => inLine('fl-strap-fields'));
  await type(inLine('fl-strap-fields'), 'Round what it goes about', '950');
  await soon(() => expect(plain(2)).toMatchObject({ kind: 'strap', strap: { girthMm: 950 } }));
  await shown(workbench);
  await restedApp(app);
  expect(await axeFaults(app)).toEqual([]);
  expect(workbench.bench.findings.filter(({ severity }) => severity === 'error')).toEqual([]);

  for (let steps = 0; steps < 6; steps += 1) workbench.undo();
  expect(workbench.project?.plain).toBeUndefined();
});
