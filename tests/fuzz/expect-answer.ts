import type { Finding } from '../../src/base/finding.ts';
import type { Problem, Result } from '../../src/base/result.ts';
import { textOf, type Answer } from './target.ts';

/** Control characters, and those that turn the text after them about. */
const UNSHOWN =
  /[\u0000-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/;

/** Words that come from values that are missing, unless the file itself has them. */
const BROKEN = ['undefined', 'NaN', '[object', 'Infinity', 'null'];

/** @throws where a sentence is none, or shows what no sentence may hold. */
export function expectSentence(text: string, bytes: Uint8Array, begins = /^[\p{Lu}\p{N}]/u): void {
  if (!begins.test(text) || !/.{10,}[.!]$/s.test(text)) throw new Error(`no sentence: ${text}`);
  if (UNSHOWN.test(text)) throw new Error(`what is not shown stands in: ${JSON.stringify(text)}`);
  if (text.length > 2000) throw new Error(`a sentence of ${text.length} letters: ${text.slice(0, 200)}`);
  // A place of a binary file may be told as no number, in quotes.
  const broken = BROKEN.find((word) => text.replace(/“-?(NaN|Infinity)”/g, '').includes(word));
  if (broken !== undefined && !textOf(bytes).includes(broken)) throw new Error(`${broken} in a sentence: ${text}`);
}

/** Sentences of findings may begin with a name of the file. */
export function expectFindings(findings: readonly Finding[], bytes: Uint8Array): void {
  for (const { text } of findings) expectSentence(text, bytes, /^/);
}

/** A problem as an answer. */
export function problemAnswer({ code, text }: Problem, bytes: Uint8Array, begins?: RegExp): Answer {
  expectSentence(text, bytes, begins);
  // Sentences of one code that differ by more than names and figures are of different places in the reader.
  const shape = text
    .replace(/[“"][^”"]*[”"]/g, '“”')
    .replace(/[\d.,]+/g, '0')
    .slice(0, 60);
  return { isOk: false, code, kind: `${code} ${shape}` };
}

/** The answer to a result: of a good one its notes and what `go` makes of it. */
export async function answerTo<T>(
  result: Result<T>,
  bytes: Uint8Array,
  go: (value: T) => string | Promise<string> = () => '',
  begins?: RegExp,
): Promise<Answer> {
  if (!result.ok) return problemAnswer(result.problem, bytes, begins);
  expectFindings(result.notes, bytes);
  const codes = result.notes.map(({ code }) => code).sort();
  return { isOk: true, kind: `ok ${codes.join(' ')} ${await go(result.value)}` };
}

/** @throws where a number of a list is none. */
export function expectFinite(numbers: Iterable<number>, what: string): void {
  for (const value of numbers) if (!Number.isFinite(value)) throw new Error(`${what} holds ${value}`);
}

/** About how large a number is: for answers that are alike. */
export const about = (count: number): number => (count < 4 ? count : 2 ** Math.round(Math.log2(count)));
