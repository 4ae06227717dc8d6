import type { Finding, Severity } from './finding.ts';
import { plainTold } from './plain-told.ts';

/** Whether it will work as it stands: `waits` before there is anything to print. */
export type Answer = 'waits' | 'works' | 'worksIf' | 'worksNot';

/** What is known before printing. */
export interface Verdict {
  readonly answer: Answer;
  /** Every finding under its weight, in the order of the job. */
  readonly told: Readonly<Record<Severity, readonly Finding[]>>;
}

/** Weights from the worst on. */
export const WEIGHTS: readonly Severity[] = ['error', 'warning', 'note'];

/** Asked on the line of the size, and no fault. */
const ASKED = ['size/unknown'];

/** All that was found on a job, what stopped it first. */
export function toldOf(findings: readonly Finding[], stopped: Omit<Finding, 'severity'> | null): readonly Finding[] {
  const isTold = stopped === null || findings.some(({ code }) => code === stopped.code);
  const all = isTold ? findings : [{ ...stopped, severity: 'error' as const }, ...findings];
  return all.filter(({ code }) => !ASKED.includes(code));
}

/**
 * What all findings together say of a job: the one place that window, report and build sheet have it from.
 * @param told       as `toldOf` gives them.
 * @param isPrinting whether there are pieces and pages to print.
 */
export function weighed(told: readonly Finding[], isPrinting: boolean): Verdict {
  const of = (severity: Severity): readonly Finding[] => told.filter((finding) => finding.severity === severity);
  const [error, warning, note] = WEIGHTS.map(of);
  return { answer: answerOf(error.length, warning.length, isPrinting), told: { error, warning, note } };
}

function answerOf(errors: number, warnings: number, isPrinting: boolean): Answer {
  if (errors > 0) return 'worksNot';
  if (!isPrinting) return 'waits';
  return warnings > 0 ? 'worksIf' : 'works';
}

/** The verdict's sentences in English. */
export const VERDICT_SENTENCES = {
  waits: 'Nothing to print yet.',
  works: 'It will work.',
  worksIf: (n: number) => `It will work if you look to ${n === 1 ? 'one thing' : `${n} things`}.`,
  worksNot: (why: string) => `It will not work: ${why}`,
  worksNotFor: (n: number) => `It will not work: ${n} things stop it.`,
};

/**
 * The verdict in one sentence.
 * @param sentences in the language that is spoken.
 * @param textOf    what a finding says there.
 */
export function verdictSentence(
  { answer, told: { error, warning } }: Verdict,
  sentences: typeof VERDICT_SENTENCES = VERDICT_SENTENCES,
  textOf: (finding: Finding) => string = ({ text }) => plainTold(text),
): string {
  switch (answer) {
    case 'worksIf':
      return sentences.worksIf(warning.length);
    case 'worksNot':
      return error.length === 1 ? sentences.worksNot(textOf(error[0])) : sentences.worksNotFor(error.length);
    default:
      return sentences[answer];
  }
}

/** What the sentence counts and does not tell itself, the worst first. */
export const thingsToMind = ({ told: { error, warning } }: Verdict): readonly Finding[] =>
  error.length === 1 ? warning : [...error, ...warning];
