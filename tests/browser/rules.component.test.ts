import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../src/app/tokens.css';
import '../../src/app/app.ts';
import type { App } from '../../src/app/app.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { axeFaults, findIn, openTrayApp, restedApp } from './app-element.ts';

let app: App;
let workbench: Workbench;

beforeEach(async () => {
  ({ app, workbench } = await openTrayApp());
});

afterEach(() => app.remove());

const fields = (): HTMLElement => findIn(app, 'fl-job-sheet', 'fl-foam-line', 'fl-rule-fields');
const foam = () => workbench.project?.foams.find(({ id }) => id === workbench.part?.layers[0].foam);
const steep = () => workbench.bench.findings.filter(({ code }) => code === 'foam/bevel-steep');

async function type(name: string, text: string): Promise<HTMLInputElement> {
  const input = fields().shadowRoot?.querySelector<HTMLInputElement>(`[data-rule=${name}]`) as HTMLInputElement;
  input.focus();
  input.select();
  await userEvent.keyboard(`${text}{Enter}`);
  input.blur();
  await restedApp(app);
  return input;
}

describe('the rules of the shop', () => {
  it('are set from the keyboard, followed by the pieces, undone, and forgotten', async () => {
    const details = fields().closest('details') as HTMLDetailsElement;
    details.open = true;
    await restedApp(app);
    expect(steep()).toEqual([]);
    await type('bevelLimitDeg', '30°');
    expect(foam()?.rules).toEqual({ bevelLimitDeg: 30 });
    expect(steep().length).toBeGreaterThan(0);
    expect(steep()[0].limit).toBe(30);
    expect(fields().shadowRoot?.textContent).toContain('usually 45');
    expect(await axeFaults(app)).toEqual([]);
    workbench.undo();
    await restedApp(app);
    expect(foam()?.rules).toBeUndefined();
    expect(steep()).toEqual([]);
    await type('stretchNoticePct', '12,5');
    expect(foam()?.stretchLimits).toEqual({ noticePct: 12.5, tooMuchPct: 12.5 });
    const [reset] = fields().shadowRoot?.querySelectorAll('button') ?? [];
    reset.focus();
    await userEvent.keyboard('{Enter}');
    await restedApp(app);
    expect(foam()?.stretchLimits).toEqual({ noticePct: 3, tooMuchPct: 8 });
    expect(fields().shadowRoot?.querySelector('button')).toBeNull();
  });

  it('refuse what is no such number, and say what is', async () => {
    (fields().closest('details') as HTMLDetailsElement).open = true;
    const input = await type('bevelLimitDeg', '89');
    expect(input.getAttribute('aria-invalid')).toBe('true');
    expect(fields().shadowRoot?.querySelector('#fault-bevelLimitDeg')?.textContent).toBe('A number from 1 to 70.');
    expect(foam()?.rules).toBeUndefined();
  });
});
