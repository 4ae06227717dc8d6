import { afterEach, beforeEach, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../src/app/tokens.css';
import '../../src/app/app.ts';
import type { App } from '../../src/app/app.ts';
import { joinChosenAs } from '../../src/app/seam-joins.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { setRule } from '../../src/project/shop-rules.ts';
import { axeFaults, findIn, openTrayApp, restedApp } from './app-element.ts';

let app: App;
let workbench: Workbench;

beforeEach(async () => {
  ({ app, workbench } = await openTrayApp());
});

afterEach(() => app.remove());

const rows = (): HTMLButtonElement[] => [
  ...(findIn(app, 'fl-job-sheet', 'fl-cut-list').shadowRoot?.querySelectorAll<HTMLButtonElement>('li button') ?? []),
];
const outlines = (): number =>
  findIn(app, 'fl-job-sheet', 'fl-sheets-line', 'fl-sheet-picture').shadowRoot?.querySelectorAll('.piece').length ?? 0;

it('a strip stands in the cut list and on its sheet, and leads to its seam', async () => {
  const [pieces, laid] = [rows().length, outlines()];
  const foam = workbench.part?.layers[0].foam;
  if (foam === undefined) throw new Error('no foam');
  workbench.run(setRule(foam, 'bevelLimitDeg', 30));
  await restedApp(app);
  const seam = workbench.bench.findings.find(({ code }) => code === 'foam/bevel-steep')?.where.seam;
  const id = workbench.bench.pieces?.seams.find((one) => one.id === seam)?.id;
  if (id === undefined) throw new Error('no seam beyond the blade');
  workbench.setView({ choice: { kind: 'seam', seam: id } });
  joinChosenAs(workbench, { kind: 'butt', steep: 'split' });
  workbench.setView({ choice: { kind: 'nothing' } });
  await restedApp(app);

  const [strip] = workbench.bench.pieces?.strips ?? [];
  expect(rows().length).toBe(pieces + 1);
  expect(outlines()).toBe(laid + 1);
  const row = rows()[pieces];
  const text = (row.textContent ?? '').replace(/\s+/g, ' ');
  expect(text).toContain(`${strip.number}${strip.name}`);
  expect(text).toContain('strip, long edges');
  row.focus();
  await userEvent.keyboard('{Enter}');
  await restedApp(app);
  expect(workbench.view.choice).toEqual({ kind: 'seam', seam: id });
  expect(rows()[pieces].getAttribute('aria-pressed')).toBe('true');
  expect(await axeFaults(app)).toEqual([]);
});
