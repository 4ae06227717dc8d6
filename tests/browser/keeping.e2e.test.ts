import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { KEEP_WORDS } from '../../src/app/files/keep-words.ts';
import { WORDS } from '../../src/app/words.ts';
import { openApp, type OpenApp } from '../support/browser.ts';
import { IS_LONG } from '../support/long.ts';
import { readPdf } from '../support/read-pdf.ts';
import { LONG, button, faultsOf, settled, until } from './window.ts';

/** 1 pt = 1/72 in, exactly. */
const MM_PER_PT = 25.4 / 72;

const saveState = (page: Page): Promise<string | undefined> =>
  page.evaluate(() => document.querySelector('fl-app')?.workbench.autosave.state);
const rename = async (page: Page, name: string): Promise<void> => {
  const field = page.locator('fl-job-head input.name');
  await field.fill(name);
  await field.press('Enter');
};

describe('paper and two tabs, in the built window', () => {
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

  it('of two tabs on one job one works, the other says so and can take over', async () => {
    const { page: one, context, url } = app;
    await until(one, 'a sample is there', ({ pages }) => pages.length > 0);
    await one.waitForFunction(() => document.querySelector('fl-app')?.workbench.autosave.state === 'saved', null, LONG);
    const two = await context.newPage();
    await two.goto(url);
    await settled(two);
    await two.getByText(KEEP_WORDS.windows.elsewhere).waitFor(LONG);
    await rename(two, 'not kept');
    await rename(one, 'kept');
    await button(two, KEEP_WORDS.windows.workHere).click();
    await one.getByText(KEEP_WORDS.windows.elsewhere).waitFor(LONG);
    await until(two, 'what the first has kept is here', ({ name }) => name === 'kept');
    await rename(two, 'kept by the second');
    await two.waitForFunction(() => document.querySelector('fl-app')?.workbench.autosave.state === 'saved', null, LONG);
    expect(await saveState(one)).not.toBe('refused');
    await one.close();
    await two.reload();
    expect((await until(two, 'it is back', ({ pages }) => pages.length > 0)).name).toBe('kept by the second');
    expect(faultsOf(app)).toEqual([]);
  });
});

/** Every day `app-storage.component.test.ts` stands for these. */
describe.runIf(IS_LONG)('a browser that keeps nothing', () => {
  let app: OpenApp;
  afterEach(async () => {
    await app.close();
  });

  it('goes on where the browser keeps nothing, and says so once', async () => {
    app = await openApp();
    const { page, context } = app;
    await context.addInitScript(() => {
      IDBFactory.prototype.open = () => {
        throw new DOMException('switched off', 'SecurityError');
      };
    });
    await page.reload();
    await until(page, 'a sample is there', ({ pages }) => pages.length > 0);
    await page.getByText(WORDS.notice.storageRefused).waitFor(LONG);
    await button(page, WORDS.notice.close).click();
    await rename(page, 'goes on');
    expect((await until(page, 'it goes on', ({ name }) => name === 'goes on')).notice).toBe('');
    expect(await saveState(page)).toBe('refused');
    expect(faultsOf(app)).toEqual([]);
  });

  it('goes on where the disk is full, and keeps the job as soon as there is room', async () => {
    app = await openApp();
    const { page, context } = app;
    await context.addInitScript(() => {
      const put = IDBObjectStore.prototype.put;
      IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...given) {
        if ('isFull' in window && this.name === 'documents') throw new DOMException('full', 'QuotaExceededError');
        return put.apply(this, given);
      };
    });
    await page.reload();
    await until(page, 'a sample is there', ({ pages }) => pages.length > 0);
    await page.evaluate(() => Object.assign(window, { isFull: true }));
    await rename(page, 'too much');
    await page.getByText(KEEP_WORDS.full).waitFor(LONG);
    await page.evaluate(() => Reflect.deleteProperty(window, 'isFull'));
    await rename(page, 'room again');
    await page.waitForFunction(
      () => document.querySelector('fl-app')?.workbench.autosave.state === 'saved',
      null,
      LONG,
    );
    await page.reload();
    expect((await until(page, 'it is back', ({ pages }) => pages.length > 0)).name).toBe('room again');
  });
});
