import { seededRandom } from '../../base/random.ts';
import type { Work } from '../../base/work.ts';
import { coneTree } from '../../steps/seams/cone-tree.ts';
import { seamGraph } from '../../steps/seams/propose-graph.ts';
import { firstLayout } from './first-layout.ts';
import { Judge } from './judge.ts';
import { Assessor, pricesOf, type Layout } from './layout.ts';
import { proposalOf } from './proposal-of.ts';
import type { Proposal, ProposalWish } from './proposal.ts';
import { Search } from './search.ts';

/**
 * Seeks seams under which every piece keeps its limits and which cost little: a feasible first answer, then better ones until told to stop.
 * The same wish, seed and number of moves give the same answer on every machine.
 * @param onBetter  called with each answer that is better than all before; it holds every limit.
 * @param until     asked between moves: true to stop. Time comes in here alone.
 * @returns the best answer; where none holds every limit, the nearest with its reasons.
 * @throws Cancelled when the work was called off.
 */
export async function propose(
  wish: ProposalWish,
  work: Work,
  onBetter: (proposal: Proposal) => void,
  until: () => boolean,
): Promise<Proposal> {
  const { mesh, positions } = wish;
  const graph = seamGraph(mesh, wish);
  const assessor = new Assessor(graph, new Judge(wish, work), positions, pricesOf(wish.dial));
  const start = new Uint8Array(graph.edgeCount);
  if (wish.start !== undefined) start.set(wish.start.isSeam.map((value, e) => (graph.isOpen[e] === 1 ? 0 : value)));
  await work.pause(0, 'looking for seams');
  const first = await firstOf(assessor, start, until);
  const search = new Search(assessor, seededRandom(wish.seed), {
    until,
    onBetter: (layout, moves) => onBetter(proposalOf(assessor, layout, moves)),
  });
  const last = await assessor.confirm(await search.run(first));
  return proposalOf(assessor, last, search.moves);
}

/** From the seams there are, or from these and a tree over the sharp corners of the surface, whichever comes out better. */
async function firstOf(assessor: Assessor, start: Uint8Array, until: () => boolean): Promise<Layout> {
  const plain = await firstLayout(assessor, start, until);
  const tree = coneTree(assessor.graph, assessor.positions, start);
  if (tree === null || until()) return plain;
  const other = await firstLayout(assessor, tree, until);
  if (other.badness !== plain.badness) return other.badness < plain.badness ? other : plain;
  return other.sum.total < plain.sum.total ? other : plain;
}
