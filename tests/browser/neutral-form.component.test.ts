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

const form = (): HTMLElement => findIn(app, 'fl-job-sheet', 'fl-foam-line', 'fl-neutral-form');
const fields = (): HTMLInputElement[] =>
  [...(form().shadowRoot?.querySelectorAll('fl-length-field') ?? [])].map(
    (field) => (field.shadowRoot as ShadowRoot).querySelector('input') as HTMLInputElement,
  );
const said = (): string =>
  (form().shadowRoot?.querySelector('[role=status]')?.textContent ?? '').replace(/\s+/g, ' ').trim();

async function type(at: number, text: string): Promise<void> {
  const field = fields()[at];
  field.focus();
  field.select();
  await userEvent.keyboard(`${text}{Enter}`);
  field.blur();
  await restedApp(app);
}

describe('the neutral fraction from bent strips', () => {
  it('is told with how sure it is, used, and undone, from the keyboard', async () => {
    findIn<HTMLDetailsElement>(app, 'fl-job-sheet', 'fl-foam-line', 'details').open = true;
    await type(1, '10');
    await type(2, '100');
    expect(said()).toBe('');
    await type(3, '218.9');
    expect(said()).toMatch(/^k is 0\.4\d\d, give or take 0\.0\d\d/);
    await type(4, '75');
    await type(5, '300');
    expect(said()).toMatch(/^Bend 2 says that 300 mm of a tube of 75 mm/);
    await type(5, '212.8');
    expect(said()).toMatch(/^k is 0\.4/);
    expect(await axeFaults(app)).toEqual([]);
    const use = [...(form().shadowRoot?.querySelectorAll('button') ?? [])].find((button) =>
      button.textContent?.includes('for this foam'),
    );
    use?.focus();
    await userEvent.keyboard('{Enter}');
    await restedApp(app);
    const layer = workbench.part?.layers[0];
    expect(layer?.neutralFraction).toBeGreaterThan(0.44);
    expect(layer?.neutralFraction).toBeLessThan(0.5);
    expect(workbench.project?.foams.find(({ id }) => id === layer?.foam)?.neutralTest?.readings).toHaveLength(2);
    workbench.undo();
    expect(workbench.part?.layers[0].neutralFraction).toBe(0.5);
  });
});
