import type { Finding } from '../../base/finding.ts';
import type { Bench } from '../bench-state.ts';

/** Asked on the line of the size, and no fault. */
const ASKED = ['size/unknown'];

/** All that was found on the whole job, what stopped it first. */
export function toldFindings({ findings, stopped }: Bench): readonly Finding[] {
  const isTold = stopped === null || findings.some(({ code }) => code === stopped.problem.code);
  const all = isTold ? findings : [{ ...stopped.problem, severity: 'error' as const }, ...findings];
  return all.filter(({ code }) => !ASKED.includes(code));
}

/** What a finding is known again by while the job is changed about it. */
export const findingKey = ({ code, text }: Finding): string => `${code} ${text}`;

/** Those that the maker must mind and has not been shown yet. */
export function unseenFindings(bench: Bench, seen: readonly string[]): readonly Finding[] {
  const known = new Set(seen);
  return toldFindings(bench).filter((finding) => finding.severity !== 'note' && !known.has(findingKey(finding)));
}
