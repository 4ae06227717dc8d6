import { spoken } from './language/spoken.ts';

/**
 * Names and sentences out of data files: cautions, kinds of glue and paint, samples. They are kept in English, in projects and on paper; here is
 * what they are in another language, by their English text. English needs none.
 */
export const DATA_WORDS = spoken<Readonly<Record<string, string>>>('data', {});

/** A name or sentence as the window says it; what is not known, as what a maker has named, stays as it is. */
export const dataText = (text: string): string => DATA_WORDS[text] ?? text;
