import { spoken } from './language/spoken.ts';

/** Sentences that were made in the core, in English. Another language says as many of them as it knows, and leaves the others. */
export const TOLD_WORDS = spoken('told', { sentence: (text: string): string => text });
