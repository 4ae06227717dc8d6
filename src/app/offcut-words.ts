import { spoken } from './language/spoken.ts';

/** Texts about what a sheet leaves. */
export const OFFCUT_WORDS = spoken('offcut', {
  keep: (size: string) => `put the rest on the shelf, ${size}`,
  why: 'It counts as foam in hand for the next job; this one is not laid on it.',
  uncut: (pieces: number) =>
    pieces === 1 ? 'One piece on it is not ticked as cut yet.' : `${pieces} pieces on it are not ticked as cut yet.`,
  kept: (name: string) => `On the shelf: ${name}.`,
  takeBack: 'take it off',
  name: (job: string, sheet: number) => `offcut of ${job}, sheet ${sheet}`,
});
