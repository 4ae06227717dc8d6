import { unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openApp, type OpenApp } from '../support/browser.ts';
import { readPdf, type ReadPdf } from '../support/read-pdf.ts';
import { straightLengths } from '../support/straight-lengths.ts';
import { TRAY_FOLDS, TRAY_MM, TRAY_OBJ } from './open-tray.ts';
import { LONG, button, dropFile, factsOf, faultsOf, dartEdges, hoverDart, staged, until } from './window.ts';

const PT_PER_MM = 72 / 25.4;

/** The whole job with a pointer, each test a step after the one before. */
describe('the main job by mouse', () => {
  let app: OpenApp;
  let printed: ReadPdf;
  let saved: Uint8Array;

  beforeAll(async () => {
    app = await openApp({ viewport: { width: 1200, height: 800 } });
    await until(app.page, 'a sample is on the bench', ({ pages }) => pages.length > 0);
    await staged(app.page);
  });
  afterAll(async () => {
    await app.close();
  });

  it('draws the bench with as many dots as the screen has, where that is one for each px', async () => {
    const [dots, size] = await app.page.locator('fl-stage canvas').evaluate((canvas: HTMLCanvasElement) => {
      const { width, height } = canvas.getBoundingClientRect();
      return [
        [canvas.width, canvas.height],
        [Math.floor(width), Math.floor(height)].map((px) => px * devicePixelRatio),
      ];
    });
    expect(dots).toEqual(size);
  });

  it('takes a dropped OBJ and asks for its size', async () => {
    await dropFile(app.page, 'tool_tray.obj', TRAY_OBJ);
    const facts = await until(app.page, 'the tray is read', ({ name }) => name === 'tool tray');
    expect(facts.sized).toBe(false);
    expect(facts.pieces).toEqual([]);
  });

  it('takes the unit from a click', async () => {
    await app.page.locator('fl-size-line .units button').nth(1).click();
    const facts = await until(app.page, 'the size is known', ({ sized }) => sized);
    expect(facts.heightMm).toBeCloseTo(TRAY_MM.height, 6);
  });

  it('parts the edge that is clicked on the sculpt', async () => {
    const { page } = app;
    await page.locator('fl-seams-line button[aria-keyshortcuts="P"]').click();
    const edge = await hoverDart(app.page);
    await page.mouse.down();
    await page.mouse.up();
    const facts = await until(page, 'one edge is parted', ({ seamEdges }) => seamEdges === 1);
    expect(facts.tool).toBe('part');
    expect(await dartEdges(page)).not.toContain(edge);
    await page.keyboard.press('Escape');
  });

  it('parts every sharp edge at once into six pieces', async () => {
    await app.page.locator('fl-seams-line .angle button').click();
    const facts = await until(app.page, 'six pieces', ({ pieces }) => pieces.length === 6);
    expect(facts.seamEdges).toBe(TRAY_FOLDS);
    expect(facts.stretchMaxPct).toBeLessThan(1e-3);
    expect(facts.findings.filter((code) => code.startsWith('flatten/'))).toEqual([]);
  });

  it('undoes and redoes', async () => {
    const { page } = app;
    await button(page, /^undo/i).click();
    await until(page, 'the sharp edges are joined again', ({ seamEdges }) => seamEdges === 1);
    await button(page, /^redo/i).click();
    await until(page, 'they are parted again', ({ pieces }) => pieces.length === 6);
  });

  it('answers another thickness', async () => {
    const { page } = app;
    const before = (await factsOf(page)).pieces[0].thicknessMm;
    const stock = page.locator('fl-foam-line .stock label', { hasText: /^\s*10/ });
    await stock.click();
    await until(
      page,
      'all pieces are 10 mm thick',
      ({ pieces }) => pieces.length === 6 && pieces.every((piece) => piece.thicknessMm === 10),
    );
    // What lies unseen in the job sheet must not make the window scroll.
    expect(await page.evaluate(() => document.documentElement.scrollHeight - innerHeight)).toBe(0);
    expect(before).not.toBe(10);
  });

  it('tiles again for another paper', async () => {
    await app.page.locator('fl-paper-line select').first().selectOption('A3');
    const { pages } = await until(
      app.page,
      'pages of A3',
      (facts) => facts.pages.length > 0 && facts.pages[0].widthMm !== 210,
    );
    expect(pages.every((page) => page.widthMm === 297 && page.heightMm === 420)).toBe(true);
  });

  it('prints one template for pieces that mirror each other, or one each, and takes that back', async () => {
    const { page } = app;
    const turned = page.locator('fl-cut-list li', { hasText: /cut with the template of \d, turned over/ });
    // Of the four walls two mirror the other two; which panel of them is the first is all the same here.
    await expect.poll(() => turned.count(), LONG).toBeGreaterThan(0);
    const field = page.getByLabel('Pieces that mirror each other');
    expect(await field.inputValue()).toBe('once');
    await field.selectOption('each');
    await expect.poll(() => turned.count(), LONG).toBe(0);
    await button(page, /^undo/i).click();
    await expect.poll(() => turned.count(), LONG).toBeGreaterThan(0);
    expect(await field.inputValue()).toBe('once');
    expect((await factsOf(page)).pages[0].widthMm).toBe(297);
  });

  it('chooses a piece in the cut list', async () => {
    const row = app.page.locator('fl-cut-list li button').nth(1);
    await row.click();
    await until(app.page, 'a piece is chosen', ({ choice }) => choice === 'piece');
    await expect.poll(() => row.getAttribute('aria-pressed'), LONG).toBe('true');
  });

  it('shows a page large', async () => {
    const { page } = app;
    await page.locator('fl-paper-line .pages button').first().click();
    await until(page, 'a page is chosen', ({ choice }) => choice === 'page');
    await page.keyboard.press('Escape');
    await until(page, 'nothing is chosen', ({ choice }) => choice === 'nothing');
  });

  it('saves a PDF that measures true', async () => {
    const file = await app.saved(() => app.page.locator('fl-paper-line .files button.first').click());
    expect(file.name).toMatch(/\.pdf$/);
    printed = await readPdf(file.bytes);
    const { pages } = await factsOf(app.page);
    expect(printed.pages).toHaveLength(pages.length);
    for (const page of printed.pages) {
      expect(Math.abs(page.widthPt - 297 * PT_PER_MM)).toBeLessThan(0.01);
      expect(Math.abs(page.heightPt - 420 * PT_PER_MM)).toBeLessThan(0.01);
    }
    const square = straightLengths(printed.pages[0].paths);
    expect(Math.min(...square.map((length) => Math.abs(length - 283.4646)))).toBeLessThan(0.001);
  });

  it('prints each side of the tray in its length', () => {
    const wide = printed.pages.flatMap((page) =>
      page.paths.filter((path) => path.layer?.toLowerCase().includes('cut') === true),
    );
    const lengths = straightLengths(wide).map((pt) => pt / PT_PER_MM);
    for (const side of [TRAY_MM.height, TRAY_MM.lid, TRAY_MM.depth]) {
      expect(Math.min(...lengths.map((length) => Math.abs(length - side)))).toBeLessThan(0.01);
    }
  });

  it('saves files for a cutter with the lists in one zip, once what a laser must never cut was read', async () => {
    const { page } = app;
    await page.locator('fl-files-line label', { hasText: 'DXF' }).click();
    await page.locator('fl-files-line button.save[disabled]').waitFor();
    await page.locator('fl-files-line .caution button').click();
    const file = await app.saved(() => page.locator('fl-files-line button.save').click());
    expect(file.name).toBe('tool-tray.zip');
    const names = Object.keys(unzipSync(file.bytes));
    expect(names.slice(0, 3)).toEqual(['templates.pdf', 'build-sheet.pdf', 'cut-list.csv']);
    expect(names).toContain('sheet-1.dxf');
  });

  it('saves the job to a file and opens it again', async () => {
    const { page } = app;
    const file = await app.saved(() => button(page, /^save the job/i).click());
    saved = file.bytes;
    expect(file.name).toMatch(/\.foamloft\.json$/);
    await page.locator('fl-job-head .kit button').nth(1).click();
    await until(page, 'a sample takes its place', ({ name, pages }) => name !== 'tool tray' && pages.length > 0);
    const [chooser] = await Promise.all([page.waitForEvent('filechooser'), button(page, /^open a file/i).click()]);
    await chooser.setFiles({ name: file.name, mimeType: 'application/json', buffer: Buffer.from(saved) });
    const facts = await until(page, 'the tray is back', ({ name, pages }) => name === 'tool tray' && pages.length > 0);
    expect(facts.seamEdges).toBe(TRAY_FOLDS);
    expect(facts.pieces.map((piece) => piece.thicknessMm)).toEqual([10, 10, 10, 10, 10, 10]);
    expect(facts.pages[0].widthMm).toBe(297);
  });

  it('finds the last job after a reload', async () => {
    const { page } = app;
    await page.waitForFunction(
      () => document.querySelector('fl-app')?.workbench.autosave.state === 'saved',
      null,
      LONG,
    );
    const before = await factsOf(page);
    await page.reload();
    const after = await until(
      page,
      'the tray is there again',
      ({ name, pages }) => name === 'tool tray' && pages.length > 0,
    );
    expect(after.pieces).toEqual(before.pieces);
    expect(after.pages).toEqual(before.pages);
  });

  it('asked nothing of another origin and wrote no error', () => {
    expect(faultsOf(app)).toEqual([]);
  });
});
