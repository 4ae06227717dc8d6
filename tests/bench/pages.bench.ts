// How long more than sixty pages of outlines with 5,120 corners take from the click to the bytes in the built window, and how long the window is
// held up by it: npm run bench:pages (after npm run build).
import { createHash } from 'node:crypto';
import process from 'node:process';
import type { App } from '../../src/app/app.ts';
import { dropFile, staged, until } from '../browser/window.ts';
import { openApp } from '../support/browser.ts';
import { readPdf } from '../support/read-pdf.ts';
import { fineTubeProject } from './fine-tube.ts';
import { median, timesText } from './times.ts';

const ROUNDS = 5;

/** What the window notes of one save. */
interface Noted {
  clickMs: number;
  bytesMs: number;
  tasks: { startMs: number; ms: number }[];
}

const app = await openApp({ viewport: { width: 1440, height: 900 } });
const { page } = app;
const say = (text: string): void => void process.stdout.write(`${text}\n`);
try {
  await staged(page);
  await dropFile(page, 'fine-tube.foamloft.json', await fineTubeProject());
  const opened = await until(
    page,
    'the tube on its pages',
    ({ name, pages }) => name === 'Fine tube' && pages.length > 0,
  );
  say(`${opened.pages.length} pages, ${opened.pages.filter(({ kind }) => kind === 'tile').length} of them tiles`);
  await page.evaluate(() => {
    const noted: Noted = { clickMs: 0, bytesMs: 0, tasks: [] };
    Object.assign(globalThis, { noted });
    new PerformanceObserver((list) => {
      for (const { startTime, duration } of list.getEntries()) noted.tasks.push({ startMs: startTime, ms: duration });
    }).observe({ type: 'longtask' });
    document.addEventListener('click', () => (noted.clickMs = performance.now()), { capture: true });
    // The bytes are there when the window makes an address for them.
    const make = URL.createObjectURL.bind(URL);
    URL.createObjectURL = (file: Blob): string => {
      noted.bytesMs = performance.now();
      return make(file);
    };
  });
  const takeNoted = async (): Promise<Noted> => {
    // Tasks are told some time after they end.
    await page.waitForTimeout(300);
    return await page.evaluate(() => {
      const { noted } = globalThis as unknown as { noted: Noted };
      const copy = { ...noted, tasks: noted.tasks.splice(0) };
      return copy;
    });
  };
  // The watch itself is watched: a task of 120 ms must be noted.
  await page.evaluate(() => {
    setTimeout(() => {
      const end = performance.now() + 120;
      while (performance.now() < end);
    }, 20);
  });
  await page.waitForTimeout(300);
  const seen = Math.max(0, ...(await takeNoted()).tasks.map(({ ms }) => ms));
  if (seen < 100) throw new Error('the browser tells nothing of long tasks');
  const save = page.locator('fl-paper-line .files button.first');
  await save.scrollIntoViewIfNeeded();
  const first: number[] = [];
  const again: number[] = [];
  const held: number[] = [];
  let last = new Uint8Array();
  // Round 0 also loads the font and the PDF library.
  for (let round = 0; round <= ROUNDS; round += 1) {
    await page.evaluate(
      (overlapMm) => {
        const { workbench } = document.querySelector<App>('fl-app')!;
        workbench.run({
          label: 'overlap',
          apply: (project) => ({ ...project, paper: { ...project.paper, overlapMm } }),
        });
      },
      10 - round / 10,
    );
    await until(page, 'pages', ({ pages }) => pages.length >= 60);
    for (const times of [first, again]) {
      await page.waitForTimeout(500);
      await takeNoted();
      const file = await app.saved(() => save.click());
      last = file.bytes as Uint8Array<ArrayBuffer>;
      const { clickMs, bytesMs, tasks } = await takeNoted();
      times.push(bytesMs - clickMs);
      held.push(...tasks.filter(({ startMs, ms }) => startMs + ms > clickMs && startMs < bytesMs).map(({ ms }) => ms));
    }
  }
  const read = await readPdf(last);
  const sum = createHash('sha256').update(last).digest('hex').slice(0, 12);
  say(
    `first of all, font and library loaded on the way: ${first[0].toFixed(0)} ms; again at once: ${again[0].toFixed(0)} ms`,
  );
  say(`after a change of the overlap, ${ROUNDS} rounds: ${timesText(first.slice(1))} ms, median and spread`);
  say(`the same once more, pages remembered: ${timesText(again.slice(1))} ms`);
  say(`main thread meanwhile: ${held.length} tasks over 50 ms, longest ${Math.max(0, ...held).toFixed(0)} ms`);
  const corners = read.pages.map(({ paths }) =>
    paths.reduce((most, { points }) => Math.max(most, points.length / 2), 0),
  );
  say(
    `read back: ${read.pages.length} pages, ${last.length} bytes, sum ${sum}, longest line on a page ${Math.max(...corners)} corners`,
  );
  if (median(first.slice(1)) > 2000) process.exitCode = 1;
} finally {
  await app.close();
}
