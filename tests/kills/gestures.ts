import type { Page } from 'playwright-core';
import type { App } from '../../src/app/app.ts';
import type { Project } from '../../src/project/project.ts';
import { dropFile } from '../browser/window.ts';
import { TRAY_OBJ } from '../browser/open-tray.ts';

/** One thing that a maker does, from taking hold to letting go. */
export interface Gesture {
  readonly name: string;
  /** How often it is done, as against the others. */
  readonly share: number;
  /** Whether another job may be in hand after it. */
  readonly opens?: boolean;
  does(page: Page, random: () => number, n: number): Promise<void>;
}

/** File of the browser's own, which the job is saved to as to one on the disk. */
export const SAVED_NAME = 'killed.foamloft.json';

const SAMPLE_BUTTONS = /bracer|shoulder|lantern/i;

/** Changes the document as a field does, and goes on to the next picture. */
async function change(page: Page, key: string | null, values: readonly number[], ms: number): Promise<void> {
  await page.evaluate(
    async ([mergeKey, all, wait]) => {
      const bench = document.querySelector<App>('fl-app')!.workbench;
      for (const value of all) {
        bench.run({
          label: 'measured thickness',
          ...(mergeKey === null ? {} : { mergeKey }),
          apply: (project: Project) => ({
            ...project,
            parts: project.parts.map((part) => ({
              ...part,
              layers: part.layers.map((layer, i) => (i === 0 ? { ...layer, thicknessMm: value } : layer)),
            })),
          }),
        });
        await new Promise((resolve) => setTimeout(resolve, wait));
      }
    },
    [key, values, ms] as const,
  );
}

const thickness = (random: () => number): number => 2 + Math.round(random() * 800) / 100;

export const GESTURES: readonly Gesture[] = [
  {
    name: 'name typed',
    share: 4,
    does: async (page, _, n) => {
      const field = page.locator('fl-job-head input.name');
      await field.fill(`job ${n}`);
      await field.press('Enter');
    },
  },
  { name: 'undo', share: 3, does: (page) => page.keyboard.press('Control+z') },
  { name: 'redo', share: 2, does: (page) => page.keyboard.press('Control+Shift+z') },
  { name: 'thickness', share: 5, does: (page, random) => change(page, null, [thickness(random)], 0) },
  {
    name: 'drag of 40 steps',
    share: 2,
    does: (page, random, n) =>
      change(
        page,
        `drag ${n}`,
        Array.from({ length: 40 }, () => thickness(random)),
        16,
      ),
  },
  { name: 'saved to the file', share: 3, does: (page) => page.keyboard.press('Control+s') },
  { name: 'a wait', share: 2, does: (page, random) => page.waitForTimeout(random() * 1500) },
  {
    name: 'another sculpt',
    share: 0.5,
    opens: true,
    does: (page, _, n) => dropFile(page, `tray_${n}.obj`, TRAY_OBJ),
  },
  {
    name: 'a sample',
    share: 0.3,
    opens: true,
    does: (page) => page.locator('fl-job-head .kit button', { hasText: SAMPLE_BUTTONS }).first().click(),
  },
];

const SHARES = GESTURES.reduce((sum, { share }) => sum + share, 0);

export function anyGesture(random: () => number): Gesture {
  let at = random() * SHARES;
  return GESTURES.find(({ share }) => (at -= share) < 0) ?? GESTURES[0];
}

/** What the window has in hand. */
export interface Seen {
  readonly project: Project;
  /** In how many changes and walks it came about: higher is later. */
  readonly job: string;
  readonly file: string | null;
}

/** As a text, so that two can be told apart; null where nothing is open. */
export const seenIn = (page: Page): Promise<Seen | null> =>
  page.evaluate(() => {
    const bench = document.querySelector<App>('fl-app')?.workbench;
    if (bench?.project == null) return null;
    const { job, file } = bench.keeping.place;
    return { project: bench.project, job, file: file?.name ?? null };
  });
