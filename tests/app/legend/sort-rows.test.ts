import { describe, expect, it } from 'vitest';
import { FIRST_SORTING, nextSorting, sortedRows } from '../../../src/app/legend/sort-rows.ts';
import type { FigureRow } from '../../../src/app/legend/table-rows.ts';

const row = (name: string, figure: number, where: string): FigureRow => ({
  name,
  figure,
  figureText: '',
  limit: 8,
  limitText: '',
  where,
  isOver: figure > 8,
  choice: { kind: 'nothing' },
  pointed: {},
});
const ROWS = [
  row('10 brow', 2, 'near the top'),
  row('2 cheek', 9, 'in the middle'),
  row('2 cheek', 4, 'along the edge'),
];
const names = (rows: readonly FigureRow[]): string[] => rows.map(({ name, figure }) => `${name} ${figure}`);

describe('a table of figures', () => {
  it('begins with the worst', () => {
    expect(names(sortedRows(ROWS, FIRST_SORTING))).toEqual(['2 cheek 9', '2 cheek 4', '10 brow 2']);
  });

  it('sorts names by their numbers, alike ones as they were, and turns round when pressed again', () => {
    const byName = nextSorting(FIRST_SORTING, 'name');
    expect(names(sortedRows(ROWS, byName))).toEqual(['2 cheek 9', '2 cheek 4', '10 brow 2']);
    const again = nextSorting(byName, 'name');
    expect(names(sortedRows(ROWS, again))).toEqual(['10 brow 2', '2 cheek 9', '2 cheek 4']);
    expect(nextSorting(again, 'figure')).toEqual({ by: 'figure', isRising: false });
  });
});
