import type { Work } from '../../base/work.ts';
import { seamGraph, type SeamGraph } from '../../steps/seams/propose-graph.ts';
import { Judge } from './judge.ts';
import { Assessor } from './layout.ts';
import type { ProposalWish } from './proposal.ts';

/** What weighs seams under a wish. */
export function assessorOf(wish: ProposalWish, work: Work): Assessor {
  return new Assessor(seamGraph(wish.mesh, wish), new Judge(wish, work), wish);
}

/** Seams a wish begins with: 1 per edge. Edges of the prop are none. */
export const startOf = ({ start }: Pick<ProposalWish, 'start'>, graph: SeamGraph): Uint8Array =>
  start === undefined
    ? new Uint8Array(graph.edgeCount)
    : start.isSeam.map((value, e) => (graph.isOpen[e] === 1 ? 0 : value));
