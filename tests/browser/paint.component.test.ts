import { afterEach, beforeEach, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import '../../src/app/tokens.css';
import '../../src/app/app.ts';
import type { App } from '../../src/app/app.ts';
import { PAINT_WORDS } from '../../src/app/paint-words.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { axeFaults, findIn, openTrayApp, restedApp } from './app-element.ts';

let app: App;
let workbench: Workbench;

beforeEach(async () => {
  ({ app, workbench } = await openTrayApp());
});

afterEach(() => {
  app.remove();
});

const inLine = (...path: string[]): HTMLElement => findIn(app, 'fl-job-sheet', 'fl-finish-line', ...path);
const buttonIn = (element: HTMLElement, text: string): HTMLElement =>
  [...element.shadowRoot!.querySelectorAll('button')].find(({ textContent }) => textContent.trim() === text)!;

/** What lies beside the work follows a result. */
async function planned(): Promise<NonNullable<Workbench['view']['gluing']['shop']>['finish']> {
  await restedApp(app);
  await expect.poll(() => workbench.view.gluing.shop?.finish.plan.colours.length).toBeGreaterThan(0);
  return workbench.view.gluing.shop!.finish;
}

it('a colour is added and named by keys, painted on a piece, and shown', async () => {
  const list = inLine('fl-paint-list');
  await userEvent.click(inLine('fl-paint-list', 'summary'));
  await userEvent.click(buttonIn(list, PAINT_WORDS.colours.add));
  await restedApp(app);
  await userEvent.fill(inLine('fl-paint-list', 'input[type="text"]'), 'Brass');
  await userEvent.keyboard('{Enter}');
  await restedApp(app);
  expect(workbench.project?.shop?.colours).toMatchObject([{ name: 'Brass', figures: 'usual' }]);

  const piece = workbench.bench.pieces!.pieces[0];
  workbench.setView({ choice: { kind: 'piece', piece: piece.id }, place: null });
  await restedApp(app);
  const field = findIn<HTMLSelectElement>(app, 'fl-chosen-row', 'fl-paint-field', 'select');
  await userEvent.selectOptions(field, 'Brass');
  const { plan, groups } = await planned();
  expect(plan.colours[0].pieces.map(({ piece: id }) => id)).toEqual([piece.id]);
  expect(groups.flatMap(({ steps }) => steps.map(({ title }) => title)).join()).toContain('Brass on');
  expect(workbench.part?.regions).toMatchObject([{ name: piece.name, colour: 'colour-1' }]);

  buttonIn(inLine(), PAINT_WORDS.show).focus();
  await userEvent.keyboard(' ');
  await restedApp(app);
  expect(workbench.view.colouring).toBe('paint');
  expect(buttonIn(inLine(), PAINT_WORDS.show).getAttribute('aria-pressed')).toBe('true');

  expect(await axeFaults(app)).toEqual([]);
  workbench.undo();
  await restedApp(app);
  expect(workbench.part?.regions).toEqual([]);
});
