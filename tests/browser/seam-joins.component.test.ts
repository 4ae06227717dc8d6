import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import '../../src/app/tokens.css';
import '../../src/app/app.ts';
import type { App } from '../../src/app/app.ts';
import type { VerbRow } from '../../src/app/verb-row.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { WORDS } from '../../src/app/words.ts';
import type { FoamSeam } from '../../src/model/foam-piece.ts';
import { axeFaults, findIn, openTrayApp, restedApp } from './app-element.ts';

let app: App;
let workbench: Workbench;

beforeEach(async () => {
  ({ app, workbench } = await openTrayApp());
});

afterEach(() => {
  app.remove();
});

const seamA = (): FoamSeam | undefined => workbench.bench.pieces?.seams.find(({ letter }) => letter === 'A');
const inRow = <T extends HTMLElement = HTMLElement>(...path: string[]): T => findIn<T>(app, 'fl-chosen-row', ...path);
const textOf = (element: HTMLElement): string => (element.textContent ?? '').replace(/\s+/g, ' ').trim();
const factsOfRow = (): string => inRow<VerbRow>('fl-verb-row').facts.replace(/\s+/g, ' ');
const rowOfTable = (): HTMLElement => findIn(app, 'fl-job-sheet', 'fl-fit-line', 'fl-seam-table', 'tr.is-chosen');

async function chooseSeam(): Promise<void> {
  const seam = seamA();
  if (seam === undefined) throw new Error('no seam A');
  workbench.setView({ choice: { kind: 'seam', seam: seam.id } });
  await restedApp(app);
}

describe('a chosen seam', () => {
  it('becomes a rebate and lets the other piece stand with a key, and is told in words', async () => {
    await chooseSeam();
    await userEvent.keyboard('d');
    await restedApp(app);
    expect(seamA()?.kind).toBe('rebate');
    const stands = factsOfRow();
    expect(stands).toMatch(/\d stands on \d/);
    expect(textOf(rowOfTable())).toContain(WORDS.joins.kind.rebate);
    await userEvent.keyboard('d');
    await restedApp(app);
    expect(factsOfRow()).toMatch(/\d stands on \d/);
    expect(factsOfRow()).not.toBe(stands);
    expect(await axeFaults(app)).toEqual([]);
    workbench.undo();
    workbench.undo();
    await restedApp(app);
    expect(seamA()?.kind).toBe('butt');
  });

  it('becomes a lap with the mouse, on top and under, and says what stands proud', async () => {
    await chooseSeam();
    const verb = (label: string): HTMLElement => {
      const buttons = [...inRow('fl-verb-row').shadowRoot!.querySelectorAll('button')];
      const found = buttons.find((button) => textOf(button).startsWith(label));
      if (found === undefined) throw new Error(`no verb ${label}`);
      return found;
    };
    await userEvent.click(verb('lap'));
    await restedApp(app);
    const over = factsOfRow();
    expect(over).toMatch(/\d lies over \d, step of 6 mm on the face/);
    await userEvent.click(verb(WORDS.joins.verbs.under));
    await restedApp(app);
    expect(factsOfRow()).toMatch(/\d lies over \d/);
    expect(factsOfRow()).not.toBe(over);
    expect(textOf(rowOfTable())).toContain(WORDS.joins.kind.lap);
  });
});

describe('a chosen piece', () => {
  it('is cut from another foam, and from that of its sheet again', async () => {
    const [piece] = workbench.bench.pieces?.pieces ?? [];
    workbench.setView({ choice: { kind: 'piece', piece: piece.id } });
    await restedApp(app);
    const select = () => inRow<HTMLSelectElement>('fl-piece-foam-field', 'select');
    expect([...select().options].map(({ label }) => textOf({ textContent: label } as HTMLElement))).toEqual([
      'as the sheet, 6 mm',
      '2 mm',
      '10 mm',
      '15 mm',
    ]);
    await userEvent.selectOptions(select(), 'eva-10');
    await restedApp(app);
    expect(workbench.bench.pieces?.pieces[0].thicknessMm).toBe(10);
    expect(select().value).toBe('eva-10');
    expect(await axeFaults(app)).toEqual([]);
    await userEvent.selectOptions(select(), '');
    await restedApp(app);
    expect(workbench.bench.pieces?.pieces[0].thicknessMm).toBe(6);
    expect(workbench.part?.pieceSettings).toEqual([]);
  });
});
