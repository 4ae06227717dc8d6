import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { KEEP_WORDS } from '../../src/app/files/keep-words.ts';
import { WORDS } from '../../src/app/words.ts';
import { contentHash } from '../../src/base/hash.ts';
import { newProject } from '../../src/project/new-project.ts';
import { readProjectFile, writeProjectFile } from '../../src/project/project-file.ts';
import { openApp, type OpenApp } from '../support/browser.ts';
import { expectOk } from '../support/expect-ok.ts';
import { readPdf } from '../support/read-pdf.ts';
import { TRAY_OBJ } from './open-tray.ts';
import { LONG, button, faultsOf, settled, until } from './window.ts';

/** 1 pt = 1/72 in, exactly. */
const MM_PER_PT = 25.4 / 72;

const saveState = (page: Page): Promise<string | undefined> =>
  page.evaluate(() => document.querySelector('fl-app')?.workbench.autosave.state);
const isSaved = async (page: Page): Promise<void> =>
  void (await page.waitForFunction(
    () => document.querySelector('fl-app')?.workbench.autosave.state === 'saved',
    null,
    LONG,
  ));
const rename = async (page: Page, name: string): Promise<void> => {
  const field = page.locator('fl-job-head input.name');
  await field.fill(name);
  await field.press('Enter');
};

/** A file that the system hands over. */
const HANDED = 'handed.foamloft.json';
async function handedText(): Promise<string> {
  const bytes = new TextEncoder().encode(TRAY_OBJ);
  const source = { hash: await contentHash(bytes), fileName: 'tray.obj', format: 'obj' } as const;
  return writeProjectFile(newProject('tray', source), new Map([[source.hash, { fileName: 'tray.obj', bytes }]]));
}

describe('paper, tabs and what the browser keeps, in the built window', () => {
  let app: OpenApp;
  beforeAll(async () => {
    app = await openApp();
  });
  afterAll(async () => {
    await app.close();
  });

  it('prints in true size: the square of 100 mm is read back from the paper', async () => {
    const { page } = app;
    const { pages } = await until(page, 'a sample is there', (facts) => facts.pages.length > 0);
    await page.evaluate(() => void (window.print = () => undefined));
    await button(page, KEEP_WORDS.print.button).click();
    await page.waitForSelector('.fl-print', { state: 'attached', timeout: LONG.timeout });
    const printed = await readPdf(new Uint8Array(await page.pdf({ preferCSSPageSize: true, printBackground: true })));
    const size = (widthPt: number, heightPt: number): string =>
      `${Math.round(widthPt * MM_PER_PT)} x ${Math.round(heightPt * MM_PER_PT)}`;
    expect(printed.pages.map(({ widthPt, heightPt }) => size(widthPt, heightPt))).toEqual(
      pages.map(({ widthMm, heightMm }) => `${Math.round(widthMm)} x ${Math.round(heightMm)}`),
    );
    const sides = printed.pages[0].paths.map(({ points }) => {
      const along = (from: number): number => {
        const all = points.filter((_, i) => i % 2 === from);
        return (Math.max(...all) - Math.min(...all)) * MM_PER_PT;
      };
      return [along(0), along(1)];
    });
    const square = sides.filter(([x, y]) => Math.abs(x - 100) < 0.2 && Math.abs(y - 100) < 0.2);
    expect(square.length, JSON.stringify(sides.slice(0, 20))).toBeGreaterThan(0);
    expect(faultsOf(app)).toEqual([]);
  });

  it('of two tabs on one job one works, the other changes nothing, says so and can take over', async () => {
    const { page: one, context, url } = app;
    await until(one, 'a sample is there', ({ pages }) => pages.length > 0);
    await isSaved(one);
    const two = await context.newPage();
    await two.goto(url);
    await settled(two);
    await two.getByText(KEEP_WORDS.windows.elsewhere).waitFor(LONG);
    await rename(two, 'not kept');
    await two.getByText(KEEP_WORDS.windows.refused).waitFor(LONG);
    expect(await two.locator('fl-job-head input.name').inputValue()).not.toBe('not kept');
    await rename(one, 'kept');
    await button(two, KEEP_WORDS.windows.workHere).click();
    await one.getByText(KEEP_WORDS.windows.elsewhere).waitFor(LONG);
    await until(two, 'what the first has kept is here', ({ name }) => name === 'kept');
    await rename(two, 'kept by the second');
    await isSaved(two);
    expect(await saveState(one)).not.toBe('refused');
    await one.close();
    await two.reload();
    expect((await until(two, 'it is back', ({ pages }) => pages.length > 0)).name).toBe('kept by the second');
    expect(faultsOf(app)).toEqual([]);
    await two.close();
  });

  it('opens a job that the system hands over, and saves it to the same file', async () => {
    const page = await app.context.newPage();
    await page.addInitScript(() => {
      const launchQueue = { setConsumer: (take: unknown) => void Object.assign(window, { launch: take }) };
      Object.defineProperty(window, 'launchQueue', { value: launchQueue });
    });
    await page.goto(app.url);
    await page.waitForFunction(() => 'launch' in window, null, LONG);
    await page.evaluate(
      async ([name, text]) => {
        const folder = await navigator.storage.getDirectory();
        const handle = await folder.getFileHandle(name, { create: true });
        const stream = await handle.createWritable();
        await stream.write(text);
        await stream.close();
        (window as unknown as { launch(given: { files: readonly FileSystemFileHandle[] }): void }).launch({
          files: [handle],
        });
      },
      [HANDED, await handedText()],
    );
    const facts = page.locator('fl-job-head .facts');
    await facts.getByText(KEEP_WORDS.file(HANDED)).waitFor(LONG);
    await rename(page, 'handed over');
    await facts.getByText(KEEP_WORDS.changed(HANDED)).waitFor(LONG);
    await page.keyboard.press('Control+s');
    await facts.getByText(KEEP_WORDS.file(HANDED)).waitFor(LONG);
    const written = await page.evaluate(async (name) => {
      const handle = await (await navigator.storage.getDirectory()).getFileHandle(name);
      return await (await handle.getFile()).text();
    }, HANDED);
    expect(expectOk(await readProjectFile(written, HANDED)).project.name).toBe('handed over');
    await isSaved(page);
    expect(faultsOf(app)).toEqual([]);
    await page.close();
  });

  it('goes on where the disk is full, and keeps the job as soon as there is room', async () => {
    const page = await app.context.newPage();
    await page.addInitScript(() => {
      const put = IDBObjectStore.prototype.put;
      IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...given) {
        if ('isFull' in window && this.name === 'documents') throw new DOMException('full', 'QuotaExceededError');
        return put.apply(this, given);
      };
    });
    await page.goto(app.url);
    await until(page, 'the last job is back', ({ name }) => name === 'handed over');
    await page.evaluate(() => Object.assign(window, { isFull: true }));
    await rename(page, 'too much');
    await page.getByText(KEEP_WORDS.full).waitFor(LONG);
    await page.evaluate(() => Reflect.deleteProperty(window, 'isFull'));
    await rename(page, 'room again');
    await isSaved(page);
    await page.reload();
    await until(page, 'it is back', ({ name }) => name === 'room again');
    await page.close();
  });

  it('goes on where the browser keeps nothing, and says so once', async () => {
    const page = await app.context.newPage();
    await page.addInitScript(() => {
      IDBFactory.prototype.open = () => {
        throw new DOMException('switched off', 'SecurityError');
      };
    });
    await page.goto(app.url);
    await page.getByText(WORDS.notice.storageRefused).waitFor(LONG);
    await button(page, WORDS.notice.close).click();
    await rename(page, 'goes on');
    const facts = await until(page, 'it goes on', ({ name, pages }) => name === 'goes on' && pages.length > 0);
    expect(facts.notice).toBe('');
    expect(await saveState(page)).toBe('refused');
    expect(faultsOf(app)).toEqual([]);
    await page.close();
  });
});
