import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ViewState, Wishes } from '../../src/app/view-state.ts';
import type { Colouring } from '../../src/viewport/bench-contract.ts';
import { openApp, type OpenApp } from '../support/browser.ts';
import { openAll } from './layout-edges.ts';
import { LONG, staged, until } from './window.ts';

const AXE = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Colours are all that light and contrast change. */
const LIGHTS: readonly Partial<Wishes>[] = [
  { theme: 'dark' },
  { theme: 'dark', contrast: 'more' },
  { theme: 'light', contrast: 'more' },
];

/** All that have a legend. */
const COLOURINGS: readonly Colouring[] = ['stretch', 'bend', 'room', 'pull', 'fit', 'pieces'];

/** One window, each test a state after the one before. */
describe('axe finds nothing', () => {
  let app: OpenApp;
  let page: Page;

  beforeAll(async () => {
    app = await openApp({ viewport: { width: 1200, height: 800 }, colorScheme: 'light', reducedMotion: true });
    page = app.page;
    await until(page, 'a sample is on the bench', ({ pages }) => pages.length > 0);
    await staged(page);
    // A script element would be refused by the content security policy; the debugger's door is not.
    await page.evaluate(AXE);
  });
  afterAll(async () => {
    await app.close();
  });

  it('with every line open, a piece chosen, its stretch shown and a notice, by day and by night', async () => {
    await wish(page, { guide: { isOpen: true, done: [] } });
    await openAll(page);
    await page.locator('fl-cut-list li button').first().click();
    await until(page, 'a piece', ({ choice }) => choice === 'piece');
    await look(page, { colouring: 'stretch' });
    await page.evaluate(() => {
      const remedy = { label: 'Go back', run: () => undefined };
      document.querySelector('fl-app')!.workbench.setNotice({ tone: 'problem', text: 'It cannot be read.', remedy });
    });
    expect(await faults(page)).toEqual([]);
    for (const light of LIGHTS) {
      await wish(page, light);
      expect(await faults(page, ['color-contrast']), JSON.stringify(light)).toEqual([]);
    }
    await wish(page, { theme: 'light', contrast: 'auto', guide: { isOpen: false, done: [] } });
  });

  it('with the legend of each colouring, its table open', async () => {
    for (const colouring of COLOURINGS) {
      await look(page, { colouring });
      await openAll(page);
      expect(await faults(page, [], 'fl-legend'), colouring).toEqual([]);
    }
    await look(page, { colouring: 'plain' });
  });

  it('with the finder over a page', async () => {
    await page.locator('fl-paper-line .pages button').nth(1).click();
    await until(page, 'a page', ({ choice }) => choice === 'page');
    await page.keyboard.press('/');
    await page.locator('fl-finder input').waitFor(LONG);
    expect(await faults(page)).toEqual([]);
    await page.keyboard.press('Escape');
  });

  it('on a phone in German, with the words of the trade over a sheet', async () => {
    await page.setViewportSize({ width: 390, height: 844 });
    await wish(page, { language: 'de' });
    await page.waitForFunction(() => document.documentElement.lang === 'de', null, LONG);
    await look(page, { choice: { kind: 'sheet', sheet: 0 } });
    await page.locator('fl-sheet-view').waitFor(LONG);
    const { help } = await page.evaluate(() => document.querySelector('fl-app')!.workbench.view);
    await look(page, { help: { ...help, sheet: 'words' } });
    await page.locator('fl-help-sheet').waitFor(LONG);
    expect(await faults(page)).toEqual([]);
  });

  it('in each kind of work at the bench, and at its end', async () => {
    await wish(page, { atBench: { isOpen: true, line: null } });
    await page.locator('fl-at-bench .foot button').first().waitFor(LONG);
    expect(await faults(page)).toEqual([]);
    // Gluing comes once its order is known.
    await page.waitForFunction(() => document.querySelector('fl-app')?.workbench.view.gluing.shop != null, null, LONG);
    for (const kind of await page.locator('fl-at-bench nav button').all()) {
      await kind.dispatchEvent('click');
      expect(await faults(page, [], 'fl-at-bench'), await kind.innerHTML()).toEqual([]);
    }
    await wish(page, { atBench: { isOpen: true, line: 'end' } });
    expect(await faults(page, [], 'fl-at-bench')).toEqual([]);
  });
});

const wish = (page: Page, wishes: Partial<Wishes>): Promise<void> =>
  page.evaluate((patch) => document.querySelector('fl-app')!.workbench.setWishes(patch), wishes);

const look = (page: Page, view: Partial<ViewState>): Promise<void> =>
  page.evaluate((patch) => document.querySelector('fl-app')!.workbench.setView(patch), view);

/** What axe holds against the page, one line a place. @param only  these rules; else all. @param within  this element of the window; else all */
async function faults(page: Page, only: readonly string[] = [], within = ''): Promise<string[]> {
  await staged(page);
  const results = await page.evaluate(
    ([rules, tag]) => {
      const { axe } = globalThis as unknown as { axe: { run(at: Node, options: object): Promise<AxeResults> } };
      const at = tag === '' ? document : document.querySelector('fl-app')?.shadowRoot?.querySelector(tag);
      if (at == null) throw new Error(`no ${tag}`);
      // Targets of 24 px are left out by default (WCAG 2.2, 2.5.8).
      const all = { rules: { 'target-size': { enabled: true } } };
      return axe.run(at, { resultTypes: ['violations'], ...(rules.length === 0 ? all : { runOnly: rules }) });
    },
    [only, within] as const,
  );
  return results.violations.flatMap(({ id, impact, nodes }) =>
    nodes.map(
      (node) => `${impact ?? 'minor'} ${id} at ${node.target.flat().join(' > ')}: ${node.failureSummary ?? ''}`,
    ),
  );
}
