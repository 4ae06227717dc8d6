import { afterEach, beforeEach, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../src/app/tokens.css';
import '../../src/app/printer-fields.ts';
import type { PrinterFields } from '../../src/app/printer-fields.ts';
import type { PrinterProfile } from '../../src/model/printer.ts';
import { newProject } from '../../src/project/new-project.ts';
import { printerOf } from '../../src/project/printer-commands.ts';

let fields: PrinterFields;
let known: readonly PrinterProfile[] | undefined;

beforeEach(async () => {
  fields = document.createElement('fl-printer-fields') as PrinterFields;
  fields.project = newProject('helm', { hash: 'a'.repeat(64), fileName: 'helm.obj', format: 'obj' });
  fields.addEventListener('fl-command', (event) => {
    fields.project = fields.project && event.command.apply(fields.project);
  });
  fields.addEventListener('fl-wish', (event) => (known = event.patch.printers));
  document.body.append(fields);
  await rested();
});

afterEach(() => fields.remove());

/** Lines of the job sheet are drawn in a task of their own. */
async function rested(): Promise<void> {
  do await fields.updateComplete;
  while (fields.isUpdatePending);
}

const root = (): ShadowRoot => fields.shadowRoot as ShadowRoot;
const select = (): HTMLSelectElement => root().querySelector('select') as HTMLSelectElement;
const said = (): string =>
  [...root().querySelectorAll('[role=status]')].map((line) => line.textContent?.trim()).join(' ');

async function choose(text: string): Promise<void> {
  await userEvent.selectOptions(select(), text);
  await rested();
}

async function type(at: number, text: string): Promise<void> {
  const field = root().querySelectorAll('fl-length-field')[at].shadowRoot?.querySelector('input') as HTMLInputElement;
  field.focus();
  field.select();
  await userEvent.keyboard(`${text}{Enter}`);
  await rested();
}

async function press(text: string): Promise<void> {
  const button = [...root().querySelectorAll('button')].find((one) => one.textContent?.includes(text));
  button?.focus();
  await userEvent.keyboard('{Enter}');
  await rested();
}

it('takes what was measured, keeps it by name, adds what was still off, and forgets', async () => {
  await choose('measure a printer…');
  const name = root().querySelector('input') as HTMLInputElement;
  name.focus();
  await userEvent.keyboard('hall');
  await type(0, '103.1');
  await type(1, '98.8');
  await press('Draw pages for hall');
  expect(fields.project?.printer).toBe('hall');
  expect(fields.project && printerOf(fields.project)).toMatchObject({ acrossShare: 1.031, upShare: 0.988 });
  expect(known?.map((printer) => printer.name)).toEqual(['hall']);
  expect(said()).toContain('Prints 103.10 % across and 98.80 % up');

  (root().querySelector('details') as HTMLDetailsElement).open = true;
  await type(0, '100');
  await type(1, '130');
  await press('Draw pages for hall');
  expect(said()).toContain('set 100 %');
  await type(1, '101');
  await press('Draw pages for hall');
  expect(fields.project && printerOf(fields.project)?.upShare).toBeCloseTo(0.988 * 1.01, 12);

  await choose('any, uncorrected');
  expect(fields.project?.printer).toBeUndefined();
  await choose('hall');
  await press('forget hall');
  expect(fields.project?.printers).toBeUndefined();
  expect(known).toEqual([]);
});

it('offers a printer of an earlier job', async () => {
  fields.known = [{ name: 'loft', acrossShare: 0.99, upShare: 0.99, leanRad: 0.01 }];
  await rested();
  await choose('loft');
  expect(fields.project?.printers?.map(({ name }) => name)).toEqual(['loft']);
  expect(said()).toContain('leaning 0.57°');
});
