import type { Tables } from '../language/spoken.ts';

/** Every table of the window in German, by its name. */
export const GERMAN: Tables = {};
