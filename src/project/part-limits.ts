/** Sculpted shells in one project at most. */
export const MOST_SCULPTS = 100;

/** Parts of other kinds in one project at most, and in a parts file. */
export const MOST_PARTS = 500;

/** Joins of parts in one project at most. */
export const MOST_JOINS = 500;
