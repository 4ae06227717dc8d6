import type { Verb } from '../verb.ts';
import { GLOSSARY_WORDS, TERM_NAMES } from './glossary-words.ts';
import { HELP_WORDS } from './help-words.ts';

/** Words of the trade for the finder, by every part that was typed, lower case; none before anything is. The window opens them by their id. */
export function termVerbs(typed: readonly string[]): readonly Verb[] {
  if (typed.length === 0) return [];
  return TERM_NAMES.flatMap((name) => {
    const { word, also } = GLOSSARY_WORDS[name];
    const isFound = typed.every((part) => `${word} ${also}`.toLowerCase().includes(part));
    return isFound ? [{ id: `word-${name}`, label: HELP_WORDS.verbs.term(word), run: () => undefined }] : [];
  });
}
