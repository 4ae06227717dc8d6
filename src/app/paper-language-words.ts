import { spoken } from './language/spoken.ts';

/** What is said of the language of the paper. */
export const PAPER_LANGUAGE_WORDS = spoken('paperLanguage', { paper: 'Words on paper' });
