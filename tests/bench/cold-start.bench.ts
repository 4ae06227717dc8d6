// How long a first visit waits: npm run bench:cold-start [-- times=5] (after npm run build)
// Each in a browser of its own with an empty cache. From the beginning of the navigation to the sculpt on the bench, to all pieces with a flat
// shape, and to a picture that stands still and tells the pointer which piece it meets; s by the clock and, in brackets, as on a machine on which
// the loop of `calibration.ts` takes its usual time. Busy: processor time of the page's main thread until then. The sum is of areas of pieces.
import process from 'node:process';
import type { App } from '../../src/app/app.ts';
import type { Stage } from '../../src/app/stage.ts';
import { factsOf, staged, until } from '../browser/window.ts';
import { openApp } from '../support/browser.ts';
import { slowness } from './calibration.ts';
import { MainThread } from './main-thread.ts';
import { textTable } from './text-table.ts';
import { median } from './times.ts';

/** Milestones, ms from the beginning of the navigation. */
interface Visit {
  readonly sculpt: number;
  readonly flat: number;
  readonly clickable: number;
}

const words = new Map(process.argv.slice(2).map((word) => word.split('=') as [string, string]));
const times = Number(words.get('times') ?? 3);
const NAMES = ['sculpt', 'flat', 'clickable'] as const;
const rows: string[][] = [];
const all: Readonly<Record<keyof Visit, number>>[] = [];
let sum = 0;

async function visit(): Promise<void> {
  const app = await openApp({ viewport: { width: 1200, height: 800 }, path: 'about:blank', reducedMotion: true });
  const { page } = app;
  await page.addInitScript(() => {
    const visited: Partial<Record<keyof Visit, number>> = {};
    Object.assign(globalThis, { visited });
    const look = (): void => {
      const app = document.querySelector<App>('fl-app');
      const { sculpt, pieces } = app?.workbench.bench ?? {};
      const now = performance.now();
      if (sculpt != null) visited.sculpt ??= now;
      const stage = app?.shadowRoot?.querySelector<Stage>('fl-stage') ?? null;
      if (pieces != null && pieces.patches.every(({ uv }) => uv !== null)) {
        visited.flat ??= now;
        const canvas = stage?.shadowRoot?.querySelector('canvas');
        const isDrawn = canvas?.classList.contains('is-blank') === false;
        if (isDrawn && stage?.pickMiddle().piece !== undefined) visited.clickable ??= now;
      }
      if (visited.clickable === undefined) requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
  });
  const main = await MainThread.of(page, false);
  const before = slowness().times;
  await main.start();
  await page.goto(app.url);
  await page.waitForFunction(
    () => (globalThis as unknown as { visited: Partial<Visit> }).visited.clickable !== undefined,
    null,
    { polling: 100, timeout: 120_000 },
  );
  const { busyMs } = await main.stop(Infinity);
  const slow = (before + slowness().times) / 2;
  const visited = await page.evaluate(() => (globalThis as unknown as { visited: Visit }).visited);
  await until(page, 'all is worked out', ({ pages }) => pages.length > 0);
  await staged(page);
  sum += (await factsOf(page)).pieces.reduce((area, { areaMm2 }) => area + Math.round(areaMm2), 0);
  const usual = NAMES.map((name) => visited[name] / slow);
  all.push({ sculpt: usual[0], flat: usual[1], clickable: usual[2] });
  const told = NAMES.map((name, i) => `${(visited[name] / 1000).toFixed(2)} (${(usual[i] / 1000).toFixed(2)})`);
  rows.push([String(rows.length + 1), ...told, (busyMs / 1000).toFixed(2), slow.toFixed(1)]);
  process.stderr.write(`${rows.at(-1)!.join('  ')}\n`);
  await app.close();
}

for (let i = 0; i < times; i += 1) await visit();
process.stdout.write(textTable(['visit', 'sculpt s', 'all flat', 'clickable', 'busy', 'slowness'], rows));
const middle = NAMES.map((name) => `${name} ${(median(all.map((one) => one[name])) / 1000).toFixed(2)} s`);
process.stdout.write(`in the middle, as usual: ${middle.join(', ')}; sum ${sum}\n`);
