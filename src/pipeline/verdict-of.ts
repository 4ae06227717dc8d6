import type { Finding } from '../base/finding.ts';
import { toldOf, weighed, type Verdict } from '../base/verdict.ts';
import { stoppedIn, type Outcome } from './outcome.ts';

/** Whether it will work, of what the chain made. @param notes findings of the caller, put before those of the chain. */
export function verdictOf(outcome: Outcome, notes: readonly Finding[] = []): Verdict {
  const told = toldOf([...notes, ...outcome.findings], stoppedIn(outcome)?.problem ?? null);
  return weighed(told, outcome.paper !== null && outcome.paper.pages.length > 0);
}
