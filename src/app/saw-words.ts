import { sawTexts } from '../base/lean-words.ts';
import { spoken } from './language/spoken.ts';

/** Texts that tell how the saw is set for a piece. Part of the words of the window. */
export const SAW_WORDS = spoken('saw', { label: 'Saw', settings: sawTexts });
