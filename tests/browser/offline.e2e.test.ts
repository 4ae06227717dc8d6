import { readdirSync, readFileSync } from 'node:fs';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { KEEP_WORDS } from '../../src/app/files/keep-words.ts';
import { KEEPER } from '../../src/app/offline/keeper-talk.ts';
import { OFFLINE_WORDS } from '../../src/app/offline/offline-words.ts';
import { openApp, type OpenApp } from '../support/browser.ts';
import { DIST, windowFiles } from '../support/built-files.ts';
import { readPdf } from '../support/read-pdf.ts';
import { serveFolder, type StaticServer } from '../support/static-server.ts';
import { TRAY_OBJ } from './open-tray.ts';
import { LONG, factsOf, faultsOf, until } from './window.ts';

const SCRIPTS = readdirSync(`${DIST}assets`).filter((name) => name.endsWith('.js'));
const PDF_CODE = `assets/${SCRIPTS.find((name) => name.includes('jspdf'))}`;
const TRAY_IN_MM = TRAY_OBJ.replace(/^v .*$/gm, (line) => line.replace(/-?\d+/g, (cm) => `${cm}0`));
const SECOND = 'The second version.';

/** One visit after another in one browser: each test a step after the one before. The folder lies below a path and is served by a server of our own. */
describe('the window that is kept', () => {
  let server: StaticServer;
  let app: OpenApp;
  let other: Page;

  beforeAll(async () => {
    server = await serveFolder(DIST, '/foam/loft/');
    // A sample that is quickly worked out.
    server.changed.set('samples/helm.obj', TRAY_IN_MM);
    server.changed.set('samples/helm.seams.json', '{}');
    app = await openApp({ server, keeps: true, viewport: { width: 1000, height: 700 } });
  });
  afterAll(async () => {
    await app.close();
  });

  it('is kept once the first job is shown, and says so', async () => {
    await until(app.page, 'a sample is on the bench', ({ pages }) => pages.length > 0);
    await told(app.page, OFFLINE_WORDS.ready);
    expect(await keptNames(app.page)).toEqual(windowFiles());
    // Nothing that the first picture waits for comes after what is kept for later.
    expect(server.asked.indexOf(KEEPER)).toBeGreaterThan(server.asked.findIndex((name) => name.startsWith('samples/')));
  });

  it('can be installed', async () => {
    const devtools = await app.context.newCDPSession(app.page);
    const { errors, data } = await devtools.send('Page.getAppManifest');
    expect(errors).toEqual([]);
    expect(JSON.parse(data ?? '{}')).toMatchObject({ name: 'Foamloft', start_url: './', scope: './' });
    const { installabilityErrors } = await devtools.send('Page.getInstallabilityErrors');
    // The browser of a test forgets everything when it is closed, and says so.
    expect(installabilityErrors.map(({ errorId }) => errorId)).toEqual(['in-incognito']);
  });

  it('tells every window of a new version, and loads none of them anew', async () => {
    await settledJob(app.page);
    other = await secondWindow(app.context, server.url);
    publishSecond(server);
    await app.page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
    for (const page of [app.page, other]) {
      await told(page, OFFLINE_WORDS.newer);
      expect(await isSecond(page)).toBe(false);
    }
  });

  it('keeps a change made just before it is taken up', async () => {
    const { page } = app;
    const label = page.locator('fl-foam-line .stock label', { hasText: /^\s*10/ });
    await label.click();
    const loaded = page.waitForEvent('load', LONG);
    await page.getByRole('button', { name: OFFLINE_WORDS.takeUp }).click();
    await loaded;
    expect(await isSecond(page)).toBe(true);
    const { pieces } = await until(page, 'the job is back', (facts) => facts.pages.length > 0);
    expect(pieces.every(({ thicknessMm }) => thicknessMm === 10)).toBe(true);
  });

  it('leaves a window of the version before what it may still ask for', async () => {
    await told(other, OFFLINE_WORDS.newerElsewhere);
    expect(await isSecond(other)).toBe(false);
    expect(await keptNames(other)).toContain(PDF_CODE);
    const asked = server.asked.length;
    expect((await savedPages(other)).length).toBeGreaterThan(1);
    // The browser looks for a new version by itself.
    expect(server.asked.slice(asked).filter((name) => name !== KEEPER)).toEqual([]);
  });

  it('holds what is not kept in the browser until it is saved to a file', async () => {
    // The browser has no room for what this window is to keep.
    await other.evaluate(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('no room', 'QuotaExceededError');
      };
    });
    await other.getByRole('button', { name: KEEP_WORDS.windows.workHere }).click();
    await other.locator('fl-foam-line .stock label', { hasText: /^\s*15/ }).click();
    await other.waitForFunction(
      () => document.querySelector('fl-app')?.workbench.autosave.state === 'refused',
      null,
      LONG,
    );
    await told(other, OFFLINE_WORDS.newerElsewhere);
    await other.getByRole('button', { name: OFFLINE_WORDS.takeUp }).click();
    await told(other, OFFLINE_WORDS.saveFirst);
    const [file] = await Promise.all([
      other.waitForEvent('download'),
      other.getByRole('button', { name: OFFLINE_WORDS.save, exact: true }).click(),
    ]);
    expect(JSON.parse(readFileSync(await file.path(), 'utf8'))).toHaveProperty('project');
    await told(other, OFFLINE_WORDS.newerElsewhere);
    const loaded = other.waitForEvent('load', LONG);
    await other.getByRole('button', { name: OFFLINE_WORDS.takeUp }).click();
    await loaded;
    expect(await isSecond(other)).toBe(true);
    await other.close();
  });

  it('does the whole job without a network, and lets go of the version before', async () => {
    const { page } = app;
    await server.close();
    await page.reload();
    await until(page, 'the job is there', ({ pages }) => pages.length > 0);
    expect(await isSecond(page)).toBe(true);
    expect((await factsOf(page)).notice).not.toBe(OFFLINE_WORDS.ready);
    await expect.poll(() => keptNames(page), LONG).not.toContain(PDF_CODE);
    await page.locator('fl-seams-line .angle button').click();
    const { pages } = await until(page, 'six pieces', ({ pieces }) => pieces.length === 6);
    expect(await savedPages(page)).toHaveLength(pages.length);
    // What is seldom asked for is there too.
    for (const name of ['samples/kit.foamloft.json', 'licences.json', 'fonts/DejaVuSans.ttf']) {
      expect(await page.evaluate(async (file) => (await fetch(file)).ok, name), name).toBe(true);
    }
  });

  it('asked nothing of another origin', () => {
    // What the net cannot be asked for is told by the browser itself.
    expect(faultsOf(app).filter((fault) => !/ERR_CONNECTION_REFUSED/.test(fault))).toEqual([]);
  });
});

const OURS: readonly unknown[] = Object.values(OFFLINE_WORDS);

/** Waits for a notice; another that has its place is closed, as a maker would. */
async function told(page: Page, text: string): Promise<void> {
  const line = page.locator('fl-notice-line');
  const end = Date.now() + LONG.timeout;
  for (;;) {
    const { notice } = await factsOf(page);
    if (notice === text) return;
    if (Date.now() > end) throw new Error(`never told: ${text}; last: ${notice}`);
    if (notice !== '' && !OURS.includes(notice)) await line.locator('button').last().click();
    else await page.waitForTimeout(50);
  }
}

/** Names of the files that are kept, from the folder of the app. */
async function keptNames(page: Page): Promise<string[]> {
  return await page.evaluate(async () => {
    const names: string[] = [];
    for (const name of await caches.keys()) {
      for (const { url } of await (await caches.open(name)).keys()) {
        names.push(new URL(url).pathname.replace(new URL(document.baseURI).pathname, ''));
      }
    }
    return names.toSorted();
  });
}

/** A second build: every script has another name, and those of the first are gone from the server. */
function publishSecond({ changed }: StaticServer): void {
  const scripts = SCRIPTS.map((name) => `assets/${name}`);
  const second = (name: string): string =>
    SCRIPTS.reduce((text, script) => text.replaceAll(script, ofSecond(script)), readFileSync(DIST + name, 'utf8'));
  for (const script of scripts) {
    changed.set(ofSecond(script), second(script));
    changed.set(script, null);
  }
  const page = second('index.html').replace(/(name="description" content=")[^"]*/, `$1${SECOND}`);
  changed.set('index.html', page);
  changed.set(KEEPER, second(KEEPER).replace(/(url:`index\.html`,revision:`)\w+/, '$1second'));
}

const ofSecond = (script: string): string => script.replace(/\.js$/, '-2.js');

const isSecond = (page: Page): Promise<boolean> =>
  page.evaluate((text) => document.querySelector<HTMLMetaElement>('meta[name=description]')?.content === text, SECOND);

async function secondWindow(context: BrowserContext, url: string): Promise<Page> {
  const page = await context.newPage();
  await page.goto(url);
  await until(page, 'the job is there', ({ pages }) => pages.length > 0);
  return page;
}

/** Waits until the job is kept in the browser. */
async function settledJob(page: Page): Promise<void> {
  await page.waitForFunction(() => document.querySelector('fl-app')?.workbench.autosave.state === 'saved', null, LONG);
}

async function savedPages(page: Page): Promise<readonly unknown[]> {
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.locator('fl-paper-line .files button.first').click(),
  ]);
  return (await readPdf(new Uint8Array(readFileSync(await file.path())))).pages;
}
