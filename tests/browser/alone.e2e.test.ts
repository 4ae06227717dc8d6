import { afterEach, describe, expect, it } from 'vitest';
import { openApp, type OpenApp } from '../support/browser.ts';
import { readPdf } from '../support/read-pdf.ts';
import { TRAY_OBJ } from './open-tray.ts';
import type { Page } from 'playwright-core';
import type { App } from '../../src/app/app.ts';
import type { Stage } from '../../src/app/stage.ts';
import { LONG, dropFile, factsOf, hoverDart, staged, until } from './window.ts';

let app: OpenApp | null = null;
afterEach(async () => {
  await app?.close();
  app = null;
});

describe('the window keeps to itself', () => {
  it('is refused every request to another origin', async () => {
    app = await openApp({ viewport: { width: 900, height: 700 } });
    const { page } = app;
    await until(page, 'a sample is on the bench', ({ pages }) => pages.length > 0);
    const refused = await page.evaluate(async () => {
      const seen: string[] = [];
      document.addEventListener('securitypolicyviolation', (event) => seen.push(event.effectiveDirective));
      const other = 'http://127.0.0.1:9/';
      const fetched = await fetch(other)
        .then(() => 'fetched')
        .catch(() => 'refused');
      const image = new Image();
      await new Promise((resolve) => {
        image.onload = image.onerror = resolve;
        image.src = `${other}x.png`;
      });
      const script = document.createElement('script');
      try {
        script.src = `${other}x.js`;
        seen.push('an address was taken');
      } catch {
        // No address of a script is taken but those of threads.
      }
      const style = document.createElement('link');
      style.rel = 'stylesheet';
      await new Promise((resolve) => {
        style.onload = style.onerror = resolve;
        style.href = `${other}x.css`;
        document.head.append(style);
      });
      // The policy stands in the page and in the answer of the server: each tells.
      return { fetched, seen: [...new Set(seen.map((directive) => directive.replace(/-elem$/, '')))].toSorted() };
    });
    expect(refused).toEqual({
      fetched: 'refused',
      seen: ['connect-src', 'img-src', 'require-trusted-types-for', 'style-src'],
    });
    // A refused request may still be told of; none may have gone to another place than the one tried here.
    expect(app.requestsOutside().filter((address) => !address.startsWith('http://127.0.0.1:9/'))).toEqual([]);
  });
});

describe('without 3D', () => {
  it('does the job on flat pieces, with motion reduced', async () => {
    app = await openApp({ viewport: { width: 900, height: 700 }, flags: ['--disable-3d-apis'], reducedMotion: true });
    const { page } = app;
    await until(page, 'a sample is on the bench', ({ pages }) => pages.length > 0);
    await staged(page);
    await expect.poll(() => page.locator('fl-flat-bench').count()).toBe(1);
    await dropFile(page, 'tool_tray.obj', TRAY_OBJ);
    await until(page, 'the tray is read', ({ name }) => name === 'tool tray');
    await page.locator('fl-size-line .units button').nth(1).click();
    await until(page, 'the size is known', ({ sized }) => sized);
    await page.locator('fl-seams-line .angle button').click();
    const { pages } = await until(page, 'six pieces', (facts) => facts.pieces.length === 6 && facts.pages.length > 0);
    await page.keyboard.press('f');
    expect((await factsOf(page)).stage).toBe(2); // at once: nothing travels
    const file = await app.saved(() => page.locator('fl-paper-line .files button.first').click());
    expect((await readPdf(file.bytes)).pages).toHaveLength(pages.length);
    expect(app.requestsOutside()).toEqual([]);
  });
});

// All other tests of the window have a screen of one dot a pixel.
describe('3D that is lost midway, on a screen of three dots a pixel', () => {
  it('leaves a job that goes on flat, and comes back', async () => {
    app = await openApp({ viewport: { width: 940, height: 460 }, reducedMotion: true, pixelRatio: 3 });
    const { page } = app;
    await until(page, 'a sample is on the bench', ({ pages }) => pages.length > 0);
    await dropFile(page, 'tool_tray.obj', TRAY_OBJ);
    await until(page, 'the tray is read', ({ name }) => name === 'tool tray');
    await page.locator('fl-size-line .units button').nth(1).click();
    await until(page, 'the size is known', ({ sized }) => sized);
    await staged(page);
    // Drawn fine the picture has as many dots as the screen, but no more than two a pixel.
    await page.evaluate(() => document.querySelector('fl-app')?.workbench.setWishes({ picture: 'fine' }));
    await expect.poll(() => dotsAPixel(page), LONG).toBe(2);
    await page.locator('fl-seams-line button[aria-keyshortcuts="P"]').click();
    await hoverDart(page);
    await page.keyboard.press('Escape');

    await loseContext(page);
    await expect.poll(() => page.locator('fl-flat-bench').count(), LONG).toBe(1);
    await page.locator('fl-seams-line .angle button').click();
    const { pages } = await until(page, 'six pieces', ({ pieces }) => pieces.length === 6);
    expect(await page.locator('fl-flat-bench .pieces button').count()).toBe(6);
    const file = await app.saved(() => page.locator('fl-paper-line .files button.first').click());
    expect((await readPdf(file.bytes)).pages).toHaveLength(pages.length);

    const frames = await page.evaluate(stageFrames);
    await page.evaluate(() => (globalThis as { lostContext?: WEBGL_lose_context }).lostContext?.restoreContext());
    await expect.poll(() => page.locator('fl-flat-bench').count(), LONG).toBe(0);
    await expect.poll(() => page.evaluate(stageFrames), LONG).toBeGreaterThan(frames);
    expect((await factsOf(page)).pieces).toHaveLength(6);
    expect(app.requestsOutside()).toEqual([]);
  });
});

function stageFrames(): number {
  const stage = document.querySelector<App>('fl-app')?.shadowRoot?.querySelector<Stage>('fl-stage');
  return stage?.stats?.frames ?? 0;
}

/** Dots of the 3D picture for one CSS px. */
const dotsAPixel = (page: Page): Promise<number> =>
  page.locator('fl-stage canvas').evaluate((canvas: HTMLCanvasElement) => canvas.width / canvas.clientWidth);

/** As when the driver of the graphics card stumbles. */
async function loseContext(page: Page): Promise<void> {
  await page.locator('fl-stage canvas').evaluate((canvas: HTMLCanvasElement) => {
    const losing = canvas.getContext('webgl2')?.getExtension('WEBGL_lose_context');
    Object.assign(globalThis, { lostContext: losing });
    losing?.loseContext();
  });
}
