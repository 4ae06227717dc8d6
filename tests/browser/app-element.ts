import axe from 'axe-core';
import { vi } from 'vitest';
import type { App } from '../../src/app/app.ts';
import '../../src/app/later-elements.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { nextTurn } from '../../src/app/turns.ts';
import { WAIT_MS } from '../support/time-limits.ts';
import { makeWorkbench, openPartedTray, shown } from '../support/tray-workbench.ts';

/** An element inside the window, through its shadow roots: one selector for each root on the way. */
export function findIn<T extends HTMLElement = HTMLElement>(app: App, ...path: string[]): T {
  let here: Element = app;
  for (const selector of path) {
    const next: Element | null | undefined = here.shadowRoot?.querySelector(selector);
    if (next == null) throw new Error(`no ${selector} in ${here.localName}`);
    here = next;
  }
  return here as T;
}

/** The window with the tool tray in it, in its true size and parted, and the workbench behind it. */
export async function openTrayApp(): Promise<{ app: App; workbench: Workbench }> {
  const { workbench } = makeWorkbench();
  const app = document.createElement('fl-app');
  app.workbench = workbench;
  document.body.append(app);
  await openPartedTray(workbench);
  await restedApp(app);
  return { app, workbench };
}

/** Waits until something is so. */
export const soon = <T>(check: () => T | Promise<T>): Promise<T> => vi.waitFor(check, { timeout: WAIT_MS });

/** Waits until the window shows the last result, with all that waits for its turn in it. */
export async function restedApp(app: App): Promise<void> {
  await shown(app.workbench);
  await app.updateComplete;
  // Lines wait for their turn, and what is in them for one after that.
  for (let i = 0; i < 6; i += 1) await nextTurn();
  await new Promise((resolve) => requestAnimationFrame(resolve));
}

/** Faults of any weight that the rules find in the window as it stands. */
export async function axeFaults(app: App): Promise<string[]> {
  const { violations } = await axe.run(app, {
    // One document holds the test runner as well: its own headings and landmarks are not the window's.
    rules: { 'page-has-heading-one': { enabled: false }, region: { enabled: false } },
  });
  return violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html.slice(0, 160)}`));
}
