import type { FigureRow } from './table-rows.ts';

/** Columns a table of figures can be sorted by. */
export const COLUMNS = ['name', 'figure', 'limit', 'where'] as const;
export type Column = (typeof COLUMNS)[number];

export interface Sorting {
  readonly by: Column;
  readonly isRising: boolean;
}

/** The worst first. */
export const FIRST_SORTING: Sorting = { by: 'figure', isRising: false };

const WORDS_IN_ORDER = new Intl.Collator(undefined, { numeric: true });

/** Rows in the order asked for; alike ones stay as they were. */
export function sortedRows(rows: readonly FigureRow[], { by, isRising }: Sorting): readonly FigureRow[] {
  const compare = (one: FigureRow, other: FigureRow): number =>
    by === 'figure' || by === 'limit' ? one[by] - other[by] : WORDS_IN_ORDER.compare(one[by], other[by]);
  return rows.toSorted((one, other) => (isRising ? compare(one, other) : compare(other, one)));
}

/** What a press on a heading makes of the order: figures begin with the most, words at their beginning; again turns it round. */
export const nextSorting = (before: Sorting, by: Column): Sorting =>
  before.by === by ? { by, isRising: !before.isRising } : { by, isRising: by === 'name' || by === 'where' };
