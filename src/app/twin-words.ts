import { spoken } from './language/spoken.ts';

/** What is said of pieces that mirror each other. */
export const TWIN_WORDS = spoken('twin', {
  paper: 'Pieces that mirror each other',
  ways: { once: 'one template, turned over', each: 'a template each' },
  turnedFrom: (number: number) => `cut with the template of ${number}, turned over`,
  turnedFor: (number: number) => `its template also cuts ${number}, turned over`,
  apart: (number: number, why: string) => `own template, not that of ${number} turned over: ${why}`,
});
