import { afterEach, beforeEach, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../src/app/tokens.css';
import '../../src/app/app.ts';
import type { App } from '../../src/app/app.ts';
import type { ShapeForm } from '../../src/app/shape-form.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { makeWorkbench, openTray, shown } from '../support/tray-workbench.ts';
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

const line = (): HTMLElement => findIn(app, 'fl-job-sheet', 'fl-parts-line');
const form = (): ShapeForm => findIn<ShapeForm>(app, 'fl-job-sheet', 'fl-parts-line', 'fl-shape-form');

/** A button of the line, by keyboard alone. */
async function press(root: HTMLElement, text: string): Promise<void> {
  const buttons = [...(root.shadowRoot?.querySelectorAll('button') ?? [])];
  const button = buttons.find((one) => one.textContent?.trim() === text);
  if (button === undefined) throw new Error(`no button ${text} among ${buttons.map((one) => one.textContent).join()}`);
  button.focus();
  await userEvent.keyboard('{Enter}');
}

const field = (name: string): HTMLInputElement => {
  const found = form().shadowRoot?.querySelector<HTMLInputElement>(`#${name}`);
  if (found == null) throw new Error(`no field ${name}`);
  return found;
};

const told = (name: string): string => form().shadowRoot?.querySelector(`#told-${name}`)?.textContent?.trim() ?? '';

const shapeOf = (): unknown => workbench.project?.plain?.[0];

it('begins a job with a shape, draws it while a size is typed, takes the size as one step, and says beside it what cannot be', async () => {
  await press(findIn(app, 'fl-job-sheet', 'fl-job-head'), 'Begin with a shape');
  await restedApp(app);
  expect(workbench.project?.parts).toEqual([]);
  expect(workbench.bench.paper?.pages.length).toBeGreaterThan(0);
  await soon(() => expect(field('diameter').value).toBe('33.7\u00a0mm'));

  const before = workbench.project;
  field('diameter').select();
  await userEvent.keyboard('4 1/2 in');
  // L = pi (D + 2 k t), k 0.5, 6 mm: the bend allowance of sheet-metal handbooks over a whole turn.
  const girth = Math.PI * (114.3 + 6);
  const picture = (): string =>
    form()
      .shadowRoot?.querySelector('fl-shape-picture')
      ?.shadowRoot?.querySelector('svg')
      ?.getAttribute('aria-label') ?? '';
  await soon(() => expect(picture()).toContain(`${Math.round(girth)}\u00a0mm`));
  expect(workbench.project).toBe(before);
  await userEvent.keyboard('{Enter}');
  await soon(() => expect(shapeOf()).toMatchObject({ sizes: { diameter: '4 1/2 in' } }));
  await restedApp(app);
  workbench.undo();
  expect(workbench.project).toBe(before);

  await restedApp(app);
  field('layers').select();
  await userEvent.keyboard('1.5{Enter}');
  await soon(() => expect(told('layers')).toContain('whole number'));
  expect(field('layers').getAttribute('aria-invalid')).toBe('true');
  expect(workbench.project).toBe(before);
});

it('adds a shape beside a sculpt, moves, copies, renames it and takes it away, each one step back', async () => {
  await openTray(workbench);
  await restedApp(app);
  await press(line(), 'Add a shape');
  await soon(() => field('diameter'));
  await press(form(), 'another shape');
  await soon(() => expect(form().shadowRoot?.querySelector('fl-shape-picker')).not.toBeNull());
  await userEvent.keyboard('star{Enter}');
  await soon(() => expect(form().shape).toBe('star'));
  await soon(() => field('points'));
  await press(line(), 'Put it in the project');
  await soon(() => expect(shapeOf()).toMatchObject({ kind: 'shape', shape: 'star', name: 'star' }));
  await restedApp(app);
  expect(workbench.view.choice).toEqual({ kind: 'part', part: 'part-2' });
  expect(await axeFaults(app)).toEqual([]);

  const fields = findIn(app, 'fl-job-sheet', 'fl-parts-line', 'fl-part-fields');
  const [x] = fields.shadowRoot?.querySelectorAll('fl-length-field') ?? [];
  x?.shadowRoot?.querySelector('input')?.select();
  await userEvent.keyboard('-12,5{Enter}');
  await soon(() => expect(workbench.project?.plain?.[0].transform[12]).toBe(-12.5));
  fields.shadowRoot?.querySelector('fl-number-field')?.shadowRoot?.querySelector('input')?.select();
  await userEvent.keyboard('4{Enter}');
  await soon(() => expect(workbench.project?.plain?.[0].copies).toBe(4));
  await shown(workbench);
  await restedApp(app);
  await press(fields, 'take it away');
  expect(workbench.project?.plain).toBeUndefined();
  workbench.undo();
  workbench.undo();
  workbench.undo();
  workbench.undo();
  expect(workbench.project?.plain).toBeUndefined();
  expect(workbench.history?.canUndo).toBe(false);
});
