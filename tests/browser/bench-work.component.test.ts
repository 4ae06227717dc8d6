import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import '../../src/app/tokens.css';
import '../../src/app/app.ts';
import type { App } from '../../src/app/app.ts';
import { FIRST_PICK } from '../../src/app/files-look.ts';
import { FILES_WORDS } from '../../src/app/files-words.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { axeFaults, findIn, openTrayApp, restedApp, soon } from './app-element.ts';

// One window for all: opening it takes longest.
let app: App;
let workbench: Workbench;

const line = <T extends HTMLElement = HTMLElement>(name: string, ...rest: string[]): T =>
  findIn<T>(app, 'fl-job-sheet', `fl-${name}`, ...rest);
const rested = (): Promise<void> => restedApp(app);
const shop = () => workbench.view.gluing.shop!;

/** Waits for the work at the bench of the last result. */
async function worked(change: () => unknown): Promise<void> {
  const before = shop();
  await change();
  await soon(() => expect(shop() !== before && shop() !== null).toBe(true));
  await rested();
}

/** Types into a field and leaves it. */
function type(input: HTMLInputElement, text: string): void {
  input.value = text;
  input.dispatchEvent(new Event('change'));
}

beforeAll(async () => {
  ({ app, workbench } = await openTrayApp());
  await soon(() => expect(workbench.view.gluing.shop).not.toBeNull());
  await rested();
});

afterAll(() => app.remove());

describe('the order of gluing', () => {
  const rows = () => [...line('gluing-line', 'fl-gluing-steps').shadowRoot!.querySelectorAll<HTMLElement>('.step')];
  const button = (i: number): HTMLButtonElement => rows()[i].querySelector<HTMLButtonElement>(':scope > button')!;

  it('lights a step up on the bench and shows its picture', async () => {
    button(1).click();
    await rested();
    expect(workbench.view.choice).toEqual({ kind: 'step', step: 2 });
    expect(button(1).getAttribute('aria-expanded')).toBe('true');
    await soon(() => expect(workbench.view.gluing.picture?.step).toBe(2));
    await rested();
    const picture = rows()[1].querySelector('fl-gluing-picture')!.shadowRoot!.querySelector('svg')!;
    expect(picture.querySelectorAll('path').length).toBeGreaterThan(0);
    expect(rows()[1].textContent).toContain('Touch first');
    expect(await axeFaults(app)).toEqual([]);
  });

  it('moves a step by keys, and the keyboard goes along', async () => {
    const title = shop().steps[1].title;
    button(1).focus();
    await worked(() => userEvent.keyboard('{Alt>}{ArrowUp}{/Alt}'));
    expect(workbench.view.choice).toEqual({ kind: 'step', step: 1 });
    const list = line('gluing-line', 'fl-gluing-steps').shadowRoot!;
    expect(list.activeElement).toBe(button(0));
    await worked(() => workbench.undo());
    expect(shop().steps[1].title).toBe(title);
  });

  it('moves a step by dragging it', async () => {
    const grip = rows()[0].querySelector<HTMLElement>('.grip')!;
    const { top, height } = rows()[1].getBoundingClientRect();
    const at = (kind: string, clientY: number): unknown =>
      grip.dispatchEvent(new PointerEvent(kind, { pointerId: 1, button: 0, clientY, bubbles: true }));
    grip.setPointerCapture = () => undefined;
    const order = shop().order;
    await worked(() => {
      at('pointerdown', grip.getBoundingClientRect().top);
      at('pointermove', top + 0.9 * height);
      return at('pointerup', top + 0.9 * height);
    });
    expect(workbench.part?.gluing).toHaveLength(order.length);
    expect(shop().order[0]).not.toEqual(order[0]);
    await worked(() => workbench.undo());
  });
});

describe('what it takes', () => {
  const fields = (of: string, ...path: string[]): HTMLInputElement[] =>
    [...line('quantity-line', ...path).shadowRoot!.querySelectorAll(of)].map((field) =>
      field.shadowRoot!.querySelector('input')!,
    );

  it('tells costs once a price is known, and follows the label of the glue', async () => {
    await worked(() => type(fields('fl-number-field')[0], '12,5'));
    expect(workbench.project?.shop?.sheetPrices?.[0].price).toBe(12.5);
    expect(line('quantity-line', 'fl-quantity-table').shadowRoot!.querySelector('tfoot')!.textContent).toContain(
      '12.50',
    );
    const wait = fields('fl-number-field', 'fl-quantity-glue')[0];
    type(wait, '40');
    await rested();
    expect(line('quantity-line', 'fl-quantity-glue', '[role=status]').textContent).toContain('41 min');
    expect(workbench.project?.shop?.glue).toBeUndefined();
    await worked(() => type(wait, '10'));
    expect(shop().gluing.glue.waitMin).toBe(10);
    for (const details of app
      .shadowRoot!.querySelector('fl-job-sheet')!
      .shadowRoot!.querySelectorAll('fl-quantity-line'))
      details.shadowRoot!.querySelectorAll('details').forEach((one) => (one.open = true));
    expect(await axeFaults(app)).toEqual([]);
  });

  it('takes coats away and puts them on', async () => {
    const remove = line('quantity-line', 'fl-coat-list', 'li button');
    await worked(() => remove.click());
    expect(workbench.project?.shop?.coatings?.map(({ id }) => id)).toEqual(['acrylic']);
    expect(shop().quantities.coatings).toHaveLength(1);
    await worked(() => workbench.undo());
  });
});

describe('files to take away', () => {
  const save = (): HTMLButtonElement => line<HTMLButtonElement>('files-line', 'button.save');
  const caution = (): Element | null => line('files-line').shadowRoot!.querySelector('.caution');

  it('for a cutter are offered once what a laser must never cut was read, or a blade cuts', async () => {
    expect(save().disabled).toBe(false);
    workbench.setWishes({ files: { ...FIRST_PICK, dxf: true } });
    await rested();
    expect(save().disabled).toBe(true);
    expect(caution()!.textContent).toContain('PVC');
    expect(await axeFaults(app)).toEqual([]);
    const kind = line<HTMLSelectElement>('files-line', 'fl-cutter-fields', 'select');
    kind.value = 'blade';
    kind.dispatchEvent(new Event('change'));
    await rested();
    expect([save().disabled, caution()]).toEqual([false, null]);
    kind.value = 'laser';
    kind.dispatchEvent(new Event('change'));
    await rested();
    expect(save().disabled).toBe(true);
    caution()!.querySelector('button')!.click();
    await rested();
    expect([save().disabled, caution()]).toEqual([false, null]);
    expect(workbench.project?.cutter).toEqual({ kind: 'laser' });
  });

  it('are made, told, and can be called off', async () => {
    workbench.setWishes({ files: { ...FIRST_PICK, paper: ['cutList', 'gluing'] } });
    await rested();
    const { workshop } = workbench;
    const makeFiles = workshop.makeFiles.bind(workshop);
    save().click();
    await soon(() => expect(workbench.view.making.saved?.names).toEqual(['cut-list.csv', 'gluing.json']));
    await rested();
    expect(line('files-line').shadowRoot!.textContent).toContain('with 2 files');
    let answer: (made: null) => void = () => undefined;
    workshop.makeFiles = () => new Promise((resolve) => (answer = resolve));
    const stopped = new Promise((resolve) => {
      workshop.stopFiles = () => {
        resolve(null);
        answer(null);
        return Promise.resolve();
      };
    });
    save().click();
    await rested();
    line('files-line', 'progress + .row button').click();
    await stopped;
    await rested();
    workshop.makeFiles = makeFiles;
    expect(workbench.view.making.progress).toBeNull();
    expect(workbench.spoken.trim()).toBe(FILES_WORDS.spoken.stopped);
  });
});
