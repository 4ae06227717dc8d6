import { spoken } from './language/spoken.ts';

/** Texts of the form that finds a foam's neutral fraction. Part of the words of the window. */
export const NEUTRAL_WORDS = spoken('neutral', {
  heading: 'Measure the neutral fraction',
  how: 'Print the test strip, bend it round three or more round things, and type what you measured.',
  print: 'Save the test strip, PDF',
  length: 'Length of the strip',
  thickness: 'Its thickness',
  bend: (n: number) => `Bend ${n}`,
  across: 'Across the round thing',
  arc: 'Mark to mark',
  remove: 'remove',
  removeBend: (n: number) => `remove bend ${n}`,
  answer: (k: string, plusMinus: string) => `k is ${k}, give or take ${plusMinus} (19 times in 20).`,
  apart: (bends: readonly number[]) =>
    bends.length === 1
      ? `Bend ${bends[0] + 1} stands apart from the others: measure it again.`
      : `Bends ${bends.map((i) => i + 1).join(', ')} stand apart from the others: measure them again.`,
  use: (k: string) => `Use ${k} for this foam`,
  used: 'In use for this foam',
} as const);
