import { existsSync } from 'node:fs';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type BrowserContext, type Page } from 'playwright-core';
import { serveApp } from '../../scripts/lib/app-server.mjs';
import { CHROMIUM_FLAGS, findChromium } from '../../scripts/lib/chromium.mjs';
import { WAIT_MS } from './time-limits.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

const FIRST_PORT = 5279;

export interface OpenAppOptions {
  /** Size of the page, CSS px. */
  readonly viewport?: { readonly width: number; readonly height: number };
  readonly reducedMotion?: boolean;
  readonly colorScheme?: 'light' | 'dark';
  readonly forcedColors?: boolean;
  readonly hasTouch?: boolean;
  /** What follows the address, for example `?demo=bracer`. */
  readonly path?: string;
  /** Extra flags for Chromium, for example `--disable-3d-apis`. */
  readonly flags?: readonly string[];
  /** Dots of the screen for one CSS px. */
  readonly pixelRatio?: number;
  /** What serves the app in place of the server of `npm start`, and where; it is closed with the app. */
  readonly server?: { readonly url: string; close(): Promise<void> };
  /** Whether the browser keeps the files of the app for later, which takes as long as to load them once more. */
  readonly keeps?: boolean;
}

/** The built app in a browser of its own, with an empty memory. */
export interface OpenApp {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly url: string;
  /** Address of every request of the page and its workers so far, in order. */
  readonly requests: string[];
  /** Every error the page or its workers wrote to the console or threw so far, with its place. */
  readonly consoleErrors: string[];
  /** Requests so far that went to another origin; blob: and data: addresses stay inside. */
  requestsOutside(): readonly string[];
  /** Does something that saves a file, and gives the file. */
  saved(action: () => Promise<unknown>): Promise<{ readonly name: string; readonly bytes: Uint8Array }>;
  close(): Promise<void>;
}

/** Serves dist/ and opens it. Call `close()` in the end, also when the test fails. */
export async function openApp(options: OpenAppOptions = {}): Promise<OpenApp> {
  if (!existsSync(join(ROOT, 'dist/index.html'))) throw new Error('dist/ holds no built app. Run: npm run build');
  const executablePath = findChromium();
  if (executablePath === undefined) throw new Error('No Chromium was found: install one, or set CHROMIUM to its path.');
  const server = options.server ?? (await serveApp(FIRST_PORT));
  const { url } = server;
  const downloadsPath = await mkdtemp(join(tmpdir(), 'foamloft-downloads-'));
  const browser = await chromium.launch({
    executablePath,
    args: [...CHROMIUM_FLAGS, ...(options.flags ?? [])],
    downloadsPath,
    timeout: WAIT_MS,
  });
  const close = async (): Promise<void> => {
    await browser.close();
    await server.close();
    await rm(downloadsPath, { recursive: true, force: true });
  };
  try {
    const context = await browser.newContext({
      viewport: options.viewport ?? { width: 1440, height: 900 },
      reducedMotion: options.reducedMotion ? 'reduce' : 'no-preference',
      colorScheme: options.colorScheme ?? 'light',
      forcedColors: options.forcedColors ? 'active' : 'none',
      hasTouch: options.hasTouch ?? false,
      deviceScaleFactor: options.pixelRatio ?? 1,
      serviceWorkers: options.keeps ? 'allow' : 'block',
      acceptDownloads: true,
      locale: 'en-GB',
    });
    context.setDefaultTimeout(WAIT_MS);
    const requests: string[] = [];
    const consoleErrors: string[] = [];
    context.on('request', (request) => requests.push(request.url()));
    context.on('console', (message) => {
      const { url: place, lineNumber } = message.location();
      if (message.type() === 'error') consoleErrors.push(`${message.text()} (${place}:${lineNumber})`);
    });
    context.on('weberror', (error) => consoleErrors.push(error.error().stack ?? error.error().message));
    // No one stands before this browser to answer its own choosers for files: the window does without them, as where there are none.
    await context.addInitScript(() => {
      Object.assign(globalThis, { showOpenFilePicker: undefined, showSaveFilePicker: undefined });
    });
    const page = await context.newPage();
    // The browser hands choosers over only from when it knows that someone waits for them: asked for at the key that opens one, it may be late.
    page.on('filechooser', () => undefined);
    await page.goto(new URL(options.path ?? '', url).href);
    const requestsOutside = (): readonly string[] =>
      requests.filter((address) => !address.startsWith(url) && !/^(blob|data):/.test(address));
    const saved: OpenApp['saved'] = async (action) => {
      const [download] = await Promise.all([page.waitForEvent('download'), action()]);
      return { name: download.suggestedFilename(), bytes: new Uint8Array(await readFile(await download.path())) };
    };
    return { page, context, url, requests, consoleErrors, requestsOutside, saved, close };
  } catch (error) {
    await close();
    throw error;
  }
}
