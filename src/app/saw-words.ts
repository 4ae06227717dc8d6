import { sawTexts } from '../base/lean-words.ts';

/** Texts that tell how the saw is set for a piece. Part of the words of the window. */
export const SAW_WORDS = { label: 'Saw', settings: sawTexts } as const;
