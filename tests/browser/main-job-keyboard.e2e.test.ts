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

  it('saves the PDF from the finder, and the job with Ctrl S', async () => {
    const { page } = app;
    const file = await app.saved(() => find(page, 'pdf'));
    const { pages } = await factsOf(page);
    const read = await readPdf(file.bytes);
    expect(read.pages).toHaveLength(pages.length);
    const [width, height] = [read.pages[0].widthPt, read.pages[0].heightPt];
    expect(width).toBeCloseTo((pages[0].widthMm * 72) / 25.4, 2);
    expect(height).toBeCloseTo((pages[0].heightMm * 72) / 25.4, 2);
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
  await expect.poll(() => focusNow(page).then((focus) => focus.path), LONG).toContain('FL-FINDER');
  await page.keyboard.type(words);
  await page.keyboard.press('Enter');
}

const walkedEdge = (page: Page): Promise<number> =>
  page.evaluate(() => document.querySelector('fl-app')?.workbench.view.walked ?? -1);

/** Tab to a control; each that is passed says what it is and shows that it has the keyboard. */
const tabTo = (page: Page, element: string, words: RegExp | null, type = ''): Promise<void> =>
  tabOn(page, element, words, type, async (key) => {
    await page.keyboard.press(key);
    await expect.poll(() => focusFaults(page), LONG).toEqual([]);
  });
