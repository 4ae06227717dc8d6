// How long the whole job holds the window up: npm run bench:long-tasks [-- tops=yes of=helm,bracer without=propose,thickness] (after npm run build)
// A job from opening to saved files on the helm, the bracer, the maul, the lantern and the whole kit, each in a window of its own. Told of each
// step: tasks of the main thread over 50 ms, by the clock and by processor time, and how many would be on a machine on which the loop of
// `calibration.ts` takes its usual time; then each of those over 50 ms of processor time, and what it was. `tops` tells functions, and costs a
// tenth of the time. The sum is of areas of all pieces, bytes of files and counts of pages: another sum is another job.
import process from 'node:process';
import type { Page } from 'playwright-core';
import type { App } from '../../src/app/app.ts';
import type { ViewState } from '../../src/app/view-state.ts';
import type { FilesAsk } from '../../src/worker/files-api.ts';
import { factsOf, settled, staged, until } from '../browser/window.ts';
import { openApp, type OpenApp } from '../support/browser.ts';
import { LONG_MS, MainThread, type LongTask, type Recorded } from './main-thread.ts';
import { textTable } from './text-table.ts';
import { median } from './times.ts';

const words = new Map(process.argv.slice(2).map((word) => word.split('=') as [string, string]));
const JOBS: Readonly<Record<string, string>> = {
  helm: 'Lamplighter helm',
  bracer: 'Bracer',
  maul: 'Maul head',
  lantern: 'Lantern',
  kit: 'Maul and lantern',
};
const wanted = (words.get('of') ?? Object.keys(JOBS).join()).split(',');
/** Steps to leave out: a search for seams takes minutes on a busy machine. */
const left = new Set((words.get('without') ?? '').split(','));
const wantsTops = words.get('tops') === 'yes';
const DXF: FilesAsk = {
  paper: [],
  sheetSvg: false,
  dxf: true,
  pngDpi: null,
  stl: false,
  obj: false,
  timesSmaller: null,
};
const ZIP: FilesAsk = {
  ...DXF,
  paper: ['templates', 'buildSheet', 'cutList', 'pieces', 'report', 'project'],
  sheetSvg: true,
  stl: true,
};

/** The search for seams may take minutes on a busy machine. */
const SEARCH = { timeout: 600_000 };

const HEAD = ['of', 'step', 'busy ms', 'over 50', 'by cpu', 'usual', 'longest', 'longest cpu'];
interface Step {
  readonly of: string;
  readonly what: string;
  readonly recorded: Recorded;
}
const steps: Step[] = [];
const notes: string[] = [];
let sum = 0;

async function job(name: string): Promise<void> {
  const app = await openApp({ viewport: { width: 1200, height: 800 } });
  try {
    await work(app, name);
  } finally {
    await app.close();
  }
}

async function work(app: OpenApp, name: string): Promise<void> {
  const { page } = app;
  const main = await MainThread.of(page, wantsTops);
  const step = async (what: string, act: () => Promise<unknown>): Promise<void> => {
    if (left.has(what)) return;
    await main.start();
    try {
      await act();
      await settled(page);
      await staged(page);
    } catch (error) {
      notes.push(`${name}, ${what}: not done: ${String(error).split('\n')[0]}`);
    }
    tell(name, what, await main.stop(LONG_MS));
  };
  await step('first visit', async () => {
    await page.reload();
    await until(page, 'a sample is on the bench', ({ pages }) => pages.length > 0);
  });
  if (name !== 'helm')
    await step('open', async () => {
      await page.locator('fl-job-head .kit').getByRole('button', { name: JOBS[name], exact: true }).click();
      await until(page, name, (facts) => facts.name.includes(JOBS[name].replace('The ', '')) && facts.pages.length > 0);
    });
  await count(page);
  await step('turn the view', async () => {
    for (const side of ['look-left', 'look-top', 'look-return']) {
      await ask(page, side);
      await staged(page);
    }
  });
  if (name !== 'kit')
    await step('size', async () => {
      await ask(page, 'change-size');
      const field = page.locator('fl-size-line .known fl-length-field input').first();
      await field.fill('300');
      await field.press('Enter');
      await page.waitForTimeout(300);
    });
  await step('propose', async () => {
    await ask(page, 'propose');
    await page.waitForFunction(
      () => document.querySelector<App>('fl-app')!.workbench.view.proposals?.state !== 'looking',
      null,
      SEARCH,
    );
  });
  await step('take seams', async () => {
    await page.locator('fl-proposals td button').first().click();
    await until(page, 'seams are taken', ({ pages }) => pages.length > 0);
  });
  await step('thickness', async () => {
    const before = (await factsOf(page)).pieces[0].thicknessMm;
    await page.locator('fl-foam-line .stock label', { hasText: before === 10 ? /^\s*6/ : /^\s*10/ }).click();
    await until(page, 'another thickness', ({ pieces }) => pieces.length > 0 && pieces[0].thicknessMm !== before);
  });
  await count(page);
  for (const stage of [1, 2, 3, 0])
    await step(['whole', 'apart', 'flat', 'on the sheet'][stage], () => ask(page, `stage-${stage}`));
  await step('page', async () => {
    await look(page, { choice: { kind: 'page', page: 1 } });
    await page.locator('fl-page-view fl-page-picture').waitFor();
    await look(page, { choice: { kind: 'nothing' } });
  });
  await step('sheet', async () => {
    await look(page, { choice: { kind: 'sheet', sheet: 0 } });
    await page.locator('fl-sheet-view').waitFor();
    await look(page, { choice: { kind: 'nothing' } });
  });
  await step('save PDF', async () => {
    const saved = await app.saved(async () => {
      await ask(page, 'save-pdf');
      await page.waitForTimeout(200);
      if (await page.evaluate(() => document.querySelector<App>('fl-app')!.workbench.view.printAsked !== null))
        await ask(page, 'save-anyway');
    });
    sum += saved.bytes.length;
  });
  await step('save DXF', async () => {
    sum += (await app.saved(() => files(page, DXF))).bytes.length;
  });
  await step('save zip', async () => {
    sum += (await app.saved(() => files(page, ZIP))).bytes.length;
  });
  await step('bench mode', async () => {
    await ask(page, 'at-bench');
    await page.locator('fl-at-bench').waitFor();
    await page.keyboard.press('ArrowRight');
    await page.waitForTimeout(500);
    await page.evaluate(() => {
      const { workbench } = document.querySelector<App>('fl-app')!;
      workbench.setWishes({ atBench: { isOpen: false, line: null } });
    });
  });
  await step('history', async () => {
    await ask(page, 'history');
    for (const key of ['ArrowUp', 'ArrowUp', 'End']) {
      await page.keyboard.press(key);
      await settled(page);
      await staged(page);
    }
  });
  await step('compare', async () => {
    await ask(page, 'compare-two');
    const compare = page.locator('fl-compare-two');
    await compare.locator('select').first().selectOption({ index: 1 });
    await compare.locator('button').first().click();
    await compare.locator('table').waitFor();
  });
}

function tell(of: string, what: string, recorded: Recorded): void {
  steps.push({ of, what, recorded });
  const long = recorded.tasks.filter(({ cpuMs }) => cpuMs > LONG_MS).sort((a, b) => b.cpuMs - a.cpuMs);
  for (const task of long) {
    const figures = `${task.cpuMs.toFixed(0)} of ${task.wallMs.toFixed(0)} ms`;
    notes.push([`${of}, ${what}: ${figures}: ${task.what}`, ...task.tops].join('; '));
    process.stderr.write(`${notes.at(-1)!}\n`);
  }
  process.stderr.write(
    `${of}, ${what}: ${recorded.busyMs.toFixed(0)} ms in all, slowness ${recorded.slow.toFixed(1)}\n`,
  );
}

async function count(page: Page): Promise<void> {
  const { pieces, pages } = await factsOf(page);
  sum += pages.length + pieces.reduce((all, { areaMm2 }) => all + Math.round(areaMm2), 0);
}

const look = (page: Page, patch: Partial<ViewState>): Promise<void> =>
  page.evaluate((view) => document.querySelector<App>('fl-app')!.workbench.setView(view), patch);

const ask = (page: Page, verb: string): Promise<void> =>
  page.evaluate((id) => {
    const found = document.querySelector<App>('fl-app')!.verbs.find((one) => one.id === id);
    if (found === undefined) throw new Error(`no verb ${id}`);
    void found.run();
  }, verb);

const files = (page: Page, pick: FilesAsk): Promise<void> =>
  page.evaluate((picked) => {
    const event = Object.assign(new Event('fl-files', { bubbles: true }), { pick: picked });
    document.querySelector('fl-app')!.shadowRoot!.querySelector('main')!.dispatchEvent(event);
  }, pick);

for (const name of wanted) await job(name);
// One figure for all: a loop of a tenth of a second comes out too short or too long where others are at work.
const slow = median(steps.map(({ recorded }) => recorded.slow));
const isLong = ({ cpuMs }: LongTask): boolean => cpuMs > LONG_MS;
const isLongAsUsual = ({ cpuMs }: LongTask): boolean => cpuMs > LONG_MS * slow;
const rows = steps.map(({ of, what, recorded: { tasks, busyMs } }) => {
  const longest = (of: (task: LongTask) => number): string => Math.max(0, ...tasks.map(of)).toFixed(0);
  const counts = [tasks.length, tasks.filter(isLong).length, tasks.filter(isLongAsUsual).length].map(String);
  return [of, what, busyMs.toFixed(0), ...counts, longest(({ wallMs }) => wallMs), longest(({ cpuMs }) => cpuMs)];
});
process.stdout.write(`${textTable(HEAD, rows)}\n${notes.join('\n')}\n`);
const all = steps.flatMap(({ recorded }) => recorded.tasks);
const usual = Math.max(0, ...all.map(({ cpuMs }) => cpuMs)) / slow;
process.stdout.write(
  [
    `tasks over 50 ms: ${all.length} by the clock, ${all.filter(isLong).length} of processor time, ${all.filter(isLongAsUsual).length} as usual`,
    `longest as usual ${usual.toFixed(0)} ms, slowness ${slow.toFixed(1)}, sum ${sum}\n`,
  ].join('; '),
);
