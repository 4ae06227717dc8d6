import { html, type TemplateResult } from 'lit';
import { formatLength, type LengthUnit } from '../../base/format-length.ts';
import { isTermName, type TermName } from './glossary-words.ts';

/** A word in a sentence that leads to the glossary, or text between such words. */
export type Run = string | { readonly word: string; readonly to: TermName };

/** A word in brackets, with the term it leads to where that is written otherwise: `[bevel]`, `[seams|seam]`. */
const LINK = /\[([^\]|]+)(?:\|([a-z-]+))?\]/g;
/** A length in a sentence, or two of them: `3 mm`, `10 to 15 mm`. */
const LENGTH = /(\d+(?:[.,]\d+)?)(?:( \p{L}+ )(\d+(?:[.,]\d+)?))? mm\b/gu;

/** Cuts a sentence into text and words that lead on. A word that leads nowhere is our own mistake: it throws. */
export function runsOf(sentence: string): readonly Run[] {
  const runs: Run[] = [];
  let at = 0;
  for (const link of sentence.matchAll(LINK)) {
    const [whole, word, to = word] = link;
    if (!isTermName(to)) throw new Error(`no word of the trade is named ${to}: ${sentence}`);
    if (link.index > at) runs.push(sentence.slice(at, link.index));
    runs.push({ word, to });
    at = link.index + whole.length;
  }
  if (at < sentence.length) runs.push(sentence.slice(at));
  return runs;
}

/** Lengths in a sentence, which are written in mm, in the unit in force. */
export function lengthsIn(sentence: string, unit: LengthUnit): string {
  const say = (figure: string): string => formatLength(Number(figure.replace(',', '.')), unit);
  return sentence.replace(LENGTH, (_, one: string, between: string | undefined, other: string | undefined) =>
    between === undefined || other === undefined ? say(one) : `${say(one)}${between}${say(other)}`,
  );
}

/** A sentence without its brackets, to be spoken. */
export const plainText = (sentence: string, unit: LengthUnit): string =>
  runsOf(lengthsIn(sentence, unit))
    .map((run) => (typeof run === 'string' ? run : run.word))
    .join('');

/** A sentence whose words of the trade are buttons. @param open  is given the word that is asked for. */
export const linkedText = (
  sentence: string,
  unit: LengthUnit,
  open: (term: TermName) => void,
): readonly (string | TemplateResult)[] =>
  runsOf(lengthsIn(sentence, unit)).map((run) =>
    typeof run === 'string' ? run : html`<button class="plain word" @click=${() => open(run.to)}>${run.word}</button>`,
  );
