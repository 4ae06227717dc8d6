import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openApp, type OpenApp } from '../support/browser.ts';
import { readPdf } from '../support/read-pdf.ts';
import { straightLengths } from '../support/straight-lengths.ts';
import { HELMET_HEIGHT_MM, halfHelmet } from './half-helmet.ts';
import { Maker, type GivenFile } from './maker.ts';
import { focusNow } from './tabs.ts';
import { LONG, dropFile, faultsOf, staged, until } from './window.ts';

/** Clicks, keys and drags that each job takes; where one takes more, the window has become harder. */
const MOST_STEPS = {
  mouse: { sculpt: 5, bracer: 14, badge: 5 },
  keys: { sculpt: 8, bracer: 24, badge: 13 },
} as const;

type Way = keyof typeof MOST_STEPS;

/** The forearm that the bracer is made for. */
const FOREARM = { girthMm: '270', lengthMm: '250' } as const;

/** The side of the square that every print is measured by, 100 mm, in points of 1/72 in. */
const SQUARE_PT = (100 * 72) / 25.4;

const openAtSample = async (): Promise<OpenApp> => {
  const app = await openApp({ viewport: { width: 1200, height: 800 }, reducedMotion: true });
  await until(app.page, 'a sample is on the bench', ({ pages }) => pages.length > 0);
  await staged(app.page);
  return app;
};

/** Three makers with ten minutes, each with a job of the usual kind; every step of theirs is counted. */
describe('ten minutes at the window, by mouse', () => {
  let app: OpenApp;
  let page: Page;

  beforeAll(async () => {
    app = await openAtSample();
    page = app.page;
  });
  afterAll(async () => {
    await app.close();
  });

  it('prints a sculpt of one’s own', async () => {
    const maker = new Maker(page);
    await maker.drop(dropFile(page, 'half_helmet.obj', halfHelmet()));
    await until(page, 'the helmet is read', ({ name, sized }) => name === 'half helmet' && !sized);
    await maker.click(page.locator('fl-size-line .units button').nth(1));
    const sized = await until(page, 'the size is known', ({ pieces }) => pieces.length > 0);
    expect(sized.heightMm).toBeCloseTo(HELMET_HEIGHT_MM, 3);
    await maker.click(page.locator('fl-proposals button[aria-keyshortcuts="M"]').first());
    await maker.click(page.locator('fl-proposals td button').first());
    await until(page, 'seams are taken', ({ seamEdges, pages }) => seamEdges > 0 && pages.length > 0);
    await print(maker, 'mouse');
    expectFew(maker, MOST_STEPS.mouse.sculpt);
  });

  it('fits the bracer to a forearm', async () => {
    const maker = new Maker(page);
    await maker.click(page.locator('fl-job-head .kit button').nth(1));
    await until(page, 'the bracer is there', ({ name, pages }) => name === 'Bracer' && pages.length > 0);
    await maker.click(page.locator('fl-size-line button[aria-expanded]').first());
    await maker.click(page.locator('fl-size-line .known fl-length-field input'));
    await answer(maker, FOREARM.lengthMm);
    await isAsLong(page);
    await maker.click(page.locator('fl-wear-group fl-length-field input').first());
    await answer(maker, FOREARM.girthMm);
    await maker.click(page.locator('fl-tape-fields button', { hasText: /move the foam/i }));
    await fitsRound(page);
    await print(maker, 'mouse');
    expectFew(maker, MOST_STEPS.mouse.bracer);
  });

  it('puts a badge on the shoulder plate', async () => {
    const maker = new Maker(page);
    await maker.click(page.locator('fl-job-head .kit button').nth(2));
    await until(page, 'the plate is there', ({ name, pages }) => name === 'Shoulder plate' && pages.length > 0);
    const add = page.locator('fl-parts-line button', { hasText: 'Add from a file' });
    await maker.choose(await badgeFile(), 'mouse', () => maker.click(add));
    await liesBeside(page);
    await maker.click(page.locator('fl-chosen-row button[aria-keyshortcuts="K"]'));
    await sitsOnPlate(page);
    expect(await print(maker, 'mouse')).toContain('is glued on');
    expectFew(maker, MOST_STEPS.mouse.badge);
  });

  it('asked nothing of another origin and wrote no error', () => {
    expect(faultsOf(app)).toEqual([]);
  });
});

describe('ten minutes at the window, by keyboard alone', () => {
  let app: OpenApp;
  let page: Page;

  beforeAll(async () => {
    app = await openAtSample();
    page = app.page;
  });
  afterAll(async () => {
    await app.close();
  });

  it('prints a sculpt of one’s own', async () => {
    const maker = new Maker(page);
    const file = { name: 'half_helmet.obj', mimeType: 'model/obj', buffer: Buffer.from(halfHelmet()) };
    await maker.choose(file, 'keys', () => maker.key('Control+o'));
    await until(page, 'the helmet is read', ({ name, sized }) => name === 'half helmet' && !sized);
    await maker.key('.');
    await isFocused(page, 'FL-SIZE-LINE');
    await maker.key('Enter');
    await until(page, 'the size is known', ({ heightMm, pieces }) => pieces.length > 0 && heightMm > 0);
    await maker.key('m');
    await page.locator('fl-proposals td button').first().waitFor();
    await maker.key('.');
    await isFocused(page, 'FL-PROPOSALS');
    await maker.key('Enter');
    await until(page, 'seams are taken', ({ seamEdges, pages }) => seamEdges > 0 && pages.length > 0);
    await print(maker, 'keys');
    expectFew(maker, MOST_STEPS.keys.sculpt);
  });

  it('fits the bracer to a forearm', async () => {
    const maker = new Maker(page);
    await find(maker, 'br');
    await until(page, 'the bracer is there', ({ name, pages }) => name === 'Bracer' && pages.length > 0);
    await find(maker, 'ch');
    await isFocused(page, 'FL-SIZE-LINE FL-LENGTH-FIELD');
    await answer(maker, FOREARM.lengthMm);
    await isAsLong(page);
    await find(maker, 'gi');
    await isFocused(page, 'FL-WEAR-GROUP FL-LENGTH-FIELD');
    await answer(maker, FOREARM.girthMm);
    await isFocused(page, 'FL-TAPE-FIELDS BUTTON');
    await maker.tabTo('FL-TAPE-FIELDS', /move the foam/i);
    await maker.key('Enter');
    await fitsRound(page);
    await print(maker, 'keys');
    expectFew(maker, MOST_STEPS.keys.bracer);
  });

  it('puts a badge on the shoulder plate', async () => {
    const maker = new Maker(page);
    await find(maker, 'shou');
    await until(page, 'the plate is there', ({ name, pages }) => name === 'Shoulder plate' && pages.length > 0);
    await maker.choose(await badgeFile(), 'keys', () => find(maker, 'ad'));
    await liesBeside(page);
    await maker.key('k');
    await sitsOnPlate(page);
    expect(await print(maker, 'keys')).toContain('is glued on');
    expectFew(maker, MOST_STEPS.keys.badge);
  });

  it('asked nothing of another origin and wrote no error', () => {
    expect(faultsOf(app)).toEqual([]);
  });
});

function expectFew({ count, steps }: Maker, most: number): void {
  expect(count, JSON.stringify(steps)).toBeLessThanOrEqual(most);
}

const badgeFile = async (): Promise<GivenFile> => ({
  name: 'flame-badge.svg',
  mimeType: 'image/svg+xml',
  buffer: await readFile(new URL('../../samples/flame-badge.svg', import.meta.url)),
});

async function answer(maker: Maker, text: string): Promise<void> {
  await maker.type(text);
  await maker.key('Enter');
}

/** Opens the finder, types and takes the first verb. */
async function find(maker: Maker, words: string): Promise<void> {
  await maker.key('/');
  await isFocused(maker.page, 'FL-FINDER');
  await answer(maker, words);
}

const isFocused = (page: Page, element: string): Promise<void> =>
  expect.poll(async () => (await focusNow(page)).path, LONG).toContain(element);

const isAsLong = (page: Page): Promise<unknown> =>
  until(page, 'it is as long as the forearm', ({ heightMm }) => Math.abs(heightMm - Number(FOREARM.lengthMm)) < 1e-3);

/** The foam has the girth of the forearm inside where the tape lies. */
const fitsRound = (page: Page): Promise<void> =>
  expect
    .poll(
      () =>
        page.evaluate(() => document.querySelector('fl-app')?.workbench.bench.bodyFit?.tapes[0]?.back?.girthMm ?? 0),
      LONG,
    )
    .toBeCloseTo(Number(FOREARM.girthMm), 3);

/** Beside the plate, and what can be done with it is shown: until then its letter asks for something else. */
async function liesBeside(page: Page): Promise<void> {
  await until(page, 'the badge lies beside it', ({ choice, pages }) => choice === 'part' && pages.length > 0);
  await page.locator('fl-chosen-row button[aria-keyshortcuts="K"]').waitFor();
}

async function sitsOnPlate(page: Page): Promise<void> {
  await page.locator('fl-part-joins li').waitFor();
  await until(page, 'its outline is on the pieces', ({ pages }) => pages.length > 0);
}

/** Reads what is told of the whole job, saves the templates and measures them. @returns all words on them. */
async function print(maker: Maker, way: Way): Promise<string> {
  const { page } = maker;
  const next = page.locator('fl-next-button button');
  const goOn = (): Promise<void> => (way === 'mouse' ? maker.click(next) : maker.key('.'));
  if ((await next.innerText()).includes('finding')) await goOn();
  await expect.poll(() => next.innerText(), LONG).toContain('print');
  expect(await page.locator('fl-verdict .answer').innerText()).toMatch(/^It will work/);
  const [download] = await Promise.all([page.waitForEvent('download'), goOn()]);
  const { pages } = await readPdf(new Uint8Array(await readFile(await download.path())));
  const off = straightLengths(pages[0].paths).map((length) => Math.abs(length - SQUARE_PT));
  expect(Math.min(...off)).toBeLessThan(0.001);
  return pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
}
