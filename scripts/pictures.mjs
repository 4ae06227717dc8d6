// Takes the README's pictures from the running app: npm run pictures (after npm run build).
/* global document, requestAnimationFrame */
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { serveApp } from './lib/app-server.mjs';
import { CHROMIUM_FLAGS, findChromium } from './lib/chromium.mjs';
import { ROOT } from './lib/paths.mjs';

const OUT = join(ROOT, 'samples/pictures');
const WAIT_MS = 240_000;
/** A picture rests before it is taken: pieces arrive, fine lines are drawn. */
const REST_MS = 5000;

const DESK = { width: 1440, height: 900 };
const TABLET = { width: 1024, height: 768 };
const PHONE = { width: 390, height: 844 };

const server = await serveApp(5479);
const { url } = server;
const browser = await chromium.launch({ executablePath: findChromium(), args: CHROMIUM_FLAGS });

/** A window with the helm in it, all worked out. @param options of the browser's window */
async function open(options, wishes = {}) {
  const context = await browser.newContext({
    reducedMotion: 'reduce',
    serviceWorkers: 'block',
    locale: 'en',
    ...options,
  });
  const page = await context.newPage();
  page.setDefaultTimeout(WAIT_MS);
  await page.goto(url);
  await page.waitForFunction(() => {
    const { bench, progress } = document.querySelector('fl-app')?.workbench ?? {};
    return (bench?.paper ?? null) !== null && progress === null;
  });
  // Nobody is new here: the offer to be guided is put away.
  const all = { picture: 'fine', guide: { isOpen: false, done: [] }, ...wishes };
  await page.evaluate((patch) => document.querySelector('fl-app').workbench.setWishes(patch), all);
  await page.waitForTimeout(REST_MS);
  return page;
}

/** Shows something of the job in a window. @param patch of what is looked at */
const look = (page, patch) => page.evaluate((view) => document.querySelector('fl-app').workbench.setView(view), patch);

const ask = (page, verb) =>
  page.evaluate(
    (id) =>
      document
        .querySelector('fl-app')
        .verbs.find((one) => one.id === id)
        .run(),
    verb,
  );

/** Takes what is asked for, and closes its window. @param part the whole window where it is left out */
async function take(page, name, part = page) {
  await page.waitForTimeout(REST_MS);
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  await part.screenshot({ path: join(OUT, `${name}.png`), timeout: WAIT_MS });
  await page.context().close();
}

const PICTURES = {
  /** The helm comes apart over the bench, beside its job sheet. */
  async apart() {
    const page = await open({ viewport: DESK });
    await look(page, { stage: 1 });
    await take(page, 'app');
  },
  /** Its pieces lie on the sheet of foam, at night. */
  async sheet() {
    const page = await open({ viewport: DESK, colorScheme: 'dark' });
    await look(page, { stage: 3 });
    await take(page, 'dark');
  },
  /** The job sheet where it tells how the pieces fit. */
  async jobSheet() {
    const page = await open({ viewport: { width: 1280, height: 1000 }, locale: 'de' });
    await ask(page, 'go-fit');
    await page.waitForTimeout(REST_MS);
    await page.evaluate(() => document.activeElement?.blur());
    await take(page, 'job-sheet-de', page.locator('fl-job-sheet'));
  },
  /** One step of gluing fills a tablet. */
  async atBench() {
    const page = await open({ viewport: TABLET, hasTouch: true });
    await ask(page, 'at-bench');
    await page.waitForTimeout(REST_MS);
    const key = await page.evaluate(() => {
      const { lines } = document.querySelector('fl-app').shadowRoot.querySelector('fl-at-bench');
      return lines.filter(({ phase }) => phase === 'glue').at(4)?.key ?? null;
    });
    await page.evaluate(
      (line) => document.querySelector('fl-app').workbench.setWishes({ atBench: { isOpen: true, line } }),
      key,
    );
    await take(page, 'at-bench');
  },
  /** What is bought, on a phone. */
  async atShop() {
    const page = await open({ viewport: PHONE, hasTouch: true, deviceScaleFactor: 2 });
    await ask(page, 'at-shop');
    await page.waitForTimeout(REST_MS);
    // Half a line would look out under the button.
    await page.evaluate(() => {
      // Who taps with a finger sees no ring: what has the keyboard lies in shadow roots, and only it gives it up.
      document.dispatchEvent(new Event('pointerdown'));
      let at = document.activeElement;
      while ((at?.shadowRoot?.activeElement ?? null) !== null) at = at.shadowRoot.activeElement;
      at?.blur();
      document.documentElement.scrollBy(0, 16);
    });
    await take(page, 'at-shop');
  },
  /** A printed page. */
  async page() {
    const page = await open({ viewport: DESK });
    const index = await page.evaluate(() =>
      document.querySelector('fl-app').workbench.bench.paper.pages.findIndex(({ kind }) => kind === 'tile'),
    );
    await look(page, { choice: { kind: 'page', page: index } });
    await take(page, 'page', page.locator('fl-page-view fl-page-picture'));
  },
};

try {
  await mkdir(OUT, { recursive: true });
  for (const takeOne of Object.values(PICTURES)) await takeOne();
} finally {
  await browser.close();
  await server.close();
}
