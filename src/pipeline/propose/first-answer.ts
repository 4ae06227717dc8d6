import { triangleCount } from '../../mesh/mesh.ts';
import { coneTree } from '../../steps/seams/cone-tree.ts';
import { startOf } from './assessor-of.ts';
import { firstLayout } from './first-layout.ts';
import type { Assessor, Layout } from './layout.ts';
import { mergedAreas } from './merged-areas.ts';
import type { ProposalWish } from './proposal.ts';
import type { Search } from './search.ts';

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

/** What is needed to begin. */
export interface Beginning {
  readonly wish: ProposalWish;
  readonly assessor: Assessor;
  readonly search: Search;
  /** Asked between moves: true to stop. */
  readonly until: () => boolean;
}

type Way = (best: Layout | null) => Promise<Layout | null>;

/**
 * The cheapest of several ways to begin: seams there are, cut on where pieces fail; a tree over sharp corners; nearly flat areas made one
 * as far as the limits hold.
 */
export async function firstAnswer({ wish, assessor, search, until }: Beginning): Promise<Layout> {
  const { graph, positions } = assessor;
  const start = startOf(wish, graph);
  const given = await assessor.assess(start, null);
  if (given === null) throw new Error('a layout without limit is always assessed');
  let best: Layout | null = given.badness === 0 ? await search.begin(given) : null;
  if (best?.badness !== 0) best = null;
  const tree = coneTree(graph, positions, start);
  const isMany = triangleCount(graph.mesh) > MANY_TRIANGLES || (tree === null && !graph.isRim.includes(1));
  const cuts = (tree === null ? [start] : [tree, start]).map(
    (seams): Way =>
      (best) =>
        firstLayout(assessor, seams, until, {
          mostTotal: best?.sum.total ?? Infinity,
          mostLaid: MOST_LAID,
          mostPieces: given.verdicts.length + MOST_PIECES,
        }),
  );
  const byAreas: Way = () => mergedAreas(assessor, start, until);
  for (const way of isMany ? [byAreas, ...cuts] : [...cuts, byAreas]) {
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
