import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import '../../src/app/tokens.css';
import '../../src/app/app.ts';
import type { App } from '../../src/app/app.ts';
import type { Stage } from '../../src/app/stage.ts';
import type { ScaleBar } from '../../src/app/legend/scale-bar.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { formatLength } from '../../src/base/format-length.ts';
import { foamId, layerId } from '../../src/base/ids.ts';
import { setFoam, setThickness } from '../../src/project/commands.ts';
import { addLayer } from '../../src/project/layer-commands.ts';
import { setRule } from '../../src/project/shop-rules.ts';
import { WORDS } from '../../src/app/words.ts';
import { axeFaults, findIn, openTrayApp, restedApp } from './app-element.ts';

let app: App;
let workbench: Workbench;

beforeEach(async () => {
  ({ app, workbench } = await openTrayApp());
});

afterEach(() => {
  app.remove();
});

const words = WORDS.foam.wall;
const inFoam = (...path: string[]): HTMLElement => findIn(app, 'fl-job-sheet', 'fl-foam-line', ...path);
const wallMm = (): number[] => workbench.part?.layers.map(({ thicknessMm }) => thicknessMm) ?? [];
const rows = (): HTMLElement[] => [...(inFoam('fl-sheet-choice').shadowRoot?.querySelectorAll('li') ?? [])];

async function press(label: string, within?: HTMLElement): Promise<void> {
  const all = (within ?? inFoam('fl-sheet-choice').shadowRoot)?.querySelectorAll('button') ?? [];
  const button = [...all].find(({ textContent }) => textContent.trim() === label);
  if (button === undefined) throw new Error(`no button ${label}`);
  await userEvent.click(button);
  await restedApp(app);
}

describe('the sheets of the wall in the window', () => {
  it('are added, and foam is chosen for the new one alone', async () => {
    expect(rows()).toEqual([]);
    await press(words.add.outside);
    expect(rows().length).toBe(2);
    const thin = [...(inFoam('.stock').querySelectorAll<HTMLInputElement>('input') ?? [])][0];
    thin.click();
    await restedApp(app);
    expect(wallMm()).toEqual([6, 2]);
    const answer = WORDS.foam.answerOfWall([formatLength(2, 'mm'), formatLength(6, 'mm')]);
    expect(inFoam('fl-job-line').textContent).toContain(answer);
  });

  it('have each the limits of its own foam while it lies on the bench', async () => {
    workbench.setView({ colouring: 'stretch' });
    workbench.run(addLayer('outside'));
    workbench.run(setFoam(foamId('eva-2'), 2, layerId('layer-2')));
    workbench.run(setRule(foamId('eva-2'), 'stretchTooMuchPct', 30));
    await restedApp(app);
    const limits = (): unknown[] => [
      findIn<ScaleBar>(app, 'fl-legend', 'fl-scale-bar').limit,
      findIn<Stage>(app, 'fl-stage').limitPct,
    ];
    expect(limits()).toEqual([30, 30]);
    workbench.setView({ sheet: 2 });
    await restedApp(app);
    expect(limits()).toEqual([8, 8]);
  });

  it('are put in order, and the choice goes with the sheet that was moved', async () => {
    workbench.run(addLayer('outside'));
    workbench.run(setThickness(2, layerId('layer-2')));
    await restedApp(app);
    await press(words.move.inside, rows()[0]);
    expect(wallMm()).toEqual([2, 6]);
    expect(workbench.view.sheet).toBe(2);
    expect(workbench.bench.pieces?.sheet).toBe(2);
  });

  it('are taken away, and brought back by undo', async () => {
    workbench.run(addLayer('outside'));
    workbench.run(setThickness(2, layerId('layer-2')));
    await restedApp(app);
    expect(await axeFaults(app)).toEqual([]);
    await press(words.remove, rows()[1]);
    expect(wallMm()).toEqual([2]);
    expect(rows()).toEqual([]);
    workbench.undo();
    expect(wallMm()).toEqual([6, 2]);
  });

  it('works on the sheet inside with the keyboard', async () => {
    await press(words.add.inside);
    expect(workbench.view.sheet).toBe(2);
    const field = findIn<HTMLInputElement>(app, 'fl-job-sheet', 'fl-foam-line', '.row fl-length-field', 'input');
    await userEvent.fill(field, '5.5');
    await userEvent.keyboard('{Enter}');
    await restedApp(app);
    expect(wallMm()).toEqual([5.5, 6]);
  });
});
