import { afterEach, beforeEach, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../src/app/tokens.css';
import '../../src/app/app.ts';
import type { App } from '../../src/app/app.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { changePlain } from '../../src/project/plain-commands.ts';
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

it('builds up a core of a typed profile, draws its side, and joins it to the sculpt it stands in', async () => {
  await openPartedTray(workbench);
  await restedApp(app);
  await press(inLine(), 'Build up a core');
  const fields = await soon(() => inLine('fl-build-up-fields'));
  const profile = await soon(() => {
    const input = fields.shadowRoot?.querySelector<HTMLInputElement>('.profile input');
    if (input == null) throw new Error('no profile');
    return input;
  });
  profile.select();
  await userEvent.keyboard('0;26{Enter}');
  const fault = (): string => fields.shadowRoot?.querySelector('#profile-fault')?.textContent ?? '';
  await soon(() => expect(fault()).toContain('length:radius'));
  profile.select();
  await userEvent.keyboard('0:28,200:22{Enter}');
  await soon(() => expect(plain(0)).toMatchObject({ wish: { profile: [{ radiusMm: 28 }, { atMm: 200 }] } }));
  const pipe = fields.shadowRoot?.querySelector('select');
  await soon(() => expect(pipe?.value).toBe('PVC 32'));
  await userEvent.selectOptions(pipe as HTMLSelectElement, 'PVC 40');
  // ISO 161-1: a pipe of 40 is 40 mm outside.
  await soon(() => expect(plain(0)).toMatchObject({ wish: { core: { pipe: 'PVC 40', diameterMm: 40 } } }));
  const picture = (): string =>
    fields.shadowRoot?.querySelector('fl-core-side')?.shadowRoot?.querySelector('svg')?.getAttribute('aria-label') ??
    '';
  await soon(() => expect(picture()).toMatch(/PVC 40, [1-9]/));
  await press(fields, 'Wind a strip round it');
  await soon(() => expect(plain(0)).toMatchObject({ wish: { windings: [{ fromMm: 0, toMm: 200 }] } }));
  await shown(workbench);

  const { positions } = workbench.bench.sculpt ?? { positions: [] };
  const middle = [0, 1, 2].map((axis) => {
    const own = Array.from(positions).filter((_, i) => i % 3 === axis);
    return (Math.min(...own) + Math.max(...own)) / 2;
  });
  const id = workbench.project?.plain?.[0].id;
  if (id === undefined) throw new Error('no core');
  const transform = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, middle[0], middle[1], middle[2] - 100, 1];
  workbench.run(changePlain(id, { transform }));
  await shown(workbench);
  await restedApp(app);
  await soon(() => press(inLine('fl-findings'), 'core goes through tool tray'));
  await soon(() => expect(workbench.project?.joins).toMatchObject([{ kind: 'hole', part: id, through: 'part-1' }]));
  await shown(workbench);
  await restedApp(app);
  expect(workbench.bench.findings.map(({ code }) => code)).not.toContain('assembly/runs-into');
  await type(inLine('fl-part-joins'), 'Room all round', '2');
  await soon(() => expect(workbench.project?.joins).toMatchObject([{ roomMm: 2 }]));
  await shown(workbench);
  await restedApp(app);
  expect(await axeFaults(app)).toEqual([]);
  await press(inLine('fl-part-joins'), 'forget it');
  await soon(() => expect(workbench.project?.joins).toBeUndefined());
  workbench.undo();
  workbench.undo();
  workbench.undo();
  expect(workbench.project?.joins).toBeUndefined();
});
