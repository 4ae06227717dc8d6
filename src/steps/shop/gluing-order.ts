import type { Stepwise } from '../../base/stepwise.ts';
import { glueableChains, isReached, reachedChains, type GlueJob } from './reach.ts';
import { chainsRoundEnd, closingOf, rimsOf, type Closing, type Glued, type Rims } from './rims.ts';

/** What an order is chosen by. */
export interface OrderJob extends GlueJob {
  /** Of each piece, mm². */
  readonly areaMm2: readonly number[];
  /**
   * Chains in the order the maker wishes, as far as it can be kept; those left out go where they would without it. Left out: as Foamloft thinks
   * best.
   */
  readonly wished?: readonly number[];
}

/** An order in which all seams can be glued. */
export interface GluingOrder {
  /** Chains, each once. */
  readonly chains: readonly number[];
  /** Those of them that no hand reaches from within when their turn comes. */
  readonly outside: readonly number[];
}

/**
 * Orders the seams of one sheet. What would become unreachable goes before what shuts it in; else closing seams last, small bodies to large
 * ones, flat ones before those at a sharp fold. A closed prop has to be shut somewhere: as few seams as can be found are left to be pressed from
 * outside, those with the longest gap.
 *
 * Going on, a seam is taken only if the rest can still be glued with no more seams pressed from outside than before. That is asked by taking
 * the rest apart again from the end (`leftOutside`).
 */
export function* gluingOrderSteps(job: OrderJob): Stepwise<GluingOrder> {
  let rest = glueableChains(job);
  const glued: Glued = new Uint8Array(job.net.chains.length);
  const chains: number[] = [];
  const outside: number[] = [];
  let allowed = leftOutside(job, glued, rest);
  const isFree = allowed === 0 && areAllReached(job, rest);
  while (rest.length > 0) {
    yield;
    const candidates =
      job.wished === undefined ? byPreference(job, glued, rest, chains.at(-1)) : byWish(rest, job.wished);
    const { chain, left } = isFree
      ? { chain: candidates.find((one) => isReached(job, glued, one)) ?? candidates[0], left: 0 }
      : firstAllowed(job, glued, candidates, allowed);
    allowed = left;
    if (!isReached(job, glued, chain)) outside.push(chain);
    glued[chain] = 1;
    rest = rest.filter((other) => other !== chain);
    chains.push(chain);
  }
  return { chains, outside };
}

/** Where all seams are reached even when all are glued, any order will do. */
function areAllReached(job: GlueJob, chains: readonly number[]): boolean {
  const glued = new Uint8Array(job.net.chains.length);
  for (const chain of chains) glued[chain] = 1;
  return reachedChains(job, glued).every((reached) => reached === 1);
}

/** The first of the candidates that leaves no more seams to be pressed from outside than are allowed, itself among them; else the least harmful. */
function firstAllowed(
  job: GlueJob,
  glued: Glued,
  candidates: readonly number[],
  allowed: number,
): { readonly chain: number; readonly left: number } {
  let best = { chain: candidates[0], total: Infinity, left: Infinity };
  for (const chain of candidates) {
    const own = isReached(job, glued, chain) ? 0 : 1;
    const after = glued.slice();
    after[chain] = 1;
    const others = candidates.filter((other) => other !== chain);
    const left = leftOutside(job, after, others);
    if (own + left < best.total) best = { chain, total: own + left, left };
    if (best.total <= allowed) break;
  }
  return best;
}

/**
 * How many of the seams that are left no hand will reach, in the best order that was found: beginning with all of them glued, those that are
 * reached are taken off, for they may come last; where none is, one is given up, the one that lets most others be reached.
 */
function leftOutside(job: GlueJob, before: Glued, chains: readonly number[]): number {
  const glued = before.slice();
  for (const chain of chains) glued[chain] = 1;
  let left = [...chains];
  let given = 0;
  while (left.length > 0) {
    const reached = reachedChains(job, glued);
    let off = left.filter((chain) => reached[chain] === 1);
    if (off.length === 0) {
      given += 1;
      off = [bestGivenUp(job, glued, left)];
    }
    for (const chain of off) glued[chain] = 0;
    left = left.filter((chain) => glued[chain] === 1);
  }
  return given;
}

/** More seams than this are not tried one by one. */
const MOST_TRIED = 24;

function bestGivenUp(job: GlueJob, glued: Glued, left: readonly number[]): number {
  const lengthOf = (chain: number): number => job.net.chains[chain].lengthMm;
  const longest = [...left].sort((a, b) => lengthOf(b) - lengthOf(a) || a - b).slice(0, MOST_TRIED);
  let best = longest[0];
  let most = -1;
  for (const chain of longest) {
    glued[chain] = 0;
    const reached = reachedChains(job, glued);
    const opened = left.reduce((sum, other) => sum + (other === chain ? 0 : reached[other]), 0);
    glued[chain] = 1;
    if (opened > most) [best, most] = [chain, opened];
  }
  return best;
}

function byWish(left: readonly number[], wished: readonly number[]): readonly number[] {
  const rankOf = new Map(wished.map((chain, i) => [chain, i]));
  return [...left].sort((a, b) => (rankOf.get(a) ?? Infinity) - (rankOf.get(b) ?? Infinity) || a - b);
}

const CLOSING_RANK: Readonly<Record<Closing, number>> = { zip: 0, join: 1, ring: 2 };

/** The chains that are left, the one to be glued next first. */
function byPreference(
  job: OrderJob,
  glued: Glued,
  left: readonly number[],
  last: number | undefined,
): readonly number[] {
  const { net, areaMm2 } = job;
  const rims = rimsOf(net, glued);
  const bodyArea = areaMm2.map(() => 0);
  areaMm2.forEach((area, p) => (bodyArea[rims.bodyOf[p]] += area));
  const between = sharedSeams(job, rims, left);
  const keys = left.map((chain) => {
    const { foldRad, lengthMm, pieces } = net.chains[chain];
    const closing = closingOf(net, rims, chain);
    const [a, b] = pieces.map((piece) => rims.bodyOf[piece]);
    // What goes on from the corner where the last seam ended goes before all else.
    const rank = closing === 'zip' && goesOn(net, glued, chain, last) ? -1 : CLOSING_RANK[closing];
    if (closing !== 'join') return { chain, rank, cost: lengthMm * foldCost(foldRad), lengthMm };
    const shared = between(a, b);
    const cost = (Math.min(bodyArea[a], bodyArea[b]) * foldCost(shared.foldRad)) / shared.share;
    return { chain, rank, cost, lengthMm };
  });
  // Of the seams between two bodies the longest goes first: the others go on from its corners.
  keys.sort((p, q) => p.rank - q.rank || p.cost - q.cost || q.lengthMm - p.lengthMm || p.chain - q.chain);
  return keys.map(({ chain }) => chain);
}

/** A fold at which a seam is put off as if what is joined were twice as large, radians: flat ones come before bent ones [J]. */
const TWICE_AT_RAD = Math.PI / 4;

const goesOn = (net: GlueJob['net'], glued: Glued, chain: number, last: number | undefined): boolean =>
  last !== undefined && [2 * chain, 2 * chain + 1].some((side) => chainsRoundEnd(net, glued, side).includes(last));

const foldCost = (foldRad: number): number => 1 + foldRad / TWICE_AT_RAD;

interface SharedSeams {
  /** The greater share, 0 to 1, of either body's seams to other bodies that joins it to the other. */
  readonly share: number;
  /** Mean turn across them, by length, radians. */
  readonly foldRad: number;
}

/** What joins two bodies. */
function sharedSeams(
  { net }: GlueJob,
  { bodyOf }: Rims,
  left: readonly number[],
): (a: number, b: number) => SharedSeams {
  const pairs = new Map<string, { mm: number; turned: number }>();
  const totals = new Map<number, number>();
  const keyOf = (a: number, b: number): string => `${Math.min(a, b)} ${Math.max(a, b)}`;
  for (const chain of left) {
    const { pieces, lengthMm, foldRad } = net.chains[chain];
    const [a, b] = pieces.map((piece) => bodyOf[piece]);
    if (a === b) continue;
    const { mm, turned } = pairs.get(keyOf(a, b)) ?? { mm: 0, turned: 0 };
    pairs.set(keyOf(a, b), { mm: mm + lengthMm, turned: turned + lengthMm * foldRad });
    for (const body of [a, b]) totals.set(body, (totals.get(body) ?? 0) + lengthMm);
  }
  return (a, b) => {
    const { mm, turned } = pairs.get(keyOf(a, b)) ?? { mm: 0, turned: 0 };
    const least = Math.min(totals.get(a) ?? 0, totals.get(b) ?? 0);
    // Mirror images must come out alike to the last bit, so that they are glued one after the other.
    return {
      share: rounded(mm / Math.max(least, Number.MIN_VALUE)),
      foldRad: rounded(turned / Math.max(mm, Number.MIN_VALUE)),
    };
  };
}

const rounded = (value: number): number => Math.round(value * 1e6) / 1e6;
