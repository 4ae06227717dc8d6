import { afterEach, beforeEach, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../src/app/tokens.css';
import '../../src/app/stock-list.ts';
import type { OutlineBoard } from '../../src/app/outline-board.ts';
import type { StockList } from '../../src/app/stock-list.ts';
import type { StockChoices } from '../../src/model/stock.ts';
import { newProject } from '../../src/project/new-project.ts';

let list: StockList;

beforeEach(async () => {
  list = document.createElement('fl-stock-list') as StockList;
  list.project = newProject('helm', { hash: 'a'.repeat(64), fileName: 'helm.obj', format: 'obj' });
  list.addEventListener('fl-command', (event) => {
    list.project = list.project && event.command.apply(list.project);
  });
  document.body.append(list);
  await rested();
  (list.shadowRoot?.querySelector('details') as HTMLDetailsElement).open = true;
});

afterEach(() => list.remove());

const stock = (): StockChoices => list.project?.stock ?? {};

/** Lines of the job sheet are drawn in a task of their own, and rows after their list. */
async function rested(): Promise<void> {
  for (let i = 0; i < 8; i += 1) {
    await list.updateComplete;
    await new Promise((resolve) => setTimeout(resolve, 0));
  }
}

/** All that matches in the element and its rows. */
function all<T extends Element>(selector: string, root: ParentNode = list.shadowRoot as ShadowRoot): T[] {
  return [...root.querySelectorAll('*')].flatMap((one) => [
    ...(one.matches(selector) ? [one as T] : []),
    ...(one.shadowRoot === null ? [] : all<T>(selector, one.shadowRoot)),
  ]);
}

async function press(text: string): Promise<void> {
  const button = all<HTMLButtonElement>('button').find((one) => one.textContent?.trim() === text);
  button?.focus();
  await userEvent.keyboard('{Enter}');
  await rested();
}

async function type(label: string, text: string): Promise<void> {
  const field = all<HTMLLabelElement>('label')
    .find((one) => one.textContent?.trim() === label)
    ?.querySelector('input') as HTMLInputElement;
  field.focus();
  field.select();
  await userEvent.keyboard(`${text}{Enter}`);
  await rested();
}

it('takes sheets in hand with their size and count, says what cannot be, and takes them off again', async () => {
  await press('Add sheets');
  for (const details of all<HTMLDetailsElement>('details')) details.open = true;
  await type('Wide', '60 cm');
  await type('In hand', '4');
  await type('Written on it', 'from the market');
  expect(stock().sheets).toMatchObject([{ name: 'from the market', count: 4, shape: { widthMm: 600 } }]);
  await type('In hand', '0');
  await type('Written on it', ' ');
  expect(stock().sheets).toMatchObject([{ name: 'from the market', count: 4 }]);
  expect(all('[role=status]').map((line) => line.textContent?.trim())).toContain(
    'Give the sheet a name, so that it can be found on the shelf.',
  );
  await press('take off the list');
  expect(list.project?.stock).toBeUndefined();
});

it('traces an offcut by keys, and keeps a place clear', async () => {
  await press('Trace an offcut');
  for (const details of all<HTMLDetailsElement>('details')) details.open = true;
  const [board] = all<OutlineBoard>('fl-outline-board');
  const corner = (n: number): SVGGElement | null | undefined => board.shadowRoot?.querySelector(`[data-corner="${n}"]`);
  const points = (): readonly number[] => {
    const shape = stock().sheets?.[0].shape;
    return shape?.kind === 'outline' ? shape.points : [];
  };
  corner(3)?.focus();
  await userEvent.keyboard('{ArrowRight}{Shift>}{ArrowUp}{/Shift}');
  await rested();
  expect(points()).toEqual([0, 0, 400, 0, 400, 180, 245, 300.5, 0, 300]);
  await userEvent.keyboard('+');
  await rested();
  expect(points()).toHaveLength(12);
  await type('Up', '500');
  await type('Across', '600');
  const kept = points();
  expect(kept[9]).toBe(500);
  await type('Across', '-900');
  await type('Up', '-20');
  expect(board.shadowRoot?.querySelector('.wrong[role=status]')?.textContent).toContain('crosses itself');
  expect(points()[9]).not.toBe(-20);

  await press('Keep a place clear');
  expect(stock().sheets?.[0].keepOut).toHaveLength(1);
});

it('fills sheets as they are cut', async () => {
  const [cut, turns] = all<HTMLSelectElement>('select');
  await userEvent.selectOptions(cut, 'laser');
  await userEvent.selectOptions(turns, 'half');
  await type('Kept free along edges', '0');
  expect(stock().fills).toMatchObject([{ spacingMm: 0.2, turns: 'half', borderMm: 0 }]);
});
