import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import '../../src/app/tokens.css';
import '../../src/app/app.ts';
import type { App } from '../../src/app/app.ts';
import type { SpotList } from '../../src/app/spot-list.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { WORDS } from '../../src/app/words.ts';
import type { FoamSpot } from '../../src/model/forming.ts';
import { addRegion, setThickness } from '../../src/project/commands.ts';
import { axeFaults, findIn, openTrayApp, restedApp } from './app-element.ts';

let app: App;
let workbench: Workbench;

beforeEach(async () => {
  ({ app, workbench } = await openTrayApp());
});

afterEach(() => {
  app.remove();
});

const find = <T extends HTMLElement = HTMLElement>(...path: string[]): T => findIn<T>(app, ...path);

const inFit = <T extends HTMLElement>(...path: string[]): T => find<T>('fl-job-sheet', 'fl-fit-line', ...path);
const inFoam = <T extends HTMLElement>(...path: string[]): T => find<T>('fl-job-sheet', 'fl-foam-line', ...path);
const inRow = <T extends HTMLElement>(...path: string[]): T => find<T>('fl-chosen-row', ...path);
const textOf = (element: HTMLElement): string => (element.textContent ?? '').replace(/\s+/g, ' ').trim();

const rested = (): Promise<void> => restedApp(app);

const faults = (): Promise<string[]> => axeFaults(app);

describe('how pieces are laid flat', () => {
  const wishes = () => workbench.part?.flatten;
  const headings = (): string[] =>
    [...inFit('fl-laying-group', 'table').querySelectorAll('thead th')].map((cell) => textOf(cell as HTMLElement));

  it('is closed at first, and opens with the keyboard', async () => {
    const details = inFit<HTMLDetailsElement>('fl-laying-group', 'details');
    expect(details.open).toBe(false);
    inFit('fl-laying-group', 'summary').focus();
    await userEvent.keyboard('{Enter}');
    expect(details.open).toBe(true);
    expect(textOf(inFit('fl-laying-group', 'summary'))).toBe(WORDS.forming.laying.summary);
  });

  it('takes prices from the arrow keys, names the step, and undoes', async () => {
    inFit('fl-laying-group', 'summary').click();
    const before = wishes();
    const seams = inFit<HTMLInputElement>('fl-laying-group', '#seams');
    const step = (price: number): number => WORDS.forming.laying.steps.findIndex((known) => known.price === price);
    expect(seams.valueAsNumber).toBe(step(before?.seamPrice ?? -1));
    seams.focus();
    await userEvent.keyboard('{ArrowRight}');
    await rested();
    expect(wishes()?.seamPrice).toBe(1000);
    expect(textOf(inFit('fl-laying-group', 'output[for=seams]'))).toBe('truest seams, 1000');
    expect(seams.getAttribute('aria-valuetext')).toBe('truest seams, 1000');
    inFit('fl-laying-group', '#squash').focus();
    await userEvent.keyboard('{End}');
    await rested();
    expect(wishes()?.squashPrice).toBe(10);
    expect(textOf(inFit('fl-laying-group', 'output[for=squash]'))).toBe('10 times');
    workbench.undo();
    workbench.undo();
    await rested();
    expect(wishes()).toEqual(before);
    expect(seams.valueAsNumber).toBe(step(before?.seamPrice ?? -1));
  });

  it('takes the switches from the mouse and tells the price of the last change', async () => {
    inFit('fl-laying-group', 'summary').click();
    expect(headings()).toEqual([WORDS.forming.laying.now]);
    await userEvent.click(inFit('fl-laying-group', 'input[type=checkbox]'));
    expect(wishes()?.evenOut).toBe(true);
    await rested();
    expect(headings()).toEqual([WORDS.forming.laying.before, WORDS.forming.laying.now]);
    const cells = [...inFit('fl-laying-group', 'tbody').querySelectorAll<HTMLElement>('td')].map(textOf);
    expect(cells).toHaveLength(6);
    for (const cell of cells) expect(cell).toMatch(/^\d+\.\d+ (%|mm)$/);
    expect(await faults()).toEqual([]);
    workbench.run(setThickness(8));
    await rested();
    expect(headings()).toEqual([WORDS.forming.laying.now]);
  });
});

describe('places where the foam gives most', () => {
  const spot = (percent: number, meshTriangle: number): FoamSpot => ({
    kind: percent > 5 ? 'stretch' : 'squash',
    triangle: 0,
    meshTriangle,
    percent,
    areaMm2: 40,
    at: { x: 0, y: 0 },
    point: [0, 0, 0],
    alongRad: 0,
    way: 'one',
    wayText: 'pull it along the up arrow',
    placeText: 'near the top',
  });

  it('are listed worst first, pointed at and chosen, beside what no laying flat can better', async () => {
    const { pieces } = workbench.bench;
    const [first, second, ...others] = pieces!.pieces;
    const least = { kind: 'dome', centreVertex: 0, centreTriangle: 0, centre: [0, 0, 0], radiusMm: 30 } as const;
    const leastRatio = { ...least, ratio: 1.07, heldDeg: 40, defectDeg: 40, domeDeg: 40, saddleDeg: 0 };
    const list = document.createElement('fl-spot-list') as SpotList;
    list.project = workbench.project;
    list.bench = {
      ...workbench.bench,
      pieces: {
        ...pieces!,
        pieces: [
          { ...first, spots: [spot(4, 0), spot(0.2, 1)] },
          { ...second, spots: [spot(9, 7), spot(3, 2), spot(2, 3)], leastRatio },
          ...others,
        ],
      },
    };
    app.shadowRoot!.querySelector('main')!.append(list);
    await list.updateComplete;
    const places = (): HTMLElement[] => [...list.shadowRoot!.querySelectorAll<HTMLElement>('button.place')];
    expect(places().map(textOf)).toEqual([
      `9.0 % stretch ${second.name}, near the top: pull it along the up arrow`,
      `4.0 % squash ${first.name}, near the top: pull it along the up arrow`,
      `3.0 % squash ${second.name}, near the top: pull it along the up arrow`,
    ]);
    expect(textOf(list.shadowRoot!.querySelector('.bound')!)).toContain('at least 7.0 % longer');
    places()[0].focus();
    expect(workbench.view.pointed?.vertices).toEqual([workbench.bench.sculpt!.triangles[21]]);
    places()[0].click();
    expect(workbench.view.choice).toEqual({ kind: 'piece', piece: second.id });
    list.shadowRoot!.querySelector<HTMLElement>('button.plain')!.click();
    await list.updateComplete;
    expect(places()).toHaveLength(4);
    expect(await faults()).toEqual([]);
    list.remove();
  });
});

describe('heat shrinkage', () => {
  const fields = (): HTMLInputElement[] => [
    ...inFoam('fl-shrink-fields', '.fields').querySelectorAll<HTMLInputElement>('input'),
  ];
  const allow = () => inFoam<HTMLInputElement>('fl-shrink-fields', 'input[type=checkbox]');

  it('is measured first, then allowed for, and printed larger', async () => {
    inFoam('summary').click();
    expect(allow().disabled).toBe(true);
    await userEvent.fill(fields()[0], '3 %');
    await userEvent.keyboard('{Tab}');
    await rested();
    expect(fields().map(({ value }) => value)).toEqual(['3', '3']);
    await userEvent.fill(fields()[1], '1,5');
    await userEvent.keyboard('{Tab}');
    await rested();
    const boxOf = () => workbench.bench.pieces!.templates[0].foamBox;
    const before = boxOf();
    await userEvent.click(allow());
    await rested();
    expect(workbench.part?.layers[0].allowForShrinkage).toBe(true);
    expect(workbench.bench.pieces?.pieces[0].shrinkage).toEqual({ alongPct: 3, acrossPct: 1.5 });
    expect(boxOf().maxX - boxOf().minX).toBeGreaterThan(before.maxX - before.minX);
    expect(await faults()).toEqual([]);
  });

  it('refuses what no foam loses, and forgets a measure that is emptied', async () => {
    inFoam('summary').click();
    await userEvent.fill(fields()[0], '25');
    await userEvent.keyboard('{Tab}');
    await rested();
    expect(textOf(inFoam('fl-shrink-fields', '#fault'))).toBe(WORDS.forming.shrink.wrong(20));
    const foam = () => workbench.project?.foams.find(({ id }) => id === workbench.part?.layers[0].foam);
    expect(foam()?.shrinkage).toBeUndefined();
    await userEvent.fill(fields()[0], '2');
    await userEvent.keyboard('{Tab}');
    await rested();
    expect(foam()?.shrinkage).toEqual({ alongPct: 2, acrossPct: 2 });
    await userEvent.fill(fields()[0], '');
    await userEvent.keyboard('{Tab}');
    await rested();
    expect(foam()?.shrinkage).toBeUndefined();
  });
});

describe('wishes for a chosen thing', () => {
  it('hold an open edge to its length and keep it straight, by keys', async () => {
    const open = workbench.bench.seams!.chains.find(({ kind }) => kind === 'open')!;
    workbench.setView({ choice: { kind: 'seam', seam: open.id } });
    await userEvent.keyboard('hi');
    await rested();
    expect(workbench.part?.edgeWishes).toMatchObject([{ holdLength: true, straight: true }]);
    expect(textOf(inRow('fl-verb-row', 'p'))).toContain(WORDS.forming.edges.held);
    expect(await faults()).toEqual([]);
    await userEvent.keyboard('h');
    expect(workbench.part?.edgeWishes).toMatchObject([{ straight: true }]);
  });

  it('lay a grain on a piece and turn it', async () => {
    const piece = workbench.bench.pieces!.pieces[0];
    workbench.setView({ choice: { kind: 'piece', piece: piece.id } });
    await rested();
    await userEvent.selectOptions(inRow('fl-grain-field', 'select'), 'across');
    await rested();
    const angle = inRow<HTMLInputElement>('fl-grain-field', 'input');
    await userEvent.fill(angle, '30');
    await userEvent.keyboard('{Tab}');
    await rested();
    const made = workbench.bench.pieces!.pieces[0];
    expect(made.grainRad).toBeDefined();
    expect(workbench.part?.pieceSettings.some(({ grain }) => grain?.angleDeg === 30)).toBe(true);
    expect(await faults()).toEqual([]);
    await userEvent.selectOptions(inRow('fl-grain-field', 'select'), 'none');
    await rested();
    expect(workbench.bench.pieces!.pieces[0].grainRad).toBeUndefined();
  });

  it('make a panel stiff from the keyboard; the area is then listed, renamed, softened and removed', async () => {
    const piece = workbench.bench.pieces!.pieces[0];
    workbench.setView({ choice: { kind: 'piece', piece: piece.id } });
    await rested();
    await userEvent.keyboard('n');
    await rested();
    expect(textOf(inRow('fl-verb-row', 'p'))).toContain('Panel 1 of 1');
    const buttons = [...find('fl-chosen-row', 'fl-verb-row').shadowRoot!.querySelectorAll('button')];
    buttons.find((button) => textOf(button) === WORDS.forming.verbs.stiff)!.click();
    await rested();
    const name = inFit<HTMLInputElement>('fl-area-list', 'input');
    expect(name.value).toBe(`${piece.name}, panel 1`);
    inFit('fl-area-list', 'li').dispatchEvent(new PointerEvent('pointerenter'));
    expect(workbench.view.pointed?.triangles?.length).toBeGreaterThan(0);
    await userEvent.fill(name, 'badge');
    await userEvent.keyboard('{Tab}');
    // The list speaks of the area by its new name from now on.
    await rested();
    await userEvent.selectOptions(inFit('fl-area-list', 'select'), 'soft');
    await rested();
    expect(workbench.part?.regions).toMatchObject([{ name: 'badge', give: 'soft' }]);
    expect(await faults()).toEqual([]);
    await userEvent.click(inFit('fl-area-list', 'button'));
    expect(workbench.part?.regions).toEqual([]);
  });

  it('are told apart where several areas are listed', async () => {
    workbench.run(addRegion('badge', [0], 'stiff'));
    workbench.run(addRegion('brow', [1], 'soft'));
    await rested();
    const labels = [...inFit('fl-area-list', 'ul').querySelectorAll('button')].map(
      (b) => b.getAttribute('aria-label') ?? b.textContent.trim(),
    );
    const both = ['badge', 'brow'].flatMap((name) => [
      WORDS.forming.areas.remove(name),
      WORDS.marking.verbs.round(name),
    ]);
    expect(labels).toEqual(both);
    expect(await faults()).toEqual([]);
  });
});
