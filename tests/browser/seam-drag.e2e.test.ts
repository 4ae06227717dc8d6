import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { App } from '../../src/app/app.ts';
import type { Stage } from '../../src/app/stage.ts';
import { openApp, type OpenApp } from '../support/browser.ts';
import { factsOf, faultsOf, staged, until } from './window.ts';

interface Grip {
  readonly corner: number;
  readonly x: number;
  readonly y: number;
}

/** A corner inside a seam that is in sight, nearest to the middle of the stage; page px. */
async function gripInSight(page: Page): Promise<Grip> {
  const grip = await page.evaluate(() => {
    const app = document.querySelector<App>('fl-app')!;
    const stage = app.shadowRoot!.querySelector<Stage>('fl-stage')!;
    const box = stage.getBoundingClientRect();
    const found: { corner: number; x: number; y: number; away: number }[] = [];
    for (const { kind, vertices } of app.workbench.bench.seams?.chains ?? []) {
      if (kind === 'open') continue;
      for (const corner of vertices.slice(2, -2)) {
        const at = stage.screenOf(corner);
        if (at === null || at.hidden) continue;
        found.push({
          corner,
          x: box.x + at.x,
          y: box.y + at.y,
          away: Math.hypot(at.x - box.width / 2, at.y - box.height / 2),
        });
      }
    }
    return found.sort((a, b) => a.away - b.away)[0] ?? null;
  });
  if (grip === null) throw new Error('no seam in sight');
  return grip;
}

const seamPairs = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    document
      .querySelector<App>('fl-app')!
      .workbench.part!.seams.edges.map((pair) => [...pair].sort().join(' '))
      .sort(),
  );

describe('dragging a seam over the sculpt', () => {
  let app: OpenApp;
  let before: string[];

  beforeAll(async () => {
    app = await openApp({ viewport: { width: 1200, height: 800 } });
    await until(app.page, 'the helm is on the bench', ({ pages }) => pages.length > 0);
    await staged(app.page);
    before = await seamPairs(app.page);
  });
  afterAll(async () => {
    await app.close();
  });

  it('takes the seam along and lays the new pieces flat', async () => {
    const { page } = app;
    const pieces = (await factsOf(page)).pieces;
    const grip = await gripInSight(page);
    await page.mouse.move(grip.x, grip.y);
    await page.mouse.down();
    for (let i = 1; i <= 12; i += 1) await page.mouse.move(grip.x + 5 * i, grip.y + 2 * i);
    await page.mouse.up();
    await page.waitForFunction(
      () => document.querySelector<App>('fl-app')!.workbench.history?.undoLabel === 'move the seam',
    );
    const facts = await until(page, 'the pieces are new', (now) =>
      now.pieces.some(({ areaMm2 }, i) => areaMm2 !== pieces[i]?.areaMm2),
    );
    expect(facts.pieces.length).toBe(pieces.length);
    const moved = await seamPairs(page);
    expect(moved).not.toEqual(before);
    // Most of the marks are where they were.
    expect(moved.filter((pair) => before.includes(pair)).length).toBeGreaterThan(0.7 * before.length);
  });

  it('undoes as one', async () => {
    const { page } = app;
    await page.keyboard.press('Control+z');
    await until(page, 'the seams are back', () => true);
    expect(await seamPairs(page)).toEqual(before);
    expect(await page.evaluate(() => document.querySelector<App>('fl-app')!.workbench.history?.canUndo)).toBe(false);
  });

  it('turns the view where there is no seam under the pointer', async () => {
    const { page } = app;
    const grip = await gripInSight(page);
    const box = (await page.locator('fl-stage').boundingBox())!;
    await page.mouse.move(box.x + 20, box.y + 60);
    await page.mouse.down();
    await page.mouse.move(box.x + 120, box.y + 80, { steps: 5 });
    await page.mouse.up();
    expect(await seamPairs(page)).toEqual(before);
    const at = await page.evaluate((corner) => {
      const stage = document.querySelector<App>('fl-app')!.shadowRoot!.querySelector<Stage>('fl-stage')!;
      return stage.screenOf(corner);
    }, grip.corner);
    expect(Math.hypot((at?.x ?? 0) + box.x - grip.x, (at?.y ?? 0) + box.y - grip.y)).toBeGreaterThan(10);
    expect(faultsOf(app)).toEqual([]);
  });
});
