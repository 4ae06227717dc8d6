import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Stage } from '../../src/app/stage.ts';
import { openApp, type OpenApp } from '../support/browser.ts';
import { cutOffSideways, openAll } from './layout-edges.ts';
import { LONG, faultsOf, staged, until } from './window.ts';

/** 1280 px seen at 400 % are 320 (WCAG 2.2, 1.4.10); 1440 at 200 % are 720. */
const SIZES = [
  [320, 512],
  [720, 450],
] as const;

const PIXEL_RATIO = 3;
/** Finer than this nothing is drawn in 3D. */
const MOST_PIXEL_RATIO = 2;

/** Screens that need width, each after the one before. */
const SCREENS: Readonly<Record<string, (page: Page) => Promise<unknown>>> = {
  'nothing chosen, every line open': openAll,
  'a piece chosen': (page) => page.locator('fl-cut-list li button').first().click(),
  'a page': (page) => page.locator('fl-paper-line .pages button').nth(1).click(),
  'all keys': (page) => page.keyboard.press('?'),
  'the work at the bench': (page) =>
    page.evaluate(() => {
      document.querySelector('fl-app')!.workbench.setWishes({ atBench: { isOpen: true, line: null } });
    }),
};

describe('a screen of many dots, seen large', () => {
  let app: OpenApp;

  beforeAll(async () => {
    const [width, height] = SIZES[0];
    app = await openApp({ viewport: { width, height }, pixelRatio: PIXEL_RATIO, reducedMotion: true });
    await until(app.page, 'a sample is on the bench', ({ pages }) => pages.length > 0);
    await staged(app.page);
  });
  afterAll(async () => {
    await app.close();
  });

  it('draws the bench with as many dots as the screen has, up to the limit', async () => {
    const { page } = app;
    await page.evaluate(() => document.querySelector('fl-app')!.workbench.setWishes({ picture: 'fine' }));
    await expect.poll(() => dotsPerPx(page), LONG).toBeCloseTo(MOST_PIXEL_RATIO, 1);
  });

  it('cuts nothing off and scrolls one way only', async () => {
    const { page } = app;
    for (const [name, show] of Object.entries(SCREENS)) {
      await show(page);
      for (const [width, height] of SIZES) {
        await page.setViewportSize({ width, height });
        await staged(page);
        expect(await cutOffSideways(page), `${name}, ${width} px wide`).toEqual([]);
      }
    }
  });

  it('brings a page into sight that is chosen far below it, and goes back there', async () => {
    const { page } = app;
    await page.evaluate(() => {
      const { workbench } = document.querySelector('fl-app')!;
      workbench.setWishes({ atBench: { isOpen: false, line: null } });
      workbench.setView({ choice: { kind: 'nothing' }, help: { ...workbench.view.help, sheet: null } });
    });
    await page.locator('fl-paper-line .pages button').first().click();
    const scrolled = (): Promise<number> => page.evaluate(() => scrollY);
    await expect.poll(scrolled, LONG).toBeLessThan(SIZES[1][1]);
    await page.locator('fl-page-view .back').click();
    await expect.poll(scrolled, LONG).toBeGreaterThan(2 * SIZES[1][1]);
  });

  it('asked nothing of another origin and wrote no error', () => {
    expect(faultsOf(app)).toEqual([]);
  });
});

/** Dots of the picture for one CSS px. */
const dotsPerPx = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const stage = document.querySelector('fl-app')?.shadowRoot?.querySelector<Stage>('fl-stage');
    const canvas = stage?.shadowRoot?.querySelector('canvas');
    return canvas == null ? 0 : canvas.width / canvas.getBoundingClientRect().width;
  });
