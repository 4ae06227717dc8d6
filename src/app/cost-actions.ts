import type { SeamCost } from '../model/seam-cost.ts';
import { proposalLimit } from './propose-actions.ts';
import { PROPOSE_WORDS } from './propose-words.ts';
import type { Verb } from './verb.ts';
import type { Workbench } from './workbench.ts';

/** Asks what it would cost to join each seam. The list is of the seams as they are now and goes with them. */
export async function askCosts(bench: Workbench): Promise<void> {
  const { seams } = bench.bench;
  if (seams === null) return;
  bench.setView({ costs: { seams, isRunning: true, list: [] } });
  const take = (cost: SeamCost): void => {
    const { costs } = bench.view;
    if (costs?.seams === seams) bench.setView({ costs: { ...costs, list: [...costs.list, cost] } });
  };
  const result = await bench.workshop.seamCosts(proposalLimit(bench), take);
  const { costs } = bench.view;
  if (!result.ok) bench.showProblem(result.problem);
  if (costs?.seams !== seams) return;
  bench.setView({ costs: result.ok ? { ...costs, isRunning: false } : null });
  if (result.ok) bench.say(PROPOSE_WORDS.costs.said(costs.list.filter(({ isFeasible }) => isFeasible).length));
}

/** Calls it off; what is known stays. */
export const stopCosts = (bench: Workbench): void => void bench.workshop.stopCosting();

/** The list as it is shown: the cheapest to join first, those that keep every limit by what they stretch. */
export function costOrder(list: readonly SeamCost[]): readonly SeamCost[] {
  const most = ({ stretchPct, squashPct }: SeamCost): number => Math.max(stretchPct ?? Infinity, squashPct ?? Infinity);
  return list.toSorted((a, b) => a.badness - b.badness || most(a) - most(b));
}

/** What can be done about the list now. */
export function costVerbs(bench: Workbench): Verb[] {
  const { seams } = bench.bench;
  const { costs } = bench.view;
  if (bench.bench.sculpt?.mmPerUnit == null || !(seams?.chains.some(({ kind }) => kind !== 'open') ?? false)) return [];
  const words = PROPOSE_WORDS.costs;
  return costs?.seams === seams && costs?.isRunning === true
    ? [{ id: 'stop-costs', label: words.stopVerb, isOn: true, run: () => stopCosts(bench) }]
    : [{ id: 'ask-costs', label: words.verb, run: () => void askCosts(bench) }];
}
