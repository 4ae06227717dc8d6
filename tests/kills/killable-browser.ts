import { spawn } from 'node:child_process';
import { readdir, readFile } from 'node:fs/promises';
import { chromium, type Page } from 'playwright-core';
import { CHROMIUM_FLAGS, findChromium } from '../../scripts/lib/chromium.mjs';

/** How long a browser may take to answer at first, ms. */
const START_MS = 60_000;

/** A browser with a memory that outlives it, to be ended as a power cut ends it. */
export interface KillableBrowser {
  readonly page: Page;
  /** Ends it and all its children at once, without a word to them. */
  kill(): Promise<void>;
  /** Ends only those processes that draw pages: what the system does where memory is short. */
  killPages(): Promise<number>;
}

/** @param profile folder of what it remembers. */
export async function startBrowser(profile: string): Promise<KillableBrowser> {
  const words = ['--headless=new', '--remote-debugging-port=0', `--user-data-dir=${profile}`, ...CHROMIUM_FLAGS];
  const path = findChromium();
  if (path === undefined) throw new Error('No Chromium was found: install one, or set CHROMIUM to its path.');
  // Without a picture in three dimensions the bench is drawn flat: what is kept is the same, and a window is open sooner.
  const child = spawn(path, [...words, '--disable-3d-apis', 'about:blank'], {
    stdio: ['ignore', 'ignore', 'pipe'],
    detached: true,
  });
  const { pid } = child;
  if (pid === undefined) throw new Error('the browser did not start');
  const gone = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  const endAll = async (): Promise<void> => {
    const all = [...(await descendants(pid)), pid];
    for (const one of all) end(one);
    await gone;
    // One that was just being born is found by its parent, which is gone, no more: it ends by itself, and is waited for.
    for (const one of all) while (await isThere(one)) await new Promise((resolve) => setTimeout(resolve, 5));
  };
  try {
    const address = await new Promise<string>((resolve, reject) => {
      let said = '';
      setTimeout(() => reject(new Error(`the browser does not answer: ${said}`)), START_MS).unref();
      child.stderr.on('data', (chunk: Buffer) => {
        said += chunk.toString();
        const found = /DevTools listening on (ws:\S+)/.exec(said);
        if (found !== null) resolve(found[1]);
      });
    });
    const browser = await chromium.connectOverCDP(address);
    const [context] = browser.contexts();
    const page = context.pages()[0] ?? (await context.newPage());
    return {
      page,
      kill: async () => {
        await endAll();
        await browser.close().catch(() => undefined);
      },
      killPages: async () => {
        const pages: number[] = [];
        for (const one of await descendants(pid)) if (/--type=renderer/.test(await commandOf(one))) pages.push(one);
        for (const one of pages) end(one);
        return pages.length;
      },
    };
  } catch (error) {
    await endAll();
    throw error;
  }
}

function end(pid: number): void {
  try {
    process.kill(pid, 'SIGKILL');
  } catch {
    // It is gone already.
  }
}

/** Processes that one has started, and theirs. */
async function descendants(pid: number): Promise<number[]> {
  const parents = new Map<number, number>();
  for (const name of (await readdir('/proc')).filter((one) => /^\d+$/.test(one))) {
    const stat = await readFile(`/proc/${name}/stat`, 'utf8').catch(() => null);
    if (stat !== null) parents.set(Number(name), Number(stat.slice(stat.lastIndexOf(')') + 4).split(' ')[0]));
  }
  const of = (parent: number): number[] =>
    [...parents].filter(([, own]) => own === parent).flatMap(([one]) => [one, ...of(one)]);
  return of(pid);
}

const commandOf = (pid: number): Promise<string> => readFile(`/proc/${pid}/cmdline`, 'utf8').catch(() => '');

/** A process that has ended and is only not asked after yet is not there. */
async function isThere(pid: number): Promise<boolean> {
  const stat = await readFile(`/proc/${pid}/stat`, 'utf8').catch(() => null);
  return stat !== null && !/^\) [ZX]/.test(stat.slice(stat.lastIndexOf(')')));
}
