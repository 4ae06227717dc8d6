/** Languages that paper can be printed in, English first: it is what the core is written in. */
export const PAPER_LANGUAGES = ['en', 'de'] as const;
export type PaperLanguage = (typeof PAPER_LANGUAGES)[number];

/**
 * What a line of words is in the language of the paper: whole, or left as it is where it is not known. It is asked before a line is measured, so
 * that words find their places in the language they are read in. One language is one function: results are remembered by it.
 */
export type Say = (text: string) => string;

export const inEnglish: Say = (text) => text;
