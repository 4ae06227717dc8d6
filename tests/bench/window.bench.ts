// How long the window is held up while samples open and the thickness changes: npm run bench:window (after npm run build).
import process from 'node:process';
import { factsOf, staged, until } from '../browser/window.ts';
import { openApp } from '../support/browser.ts';

const app = await openApp({ viewport: { width: 900, height: 700 } });
const { page } = app;
await until(page, 'a sample is on the bench', ({ pages }) => pages.length > 0);
await staged(page);
await page.evaluate(() => {
  const tasks: number[] = [];
  new PerformanceObserver((list) => tasks.push(...list.getEntries().map((entry) => entry.duration))).observe({
    type: 'longtask',
  });
  Object.assign(globalThis, { longTasks: tasks });
});
const takeTasks = (): Promise<number[]> =>
  page.evaluate(() => (globalThis as unknown as { longTasks: number[] }).longTasks.splice(0));
const told: string[] = [];
const tell = async (what: string): Promise<void> => {
  const tasks = await takeTasks();
  told.push(`${what}: ${tasks.length} tasks over 50 ms, longest ${Math.max(0, ...tasks).toFixed(0)} ms`);
};
const samples = page.locator('fl-job-head .kit button');
const count = await samples.count();
for (let i = 1; i < count; i += 1) {
  const name = (await samples.nth(i).innerText()).trim();
  await samples.nth(i).click();
  await until(page, name, (facts) => facts.name === name && facts.pages.length > 0);
  await tell(name);
  const before = (await factsOf(page)).pieces[0].thicknessMm;
  await page.locator('fl-foam-line .stock label', { hasText: before === 10 ? /^\s*6/ : /^\s*10/ }).click();
  await until(page, 'another thickness', ({ pieces }) => pieces.length > 0 && pieces[0].thicknessMm !== before);
  await tell(`${name}, another thickness`);
}
process.stdout.write(`${told.join('\n')}\n`);
await app.close();
