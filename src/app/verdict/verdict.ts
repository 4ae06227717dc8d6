import type { Finding, Severity } from '../../base/finding.ts';
import { allCut, type Bench } from '../bench-state.ts';
import { toldFindings } from './told-findings.ts';

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

/** What all findings together say of the job. */
export function verdictOf(bench: Bench): Verdict {
  const all = toldFindings(bench);
  const of = (severity: Severity): readonly Finding[] => all.filter((finding) => finding.severity === severity);
  const told = { error: of('error'), warning: of('warning'), note: of('note') };
  return { answer: answerOf(told, bench), told };
}

function answerOf({ error, warning }: Verdict['told'], bench: Bench): Answer {
  if (error.length > 0) return 'worksNot';
  if (bench.paper === null || allCut(bench).length === 0) return 'waits';
  return warning.length > 0 ? 'worksIf' : 'works';
}
