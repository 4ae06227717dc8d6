// Takes the README's pictures from the running app: node scripts/pictures.mjs (after npm run build).
/* global document */
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { preview } from 'vite';
import { CHROMIUM_FLAGS, findChromium } from './lib/chromium.mjs';
import { ROOT } from './lib/paths.mjs';

const OUT = join(ROOT, 'samples/pictures');

const server = await preview({
  root: ROOT,
  configFile: join(ROOT, 'scripts/vite.config.ts'),
  logLevel: 'error',
  preview: { host: '127.0.0.1', port: 5479, open: false },
});
const browser = await chromium.launch({ executablePath: findChromium(), args: CHROMIUM_FLAGS });
try {
  await mkdir(OUT, { recursive: true });
  const page = await browser.newPage({
    viewport: { width: 1440, height: 900 },
    reducedMotion: 'reduce',
    serviceWorkers: 'block',
  });
  const address = server.httpServer.address();
  await page.goto(`http://127.0.0.1:${address.port}/`);
  const setView = (patch) => page.evaluate((view) => document.querySelector('fl-app').workbench.setView(view), patch);
  await page.waitForFunction(() => {
    const { bench, progress } = document.querySelector('fl-app')?.workbench ?? {};
    return (bench?.paper ?? null) !== null && progress === null;
  });
  await page.evaluate(() => document.querySelector('fl-app').workbench.setWishes({ picture: 'fine' }));
  await page.waitForTimeout(4000);
  await setView({ stage: 1 });
  await page.waitForTimeout(3000);
  await page.screenshot({ path: join(OUT, 'app.png') });
  const index = await page.evaluate(() =>
    document.querySelector('fl-app').workbench.bench.paper.pages.findIndex(({ kind }) => kind === 'tile'),
  );
  await setView({ stage: 0, choice: { kind: 'page', page: index } });
  await page.waitForTimeout(2000);
  const pictures = page.locator('fl-page-picture');
  const boxes = await pictures.evaluateAll((list) => list.map((element) => element.getBoundingClientRect().height));
  await pictures.nth(boxes.indexOf(Math.max(...boxes))).screenshot({ path: join(OUT, 'page.png') });
} finally {
  await browser.close();
  await server.close();
}
