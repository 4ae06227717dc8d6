// Whether a job outlives the browser: npm run kills [-- times=200 seed=1 whom=browser|pages app=dist/] (after npm run build)
// A browser with a memory of its own opens the built window; gestures follow each other, and at a random moment of editing, saving or computing
// its processes are ended. It is started anew on the same memory. The job must be there, whole, and as it was after the last gesture or the one
// before; the file that it was saved to must be whole, old or new. Browsers are this script's own, and ended by their numbers.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { seededRandom } from '../../src/base/random.ts';
import { readProjectFile, writeProjectFile } from '../../src/project/project-file.ts';
import type { Project } from '../../src/project/project.ts';
import { settled } from '../browser/window.ts';
import { serveFolder } from '../support/static-server.ts';
import { anyGesture, seenIn, SAVED_NAME, type Gesture, type Seen } from './gestures.ts';
import { startBrowser, type KillableBrowser } from './killable-browser.ts';

const words = new Map(process.argv.slice(2).map((word) => word.split('=') as [string, string]));
const times = Number(words.get('times') ?? 200);
const seed = Number(words.get('seed') ?? 1);
const whom = words.get('whom') ?? 'browser';
const random = seededRandom(seed);

/** How a kill found things. */
interface Tally {
  same: number;
  lastGone: number;
  underWay: number;
  more: number;
  fileWhole: number;
  fileNone: number;
}

const tally: Tally = { same: 0, lastGone: 0, underWay: 0, more: 0, fileWhole: 0, fileNone: 0 };
const faults: string[] = [];
const fault = (text: string): void => {
  faults.push(text);
  console.log(text);
};
const finishedLost: number[] = [];

/** States known to have been in hand, the latest last, with when they were seen, and the gesture that led there. */
interface Known {
  readonly text: string;
  readonly atMs: number;
  readonly by: string;
}

let gestures = 0;
const textOf = ({ job, project }: Seen): string => JSON.stringify([job, project]);

/** What a gesture that is under way changes. */
const bare = (project: Project): string =>
  JSON.stringify({
    ...project,
    name: '',
    revision: 0,
    parts: project.parts.map((part) => ({ ...part, layers: part.layers.map((one) => ({ ...one, thicknessMm: 0 })) })),
  });

async function withFile(page: Page): Promise<void> {
  const { project } = (await seenIn(page))!;
  const sources = await page.evaluate(
    async (hashes) => {
      const bench = document.querySelector('fl-app')!.workbench;
      return await Promise.all(hashes.map(async (hash) => [...((await bench.workshop.getSource(hash)) ?? [])]));
    },
    [project.parts[0].source.hash],
  );
  const { hash, fileName } = project.parts[0].source;
  const text = writeProjectFile(project, new Map([[hash, { fileName, bytes: new Uint8Array(sources[0]) }]]));
  await page.evaluate(
    async ([name, content]) => {
      const handle = await (await navigator.storage.getDirectory()).getFileHandle(name, { create: true });
      const stream = await handle.createWritable();
      await stream.write(content);
      await stream.close();
      (window as unknown as { launch(given: { files: readonly FileSystemFileHandle[] }): void }).launch({
        files: [handle],
      });
    },
    [SAVED_NAME, text],
  );
  await page.waitForFunction(
    (name) => document.querySelector('fl-app')?.workbench.keeping.place.file?.name === name,
    SAVED_NAME,
  );
}

const server = await serveFolder(words.get('app') ?? fileURLToPath(new URL('../../dist/', import.meta.url)), '/');
const profile = await mkdtemp(join(tmpdir(), 'foamloft-kills-'));
let browser: KillableBrowser | null = null;
let known: Known[] = [];
let underWay: Gesture | null = null;
let kills = 0;
const begun = Date.now();

async function open(): Promise<Page> {
  browser = await startBrowser(profile);
  const { page } = browser;
  await page.context().addInitScript(() => {
    const launchQueue = { setConsumer: (take: unknown) => void Object.assign(window, { launch: take }) };
    Object.defineProperty(window, 'launchQueue', { value: launchQueue });
    Object.assign(globalThis, {
      showOpenFilePicker: () => Promise.reject(new DOMException('', 'AbortError')),
      showSaveFilePicker: undefined,
    });
  });
  await page.goto(server.url);
  await page.waitForFunction(() => 'launch' in window && document.querySelector('fl-app')?.workbench.project != null);
  return page;
}

/** Looks whether what came back is what was, or what was before the last gesture. */
async function compare(page: Page, moment: string): Promise<void> {
  const seen = await seenIn(page);
  if (seen === null) return fault(`kill ${kills}, ${moment}: nothing is open`);
  const text = textOf(seen);
  const at = known.findLastIndex((one) => one.text === text);
  const behind = known.length - 1 - at;
  if (at >= 0 && behind === 0) tally.same += 1;
  else if (at >= 0 && behind === 1) {
    tally.lastGone += 1;
    finishedLost.push(killedAt - known[known.length - 1].atMs);
  } else if (at >= 0) {
    tally.more += 1;
    fault(
      `kill ${kills}, ${moment}: ${behind} gestures lost (${known
        .slice(at + 1)
        .map(({ by, atMs }) => `${by} ${killedAt - atMs} ms before`)
        .join(', ')})`,
    );
  } else {
    const last = known[known.length - 1];
    const isStep =
      underWay !== null &&
      (underWay.opens === true || bare((JSON.parse(last.text) as [string, Project])[1]) === bare(seen.project));
    if (isStep) tally.underWay += 1;
    else fault(`kill ${kills}, ${moment}: a state that never was in hand (${underWay?.name ?? 'nothing'} under way)`);
  }
  const sources = await page.evaluate(
    async (hash) => [...((await document.querySelector('fl-app')!.workbench.workshop.getSource(hash)) ?? [])],
    seen.project.parts[0].source.hash,
  );
  const { hash, fileName } = seen.project.parts[0].source;
  const written = writeProjectFile(seen.project, new Map([[hash, { fileName, bytes: new Uint8Array(sources) }]]));
  const read = await readProjectFile(written, 'kept');
  if (!read.ok) fault(`kill ${kills}, ${moment}: what came back is broken: ${read.problem.text}`);
  await page.waitForFunction(() => {
    const bench = document.querySelector('fl-app')!.workbench;
    return bench.progress === null && bench.reading === null && (!bench.isStale || bench.notice !== null);
  });
  await settled(page).catch((error: Error) => fault(`kill ${kills}, ${moment}: ${error.message}`));
  const onDisk = await page.evaluate(async (name) => {
    const folder = await navigator.storage.getDirectory();
    try {
      return await (await (await folder.getFileHandle(name)).getFile()).text();
    } catch {
      return null;
    }
  }, SAVED_NAME);
  if (onDisk === null) tally.fileNone += 1;
  else {
    const file = await readProjectFile(onDisk, SAVED_NAME);
    if (file.ok) tally.fileWhole += 1;
    else fault(`kill ${kills}, ${moment}: ${file.problem.text}`);
  }
}

let killedAt = 0;
let lastMoment = 'the beginning';
try {
  while (kills < times) {
    const page = await open();
    if (known.length > 0) await compare(page, lastMoment);
    else await settled(page);
    if ((await seenIn(page))?.file == null) await withFile(page);
    await page.waitForFunction(() => document.querySelector('fl-app')?.workbench.autosave.state === 'saved');
    known = [{ text: textOf((await seenIn(page))!), atMs: Date.now(), by: 'opened' }];
    underWay = null;
    let isOver = false;
    const working = (async () => {
      while (!isOver) {
        underWay = anyGesture(random);
        gestures += 1;
        try {
          await underWay.does(page, random, gestures);
          if (isOver) return;
          if (underWay.opens === true) await settled(page);
          if (isOver) return;
          const seen = await seenIn(page);
          if (isOver || seen === null) return;
          const text = textOf(seen);
          if (text !== known[known.length - 1].text) known.push({ text, atMs: Date.now(), by: underWay.name });
          underWay = null;
        } catch (error) {
          if (!isOver) throw error;
        }
      }
    })();
    working.catch((error: Error) => fault(`kill ${kills + 1}: ${error.message.slice(0, 300)}`));
    await Promise.race([new Promise((resolve) => setTimeout(resolve, 50 + random() * 2500)), working]);
    isOver = true;
    kills += 1;
    killedAt = Date.now();
    const doing = (underWay as Gesture | null)?.name ?? 'between two gestures';
    lastMoment = `while ${doing}`;
    if (whom === 'pages') await browser!.killPages();
    await browser!.kill();
    browser = null;
    await working.catch(() => undefined);
    if (kills % 10 === 0)
      console.log(
        `${kills} kills, ${gestures} gestures, ${Math.round((Date.now() - begun) / 1000)} s: ${JSON.stringify(tally)}, faults ${faults.length}`,
      );
  }
  await compare(await open(), lastMoment);
} finally {
  await (browser as KillableBrowser | null)?.kill();
  await server.close();
  await rm(profile, { recursive: true, force: true });
}
console.log(`\n${kills} kills of ${whom} (seed ${seed}), ${gestures} gestures in all:`);
console.log(`  as it was after the last gesture: ${tally.same}`);
console.log(`  as it was within the gesture under way: ${tally.underWay}`);
console.log(
  `  the last gesture gone: ${tally.lastGone}${finishedLost.length === 0 ? '' : ` (done ${finishedLost.map(Math.round).join(', ')} ms before)`}`,
);
console.log(`  more than that gone: ${tally.more}`);
console.log(`  the file it was saved to whole: ${tally.fileWhole}, not there yet: ${tally.fileNone}`);
console.log(`  faults: ${faults.length}`);
for (const text of faults) console.log(`    ${text}`);
if (faults.length > 0) process.exitCode = 1;
