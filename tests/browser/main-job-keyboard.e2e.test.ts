import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { FileChooser, Page } from 'playwright-core';
import { openApp, type OpenApp } from '../support/browser.ts';
import { readPdf } from '../support/read-pdf.ts';
import { TRAY_FOLDS, TRAY_OBJ } from './open-tray.ts';
import { focusFaults, focusNow, tabTo as tabOn } from './tabs.ts';
import { LONG, factsOf, faultsOf, dartEdges, staged, until } from './window.ts';

const ARROWS = [
  'ArrowUp',
  'ArrowLeft',
  'ArrowUp',
  'ArrowRight',
  'ArrowDown',
  'ArrowDown',
  'ArrowLeft',
  'ArrowUp',
] as const;

/** Keys that come before a busy machine has the window ready are lost: whoever sees nothing presses again. */
async function fileChooser(page: Page): Promise<FileChooser> {
  const opens = page.waitForEvent('filechooser');
  for (;;) {
    await page.keyboard.press('Control+o');
    const opened = await Promise.race([opens, page.waitForTimeout(5000)]);
    if (opened !== undefined) return opened;
  }
}

/** The whole job without a pointer, each test a step after the one before. */
describe('the main job by keyboard alone', () => {
  let app: OpenApp;

  beforeAll(async () => {
    app = await openApp({ viewport: { width: 1200, height: 800 }, reducedMotion: true });
    await until(app.page, 'a sample is on the bench', ({ pages }) => pages.length > 0);
    await staged(app.page);
  });
  afterAll(async () => {
    await app.close();
  });
  afterEach(async () => {
    // The keyboard is brought to where something went once that is drawn.
    await expect.poll(() => focusFaults(app.page), LONG).toEqual([]);
  });

  it('opens a file with Ctrl O and sizes it with Tab and Enter', async () => {
    const { page } = app;
    const chooser = await fileChooser(page);
    await chooser.setFiles({ name: 'tool_tray.obj', mimeType: 'model/obj', buffer: Buffer.from(TRAY_OBJ) });
    await until(page, 'the tray is read', ({ name, sized }) => name === 'tool tray' && !sized);
    await tabTo(page, 'FL-SIZE-LINE', /^(cm|centimetres)/);
    await page.keyboard.press('Enter');
    await until(page, 'the size is known', ({ sized }) => sized);
  });

  it('walks along edges with arrow keys and parts one with P', async () => {
    const { page } = app;
    await page.keyboard.press('e');
    await until(page, 'the walk begins', ({ tool }) => tool === 'walk');
    const darts = await dartEdges(page);
    for (const arrow of [...ARROWS, ...ARROWS, ...ARROWS]) {
      await page.keyboard.press(arrow);
      if (darts.includes(await walkedEdge(page))) break;
    }
    expect(darts).toContain(await walkedEdge(page));
    // A screen reader says which edge it is that would be parted.
    await expect.poll(() => page.locator('fl-app main > [aria-live]').innerText(), LONG).toMatch(/mm/);
    await page.keyboard.press('p');
    await until(page, 'one edge is parted', ({ seamEdges }) => seamEdges === 1);
    await page.keyboard.press('Escape');
    await until(page, 'the walk is over', ({ tool }) => tool === 'choose');
  });

  it('parts every sharp edge, found by its verb', async () => {
    const { page } = app;
    await find(page, 'sharper');
    await tabTo(page, 'FL-SEAMS-LINE', /^Part( them|\s*\d+)/i);
    await page.keyboard.press('Enter');
    const facts = await until(page, 'six pieces', ({ pieces }) => pieces.length === 6);
    expect(facts.seamEdges).toBe(TRAY_FOLDS);
  });

  it('undoes and redoes', async () => {
    const { page } = app;
    await page.keyboard.press('Control+z');
    await until(page, 'the edges are joined again', ({ seamEdges }) => seamEdges === 1);
    await page.keyboard.press('Control+Shift+z');
    await until(page, 'they are parted again', ({ pieces }) => pieces.length === 6);
  });

  it('lays the pieces flat and on the sheet with single letters, also while a button has the focus', async () => {
    const { page } = app;
    for (const [key, stage] of [
      ['f', 2],
      ['s', 3],
      ['a', 1],
      ['w', 0],
    ] as const) {
      await page.keyboard.press(key);
      await until(page, `stage ${stage}`, (facts) => facts.stage === stage);
    }
  });

  it('takes another thickness with the arrow keys', async () => {
    const { page } = app;
    const before = (await factsOf(page)).pieces[0].thicknessMm;
    await tabTo(page, 'FL-FOAM-LINE', null, 'radio');
    await page.keyboard.press('ArrowRight');
    const { pieces } = await until(page, 'another thickness', (facts) => facts.pieces[0]?.thicknessMm !== before);
    expect(new Set(pieces.map((piece) => piece.thicknessMm)).size).toBe(1);
  });

  it('leans the cut of a seam otherwise, chosen in the table', async () => {
    const { page } = app;
    const before = await bevelsDeg(page);
    await tabTo(page, 'FL-SEAM-TABLE', /^[A-Z]$/);
    await page.keyboard.press('Enter');
    await until(page, 'a seam is chosen', ({ choice }) => choice === 'seam');
    await page.keyboard.press('d');
    await expect.poll(() => bevelsDeg(page), LONG).not.toEqual(before);
    await page.keyboard.press('Control+z');
    await expect.poll(() => bevelsDeg(page), LONG).toEqual(before);
    await leave(page);
  });

  it('takes another paper from the list', async () => {
    const { page } = app;
    await tabTo(page, 'FL-PAPER-LINE', null, 'select-one');
    await page.keyboard.press('ArrowDown');
    await until(page, 'another paper', ({ pages }) => pages.length > 0 && pages[0].widthMm !== 210);
  });

  it('chooses a piece in the cut list and lets it go', async () => {
    const { page } = app;
    await tabTo(page, 'FL-CUT-LIST', /^\s*1/);
    await page.keyboard.press('Enter');
    await until(page, 'a piece is chosen', ({ choice }) => choice === 'piece');
    await page.keyboard.press('Escape');
    await until(page, 'nothing is chosen', ({ choice }) => choice === 'nothing');
  });

  it('moves a piece on its sheet', async () => {
    const { page } = app;
    await find(page, 'sheet 1');
    await until(page, 'the sheet lies over the bench', ({ choice }) => choice === 'sheet');
    await isFocused(page, 'FL-SHEET-VIEW g');
    const { revision } = await factsOf(page);
    for (const key of ['ArrowRight', 'ArrowUp', 'ArrowDown', 'ArrowLeft', ',']) await page.keyboard.press(key);
    await until(page, 'it lies otherwise', (facts) => facts.revision > revision);
    await leave(page);
  });

  it('looks at a page and reads whether it will work', async () => {
    const { page } = app;
    await page.keyboard.press('6');
    await isFocused(page, 'FL-PAPER-LINE');
    await tabTo(page, 'FL-PAPER-LINE', /^scale square$/i);
    await page.keyboard.press('Enter');
    await until(page, 'a page is large', ({ choice }) => choice === 'page');
    await leave(page);
    await find(page, 'will it');
    await isFocused(page, 'FL-VERDICT');
    expect(await page.locator('fl-verdict .answer').innerText()).toMatch(/^It will work/);
  });

  it('saves the PDF from the finder', async () => {
    const { page } = app;
    const file = await app.saved(() => find(page, 'pdf'));
    const { pages } = await factsOf(page);
    const read = await readPdf(file.bytes);
    expect(read.pages).toHaveLength(pages.length);
    const [width, height] = [read.pages[0].widthPt, read.pages[0].heightPt];
    expect(width).toBeCloseTo((pages[0].widthMm * 72) / 25.4, 2);
    expect(height).toBeCloseTo((pages[0].heightMm * 72) / 25.4, 2);
  });

  it('ticks a line off at the bench', async () => {
    const { page } = app;
    const { revision } = await factsOf(page);
    await find(page, 'work line');
    await isFocused(page, 'FL-AT-BENCH');
    await page.keyboard.press(' ');
    await until(page, 'it is ticked', (facts) => facts.revision > revision);
    expect(await focusFaults(page)).toEqual([]);
    await page.keyboard.press('Escape');
  });

  it('keeps a version, takes that back and saves the job with Ctrl S', async () => {
    const { page } = app;
    await find(page, 'keep this');
    await isFocused(page, 'FL-VERSION-LIST');
    await page.keyboard.press('Enter');
    await expect.poll(() => keptVersions(page), LONG).toBe(1);
    // In the field of its name this would take letters back.
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('Control+z');
    await expect.poll(() => keptVersions(page), LONG).toBe(0);
    const job = await app.saved(() => page.keyboard.press('Control+s'));
    expect(job.name).toMatch(/\.foamloft\.json$/);
  });

  it('asked nothing of another origin and wrote no error', () => {
    expect(faultsOf(app)).toEqual([]);
  });
});

/** Opens the finder, types and takes the first verb. */
async function find(page: Page, words: string): Promise<void> {
  await page.keyboard.press('/');
  await page.waitForFunction(() => document.querySelector('fl-app')?.workbench.view.finderOpen === true, null, LONG);
  await isFocused(page, 'FL-FINDER');
  await page.keyboard.type(words);
  await page.keyboard.press('Enter');
}

const isFocused = (page: Page, element: string): Promise<void> =>
  expect.poll(async () => (await focusNow(page)).path, LONG).toContain(element);

/** Esc brings back what is still in the air first. */
async function leave(page: Page): Promise<void> {
  await expect
    .poll(async () => {
      await page.keyboard.press('Escape');
      return (await factsOf(page)).choice;
    }, LONG)
    .toBe('nothing');
}

/** How far the cuts of all seams lean, degrees, least and most. */
const bevelsDeg = (page: Page): Promise<number[]> =>
  page.evaluate(() =>
    (document.querySelector('fl-app')?.workbench.bench.pieces?.seams ?? []).flatMap(({ bevelDeg, sideBevelDeg }) =>
      (sideBevelDeg ?? [bevelDeg]).flatMap(({ min, max }) => [min, max]),
    ),
  );

const keptVersions = (page: Page): Promise<number> =>
  page.evaluate(() => document.querySelector('fl-app')?.workbench.project?.versions?.length ?? 0);

const walkedEdge = (page: Page): Promise<number> =>
  page.evaluate(() => document.querySelector('fl-app')?.workbench.view.walked ?? -1);

/** Tab to a control; each that is passed says what it is and shows that it has the keyboard. */
const tabTo = (page: Page, element: string, words: RegExp | null, type = ''): Promise<void> =>
  tabOn(page, element, words, type, async (key) => {
    await page.keyboard.press(key);
    await expect.poll(() => focusFaults(page), LONG).toEqual([]);
  });
