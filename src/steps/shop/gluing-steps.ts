import type { GluingWork } from '../../model/gluing.ts';
import type { GluingOrder } from './gluing-order.ts';
import { chainsRoundEnd, closingOf, rimsOf, type Closing, type Glued, type Rims } from './rims.ts';
import type { SeamNet } from './seam-net.ts';

/** A step as far as pieces and seams go. */
export interface NetStep {
  readonly work: GluingWork;
  /** Pieces that are picked up, ascending; where a body is closed, all of it. */
  readonly adds: readonly number[];
  /** Pieces they are put to; none where a body is closed, and where the first piece of a sheet is laid. */
  readonly onto: readonly number[];
  readonly runs: readonly NetRun[];
}

/** A seam that is rolled shut, and which of its ends other seams hold already. */
export interface NetRun {
  readonly chain: number;
  /** Whether its edges are held together where the chain begins and where it ends. */
  readonly heldAtStart: boolean;
  readonly heldAtEnd: boolean;
  /** The glued chains that come together at its beginning and at its end, where that is held; none at the tip of a dart. */
  readonly roundStart: readonly number[];
  readonly roundEnd: readonly number[];
  readonly outside: boolean;
}

/**
 * Gathers seams that are glued one after the other into steps: what joins the same two bodies corner by corner, and closing seams that go on
 * from one another.
 */
export function netSteps(net: SeamNet, order: GluingOrder, areaMm2: readonly number[]): readonly NetStep[] {
  const glued = new Uint8Array(net.chains.length);
  const steps: { work: GluingWork; adds: readonly number[]; onto: readonly number[]; runs: NetRun[] }[] = [];
  for (const chain of order.chains) {
    const rims = rimsOf(net, glued);
    const closing = closingOf(net, rims, chain);
    const run = netRun(net, glued, rims, chain, order.outside.includes(chain));
    const last = steps.at(-1);
    if (last !== undefined && goesOn(net, last, run, closing)) last.runs.push(run);
    else steps.push({ ...bodiesJoined(net, rims, chain, closing, areaMm2), runs: [run] });
    glued[chain] = 1;
  }
  return steps;
}

/**
 * Steps of a sheet that is laid on another, piece by piece.
 * @param pieces all of them in the order in which they are laid.
 */
export function laidSteps(net: SeamNet, pieces: readonly number[]): readonly NetStep[] {
  const glued = new Uint8Array(net.chains.length);
  const inPlace = new Set<number>();
  return pieces.map((piece) => {
    inPlace.add(piece);
    const due = net.chains.flatMap(({ pieces: ids }, c) =>
      ids.length === 2 && ids.includes(piece) && ids.every((id) => inPlace.has(id)) ? [c] : [],
    );
    const onto = [...new Set(due.flatMap((c) => net.chains[c].pieces))].filter((id) => id !== piece);
    const runs: NetRun[] = [];
    while (runs.length < due.length) {
      const rims = rimsOf(net, glued);
      const left = due.filter((c) => glued[c] === 0);
      const chain = left.find((c) => runs.length > 0 && closingOf(net, rims, c) === 'zip') ?? left[0];
      runs.push(netRun(net, glued, rims, chain, false));
      glued[chain] = 1;
    }
    return { work: 'lay', adds: [piece], onto: onto.sort((a, b) => a - b), runs };
  });
}

function netRun(net: SeamNet, glued: Glued, { follows }: Rims, chain: number, outside: boolean): NetRun {
  const [own, other] = [2 * chain, 2 * chain + 1];
  const heldAtEnd = follows[own] === other;
  const heldAtStart = follows[other] === own;
  return {
    chain,
    heldAtStart,
    heldAtEnd,
    roundStart: heldAtStart ? chainsRoundEnd(net, glued, other) : [],
    roundEnd: heldAtEnd ? chainsRoundEnd(net, glued, own) : [],
    outside,
  };
}

function bodiesJoined(
  net: SeamNet,
  { bodyOf }: Rims,
  chain: number,
  closing: Closing,
  areaMm2: readonly number[],
): Omit<NetStep, 'runs'> {
  const membersOf = (piece: number): readonly number[] =>
    areaMm2.flatMap((_, p) => (bodyOf[p] === bodyOf[piece] ? [p] : []));
  const [a, b] = net.chains[chain].pieces.map(membersOf);
  if (closing !== 'join') return { work: 'close', adds: a, onto: [] };
  const areaOf = (pieces: readonly number[]): number => pieces.reduce((sum, p) => sum + areaMm2[p], 0);
  // Small goes to large.
  const [adds, onto] = areaOf(a) > areaOf(b) ? [b, a] : [a, b];
  return { work: 'join', adds, onto };
}

/** Whether a seam is glued in the same step as those before it: it begins where one of them ends, and joins the same two bodies. */
function goesOn(net: SeamNet, step: NetStep, run: NetRun, closing: Closing): boolean {
  if (closing !== 'zip') return false;
  const round = [...run.roundStart, ...run.roundEnd];
  if (!step.runs.some(({ chain }) => round.includes(chain))) return false;
  const { pieces } = net.chains[run.chain];
  if (step.work === 'close') return pieces.every((piece) => step.adds.includes(piece));
  return [
    [0, 1],
    [1, 0],
  ].some(([i, j]) => step.adds.includes(pieces[i]) && step.onto.includes(pieces[j]));
}
