// How many pictures after the pointer moved what it points at is lit: npm run bench:pointing [-- large=yes] (after npm run build)
// The pointer goes over the helm, whole, apart and flat, and with `large` over a ball of a million triangles with the knife in hand. Told of
// all moves that lit something else: pictures begun between the move and the one it is lit in (0: the same), and the time until
// that is drawn, ms as on a machine on which the loop of `calibration.ts` takes its usual time.
import process from 'node:process';
import type { Page } from 'playwright-core';
import type { App } from '../../src/app/app.ts';
import type { Stage } from '../../src/app/stage.ts';
import { dropFile, staged, until } from '../browser/window.ts';
import { openApp } from '../support/browser.ts';
import { slowness } from './calibration.ts';
import { textTable } from './text-table.ts';
import { median } from './times.ts';
import { wavyBall } from './wavy-ball.ts';

/** Moves over the picture, from one side to the other and back. */
const MOVES = 90;

interface Lit {
  readonly pictures: number;
  readonly drawnMs: number;
}

const isLarge = process.argv.includes('large=yes');
const app = await openApp({ viewport: { width: 1000, height: 700 }, reducedMotion: true });
const { page } = app;

/** Notes, for each move of the pointer that lights something else, in which picture it came and in which it was drawn. */
async function watch(): Promise<void> {
  await page.evaluate(() => {
    const { workbench, shadowRoot } = document.querySelector<App>('fl-app')!;
    const stage = shadowRoot!.querySelector<Stage>('fl-stage')!;
    const lit: { pictures: number; drawnMs: number }[] = [];
    let picture = 0;
    let drawn = stage.stats!.frames;
    let move: { picture: number; start: number; isNews: boolean } | null = null;
    const shown = (): string => JSON.stringify([workbench.view.pointed, workbench.view.preview]);
    let before = shown();
    workbench.addEventListener('change', () => {
      const now = shown();
      if (now !== before && move !== null) move.isNews = true;
      before = now;
    });
    window.addEventListener(
      'pointermove',
      () => {
        const start = performance.now();
        if (move?.isNews !== true) move = { picture: picture + 1, start, isNews: false };
      },
      { capture: true },
    );
    const look = (): void => {
      picture += 1;
      const { frames } = stage.stats!;
      if (frames !== drawn && move?.isNews === true) {
        lit.push({
          pictures: picture - 1 - move.picture,
          drawnMs: performance.now() - move.start,
        });
        move = null;
      }
      drawn = frames;
      requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
    Object.assign(globalThis, { litMoves: lit });
  });
}

/** Goes over the picture. @returns what was lit on the way. */
async function sweep(): Promise<readonly Lit[]> {
  const box = (await page.locator('fl-stage').boundingBox())!;
  await page.evaluate(() => (globalThis as unknown as { litMoves: unknown[] }).litMoves.splice(0));
  for (let i = 0; i < MOVES; i += 1) {
    const [along, down] = [((7 * i) % MOVES) / MOVES, i / MOVES];
    await page.mouse.move(box.x + box.width * (0.25 + 0.5 * along), box.y + box.height * (0.3 + 0.4 * down));
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  }
  return await page.evaluate(() => (globalThis as unknown as { litMoves: Lit[] }).litMoves.splice(0));
}

const rows: string[][] = [];
async function tell(what: string): Promise<void> {
  await staged(page);
  await sweep();
  const before = slowness().times;
  const lit = await sweep();
  const slow = (before + slowness().times) / 2;
  const of = (pick: (one: Lit) => number): string =>
    lit.length === 0
      ? '-'
      : `${(median(lit.map(pick)) / slow).toFixed(1)} to ${(Math.max(...lit.map(pick)) / slow).toFixed(1)}`;
  const same = lit.filter(({ pictures }) => pictures <= 0).length;
  const later = Math.max(0, ...lit.map(({ pictures }) => pictures));
  rows.push([what, String(lit.length), String(same), String(later), of((one) => one.drawnMs), slow.toFixed(1)]);
  process.stderr.write(`${rows.at(-1)!.join('  ')}\n`);
}

const look = (of: Page, patch: object): Promise<void> =>
  of.evaluate((view) => document.querySelector<App>('fl-app')!.workbench.setView(view), patch);
await until(page, 'a sample is on the bench', ({ pages }) => pages.length > 0);
await staged(page);
await watch();
for (const [stage, what] of [
  [0, 'helm, whole'],
  [1, 'helm, apart'],
  [2, 'helm, flat'],
] as const) {
  await look(page, { stage });
  await tell(what);
}
if (isLarge) {
  await look(page, { stage: 0 });
  await dropFile(page, 'ball.obj', wavyBall(1_000_000).obj());
  await until(page, 'the ball is read', ({ name }) => name === 'ball');
  await staged(page);
  await look(page, { tool: 'part' });
  await tell('a million triangles, knife');
}
const head = ['of', 'lit', 'in the same picture', 'pictures later at most', 'until drawn ms', 'slowness'];
process.stdout.write(`${textTable(head, rows)}\n`);
await app.close();
