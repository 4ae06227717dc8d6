import { afterEach, describe, expect, it } from 'vitest';
import { openApp, type OpenApp } from '../support/browser.ts';
import { readPdf } from '../support/read-pdf.ts';
import { TRAY_OBJ } from './open-tray.ts';
import { dropFile, factsOf, staged, until } from './window.ts';

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
      await new Promise((resolve) => {
        script.onload = script.onerror = resolve;
        script.src = `${other}x.js`;
        document.head.append(script);
      });
      return { fetched, seen: seen.map((directive) => directive.replace(/-elem$/, '')).toSorted() };
    });
    expect(refused).toEqual({ fetched: 'refused', seen: ['connect-src', 'img-src', 'script-src'] });
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
