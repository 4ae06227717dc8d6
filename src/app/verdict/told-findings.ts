import type { Finding } from '../../base/finding.ts';
import { toldOf } from '../../base/verdict.ts';
import type { Bench } from '../bench-state.ts';

/** All that was found on the whole job, what stopped it first. */
export const toldFindings = ({ findings, stopped }: Bench): readonly Finding[] =>
  toldOf(findings, stopped?.problem ?? null);

/** What a finding is known again by while the job is changed about it. */
export const findingKey = ({ code, text }: Finding): string => `${code} ${text}`;

/** Those that the maker must mind and has not been shown yet. */
export function unseenFindings(bench: Bench, seen: readonly string[]): readonly Finding[] {
  const known = new Set(seen);
  return toldFindings(bench).filter((finding) => finding.severity !== 'note' && !known.has(findingKey(finding)));
}
