import { LEAN } from '../../base/german/lean.ts';
import { sawTexts } from '../../base/lean-words.ts';
import type { Translation } from '../language/spoken.ts';
import type { SAW_WORDS } from '../saw-words.ts';

export const SAW: Translation<typeof SAW_WORDS> = { label: 'Säge', settings: (piece) => sawTexts(piece, LEAN) };
