import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { page } from 'vitest/browser';
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import '../../src/app/tokens.css';
import '../../src/app/app.ts';
import type { App } from '../../src/app/app.ts';
import type { Stage } from '../../src/app/stage.ts';
import { holdVerbOf } from '../../src/app/tape-verbs.ts';
import type { ViewState } from '../../src/app/view-state.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { setTape } from '../../src/project/wear-commands.ts';
import { findIn, openTrayApp, restedApp, soon } from './app-element.ts';

let app: App;
let workbench: Workbench;

beforeAll(async () => {
  ({ app, workbench } = await openTrayApp());
  workbench.run(setTape({ id: 'tape-1', name: 'Tape 1', pointInFile: [0, 5, 0], normal: [0, 1, 0] }));
  await restedApp(app);
  await soon(() => expect(stage().stats?.frames ?? 0).toBeGreaterThan(0));
});

afterAll(async () => {
  app.remove();
  await page.viewport(1280, 720);
});

const stage = (): Stage => findIn<Stage>(app, 'fl-stage');

/** Heights of the highest and the lowest corner of the sculpt in the window, px. */
function sculptSpan(): readonly [number, number] {
  const { top } = stage().getBoundingClientRect();
  const corners = [...(workbench.bench.sculpt?.positions.keys() ?? [])].filter((i) => i % 3 === 0).map((i) => i / 3);
  const heights = corners.map((corner) => top + (stage().screenOf(corner)?.y ?? NaN));
  return [Math.min(...heights), Math.max(...heights)];
}

const WIDTHS = [
  [1440, 900],
  [1024, 768],
  [390, 844],
] as const;

/** Panels over the bench, by what they are; those that are not there are left out. */
function panels(): readonly (readonly [string, DOMRect])[] {
  const look = findIn(app, 'fl-look-row').shadowRoot!;
  const parts = [
    ...[...look.querySelectorAll('fieldset, button[aria-pressed], .cut, fl-tape-row')].map(
      (part, i) => [`look ${i} ${part.localName}`, part] as const,
    ),
    ['chosen', findIn(app, 'fl-chosen-row')] as const,
    ['rule', findIn(app, 'fl-stage-rule')] as const,
  ];
  return parts
    .map(([name, part]) => [name, part.getBoundingClientRect()] as const)
    .filter(([, box]) => box.width > 0 && box.height > 0);
}

const meet = (a: DOMRect, b: DOMRect): boolean =>
  Math.min(a.right, b.right) - Math.max(a.left, b.left) > 0.5 &&
  Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 0.5;

/** Controls and words of the window that stick out to the right of it, but for those in a list that is scrolled sideways. */
function cutOff(width: number): string[] {
  const found: string[] = [];
  const walk = (root: ParentNode, isScrolled: boolean): void => {
    for (const part of root.children) {
      const scrolls = isScrolled || /auto|scroll/.test(getComputedStyle(part).overflowX);
      const box = part.getBoundingClientRect();
      if (!isScrolled && box.width > 1 && box.right > width + 0.5) found.push(`${part.localName} ${part.className}`);
      if (part.shadowRoot !== null) walk(part.shadowRoot, scrolls);
      walk(part, scrolls);
    }
  };
  walk(app.shadowRoot!, false);
  return found;
}

describe.each(WIDTHS)('a window %d wide', (width, height) => {
  beforeEach(async () => {
    await page.viewport(width, height);
  });

  const REST: Partial<ViewState> = {
    plane: null,
    look: 'foam',
    stage: 0,
    colouring: 'plain',
    choice: { kind: 'nothing' },
  };
  const states: Readonly<Record<string, () => void>> = {
    'the sculpt alone': () => undefined,
    'pieces on the sheet': () => workbench.setView({ stage: 3 }),
    'the prop, cut open': () => {
      workbench.setView({ look: 'prop' });
      app.verbs.find(({ id }) => id === 'cut-open')?.run();
    },
    'a tape in hand': () => app.verbs.find(({ id }) => id === holdVerbOf('tape-1'))?.run(),
    'a tape in hand and a piece chosen': () => {
      app.verbs.find(({ id }) => id === holdVerbOf('tape-1'))?.run();
      workbench.setView({ choice: { kind: 'piece', piece: workbench.bench.pieces!.pieces[0].id } });
    },
    'a seam chosen and how it fits': () =>
      workbench.setView({ colouring: 'fit', choice: { kind: 'seam', seam: workbench.bench.seams!.chains[0].id } }),
  };

  it.each(Object.keys(states))('keeps panels apart and nothing cut off: %s', async (name) => {
    workbench.setView(REST);
    states[name]();
    await restedApp(app);
    const shown = panels();
    const overlaps = shown.flatMap(([one, a], i) =>
      shown.slice(i + 1).flatMap(([other, b]) => (meet(a, b) ? [`${one} over ${other}`] : [])),
    );
    expect(overlaps).toEqual([]);
    expect(cutOff(width)).toEqual([]);
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
    if (workbench.view.stage > 0) return;
    // All of the sculpt is in sight: under the panels above, and within the picture.
    const row = findIn(app, 'fl-look-row').getBoundingClientRect();
    const picture = stage().getBoundingClientRect();
    const over = row.top < picture.bottom ? row.bottom : picture.top;
    await soon(() => {
      const [highest, lowest] = sculptSpan();
      expect(highest).toBeGreaterThan(over);
      expect(lowest).toBeLessThan(picture.bottom);
    });
  });
});
