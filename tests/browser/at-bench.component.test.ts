import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import '../../src/app/tokens.css';
import '../../src/app/app.ts';
import type { App } from '../../src/app/app.ts';
import type { Cautions } from '../../src/app/cautions.ts';
import type { AtBench } from '../../src/app/at-bench/at-bench.ts';
import { workOrder } from '../../src/app/at-bench/work-order.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { faceOfPiece } from '../../src/app/piece-face.ts';
import { setPieceSetting } from '../../src/project/commands.ts';
import { axeFaults, findIn, openTrayApp, restedApp, soon } from './app-element.ts';

let app: App;
let workbench: Workbench;

const mode = (): AtBench => findIn<AtBench>(app, 'fl-at-bench');
const inMode = <T extends HTMLElement = HTMLElement>(selector: string): T => findIn<T>(app, 'fl-at-bench', selector);
const title = (): string => findIn(app, 'fl-at-bench', 'fl-work-line', 'h1').textContent.trim();
const foot = (): HTMLButtonElement[] => [...mode().shadowRoot!.querySelectorAll<HTMLButtonElement>('.foot button')];
const lines = () => workOrder(workbench.project!, workbench.bench, workbench.view.gluing.shop);

async function go(line: string | null): Promise<void> {
  workbench.setWishes({ atBench: { isOpen: true, line } });
  await restedApp(app);
}

async function press(keys: string): Promise<void> {
  await userEvent.keyboard(keys);
  await restedApp(app);
}

beforeAll(async () => {
  await page.viewport(1024, 768);
  ({ app, workbench } = await openTrayApp());
  await soon(() => expect(workbench.view.gluing.shop).not.toBeNull());
  await customElements.whenDefined('fl-job-sheet');
  workbench.setWishes({ atBench: { isOpen: true, line: null } });
  await customElements.whenDefined('fl-at-bench');
  await restedApp(app);
});

afterAll(async () => {
  app.remove();
  await page.viewport(1280, 720);
});

describe('the order of the work', () => {
  it('runs from paper over cutting, bevels and the dry fit to gluing and coats', () => {
    const phases = [...new Set(lines().map(({ phase }) => phase))];
    expect(phases).toEqual(['print', 'cut', 'bevel', 'fit', 'glue', 'finish']);
    expect(lines().filter(({ phase }) => phase === 'cut')).toHaveLength(6);
    expect(new Set(lines().map(({ key }) => key)).size).toBe(lines().length);
  });
});

describe('at the bench', () => {
  beforeEach(() => go('print/pages'));

  it('is gone through by keys alone: space ticks off and goes on, arrows go on and back, Esc leaves, and the place is found again', async () => {
    mode().focus();
    const [first, second, third] = lines();
    expect(title()).toContain('Print');
    await press(' ');
    expect(workbench.wishes.atBench?.line).toBe(second.key);
    expect(workbench.project?.done).toHaveLength(6);
    await press('{ArrowRight}');
    expect(workbench.wishes.atBench?.line).toBe(third.key);
    // Letters are no verbs here.
    const { stage } = workbench.view;
    await press('fw/');
    expect([workbench.view.stage, workbench.view.finderOpen]).toEqual([stage, false]);
    await press('{ArrowLeft}{ArrowLeft}');
    expect(workbench.wishes.atBench?.line).toBe(first.key);
    await press('{Control>}z{/Control}');
    expect(workbench.project?.done).toBeUndefined();
    await press('{ArrowRight}{ArrowRight}{Escape}');
    expect(app.shadowRoot!.querySelector('fl-at-bench')).toBeNull();
    app.verbs.find(({ id }) => id === 'at-bench')!.run();
    await restedApp(app);
    await soon(() => expect(app.shadowRoot!.activeElement).toBe(mode()));
    expect(workbench.wishes.atBench?.line).toBe(third.key);
  });

  it('is gone through by swipes, and a scroll or a tap is none', async () => {
    const work = inMode('.work');
    const swipe = async (dx: number, dy: number): Promise<void> => {
      const at = (kind: string, x: number, y: number): boolean =>
        work.dispatchEvent(
          new PointerEvent(kind, { pointerId: 7, pointerType: 'touch', isPrimary: true, clientX: x, clientY: y }),
        );
      at('pointerdown', 400, 300);
      at('pointerup', 400 + dx, 300 + dy);
      await restedApp(app);
    };
    const [first, second] = lines();
    await swipe(-150, 20);
    expect(workbench.wishes.atBench?.line).toBe(second.key);
    await swipe(-90, 80);
    await swipe(5, 3);
    expect(workbench.wishes.atBench?.line).toBe(second.key);
    await swipe(150, -20);
    expect(workbench.wishes.atBench?.line).toBe(first.key);
  });

  it('ticks pieces off by its buttons, tells what has changed since, and goes on with what is open', async () => {
    const cut = lines().filter(({ phase }) => phase === 'cut');
    await go(cut[0].key);
    foot()[1].click();
    await restedApp(app);
    expect(workbench.wishes.atBench?.line).toBe(cut[1].key);
    const [piece] = workbench.bench.pieces!.pieces;
    const { id } = piece;
    expect(workbench.project?.done?.find(({ piece }) => piece === id)?.cut).toBeDefined();
    await go(cut[0].key);
    expect(foot()[1].textContent).toContain('Take back');
    workbench.run(setPieceSetting(faceOfPiece(workbench.bench, piece), { name: 'Floor' }));
    await restedApp(app);
    expect(mode().shadowRoot!.querySelector('.told')!.textContent).toContain('Changed since it was ticked off: Cut 1');
    expect(findIn(app, 'fl-at-bench', 'fl-work-line', '.wrong').textContent).toContain('changed since');
    expect(foot()[1].textContent).toContain('Done');
    workbench.undo();
    workbench.undo();
    await restedApp(app);
    expect(workbench.project?.done).toBeUndefined();
  });

  it('tells cautions in full once for a kind of work, and where somebody comes in', async () => {
    const cautions = (): readonly string[] =>
      [...findIn(app, 'fl-at-bench', 'fl-work-line').shadowRoot!.querySelectorAll<Cautions>('fl-cautions')].map(
        (one) => one.manner,
      );
    const cut = lines().filter(({ phase }) => phase === 'cut');
    await go(cut[0].key);
    expect(cautions()).toEqual(['told']);
    await go(cut[1].key);
    expect(cautions()).toEqual(['named']);
    expect(findIn(app, 'fl-at-bench', 'fl-work-line').shadowRoot!.querySelector('details')).toBeNull();
    workbench.setWishes({ atBench: { isOpen: false, line: cut[1].key } });
    await restedApp(app);
    await go(cut[1].key);
    expect(cautions()).toEqual(['told']);
  });

  it('shows the picture of a step of gluing', async () => {
    await go(lines().find(({ phase }) => phase === 'glue')!.key);
    await soon(() =>
      expect(
        findIn(app, 'fl-at-bench', 'fl-work-line', 'fl-gluing-picture', 'svg').querySelector('path'),
      ).not.toBeNull(),
    );
    expect(findIn(app, 'fl-at-bench', 'fl-work-line').shadowRoot!.textContent).toContain('Touch first');
  });
});

describe('for gloves and for eyes two metres off', () => {
  // ISO 9241-303: a capital of 16 minutes of arc; 156 mm for 768 px is a 10-inch tablet (4:3), the capital is 0.67 of the type.
  it('type and targets are large enough on a tablet', async () => {
    await go(lines().find(({ phase }) => phase === 'cut')!.key);
    const type = parseFloat(getComputedStyle(findIn(app, 'fl-at-bench', 'fl-work-line', 'h1 .far')).fontSize);
    const capitalMm = 0.67 * type * (156 / 768);
    expect((60 * Math.atan(capitalMm / 2000) * 180) / Math.PI).toBeGreaterThanOrEqual(16);
    // MIL-STD-1472E, 5.4.3.1.3.3: keys of 19 mm under mittens.
    for (const button of foot()) expect(button.getBoundingClientRect().height * (156 / 768)).toBeGreaterThanOrEqual(19);
    for (const button of mode().shadowRoot!.querySelectorAll('button')) {
      const { width, height } = button.getBoundingClientRect();
      if (height > 0) expect(Math.min(width, height), button.textContent).toBeGreaterThanOrEqual(64);
    }
  });

  it.each([
    [1024, 768],
    [768, 1024],
    [390, 844],
    [844, 390],
    // 1280 x 800 at 200 %.
    [640, 400],
  ])('nothing is cut off in a window %d wide and %d high', async (width, height) => {
    await page.viewport(width, height);
    for (const what of ['pages', 'cut', 'glue']) {
      const { key } = lines().find((line) => line.what === what)!;
      await go(key);
      const work = inMode('.work');
      expect(work.scrollWidth, key).toBeLessThanOrEqual(work.clientWidth);
      expect(work.clientHeight, key).toBeGreaterThan(0.25 * height);
      const ends = foot().map((button) => button.getBoundingClientRect());
      expect(Math.max(...ends.map(({ bottom }) => bottom)), key).toBeLessThanOrEqual(height);
      expect(Math.max(...ends.map(({ right }) => right)), key).toBeLessThanOrEqual(width);
    }
    await page.viewport(1024, 768);
  });

  it.each([
    ['light', 'auto', ['glue']],
    ['dark', 'auto', ['cut']],
    ['dark', 'more', ['cut']],
  ] as const)('axe finds nothing by %s, contrast %s', async (theme, contrast, kinds) => {
    workbench.setWishes({ theme, contrast });
    for (const what of kinds) {
      await go(lines().find((line) => line.what === what)!.key);
      expect(await axeFaults(app), what).toEqual([]);
    }
  });
});

describe('at the shop', () => {
  it('what is bought is ticked off, kept in the job, and copied as text', async () => {
    workbench.setWishes({ atBench: { isOpen: false, line: null }, theme: 'auto', contrast: 'auto' });
    await restedApp(app);
    const list = (): ShadowRoot =>
      findIn(app, 'fl-job-sheet', 'fl-quantity-line', 'fl-shop-list').shadowRoot as ShadowRoot;
    const [foam] = list().querySelectorAll('input');
    // The size of its sheets is in the foam's name, and is told once.
    expect(list().querySelector('li')!.textContent).toMatch(/1.sheet\s+EVA 6 mm, 1000 × 2000\s*$/);
    expect(foam.closest('label')!.getBoundingClientRect().height).toBeGreaterThanOrEqual(44);
    foam.click();
    await restedApp(app);
    expect(workbench.project?.doneSteps).toEqual([{ id: 'buy/foam/eva-6/6', as: '1' }]);
    let text = '';
    const { clipboard } = navigator;
    const taken = { writeText: (copied: string) => Promise.resolve(void (text = copied)) };
    Object.defineProperty(navigator, 'clipboard', { value: taken, configurable: true });
    list().querySelector('button')!.click();
    await soon(() => expect(list().querySelector('[role=status]')!.textContent).toContain('Copied'));
    Object.defineProperty(navigator, 'clipboard', { value: clipboard, configurable: true });
    expect(text).toMatch(/^tool tray: to buy\n☑ 1.sheet/);
    expect(text.split('\n')).toHaveLength(1 + list().querySelectorAll('li').length);
    workbench.undo();
    expect(workbench.project?.doneSteps).toBeUndefined();
  });
});
