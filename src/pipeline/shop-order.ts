import type { Finding } from '../base/finding.ts';
import type { Stepwise } from '../base/stepwise.ts';
import type { FoamPiece } from '../model/foam-piece.ts';
import type { SeamChain } from '../model/seams.ts';
import type { SeamOfPieces } from '../model/shop-choices.ts';
import { completeOrder, orderFaults, unreachedIn, type OrderFault } from '../steps/shop/check-order.ts';
import { gluingOrderSteps, type GluingOrder } from '../steps/shop/gluing-order.ts';
import { reachGraphSteps } from '../steps/shop/reach-graph.ts';
import type { GlueJob } from '../steps/shop/reach.ts';
import { seamNet, type SeamNet } from '../steps/shop/seam-net.ts';
import type { LayerOutcome } from './outcome.ts';

/** A sheet whose pieces are glued edge to edge, and the order that is in force. */
export interface OrderedSheet {
  readonly net: SeamNet;
  readonly order: GluingOrder;
  readonly findings: readonly Finding[];
}

/**
 * The order in which a sheet's seams are glued: the one that was accepted, as far as it can be, else the one that is found.
 * @param accepted what the maker accepted; left out: nothing.
 */
export function* sheetOrderSteps(
  layer: FinishedSheet,
  accepted: readonly SeamOfPieces[] | undefined,
): Stepwise<OrderedSheet> {
  const job = yield* glueJobSteps(layer);
  const areaMm2 = areasOf(layer);
  const found = yield* gluingOrderSteps({ ...job, areaMm2 });
  if (accepted === undefined) return { net: job.net, order: found, findings: [] };
  const wished = completeOrder(chainsNamed(layer, accepted), found.chains);
  const faults = orderFaults(job, wished, found);
  if (faults.length === 0) {
    return { net: job.net, order: { chains: wished, outside: unreachedIn(job, wished) }, findings: [] };
  }
  const order = yield* gluingOrderSteps({ ...job, areaMm2, wished });
  return { net: job.net, order, findings: faults.map((fault) => faultFinding(layer, fault)) };
}

/** Why an order cannot be, one finding for each seam that comes too late; none where it can be. */
export function* orderFindingSteps(
  layer: FinishedSheet,
  wished: readonly SeamOfPieces[],
): Stepwise<readonly Finding[]> {
  const { findings } = yield* sheetOrderSteps(layer, wished);
  return findings;
}

/** A sheet of which all has been made. */
export type FinishedSheet = Pick<LayerOutcome, 'cut' | 'pieces'>;

function* glueJobSteps(layer: FinishedSheet): Stepwise<GlueJob> {
  const { chains, patches, shell } = need(layer.cut);
  const graph = yield* reachGraphSteps(chains, patches, shell.neutralPositions);
  return { net: seamNet(chains, patches, shell.neutralPositions), graph };
}

/** Of each patch, mm². */
export function areasOf({ cut, pieces }: FinishedSheet): readonly number[] {
  const areas = need(cut).patches.map(() => 0);
  for (const { patch, surfaceAreaMm2 } of need(pieces)) areas[patch] = surfaceAreaMm2;
  return areas;
}

/** What names the seams of an order in the document. */
export function namesOfOrder(layer: FinishedSheet, order: readonly number[]): readonly SeamOfPieces[] {
  const names = seamNames(layer);
  return order.flatMap((chain) => names[chain] ?? []);
}

/** The seams that are so named, in that order; what names none is left out. */
export function chainsNamed(layer: FinishedSheet, named: readonly SeamOfPieces[]): readonly number[] {
  const chainOf = new Map(seamNames(layer).flatMap((name, chain) => (name === null ? [] : [[textOf(name), chain]])));
  return named.flatMap((name) => chainOf.get(textOf(name)) ?? []);
}

const textOf = ({ pieces: [a, b], nth }: SeamOfPieces): string => `${a < b ? `${a} ${b}` : `${b} ${a}`} ${nth}`;

function seamNames({ cut, pieces }: FinishedSheet): readonly (SeamOfPieces | null)[] {
  const pieceOf = new Map(need(pieces).map((piece) => [piece.patch, piece]));
  const counts = new Map<string, number>();
  return need(cut).chains.map(({ sides }) => {
    const ids = sides.map(({ patch }) => pieceOf.get(patch)?.id);
    const [a, b] = ids;
    if (a === undefined || b === undefined) return null;
    const pair = textOf({ pieces: [a, b], nth: 0 });
    const nth = counts.get(pair) ?? 0;
    counts.set(pair, nth + 1);
    return { pieces: [a, b], nth };
  });
}

function faultFinding({ cut, pieces }: FinishedSheet, { chain, shutBy }: OrderFault): Finding {
  const { chains } = need(cut);
  const letter = (c: number): string => nameOf(chains[c], need(pieces));
  const why =
    shutBy === null
      ? 'no hand reaches it from within when its turn comes: glue it while more is open'
      : `no hand reaches it from within once ${letter(shutBy)} is shut: glue it before that`;
  return {
    code: 'shop/order-shut',
    severity: 'warning',
    text: `${capital(letter(chain))} comes too late in the order of gluing you chose; ${why}. Until then it is told earlier than you put it.`,
    where: { seam: chains[chain].id },
  };
}

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

/** `seam B`, with its pieces where it has no letter. */
function nameOf({ letter, sides }: SeamChain, pieces: readonly FoamPiece[]): string {
  if (letter !== '') return `seam ${letter}`;
  const names = sides.map(({ patch }) => pieces.find((piece) => piece.patch === patch)?.name ?? 'a piece');
  return `the seam of ${names.join(' and ')}`;
}

function need<T>(value: T | null): T {
  if (value === null) throw new Error('shop: the chain has not run to its end');
  return value;
}
