import type { Finding, FindingPlace } from './finding.ts';
import { shownSentence } from './shown-text.ts';

/** Why the user's file or choice cannot be used: a stable code, one sentence that says what to do, and the place. */
export interface Problem {
  readonly code: string;
  readonly text: string;
  readonly where: FindingPlace;
  /** What those who make the program need to find the fault, where it is the program's own: a file that the user can keep. */
  readonly report?: FaultReport;
}

export interface FaultReport {
  readonly name: string;
  readonly text: string;
}

export interface Ok<T> {
  readonly ok: true;
  readonly value: T;
  /** What the user should know although the value stands. */
  readonly notes: readonly Finding[];
}

export interface Fail {
  readonly ok: false;
  readonly problem: Problem;
}

export type Result<T> = Ok<T> | Fail;

export function ok<T>(value: T, notes: readonly Finding[] = []): Ok<T> {
  return { ok: true, value, notes: notes.some(isUnfit) ? notes.map(shown) : notes };
}

/** What `text` quotes of a file is made fit to be shown. */
export function fail(code: string, text: string, where: FindingPlace = {}): Fail {
  return { ok: false, problem: { code, text: shownSentence(text), where } };
}

const isUnfit = ({ text }: Finding): boolean => shownSentence(text) !== text;
const shown = (one: Finding): Finding => ({ ...one, text: shownSentence(one.text) });
