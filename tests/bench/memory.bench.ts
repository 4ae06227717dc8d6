// What the window holds on to: npm run bench:memory [-- undo=50 open=20] (after npm run build)
// One job is changed, undone and done again; then jobs are opened one after the other, two by turns. Told after each stretch, once everything
// unreachable was let go: memory of the page, its nodes and listeners, and geometries and textures of the graphics card. What is held must
// not grow from stretch to stretch.
import process from 'node:process';
import type { App } from '../../src/app/app.ts';
import type { Stage } from '../../src/app/stage.ts';
import { staged, until } from '../browser/window.ts';
import { openApp } from '../support/browser.ts';
import { textTable } from './text-table.ts';

const words = new Map(process.argv.slice(2).map((word) => word.split('=') as [string, string]));
const [undos, opens] = [Number(words.get('undo') ?? 50), Number(words.get('open') ?? 20)];
const app = await openApp({ viewport: { width: 900, height: 700 } });
const { page } = app;
const session = await page.context().newCDPSession(page);
await session.send('HeapProfiler.enable');
await session.send('Performance.enable');

const rows: string[][] = [];
async function tell(what: string): Promise<void> {
  await page.waitForTimeout(400);
  for (let i = 0; i < 3; i += 1) await session.send('HeapProfiler.collectGarbage');
  const { metrics } = await session.send('Performance.getMetrics');
  const of = (name: string): number => metrics.find((one) => one.name === name)?.value ?? 0;
  const { geometries, textures } = await page.evaluate(
    () => document.querySelector<App>('fl-app')?.shadowRoot?.querySelector<Stage>('fl-stage')?.stats ?? { geometries: 0, textures: 0 },
  );
  const megabytes = (of('JSHeapUsedSize') / 1e6).toFixed(2);
  const counts = [of('Nodes'), of('JSEventListeners'), geometries, textures];
  rows.push([what, megabytes, ...counts.map(String)]);
  process.stderr.write(`${what}\n`);
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
  for (let i = 0; i < (stretch === 0 ? 3 : undos / 2); i += 1) {
    await turn('undo');
    await turn('redo');
  }
  await tell(stretch === 0 ? 'begun' : `${(stretch * undos) / 2} undone and done again`);
}
for (const stretch of [0, 1, 2]) {
  for (let i = 0; i < (stretch === 0 ? 4 : opens / 2); i += 1) await open(i % 2 === 0 ? other : small);
  await tell(stretch === 0 ? 'both opened' : `${(stretch * opens) / 2} opened`);
}
const head = ['after', 'memory MB', 'nodes', 'listeners', 'geometries', 'textures'];
process.stdout.write(`${textTable(head, rows)}\n`);
await app.close();
