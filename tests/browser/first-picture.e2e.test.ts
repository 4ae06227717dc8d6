import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, onTestFinished } from 'vitest';
import { FIRST_LIMIT, firstBytes, sizedScripts, sizeTable } from '../../scripts/lib/first-scripts.mjs';
import type { App } from '../../src/app/app.ts';
import type { Stage } from '../../src/app/stage.ts';
import { openApp } from '../support/browser.ts';
import { LONG } from './window.ts';

const scripts = sizedScripts(join(fileURLToPath(new URL('../../', import.meta.url)), 'dist'));

describe('the first picture', () => {
  it('needs less script than a slow line can bear', () => {
    expect(firstBytes(scripts), sizeTable(scripts)).toBeLessThan(FIRST_LIMIT);
  });

  it('needs no script but these', async () => {
    const first = new Set(scripts.flatMap(({ name, isFirst }) => (isFirst ? [name] : [])));
    const app = await openApp({ viewport: { width: 900, height: 700 }, path: 'licences.json' });
    onTestFinished(app.close);
    const later: string[] = [];
    const warnings: string[] = [];
    app.page.on('console', (message) => warnings.push(message.text()));
    // What is not needed never comes.
    await app.context.route(/\/assets\/.*\.js$/, async (route) => {
      const name = new URL(route.request().url()).pathname.split('/').at(-1) ?? '';
      if (first.has(name)) await route.continue();
      else later.push(name);
    });
    await app.page.goto(app.url);
    const shown = await app.page.waitForFunction(
      () => {
        const window = document.querySelector<App>('fl-app');
        const stage = window?.shadowRoot?.querySelector<Stage>('fl-stage');
        const { sculpt } = window?.workbench.bench ?? { sculpt: null };
        const drawn = stage?.stats?.triangles ?? 0;
        return sculpt != null && drawn >= sculpt.triangles.length / 3 ? sculpt.triangles.length / 3 : null;
      },
      null,
      LONG,
    );
    expect(await shown.jsonValue()).toBeGreaterThan(500);
    expect(later.length).toBeGreaterThan(0);
    // A shader of which a part is left out cannot be made, and says so here alone.
    expect(warnings.filter((text) => text.includes('WebGL'))).toEqual([]);
  });
});
