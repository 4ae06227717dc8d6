import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { page } from 'vitest/browser';
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import '../../src/app/tokens.css';
import '../../src/app/app.ts';
import type { App } from '../../src/app/app.ts';
import { drawAnew } from '../../src/app/language/draw-anew.ts';
import { speak, type Language } from '../../src/app/language/language.ts';
import { findIn, openTrayApp, restedApp } from './app-element.ts';
import { layoutFaults } from './layout-faults.ts';

let app: App;

beforeAll(async () => {
  ({ app } = await openTrayApp());
});

afterAll(async () => {
  app.remove();
  await spoken('en');
  await page.viewport(1280, 720);
});

async function spoken(language: Language, direction = 'ltr'): Promise<void> {
  await speak(language, document.documentElement);
  document.documentElement.dir = direction;
  drawAnew(document);
  await restedApp(app);
}

/** Opens all that is folded away, and what is in it. */
async function unfold(root: ParentNode = app.shadowRoot!): Promise<void> {
  for (const element of root.querySelectorAll('*')) {
    if (element.localName === 'fl-licences') continue;
    if (element instanceof HTMLDetailsElement) element.open = true;
    if (element.shadowRoot !== null) await unfold(element.shadowRoot);
  }
}

async function faultsAt(width: number, height: number): Promise<string[]> {
  await page.viewport(width, height);
  await unfold();
  await restedApp(app);
  await unfold();
  await restedApp(app);
  return layoutFaults(app.shadowRoot!);
}

const SIZES = [
  [390, 844],
  [1440, 900],
] as const;

describe('the window', () => {
  it('is spoken in German at once, and in English again, with all that was typed and chosen in place', async () => {
    const head = findIn(app, 'fl-job-sheet', 'fl-job-head');
    const field = findIn<HTMLInputElement>(app, 'fl-job-sheet', 'fl-job-head', 'input');
    field.focus();
    await spoken('de');
    expect(head.shadowRoot!.textContent).toContain('Rückgängig');
    expect(findIn(app, 'fl-job-sheet', 'fl-size-line').shadowRoot!.textContent).toContain('100\u00a0mm hoch');
    expect(head.shadowRoot!.activeElement).toBe(field);
    await spoken('en');
    expect(head.shadowRoot!.textContent).toContain('Undo');
  });

  it.each(SIZES)('fits in German at %d × %d', async (width, height) => {
    await spoken('de');
    expect(await faultsAt(width, height)).toEqual([]);
  });

  it.each(SIZES)('fits from right to left at %d × %d', async (width, height) => {
    await spoken('en', 'rtl');
    expect(await faultsAt(width, height)).toEqual([]);
  });
});
