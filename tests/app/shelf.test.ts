import { expect, it } from 'vitest';
import { shelfAfterCut, shelfBeforeCut, shelfFor } from '../../src/app/shelf.ts';
import type { FoamId } from '../../src/base/ids.ts';
import type { StockSheet } from '../../src/model/stock.ts';

const sheet = (name: string, count: number, foam = 'eva-6'): StockSheet => ({
  id: `stock-${name}`,
  name,
  foam: foam as FoamId,
  shape: { kind: 'rectangle', widthMm: 600, heightMm: 900 },
  count,
});

it('lowers what was cut and lays the rest beside it; taken back, all is as it was', () => {
  const shelf = [sheet('market', 2), sheet('old', 1)];
  const left = { ...sheet('offcut', 1), leftBy: { stock: 'stock-9', nth: 0 } };
  const cut = { ...sheet('market', 2), id: 'stock-9' };
  const after = shelfAfterCut(shelf, cut, left);
  expect(after.map(({ name, count }) => [name, count])).toEqual([
    ['market', 1],
    ['old', 1],
    ['offcut', 1],
  ]);
  // For the next job it is a sheet as any other.
  expect(after.every(({ leftBy }) => leftBy === undefined)).toBe(true);
  expect(shelfBeforeCut(after, cut, left)).toEqual(shelf);

  const last = shelfAfterCut(shelf, sheet('old', 1), left);
  expect(last.map(({ name }) => name)).toEqual(['market', 'offcut']);
  expect(shelfBeforeCut(last, sheet('old', 1), left).map(({ name, count }) => [name, count])).toEqual([
    ['market', 2],
    ['old', 1],
  ]);
  // A sheet that was bought was never there.
  expect(shelfAfterCut(shelf, null, left)).toHaveLength(3);
});

it('offers what is of the foam and not in the job yet', () => {
  const shelf = [sheet('market', 2), sheet('old', 1), sheet('thin', 1, 'eva-2')];
  expect(shelfFor(shelf, 'eva-6' as FoamId, [sheet('old', 1)]).map(({ name }) => name)).toEqual(['market']);
});
