import { seededRandom } from '../../base/random.ts';
import type { Work } from '../../base/work.ts';
import { coneTree } from '../../steps/seams/cone-tree.ts';
import { firstLayout } from './first-layout.ts';
import type { Assessor, Layout } from './layout.ts';
import { assessorOf, startOf } from './assessor-of.ts';
import { proposalOf } from './proposal-of.ts';
import type { Proposal, ProposalWish } from './proposal.ts';
import { mergedAreas } from './merged-areas.ts';
import { Search } from './search.ts';

/**
 * Seeks seams under which every piece keeps its limits and which cost little: a feasible first answer, then better ones until told to stop.
 * The same wish, seed and number of moves give the same answer on every machine.
 * @param onBetter  called with each answer that is better than all before; all pieces that may change hold every limit.
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
  const assessor = assessorOf(wish, work);
  const start = startOf(wish, assessor.graph);
  await work.pause(0, 'looking for seams');
  const search = new Search(
    assessor,
    seededRandom(wish.seed),
    { until, onBetter: (layout, moves) => onBetter(proposalOf(assessor, layout, moves)) },
    work,
  );
  const first = await firstOf(assessor, search, start, until);
  const last = await assessor.confirm(await search.run(first));
  return proposalOf(assessor, last, search.moves);
}

/** Triangles laid flat in trials at most before one way to begin is left for another: about a second. */
const MOST_LAID = 100_000;
/** Triangles from which a surface is parted into areas before anything is tried on it as a whole: that is sure to come out soon. */
const MANY_TRIANGLES = 1200;
/** Pieces into which cutting from the worst may part a surface before it is left for another way. */
const MOST_PIECES = 12;
/** A way to begin that leaves more pieces than this is not the only one tried. */
const FEW_PIECES = 2;
/** Where a piece costs less than this, more and simpler ones are looked for in any case. */
const DEAR_PIECE = 0.5;

/**
 * The cheapest of several ways to begin: seams there are, cut on where pieces fail; a tree over sharp corners; nearly flat areas made one
 * as far as the limits hold.
 */
async function firstOf(assessor: Assessor, search: Search, start: Uint8Array, until: () => boolean): Promise<Layout> {
  const { graph, positions } = assessor;
  const given = await assessor.assess(start, null);
  if (given === null) throw new Error('a layout without limit is always assessed');
  let best: Layout | null = given.badness === 0 ? await search.begin(given) : null;
  if (best?.badness !== 0) best = null;
  const tree = coneTree(graph, positions, start);
  const isMany = graph.mesh.triangles.length / 3 > MANY_TRIANGLES || (tree === null && !graph.isRim.includes(1));
  const ways: ((best: Layout | null) => Promise<Layout | null>)[] = (tree === null ? [start] : [tree, start]).map(
    (seams) => (best) =>
      firstLayout(assessor, seams, until, {
        mostTotal: best?.sum.total ?? Infinity,
        mostLaid: MOST_LAID,
        mostPieces: given.verdicts.length + MOST_PIECES,
      }),
  );
  const byAreas = (): Promise<Layout | null> => mergedAreas(assessor, start, until);
  for (const way of isMany ? [byAreas, ...ways] : [...ways, byAreas]) {
    if (best !== null && (until() || (way === byAreas && isFew(best) && assessor.prices.piece > DEAR_PIECE))) break;
    const found = await way(best);
    if (found !== null) best = betterOf(best, await search.begin(found));
  }
  if (best === null) throw new Error('a layout always comes of the first cuts');
  return best;
}

const isFew = ({ badness, verdicts }: Layout): boolean => badness === 0 && verdicts.length <= FEW_PIECES;

function betterOf(one: Layout | null, other: Layout | null): Layout | null {
  if (one === null || other === null) return one ?? other;
  if (one.badness !== other.badness) return other.badness < one.badness ? other : one;
  return other.sum.total < one.sum.total ? other : one;
}
