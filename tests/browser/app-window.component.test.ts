import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import '../../src/app/tokens.css';
import '../../src/app/app.ts';
import type { App } from '../../src/app/app.ts';
import { setThickness } from '../../src/project/commands.ts';
import { openFile } from '../../src/app/opening.ts';
import type { Stage } from '../../src/app/stage.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { WORDS } from '../../src/app/words.ts';
import { makeWorkbench, openPartedTray, openTray } from '../support/tray-workbench.ts';
import { axeFaults, findIn, restedApp } from './app-element.ts';
import { TRAY_FOLDS } from './open-tray.ts';

let app: App;
let workbench: Workbench;

beforeEach(async () => {
  ({ workbench } = makeWorkbench());
  app = document.createElement('fl-app');
  app.workbench = workbench;
  document.body.append(app);
  await app.updateComplete;
});

afterEach(() => {
  app.remove();
});

const find = <T extends HTMLElement = HTMLElement>(...path: string[]): T => findIn<T>(app, ...path);

const line = (name: string, ...rest: string[]): HTMLElement => find('fl-job-sheet', `fl-${name}`, ...rest);
const markOf = (name: string): string | null => line(name, 'fl-job-line').getAttribute('mark');
const answerOf = (name: string): string => (line(name, '[slot=answer]').textContent ?? '').replace(/\s+/g, ' ').trim();

const rested = (): Promise<void> => restedApp(app);

const faults = (): Promise<string[]> => axeFaults(app);

describe('the window before anything is open', () => {
  it('says what to do, and marks nothing as done', async () => {
    await rested();
    expect(find('.over').textContent).toBe(WORDS.stage.empty);
    expect(markOf('foam-line')).toBe('wait');
    expect(markOf('paper-line')).toBe('missing');
    expect(await faults()).toEqual([]);
  });
});

describe('a sculpt without a size', () => {
  beforeEach(async () => {
    await openTray(workbench);
    await rested();
  });

  it('asks for the size once, with the likely unit next', async () => {
    expect(markOf('size-line')).toBe('missing');
    expect(line('size-line', '.units button.next').textContent).toContain('180');
    line('size-line', '.units button:nth-child(2)').click();
    await rested();
    expect(markOf('size-line')).toBe('so');
    expect(answerOf('size-line')).toContain('100');
    expect(line('size-line').shadowRoot?.querySelector('.units')).toBeNull();
  });

  it('passes the rules of accessibility', async () => {
    expect(await faults()).toEqual([]);
  });
});

describe('a tray parted into six pieces', () => {
  beforeEach(async () => {
    await openPartedTray(workbench);
    await rested();
  });

  it('tells every line of the job', () => {
    for (const name of ['size-line', 'seams-line', 'foam-line', 'fit-line', 'sheets-line', 'paper-line', 'cut-list']) {
      expect([name, markOf(name)]).toEqual([name, 'so']);
    }
    expect(answerOf('seams-line')).toBe('11 seams, 6 pieces');
    expect(answerOf('fit-line')).toMatch(/^Stretch 0\.0 %, squash 0\.0 %$/);
  });

  it('passes the rules of accessibility by day and by night, with strong contrast, with the finder and a page open', async () => {
    expect(await faults()).toEqual([]);
    workbench.setWishes({ theme: 'dark' });
    await rested();
    expect(await faults()).toEqual([]);
    workbench.setWishes({ theme: 'light', contrast: 'more' });
    workbench.setView({ finderOpen: true });
    await rested();
    expect(await faults()).toEqual([]);
    workbench.setView({ finderOpen: false, choice: { kind: 'page', page: 0 } });
    await rested();
    expect(await faults()).toEqual([]);
    workbench.setWishes({ theme: 'auto', contrast: 'auto' });
  });

  it('lights a seam on the stage while its row is pointed at', async () => {
    const row = line('fit-line', 'fl-seam-table', 'tbody tr');
    row.dispatchEvent(new PointerEvent('pointerenter'));
    expect(workbench.view.pointed?.seams).toHaveLength(1);
    row.dispatchEvent(new PointerEvent('pointerleave'));
    expect(workbench.view.pointed).toBeNull();
  });

  it('shows a chosen piece in the list, on the sheet and in the row of verbs, and renames it', async () => {
    const rowOf = () => line('cut-list', 'li:nth-child(2) button');
    rowOf().click();
    await rested();
    expect(rowOf().getAttribute('aria-pressed')).toBe('true');
    expect(line('sheets-line', 'fl-sheet-picture', '.is-chosen')).not.toBeNull();
    const name = find<HTMLInputElement>('fl-chosen-row', 'input[type=text]');
    name.value = 'left wall';
    name.dispatchEvent(new Event('change'));
    await rested();
    expect(workbench.bench.pieces?.pieces[1].name).toBe('left wall');
    expect(rowOf().textContent).toContain('left wall');
  });

  it('ticks pieces as printed and cut, and tells both when they change', async () => {
    const press = async (text: string) => {
      const buttons = [...(line('paper-line').shadowRoot?.querySelectorAll('button') ?? [])];
      const button = buttons.find((candidate) => candidate.textContent?.includes(text));
      button?.focus();
      await userEvent.keyboard('{Enter}');
      await rested();
    };
    const ticks = (): HTMLInputElement[] => [
      ...(line('cut-list', 'li fl-done-ticks').shadowRoot?.querySelectorAll('input') ?? []),
    ];
    const told = (): string => line('paper-line', '[role=status]').textContent ?? '';
    await press('Tick 6 pieces as printed');
    expect(told()).toBe('6 of 6 pieces printed');
    ticks()[1].focus();
    await userEvent.keyboard(' ');
    await rested();
    expect(told()).toBe('6 of 6 pieces printed, 1 cut');
    expect(ticks().every(({ disabled }) => disabled)).toBe(true);
    expect(await faults()).toEqual([]);

    workbench.run(setThickness(8));
    await rested();
    expect(told()).toBe('0 of 6 pieces printed, 5 out of date, 1 cut, but changed since');
    const findings = line('paper-line', 'fl-findings').shadowRoot?.textContent ?? '';
    expect(findings).toContain('is ticked as cut, but is no longer what was cut');
    expect(findings).toContain('Printed paper is out of date');
    expect(line('paper-line').shadowRoot?.textContent).toContain('Save pages of 5 pieces only');
    workbench.undo();
    await rested();
    expect(told()).toBe('6 of 6 pieces printed, 1 cut');
    line('cut-list', 'li fl-done-ticks', 'button').click();
    await rested();
    expect(told()).toBe('6 of 6 pieces printed');
  });

  it('joins a chosen seam by its key and undoes it', async () => {
    const chain = workbench.bench.seams!.chains.find(({ kind }) => kind === 'butt')!;
    workbench.setView({ choice: { kind: 'seam', seam: chain.id } });
    await userEvent.keyboard('j');
    await rested();
    expect(workbench.part?.seams.edges).toHaveLength(TRAY_FOLDS - 1);
    await userEvent.keyboard('{Control>}z{/Control}');
    await rested();
    expect(workbench.part?.seams.edges).toHaveLength(TRAY_FOLDS);
  });

  it('makes a chosen seam a lap, takes its width, and puts the lap on the other side', async () => {
    const kindOf = () => workbench.bench.seams!.chains.find(({ id }) => id === seam);
    const seam = workbench.bench.seams!.chains.find(({ kind }) => kind === 'butt')!.id;
    workbench.setView({ choice: { kind: 'seam', seam } });
    await userEvent.keyboard('l');
    await rested();
    expect(kindOf()).toMatchObject({ kind: 'lap', allowanceMm: 10 });
    const side = kindOf()!.lapSide;
    const width = find<HTMLInputElement>('fl-chosen-row', 'fl-length-field', 'input');
    width.value = '1,2 cm';
    width.dispatchEvent(new Event('change'));
    await rested();
    expect(kindOf()).toMatchObject({ kind: 'lap', allowanceMm: 12, lapSide: side });
    await userEvent.keyboard('l');
    await rested();
    expect(kindOf()?.lapSide).not.toBe(side);
  });

  it('finds a verb by its words and does it', async () => {
    await userEvent.keyboard('/');
    await rested();
    await userEvent.keyboard('join every{Enter}');
    await rested();
    expect(workbench.part?.seams.edges).toHaveLength(0);
    expect(workbench.view.finderOpen).toBe(false);
  });

  it('leaves letters alone when letter keys are off, but not Escape', async () => {
    workbench.setWishes({ letterKeys: false });
    workbench.setView({ choice: { kind: 'piece', piece: workbench.bench.pieces!.pieces[0].id } });
    await userEvent.keyboard('pwk/');
    expect(workbench.view.tool).toBe('choose');
    expect(workbench.view.finderOpen).toBe(false);
    await userEvent.keyboard('{Escape}');
    expect(workbench.view.choice.kind).toBe('nothing');
  });

  it('types letters into fields', async () => {
    const name = line('job-head', 'input.name');
    name.focus();
    await userEvent.keyboard('p');
    expect(workbench.view.tool).toBe('choose');
    expect((name as HTMLInputElement).value).toContain('p');
  });

  it('takes a repair from a finding and takes it back', async () => {
    const rim = line('size-line', 'fl-findings', 'li .row button');
    expect(rim.textContent?.trim()).toBe(WORDS.remedies.closeHole);
    rim.click();
    await rested();
    expect(workbench.part?.repairs).toHaveLength(1);
    line('size-line', 'ul button.plain').click();
    await rested();
    expect(workbench.part?.repairs).toHaveLength(0);
  });

  it('says what is wrong with a file, and keeps the job in hand', async () => {
    await openFile(workbench, new File(['v 0 0 0\nf 1 2 9\n'], 'broken.obj'));
    await expect.poll(() => workbench.notice?.text).toContain('line 2');
    await rested();
    expect(line('notice-line', '[role=alert]').textContent).toContain('line 2');
    expect(workbench.project?.name).toBe('tool tray');
    expect(workbench.bench.pieces?.pieces).toHaveLength(6);
  });
});

describe('marking seams by keyboard alone', () => {
  it('walks along edges, says the place, and parts the edge walked', async () => {
    await openPartedTray(workbench);
    workbench.undo();
    await rested();
    expect(workbench.part?.seams.edges).toHaveLength(0);
    const stage = find<Stage>('fl-stage');
    await expect.poll(() => stage.stats?.frames ?? 0).toBeGreaterThan(0);
    await userEvent.keyboard('e');
    expect(workbench.view.tool).toBe('walk');
    const begin = workbench.view.cursor;
    expect(begin).not.toBeNull();
    const isFolded = () => /^\d+\u00a0mm, (ridge|valley) 90°/.test(workbench.spoken);
    const keys = [
      'ArrowDown',
      'ArrowRight',
      'ArrowDown',
      'ArrowLeft',
      'ArrowUp',
      'ArrowLeft',
      'ArrowDown',
      'ArrowRight',
    ];
    for (const key of keys) {
      if (!isFolded()) await userEvent.keyboard(`{${key}}`);
    }
    expect(workbench.view.cursor).not.toBe(begin);
    expect(isFolded()).toBe(true);
    await userEvent.keyboard('p');
    await rested();
    expect(workbench.part?.seams.edges).toHaveLength(1);
    await userEvent.keyboard(' ');
    await rested();
    expect(workbench.part?.seams.edges).toHaveLength(0);
    await userEvent.keyboard('{Escape}');
    expect(workbench.view.tool).toBe('choose');
  });
});
