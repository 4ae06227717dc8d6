import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { App } from '../../src/app/app.ts';
import { openApp, type OpenApp } from '../support/browser.ts';
import { button, faultsOf, LONG, settled, until } from './window.ts';

let app: OpenApp;

beforeAll(async () => {
  app = await openApp({ viewport: { width: 1366, height: 768 } });
  await until(app.page, 'the helm is on the bench', ({ pages }) => pages.length > 0);
});

afterAll(async () => {
  await app.close();
});

const layout = (page: Page) =>
  page.evaluate(() => {
    const { bench, project } = document.querySelector<App>('fl-app')!.workbench;
    return {
      filledMm: bench.sheets?.sheets.at(-1)?.filledMm ?? 0,
      places: bench.sheets?.sheets.flatMap(({ placements }) => placements) ?? [],
      odd: bench.sheets?.odd ?? null,
      kept: project?.stock?.kept?.length ?? 0,
      held: project?.stock?.pieces?.flatMap(({ held }) => held ?? []).length ?? 0,
    };
  });

/** A place of the window where the sheet is free: beyond its last piece, straight on from a place on it. */
const beyondTheLast = (page: Page, x: number, y: number): Promise<{ x: number; y: number }> =>
  page.evaluate(
    ([atX, atY]) => {
      const window = document.querySelector<App>('fl-app')!;
      const [{ filledMm, fillAlong }] = window.workbench.bench.sheets!.sheets;
      const view = window.shadowRoot!.querySelector('fl-sheet-view')!.shadowRoot!;
      const toScreen = view.querySelector<SVGGElement>('#sheet')!.getScreenCTM()!;
      const on = new DOMPoint(atX, atY).matrixTransform(toScreen.inverse());
      const beyond = filledMm + 90;
      const to = fillAlong === 'x' ? new DOMPoint(beyond, on.y) : new DOMPoint(on.x, beyond);
      return { x: to.matrixTransform(toScreen).x, y: to.matrixTransform(toScreen).y };
    },
    [x, y] as const,
  );

it('looks for a better layout until it is stopped, takes it, and lets a piece be dragged from it', async () => {
  const { page } = app;
  const first = await layout(page);
  await button(page, 'Improve the layout').click();
  const found = page.getByRole('button', { name: 'Take it' });
  await found.waitFor(LONG);
  await button(page, 'Stop').click();
  await found.click();
  await settled(page);
  const taken = await layout(page);
  expect(taken.filledMm).toBeLessThan(first.filledMm);
  expect([taken.kept, taken.odd]).toEqual([1, null]);

  await button(page, /move pieces by hand/).click();
  const piece = page.locator('fl-sheet-view g.piece').first();
  const box = (await piece.locator('text').first().boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  const to = await beyondTheLast(page, x, y);
  await page.mouse.move(to.x, to.y, { steps: 8 });
  await page.mouse.up();
  await page.waitForFunction(
    () => document.querySelector<App>('fl-app')!.workbench.project?.stock?.pieces !== undefined,
    null,
    LONG,
  );
  await settled(page);
  const moved = await layout(page);
  expect([moved.held, moved.odd]).toEqual([1, null]);
  const lying = (list: typeof taken.places) => list.map(({ piece: id, copy, x: a, y: b }) => `${id} ${copy} ${a} ${b}`);
  expect(lying(moved.places).filter((place) => !lying(taken.places).includes(place))).toHaveLength(1);

  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await settled(page);
  expect((await layout(page)).places).toEqual(first.places);
  expect(faultsOf(app)).toEqual([]);
});
