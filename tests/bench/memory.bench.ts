// What the window holds on to: npm run bench:memory [-- undo=50 open=20 kinds=yes] (after npm run build)
// One job is changed, undone and done again; then jobs are opened one after the other, two by turns. Told after each stretch, once everything
// unreachable was let go: memory of the page and of its workers, its nodes and listeners, and geometries and textures of the graphics card.
// What is held must not grow from the second stretch to the third: the first warms up. `kinds` tells what grew.
import process from 'node:process';
import type { App } from '../../src/app/app.ts';
import type { Stage } from '../../src/app/stage.ts';
import { staged, until } from '../browser/window.ts';
import { openApp } from '../support/browser.ts';
import { grown, heapKinds, type HeapKinds } from './heap-kinds.ts';
import { textTable } from './text-table.ts';
import { WorkerHeaps } from './worker-heaps.ts';

const words = new Map(process.argv.slice(2).map((word) => word.split('=') as [string, string]));
const [undos, opens] = [Number(words.get('undo') ?? 50), Number(words.get('open') ?? 20)];
const tellsKinds = words.get('kinds') === 'yes';
const app = await openApp({ viewport: { width: 900, height: 700 } });
const { page } = app;
const session = await page.context().newCDPSession(page);
await session.send('HeapProfiler.enable');
await session.send('Performance.enable');

const heaps = await WorkerHeaps.of(session);

const HEAD = ['after', 'page MB', 'workers MB', 'nodes', 'listeners', 'geometries', 'textures'];
const rows: string[][] = [];
const notes: string[] = [];
let held: number[] = [];
let kinds: HeapKinds | null = null;
async function tell(what: string, isWarm: boolean): Promise<void> {
  await staged(page);
  await page.waitForTimeout(400);
  // Both sides hold on to what the other has lent until it is cleared there.
  for (let i = 0; i < 2; i += 1) {
    await heaps.bytes();
    await session.send('HeapProfiler.collectGarbage');
  }
  const workers = await heaps.bytes();
  const { metrics } = await session.send('Performance.getMetrics');
  const of = (name: string): number => metrics.find((one) => one.name === name)?.value ?? 0;
  const { geometries, textures } = await page.evaluate(
    () =>
      document.querySelector<App>('fl-app')?.shadowRoot?.querySelector<Stage>('fl-stage')?.stats ?? {
        geometries: 0,
        textures: 0,
      },
  );
  const now = [of('JSHeapUsedSize') / 1e6, workers / 1e6, of('Nodes'), of('JSEventListeners'), geometries, textures];
  rows.push([what, ...now.map((figure, i) => figure.toFixed(i < 2 ? 2 : 0))]);
  if (isWarm) rows.push(['  more than before', ...now.map((figure, i) => (figure - held[i]).toFixed(i < 2 ? 2 : 0))]);
  held = now;
  if (tellsKinds) {
    const found = await heapKinds(session);
    if (kinds !== null) notes.push(`${what}:`, ...grown(kinds, found).map((line) => `  ${line}`));
    kinds = found;
  }
  process.stderr.write(`${rows.at(-1)!.join('  ')}\n`);
}

const open = async (name: string): Promise<void> => {
  await page.locator('fl-job-head .kit button', { hasText: new RegExp(`^\\s*${name}\\s*$`) }).click();
  await until(page, name, (facts) => facts.name === name && facts.pages.length > 0);
};
await until(page, 'a sample is on the bench', ({ pages }) => pages.length > 0);
await staged(page);
const [small, other] = ['Maul head', 'Lantern'];
await open(small);
const thick = await page.evaluate(
  () => document.querySelector<App>('fl-app')!.workbench.bench.pieces!.pieces[0].thicknessMm,
);
await page.locator('fl-foam-line .stock label', { hasText: thick === 10 ? /^\s*6/ : /^\s*10/ }).click();
await until(page, 'another thickness', ({ pieces }) => pieces.length > 0 && pieces[0].thicknessMm !== thick);
const turn = async (way: 'undo' | 'redo'): Promise<void> => {
  await page.evaluate((step) => document.querySelector<App>('fl-app')!.workbench[step](), way);
  await until(page, way, ({ pieces }) => pieces.length > 0);
};
for (const stretch of [0, 1, 2]) {
  for (let i = 0; i < undos / 2; i += 1) {
    await turn('undo');
    await turn('redo');
  }
  const done = (stretch * undos) / 2;
  await tell(stretch === 0 ? `${undos / 2} to warm up` : `${done} undone and done again`, stretch > 0);
}
for (const stretch of [0, 1, 2]) {
  for (let i = 0; i < opens / 2; i += 1) await open(i % 2 === 0 ? other : small);
  await tell(stretch === 0 ? `${opens / 2} opened to warm up` : `${(stretch * opens) / 2} opened`, stretch > 0);
}
process.stdout.write(`${textTable(HEAD, rows)}${notes.join('\n')}\n`);
await app.close();
