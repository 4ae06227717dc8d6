import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { openApp, type OpenApp } from '../support/browser.ts';
import { windowFiles } from '../support/built-files.ts';
import { readPdf } from '../support/read-pdf.ts';
import { ELSEWHERE, HOSTILE_SVG, NAME_OF_MARKUP, hostileObj, hostileProject } from './hostile-files.ts';
import { TRAY_OBJ } from './open-tray.ts';
import { LONG, button, dropFile, factsOf, faultsOf, staged, until, type BenchFacts } from './window.ts';

const isShown = ({ pages }: { readonly pages: readonly unknown[] }): boolean => pages.length > 0;

/** Notes whatever the content policy refuses, from the first script of every page on. */
async function watchPolicy(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const refused: string[] = [];
    Object.assign(globalThis, { refused });
    document.addEventListener('securitypolicyviolation', ({ effectiveDirective, blockedURI, sample }) =>
      refused.push(`${effectiveDirective} ${blockedURI} ${sample}`),
    );
  });
  await page.reload();
}
const refusedOn = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => (globalThis as unknown as { refused: string[] }).refused);
const brokenOn = (page: Page): Promise<unknown> =>
  page.evaluate(() => (globalThis as { broken?: unknown }).broken ?? null);

describe('a window under the content policy', () => {
  let app: OpenApp;
  /** Every address that left the page or its workers, as the browser's own network log tells it. */
  const asked: string[] = [];

  beforeAll(async () => {
    app = await openApp({ viewport: { width: 1200, height: 800 } });
    await app.context.route('**/*', (route) => {
      asked.push(route.request().url());
      return route.continue();
    });
    await watchPolicy(app.page);
    await until(app.page, 'a sample is on the bench', isShown);
    await staged(app.page);
  });
  afterAll(async () => {
    await app.close();
  });

  it('does the main job, and nothing of it is refused or goes elsewhere', async () => {
    const { page } = app;
    await dropFile(page, 'tool_tray.obj', TRAY_OBJ);
    await until(page, 'the tray is read', ({ name }) => name === 'tool tray');
    await page.locator('fl-size-line .units button').nth(1).click();
    await until(page, 'the size is known', ({ sized }) => sized);
    await page.locator('fl-seams-line .angle button').click();
    const { pages } = await until(page, 'six pieces', ({ pieces }) => pieces.length === 6);
    await page.keyboard.press('f');
    const file = await app.saved(() => page.locator('fl-paper-line .files button.first').click());
    expect((await readPdf(file.bytes)).pages).toHaveLength(pages.length);
    const job = await app.saved(() => button(page, /^save the job/i).click());
    expect(job.name).toMatch(/\.foamloft\.json$/);
    await expect
      .poll(() => page.evaluate(() => document.querySelector('fl-app')?.workbench.autosave.state), LONG)
      .toBe('saved');
    await page.reload();
    await until(page, 'the job is back', ({ name, pieces }) => name === 'tool tray' && pieces.length === 6);
    expect(await refusedOn(page)).toEqual([]);
    expect(faultsOf(app)).toEqual([]);
    expect(asked.filter((address) => !address.startsWith(app.url) && !address.startsWith('blob:'))).toEqual([]);
  });

  it('is told the policy by the server, and so are its threads', async () => {
    const policy = async (name: string): Promise<string> =>
      (await fetch(new URL(name, app.url))).headers.get('content-security-policy') ?? '';
    const [page, thread] = await Promise.all([
      policy(''),
      policy(windowFiles().find((name) => name.startsWith('assets/worker-')) ?? 'none'),
    ]);
    for (const one of [page, thread]) {
      expect(one).toContain("default-src 'none'");
      expect(one).toContain("require-trusted-types-for 'script'; trusted-types default lit-html");
      expect(one).toContain("frame-ancestors 'none'");
      expect(one).not.toMatch(/unsafe-inline|'unsafe-eval'|https?:|data:|blob:|\*/);
    }
    expect(page).not.toContain('wasm');
  });

  it('lets its threads compile the loops of the solver, and nothing from text', async () => {
    const said = await Promise.all(
      app.page.workers().map((worker) =>
        worker.evaluate(async () => {
          await new Promise((resolve) => setTimeout(resolve));
          const outcome = (act: () => unknown): string => {
            try {
              act();
              return 'done';
            } catch (error) {
              return (error as Error).name;
            }
          };
          return [
            outcome(() => new WebAssembly.Module(new Uint8Array([0, 97, 115, 109, 1, 0, 0, 0]))),
            outcome(() => Reflect.construct(Function, ['return 1'])),
            outcome(() => new Worker('assets/other.js')),
          ].join(', ');
        }),
      ),
    );
    expect(new Set(said)).toEqual(new Set(['done, EvalError, TypeError']));
  });

  it('runs no script that is written into the page', async () => {
    const { page } = app;
    const said = await page.evaluate(async () => {
      // What a test has the page do at once may do more than the page itself.
      await new Promise((resolve) => setTimeout(resolve));
      const seen: string[] = [];
      const throws = (what: string, act: () => unknown): void => {
        try {
          act();
          seen.push(`${what}: done`);
        } catch (error) {
          seen.push(`${what}: ${(error as Error).name}`);
        }
      };
      const div = document.createElement('div');
      const mark = 'globalThis.broken = 1';
      throws('markup', () => (div.innerHTML = `<img src=x onerror="${mark}">`));
      throws('markup beside', () => div.insertAdjacentHTML('beforeend', '<b>x</b>'));
      throws('a document from text', () => new DOMParser().parseFromString('<p>x</p>', 'text/html'));
      throws('written into', () => document.write('<p>x</p>'));
      throws('eval', () => (0, eval)(mark));
      throws('a function from text', () => Reflect.construct(Function, [mark]));
      throws('a timer of text', () => setTimeout(mark as unknown as () => void));
      throws('text of a script', () => (document.createElement('script').text = mark));
      throws('address of a script', () => (document.createElement('script').src = 'assets/other.js'));
      throws('a thread from text', () => new Worker(URL.createObjectURL(new Blob([mark]))));
      throws('a thread elsewhere', () => new Worker('http://elsewhere.example/worker.js'));
      throws('a thread that is no thread of ours', () => new Worker('assets/other.js'));
      throws('a frame of text', () => (document.createElement('iframe').srcdoc = '<p>x</p>'));
      throws('a policy of its own', () =>
        (
          globalThis as unknown as { trustedTypes: { createPolicy(name: string, rules: object): void } }
        ).trustedTypes.createPolicy('own', {}),
      );
      throws('code of WebAssembly', () => new WebAssembly.Module(new Uint8Array([0, 97, 115, 109, 1, 0, 0, 0])));
      div.setAttribute('style', 'color: red');
      seen.push(`a style of its own: ${div.style.color === '' ? 'refused' : 'done'}`);
      // Put together from nodes, no rule of types is asked: there the policy alone says no.
      const script = document.createElement('script');
      script.append(mark);
      throws('an element with code', () => document.head.append(script));
      const button = document.createElement('button');
      throws('a handler of text', () => button.setAttribute('onclick', mark));
      button.click();
      const link = document.createElement('a');
      link.href = `javascript:${mark}`;
      document.body.append(link);
      link.click();
      await new Promise((resolve) => setTimeout(resolve, 200));
      link.remove();
      return seen.filter((line) => !/: (TypeError|EvalError|CompileError|SecurityError|refused)$/.test(line));
    });
    // What throws nothing has no effect.
    expect(await brokenOn(page)).toBeNull();
    expect(said).toEqual(['an element with code: done']);
    expect((await refusedOn(page)).map((line) => line.split(' ')[0])).toEqual(
      expect.arrayContaining(['require-trusted-types-for', 'script-src-elem', 'style-src-attr', 'trusted-types']),
    );
  });
});

describe('a file from anywhere', () => {
  let app: OpenApp | null = null;
  afterEach(async () => {
    await app?.close();
    app = null;
  });

  const SHORT_MARKUP = '<img src=x onerror="globalThis.broken=1">';
  /** What is opened, under which name, and how one sees that it was taken or refused. */
  const files: readonly {
    readonly what: string;
    readonly name: string;
    readonly text: string;
    readonly isTaken: (facts: BenchFacts, noticeBefore: string) => boolean;
  }[] = [
    {
      what: 'a model with names of markup',
      name: 'tray.obj',
      text: hostileObj(TRAY_OBJ),
      isTaken: ({ name, sized }) => name === 'tray' && !sized,
    },
    {
      what: 'a model whose own name is markup',
      name: `${SHORT_MARKUP}.obj`,
      text: TRAY_OBJ,
      isTaken: ({ name, sized }) => name === SHORT_MARKUP && !sized,
    },
    {
      what: 'artwork with scripts, pictures and styles from elsewhere',
      name: `${SHORT_MARKUP}.svg`,
      text: HOSTILE_SVG,
      isTaken: ({ tool }) => tool === 'drawing',
    },
    {
      what: 'a project of such artwork with names of markup',
      name: 'badge.foamloft.json',
      text: hostileProject(),
      isTaken: ({ name, pages }) => name === NAME_OF_MARKUP && pages.length > 0,
    },
    {
      what: 'a page in place of a project',
      name: 'x.foamloft.json',
      text: '<html><script>globalThis.broken=9</script></html>',
      isTaken: ({ notice }, before) => notice !== before && notice !== '',
    },
    {
      what: 'keys that stand for more than themselves',
      name: `${SHORT_MARKUP}.foamloft.json`,
      text: '{"__proto__":{"broken":1},"constructor":{"prototype":{"broken":2}}}',
      isTaken: ({ notice }, before) => notice !== before && notice !== '',
    },
  ];

  it('is shown as text, runs nothing and fetches nothing', async () => {
    app = await openApp({ viewport: { width: 1200, height: 800 } });
    const { page } = app;
    const asked: string[] = [];
    await app.context.route('**/*', (route) => {
      asked.push(route.request().url());
      return route.continue();
    });
    await watchPolicy(page);
    await until(page, 'a sample is on the bench', isShown);
    for (const { what, name, text, isTaken } of files) {
      const { notice } = await factsOf(page);
      await dropFile(page, name, text);
      await until(page, what, (facts) => isTaken(facts, notice));
      if (name.startsWith('badge')) {
        const file = await app.saved(() => page.locator('fl-paper-line .files button.first').click());
        // The name of a file holds nothing that a system or a page takes for more than a name.
        expect(file.name).toMatch(/^[\w. -]+\.pdf$/);
      }
      expect(await brokenOn(page), what).toBeNull();
      expect(await page.locator('img, iframe, object, embed').count(), what).toBe(0);
      expect(await page.locator('body script').count(), what).toBe(0);
    }
    expect(await refusedOn(page)).toEqual([]);
    expect(faultsOf(app)).toEqual([]);
    expect(asked.filter((address) => address.includes(ELSEWHERE.slice(7)))).toEqual([]);
    expect(await page.evaluate(() => 'broken' in {})).toBe(false);
  });
});

describe('the keeper of files', () => {
  it('answers for its own folder alone, and with its own files', async () => {
    const app = await openApp({ viewport: { width: 1000, height: 700 }, keeps: true });
    try {
      const { page } = app;
      await until(page, 'a sample is on the bench', isShown);
      await page.waitForFunction(
        async () => (await navigator.serviceWorker.getRegistration())?.active != null,
        null,
        LONG,
      );
      const { scope, script } = await page.evaluate(async () => {
        const registration = await navigator.serviceWorker.ready;
        return { scope: registration.scope, script: registration.active?.scriptURL };
      });
      expect([scope, script]).toEqual([app.url, `${app.url}keeper.js`]);
      await expect
        .poll(
          () =>
            page.evaluate(async () =>
              (
                await Promise.all(
                  (await caches.keys()).map(async (name) => (await (await caches.open(name)).keys()).length),
                )
              ).reduce((a, b) => a + b, 0),
            ),
          LONG,
        )
        .toBe(windowFiles().length);
      // What is no file of the app comes from the server, which has none.
      expect(await page.evaluate(async () => (await fetch('cli.js')).status)).toBe(404);
      const kept = await page.evaluate(async () =>
        (
          await Promise.all(
            (await caches.keys()).map(async (name) => (await (await caches.open(name)).keys()).map(({ url }) => url)),
          )
        ).flat(),
      );
      expect(kept.filter((address) => !address.startsWith(app.url))).toEqual([]);
      expect(faultsOf(app).filter((line) => !line.includes('404'))).toEqual([]);
    } finally {
      await app.close();
    }
  });
});
