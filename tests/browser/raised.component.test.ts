import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import '../../src/app/tokens.css';
import '../../src/app/app.ts';
import type { App } from '../../src/app/app.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import { addRegion } from '../../src/project/commands.ts';
import { axeFaults, openTrayApp, restedApp } from './app-element.ts';

let app: App;
let workbench: Workbench;

beforeEach(async () => {
  ({ app, workbench } = await openTrayApp());
});

afterEach(() => {
  app.remove();
});

/** The first element of a kind, in whatever shadow tree it stands. */
function deep(root: ParentNode, selector: string): HTMLElement | null {
  const own = root.querySelector<HTMLElement>(selector);
  if (own !== null) return own;
  for (const { shadowRoot } of root.querySelectorAll('*')) {
    const found = shadowRoot === null ? null : deep(shadowRoot, selector);
    if (found !== null) return found;
  }
  return null;
}

function choice(): HTMLSelectElement {
  const list = deep(app.shadowRoot ?? app, 'fl-area-list');
  const select = list?.shadowRoot?.querySelector<HTMLSelectElement>('select.raised');
  if (select == null) throw new Error('no choice of a raised sheet');
  return select;
}

describe('a sheet raised on an area, in the window', () => {
  it('is chosen by its foam, gets a piece of its own, and is taken off and undone', async () => {
    workbench.run(addRegion('badge', [0], 'stiff'));
    await restedApp(app);
    const pieces = (): number => workbench.bench.pieces?.pieces.length ?? 0;
    const before = pieces();
    await userEvent.selectOptions(choice(), 'eva-2');
    await restedApp(app);
    expect(workbench.part?.regions[0].raised?.thicknessMm).toBe(2);
    expect(pieces()).toBe(before + 1);
    expect(workbench.bench.pieces?.pieces.at(-1)?.name).toBe('badge, raised');
    expect(await axeFaults(app)).toEqual([]);
    await userEvent.selectOptions(choice(), '');
    await restedApp(app);
    expect(workbench.part?.regions[0].raised).toBeUndefined();
    expect(pieces()).toBe(before);
    workbench.undo();
    await restedApp(app);
    expect(choice().value).toBe('eva-2');
  });
});
