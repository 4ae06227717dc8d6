import { fail, ok, type Result } from '../base/result.ts';
import { Cancelled } from '../base/work.ts';
import type { SeamCost } from '../model/seam-cost.ts';
import type { Outcome } from '../pipeline/outcome.ts';
import { seamCosts } from '../pipeline/seam-costs.ts';
import { wishOf } from './proposal-wish.ts';
import { WaitingWork } from './waiting-work.ts';

/** Works out in the background what it would cost to join each seam; one list at a time. */
export class CostDesk {
  readonly #outcome: () => Outcome | null;
  readonly #isBusy: () => boolean;
  #work: WaitingWork | null = null;

  constructor(outcome: () => Outcome | null, isBusy: () => boolean) {
    this.#outcome = outcome;
    this.#isBusy = isBusy;
  }

  async seamCosts(limitPct: number, onCost: (cost: SeamCost) => void): Promise<Result<null>> {
    this.#work?.cancel();
    const outcome = this.#outcome();
    const sought = outcome === null ? null : wishOf(outcome, { from: 'rest', limitPct });
    if (outcome?.cut == null || sought === null)
      return fail('propose/no-size', 'Say how large the sculpt is first, and mark a seam.');
    const work = new WaitingWork(this.#isBusy);
    this.#work = work;
    try {
      await seamCosts(outcome.cut, sought.ground, work, onCost);
    } catch (error) {
      if (!(error instanceof Cancelled)) throw error;
    } finally {
      if (this.#work === work) this.#work = null;
    }
    return ok(null);
  }

  stopCosting(): Promise<void> {
    this.#work?.cancel();
    return Promise.resolve();
  }
}
