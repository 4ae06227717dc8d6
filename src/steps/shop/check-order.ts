import { glueableChains, isReached, type GlueJob } from './reach.ts';
import type { GluingOrder } from './gluing-order.ts';

/** Why an order cannot be: this seam comes too late, because that one has shut it in; null where no single one has. */
export interface OrderFault {
  readonly chain: number;
  readonly shutBy: number | null;
}

/**
 * Holds an order of all seams against what a hand reaches. It is possible where no more seams are left to be pressed from outside than in the
 * best order that is known.
 * @param best the order that was found.
 * @returns faults in the order of the seams; none where the order is possible.
 * @throws Error where a seam is missing or told twice: ask `completeOrder` first.
 */
export function orderFaults(job: GlueJob, chains: readonly number[], best: GluingOrder): readonly OrderFault[] {
  const all = glueableChains(job);
  if (chains.length !== all.length || new Set([...chains, ...all]).size !== all.length)
    throw new Error('orderFaults: not every seam once');
  const late = unreachedIn(job, chains);
  if (late.length <= best.outside.length) return [];
  const known = late.filter((chain) => !best.outside.includes(chain));
  // Each one beyond those that some order must have is a fault; those that the best order has are forgiven first.
  const faults = known.length > 0 ? known : late;
  return faults.map((chain) => ({ chain, shutBy: shutBy(job, chains, chain) }));
}

/** Seams that no hand reaches from within when their turn comes. */
export function unreachedIn(job: GlueJob, chains: readonly number[]): readonly number[] {
  const glued = new Uint8Array(job.net.chains.length);
  return chains.filter((chain) => {
    const reached = isReached(job, glued, chain);
    glued[chain] = 1;
    return !reached;
  });
}

/** The seam after which this one is reached no more. */
function shutBy(job: GlueJob, chains: readonly number[], late: number): number | null {
  const glued = new Uint8Array(job.net.chains.length);
  let by: number | null = null;
  let wasReached = isReached(job, glued, late);
  for (const chain of chains.slice(0, chains.indexOf(late))) {
    glued[chain] = 1;
    const reached = isReached(job, glued, late);
    if (wasReached && !reached) by = chain;
    wasReached = reached;
  }
  return by;
}

/**
 * Brings an order that was accepted once up to what seams there are now: those that are gone are left out, new ones stand after what they come
 * after in the order that was found.
 */
export function completeOrder(accepted: readonly number[], found: readonly number[]): readonly number[] {
  const known = new Set(found);
  const order = [...new Set(accepted)].filter((chain) => known.has(chain));
  found.forEach((chain, i) => {
    if (order.includes(chain)) return;
    const before = found.slice(0, i).findLast((other) => order.includes(other));
    order.splice(before === undefined ? 0 : order.indexOf(before) + 1, 0, chain);
  });
  return order;
}
