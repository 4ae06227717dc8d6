import { afterEach, beforeEach, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import '../../src/app/tokens.css';
import '../../src/app/app.ts';
import type { App } from '../../src/app/app.ts';
import { SCORE_WORDS } from '../../src/app/score-words.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { findIn, openTrayApp, restedApp } from './app-element.ts';

let app: App;
let workbench: Workbench;

beforeEach(async () => {
  ({ app, workbench } = await openTrayApp());
});

afterEach(() => {
  app.remove();
});

const inList = (...path: string[]): HTMLElement =>
  findIn(app, 'fl-job-sheet', 'fl-seams-line', 'fl-score-list', ...path);
const marked = (): number => workbench.part?.seams.edges.length ?? 0;

it('a seam is scored with a key, its depth is typed, and it is parted again', async () => {
  const before = marked();
  const seam = workbench.bench.pieces?.seams.find(({ letter }) => letter === 'A');
  workbench.setView({ choice: { kind: 'seam', seam: seam!.id } });
  await restedApp(app);
  await userEvent.keyboard('x');
  await restedApp(app);
  const line = workbench.part?.scores?.[0];
  expect(line?.edges.length).toBe(before - marked());
  // One stroke: every edge begins where the last one ended.
  line!.edges.slice(1).forEach(([from], i) => {
    expect(from).toBe(line!.edges[i][1]);
  });
  await userEvent.fill(inList('fl-length-field', 'input'), '2.5');
  await userEvent.keyboard('{Enter}');
  await restedApp(app);
  expect(workbench.part?.scores?.[0].depthMm).toBe(2.5);
  await userEvent.hover(inList('fieldset'));
  expect(workbench.view.preview?.length).toBe(line?.edges.length);
  const buttons = [...inList().shadowRoot!.querySelectorAll('button')];
  await userEvent.click(buttons.find(({ textContent }) => textContent.trim() === SCORE_WORDS.part)!);
  await restedApp(app);
  expect(workbench.part?.scores).toBeUndefined();
  expect(marked()).toBe(before);
  expect(workbench.view.preview ?? null).toBeNull();
});
