import axe from 'axe-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import '../../src/app/tokens.css';
import '../../src/app/app.ts';
import type { App } from '../../src/app/app.ts';
import { GLOSSARY_WORDS } from '../../src/app/help/glossary-words.ts';
import { GUIDE_WORDS } from '../../src/app/help/guide-words.ts';
import { MEANS_WORDS } from '../../src/app/help/means-words.ts';
import { meaningOf } from '../../src/app/help/meant-field.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { findIn, openTrayApp, restedApp, soon } from './app-element.ts';

let app: App;
let workbench: Workbench;

beforeAll(async () => {
  ({ app, workbench } = await openTrayApp());
  for (const one of inside(app.shadowRoot!)) if (one instanceof HTMLDetailsElement) one.open = true;
  await restedApp(app);
});

afterAll(() => app.remove());

const help = (): ShadowRoot => findIn(app, 'fl-field-help').shadowRoot!;
const guide = (): ShadowRoot => findIn(app, 'fl-job-sheet', 'fl-guide-line').shadowRoot!;
const sheet = (): ShadowRoot => findIn(app, 'fl-help-sheet').shadowRoot!;
const press = (root: ShadowRoot, text: string): void => {
  const button = [...root.querySelectorAll('button')].find((one) => one.textContent?.trim().startsWith(text));
  if (button === undefined) throw new Error(`no button ${text}`);
  button.click();
};

/** Faults of any weight that the rules find in one element of the window. */
async function faultsIn(root: ShadowRoot): Promise<string[]> {
  const { violations } = await axe.run(root.host, { rules: { region: { enabled: false } } });
  return violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html.slice(0, 160)}`));
}

/** Everything inside an element, through shadow roots. */
function* inside(root: ParentNode): Generator<Element> {
  for (const element of root.querySelectorAll('*')) {
    yield element;
    if (element.shadowRoot !== null) yield* inside(element.shadowRoot);
  }
}

/** Where a field stands, for the message. */
const nameOf = (field: Element): string =>
  `${(field.getRootNode() as ShadowRoot).host.localName}: ${field.outerHTML.slice(0, 90)}`;

it('says of every field in the open window what it means', () => {
  const fields = [...inside(app.shadowRoot!)].filter((one) => one.matches('input:not([type=file]), select, textarea'));
  expect(fields.length).toBeGreaterThan(60);
  expect(fields.filter((field) => meaningOf(field) === null).map(nameOf)).toEqual([]);
});

it('opens what a field means by F1 under it, leads to the words of the trade, and closes by Esc without leaving the field', async () => {
  const field = findIn<HTMLInputElement>(app, 'fl-job-sheet', 'fl-foam-line', 'input[data-means=neutral]');
  field.focus();
  expect(field.ariaDescription).toContain('keeps its length in a bend');
  await userEvent.keyboard('{F1}');
  await soon(() => expect(help().querySelector('.note p')?.textContent).toContain('keeps its length in a bend'));
  expect(help().querySelector('.note svg')).not.toBeNull();
  expect(findIn(app, 'fl-job-sheet', 'fl-foam-line').shadowRoot?.activeElement).toBe(field);
  expect(await faultsIn(help())).toEqual([]);

  const thickness = findIn(app, 'fl-job-sheet', 'fl-foam-line', 'fl-length-field[data-means=thickness]', 'input');
  thickness.focus();
  await soon(() => expect(help().querySelector('.note .word')?.textContent).toBe('bevel'));
  help().querySelector<HTMLElement>('.note .word')!.click();
  await soon(() => expect(help().querySelector('.note b')?.textContent).toBe(GLOSSARY_WORDS.bevel.word));
  await userEvent.keyboard('{Escape}');
  await soon(() => expect(help().querySelector('.note')).toBeNull());
});

it('shows the mark beside a field that is pointed at, in the margin of its line', async () => {
  const field = findIn(app, 'fl-job-sheet', 'fl-paper-line', 'select[data-means=paper]');
  field.scrollIntoView({ block: 'center' });
  field.dispatchEvent(new PointerEvent('pointermove', { bubbles: true, composed: true, pointerType: 'touch' }));
  await soon(() => {
    const mark = help().querySelector('.mark')!.getBoundingClientRect();
    const box = field.getBoundingClientRect();
    expect(Math.abs(mark.y + mark.height / 2 - box.y - box.height / 2)).toBeLessThan(2);
    expect(mark.right).toBeLessThanOrEqual(box.x);
    expect(mark.width).toBe(36);
  });
  help().querySelector<HTMLElement>('.mark')!.click();
  await soon(() =>
    expect(help().querySelector('.note p')?.textContent?.trim()).toContain(MEANS_WORDS.paper.slice(0, 20)),
  );
  await userEvent.keyboard('{Escape}');
});

it('lays all keys over the bench by ?, as the window reads them, and puts them away by Esc', async () => {
  (document.activeElement as HTMLElement | null)?.blur();
  await userEvent.keyboard('?');
  await soon(() => expect(sheet().querySelectorAll('section').length).toBeGreaterThan(10));
  const told = [...sheet().querySelectorAll('dl.keys > div')].map((one) => (one.textContent ?? '').replace(/\s+/g, ''));
  for (const verb of app.verbs) {
    if (verb.key === undefined || verb.key === '?' || app.verbs.find(({ key }) => key === verb.key) !== verb) continue;
    expect(told).toContain(`${verb.key.toUpperCase()}${verb.label.replace(/\s+/g, '')}`);
  }
  expect(sheet().textContent).not.toContain('undefined');
  expect(await faultsIn(sheet())).toEqual([]);
  await userEvent.keyboard('{Escape}');
  await soon(() => expect(workbench.view.help.sheet).toBeNull());
});

it('finds a word of the trade by what else it is called, and opens the glossary there', async () => {
  await userEvent.keyboard('/');
  await soon(() => findIn(app, 'fl-finder', 'input'));
  await userEvent.keyboard('wedge{Enter}');
  await soon(() => expect(sheet().querySelector('.is-asked dt')?.textContent).toBe('dart'));
  expect(await faultsIn(sheet())).toEqual([]);
  await userEvent.keyboard('{Escape}');
  await soon(() => expect(workbench.view.help.sheet).toBeNull());
});

it('offers ten steps, ticks what is really done, points at the next, and can be left and taken up', async () => {
  press(guide(), GUIDE_WORDS.begin);
  await soon(() => expect(guide().querySelectorAll('ol button').length).toBe(10));
  const title = (): string => guide().querySelector('h2')?.textContent ?? '';
  expect(title()).toContain(GUIDE_WORDS.steps.size.title);
  await soon(() => expect(findIn(app, 'fl-job-sheet', '#size').hasAttribute('data-next')).toBe(true));
  expect(await faultsIn(guide())).toEqual([]);

  press(guide(), GUIDE_WORDS.on);
  await soon(() => expect(title()).toContain(GUIDE_WORDS.steps.apart.title));
  workbench.setView({ stage: 1 });
  await soon(() => expect(workbench.wishes.guide?.done).toEqual(['apart']));
  await soon(() => expect(title()).toContain(GUIDE_WORDS.steps.seam.title));

  press(guide(), GUIDE_WORDS.leave);
  await soon(() =>
    expect(app.shadowRoot?.querySelector('fl-job-sheet')?.shadowRoot?.querySelector('fl-guide-line')).toBeNull(),
  );
  app.verbs.find(({ id }) => id === 'guide')?.run();
  await soon(() => expect(title()).toContain(GUIDE_WORDS.steps.size.title));
  expect(guide().querySelectorAll('ol path').length).toBe(1);
});
