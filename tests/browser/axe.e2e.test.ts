import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import { openApp, type OpenApp, type OpenAppOptions } from '../support/browser.ts';
import { LONG, staged, until } from './window.ts';

const AXE = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const WINDOWS: Readonly<Record<string, OpenAppOptions>> = {
  'in daylight': { viewport: { width: 1200, height: 800 }, colorScheme: 'light' },
  'on a phone': { viewport: { width: 390, height: 844 }, colorScheme: 'light', hasTouch: true },
};

describe('axe finds nothing', () => {
  let app: OpenApp | null = null;
  afterEach(async () => {
    await app?.close();
    app = null;
  });

  for (const [name, options] of Object.entries(WINDOWS)) {
    it(`${name}, with nothing, a piece and a page chosen, and the finder open`, async () => {
      app = await openApp({ ...options, reducedMotion: true });
      const { page } = app;
      await until(page, 'a sample is on the bench', ({ pages }) => pages.length > 0);
      await staged(page);
      // A script element would be refused by the content security policy; the debugger's door is not.
      await page.evaluate(AXE);
      expect(await faults(page, 'nothing chosen')).toEqual([]);
      await page.locator('fl-cut-list li button').first().click();
      await until(page, 'a piece', ({ choice }) => choice === 'piece');
      expect(await faults(page, 'a piece chosen')).toEqual([]);
      await page.locator('fl-paper-line .pages button').nth(1).click();
      await until(page, 'a page', ({ choice }) => choice === 'page');
      await page.keyboard.press('/');
      await page.waitForFunction(
        () => document.querySelector('fl-app')?.workbench.view.finderOpen === true,
        null,
        LONG,
      );
      expect(await faults(page, 'the finder open over a page')).toEqual([]);
    });
  }
});

/** What axe holds against the page, one line a place. */
async function faults(page: Page, when: string): Promise<string[]> {
  const results = await page.evaluate(() =>
    (globalThis as unknown as { axe: { run(): Promise<AxeResults> } }).axe.run(),
  );
  return results.violations.flatMap(({ id, impact, nodes }) =>
    nodes.map(
      (node) =>
        `${when}: ${impact ?? 'minor'} ${id} at ${node.target.flat().join(' > ')}: ${node.failureSummary ?? ''}`,
    ),
  );
}
