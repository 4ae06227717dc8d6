import { afterAll, beforeAll, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../src/app/app.ts';
import type { App } from '../../src/app/app.ts';
import type { Stage } from '../../src/app/stage.ts';
import { PLACING_WORDS } from '../../src/app/placing-words.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { axeFaults, findIn, openTrayApp, restedApp, soon } from './app-element.ts';

let app: App;
let workbench: Workbench;

beforeAll(async () => {
  ({ app, workbench } = await openTrayApp());
});

afterAll(() => app.remove());

const view = (): ShadowRoot => findIn(app, 'fl-sheet-view').shadowRoot as ShadowRoot;
const pieceAt = (i: number): SVGGElement => view().querySelectorAll<SVGGElement>('g.piece')[i];
const said = (): string => view().querySelector('.said')?.textContent?.trim() ?? '';
const held = () => workbench.project?.stock?.pieces?.flatMap((piece) => piece.held ?? []) ?? [];
const places = () => workbench.bench.sheets?.sheets[0].placements ?? [];

async function press(keys: string): Promise<void> {
  await userEvent.keyboard(keys);
  await new Promise((resolve) => setTimeout(resolve, 20));
  await restedApp(app);
}

/** A pointer's way over the sheet, in steps of the page. */
async function drag(from: SVGGElement, byX: number, byY: number): Promise<void> {
  const box = from.querySelector('.body')?.getBoundingClientRect() as DOMRect;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const svg = view().querySelector('svg') as SVGSVGElement;
  const at = (clientX: number, clientY: number) => ({ clientX, clientY, pointerId: 1, bubbles: true, button: 0 });
  svg.setPointerCapture = () => undefined;
  from.dispatchEvent(new PointerEvent('pointerdown', at(x, y)));
  for (const share of [0.5, 1]) {
    svg.dispatchEvent(new PointerEvent('pointermove', at(x + share * byX, y + share * byY)));
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  svg.dispatchEvent(new PointerEvent('pointerup', at(x + byX, y + byY)));
  await new Promise((resolve) => setTimeout(resolve, 20));
  await restedApp(app);
}

it('lays a sheet over the bench; keys move, turn, hold and release a piece, and others stay where they lie', async () => {
  const before = places();
  expect(before.length).toBeGreaterThan(3);
  workbench.setView({ choice: { kind: 'sheet', sheet: 0 } });
  await restedApp(app);
  // The last one on the sheet has room behind it.
  const last = before.reduce((best, one, i) => (one.y > before[best].y ? i : best), 0);
  pieceAt(last).focus();
  await press('{ArrowUp}{ArrowUp}{ArrowUp}');
  const [hold] = held();
  expect(hold).toMatchObject({ copy: before[last].copy, turnRad: before[last].turnRad });
  expect(Math.hypot(hold.x - before[last].x, hold.y - before[last].y)).toBeGreaterThan(4);
  const others = (list: typeof before) =>
    list.filter(({ piece }) => piece !== before[last].piece).map(({ x, y }) => [x, y]);
  expect(others(places())).toEqual(others(before));
  expect(pieceAt(last).getAttribute('aria-label')).toMatch(/, held$/);
  expect(await axeFaults(app)).toEqual([]);

  // Turned it is too wide for where it lies: that is said and not kept, until it is moved clear.
  await press('.');
  expect(said()).toContain('would lie over');
  expect(held()).toEqual([hold]);
  await press('{Escape}');
  expect(workbench.view.choice.kind).toBe('sheet');
  await press('{ArrowUp>16/}');
  await press('.');
  expect(held()[0].turnRad).toBeCloseTo(before[last].turnRad - Math.PI / 12, 9);
  await press('h');
  expect(held()).toEqual([]);
  for (let i = 0; i < 4; i += 1) workbench.undo();
  await restedApp(app);
  expect(places()).toEqual(before);
});

it('moves a piece with its buttons as with the arrow keys, for who does not drag', async () => {
  const before = places();
  const last = before.reduce((best, one, i) => (one.y > before[best].y ? i : best), 0);
  pieceAt(last).focus();
  await restedApp(app);
  const ways = findIn(app, 'fl-sheet-view', 'fl-sheet-piece-row').shadowRoot!.querySelectorAll<HTMLElement>('.ways *');
  expect([...ways].map((way) => way.ariaLabel)).toEqual(Object.values(PLACING_WORDS.ways));
  ways[1].click();
  await soon(() => expect(held()).toHaveLength(1));
  const [{ x, y }] = held();
  await restedApp(app);
  workbench.undo();
  await restedApp(app);
  await press('{ArrowUp}');
  await soon(() => expect(held()).toMatchObject([{ x, y }]));
  workbench.undo();
  await restedApp(app);
  expect(places()).toEqual(before);
});

it('puts a dragged piece down only where it can lie, and says what is in the way', async () => {
  const before = places();
  await drag(pieceAt(0), 4000, 0);
  expect(said()).toContain('over the edge');
  expect(places()).toEqual(before);
  expect(held()).toEqual([]);
  await press('{Escape}');
  expect(workbench.view.choice.kind).toBe('nothing');
});

it('brings a sheet near by its title, which is a button for keys', async () => {
  const stage = findIn<Stage>(app, 'fl-stage');
  workbench.setView({ stage: 3 });
  await restedApp(app);
  await stage.settled();
  const title = findIn(app, 'fl-stage', 'fl-stage-titles', 'button');
  expect(title.getAttribute('aria-label')).toMatch(/^Sheet 1, .*: come close$/);
  const width = (): number => title.getBoundingClientRect().width;
  const withPieces = width();
  expect(withPieces).toBeGreaterThan(36);
  // All of the sheet is more than what is cut of it.
  title.click();
  await soon(() => expect(width()).toBeLessThan(0.9 * withPieces));
  const withSheet = width();
  stage.look('nearer');
  await soon(() => expect(width()).toBeGreaterThan(1.1 * withSheet));
  title.click();
  await soon(() => expect(width()).toBeCloseTo(withSheet, 0));
});

it('says at the slider what lies over the bench, and puts it away for a place of the slider', async () => {
  const rule = findIn(app, 'fl-stage-rule');
  const pressed = (): number => rule.shadowRoot!.querySelectorAll('[aria-pressed=true]').length;
  workbench.setView({ stage: 0, choice: { kind: 'page', page: 0 } });
  await restedApp(app);
  expect(rule.shadowRoot!.textContent).toContain('A page lies over the bench.');
  expect(pressed()).toBe(0);
  rule.shadowRoot!.querySelectorAll<HTMLButtonElement>('.names button')[0].click();
  await restedApp(app);
  expect(workbench.view.choice.kind).toBe('nothing');
  expect(pressed()).toBe(1);
});

it('says that it is being set out, until it is', async () => {
  const stage = findIn<Stage>(app, 'fl-stage');
  const word = findIn(app, 'fl-stage', '.word');
  await stage.settled();
  await soon(() => expect(word.hidden).toBe(true));
  const seen: boolean[] = [];
  new MutationObserver(() => seen.push(word.hidden === true)).observe(word, { attributeFilter: ['hidden'] });
  workbench.setView({ stage: 2 });
  await soon(() => expect(seen.length).toBeGreaterThan(0));
  await stage.settled();
  await soon(() => expect(word.hidden).toBe(true));
});
