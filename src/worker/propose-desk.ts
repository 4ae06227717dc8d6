import { fail, ok, type Result } from '../base/result.ts';
import { Cancelled } from '../base/work.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { SeamMarks } from '../model/seams.ts';
import type { Outcome } from '../pipeline/outcome.ts';
import { pricesOf } from '../pipeline/propose/layout.ts';
import { propose } from '../pipeline/propose/propose.ts';
import type { Proposal, ProposalWish } from '../pipeline/propose/proposal.ts';
import type { SearchSurface } from '../pipeline/search-surface.ts';
import { edgesOnBench, wishOf } from './proposal-wish.ts';
import { picturePieces } from './piece-picture.ts';
import type { ProposalAnswer, ProposalAsk, SearchKind, ProposalNeeds, Proposing } from './proposing-api.ts';
import { WaitingWork } from './waiting-work.ts';

/** The three answers, and where each stands between few and simple pieces. */
const DIALS: Readonly<Record<SearchKind, number>> = { few: 0, between: 0.5, simple: 1 };
const KINDS = ['few', 'between', 'simple'] as const satisfies readonly SearchKind[];
/** Reasons told of one answer. */
const MOST_REASONS = 3;

/** What the desk needs of the workshop it stands in. */
export interface ProposeHost {
  outcome(): Outcome | null;
  /** True while a compute runs: the search waits for it. */
  isBusy(): boolean;
  /** The job as it would be with these seams; null where it cannot be laid out, or a compute came in between. */
  needsOf(outcome: Outcome, marks: SeamMarks): Promise<ProposalNeeds | null>;
}

export const NO_SIZE = fail(
  'propose/no-size',
  'Say how large the sculpt is first: then it is known how far the foam must stretch.',
);

/** Three searches side by side, each with its own work. */
class Search {
  isStopped = false;
  readonly works: readonly WaitingWork[];

  constructor(isBusy: () => boolean) {
    this.works = KINDS.map(() => new WaitingWork(isBusy));
  }

  cancel(): void {
    for (const work of this.works) work.cancel();
  }
}

/** Seeks seams in the background, three answers side by side. */
export class ProposeDesk implements Pick<Proposing, 'propose' | 'stopProposing'> {
  readonly #host: ProposeHost;
  #search: Search | null = null;

  constructor(host: ProposeHost) {
    this.#host = host;
  }

  async propose(ask: ProposalAsk, onAnswer: (answer: ProposalAnswer) => void): Promise<Result<null>> {
    this.#search?.cancel();
    const outcome = this.#host.outcome();
    const sought = outcome === null ? null : wishOf(outcome, ask);
    if (outcome === null || sought === null) return NO_SIZE;
    const { wish, surface } = sought;
    const search = new Search(() => this.#host.isBusy());
    this.#search = search;
    const shown = outcome.cut?.mesh ?? wish.mesh;
    const tell = (kind: SearchKind, proposal: Proposal, needs: ProposalNeeds | null = null): void =>
      onAnswer(answerOf(surface, shown, kind, proposal, needs));
    const best = new BestOfKinds(tell);
    try {
      await seekAll(wish, search, (proposal) => best.offer(proposal));
      for (const [kind, proposal] of best.all)
        tell(kind, proposal, await this.#host.needsOf(outcome, surface.marksOf(proposal.seams.isSeam)));
    } catch (error) {
      if (!(error instanceof Cancelled)) throw error;
    } finally {
      if (this.#search === search) this.#search = null;
    }
    return ok(null);
  }

  stopProposing(): Promise<void> {
    if (this.#search !== null) this.#search.isStopped = true;
    return Promise.resolve();
  }
}

/** What a job that was tried out needs; null where it came to nothing. */
export function needsOf(tried: Outcome | null): ProposalNeeds | null {
  if (tried === null || tried.sheets === null || tried.paper === null) return null;
  const foamMm2 = (tried.pieces ?? []).reduce((sum, { areaMm2, quantity }) => sum + areaMm2 * quantity, 0);
  return { sheets: tried.sheets.sheets.length, pages: tried.paper.pages.length, foamMm2 };
}

/** The best answer of each kind, whoever found it: what is sought for few pieces may be the best of the simple ones too. */
class BestOfKinds {
  readonly #best = new Map<SearchKind, Proposal>();
  readonly #tell: (kind: SearchKind, proposal: Proposal) => void;

  constructor(tell: (kind: SearchKind, proposal: Proposal) => void) {
    this.#tell = tell;
  }

  get all(): readonly (readonly [SearchKind, Proposal])[] {
    return [...this.#best.entries()];
  }

  offer(proposal: Proposal): void {
    for (const kind of KINDS) {
      const before = this.#best.get(kind);
      if (before !== undefined && !isBetter(kind, proposal, before)) continue;
      this.#best.set(kind, proposal);
      this.#tell(kind, proposal);
    }
  }
}

/** One that keeps every limit goes before one that does not; then the lower sum at the prices of that kind. */
function isBetter(kind: SearchKind, one: Proposal, other: Proposal): boolean {
  if (one.feasible !== other.feasible) return one.feasible;
  const prices = pricesOf(DIALS[kind]);
  const sumOf = ({ sum, pieces, dartCount }: Proposal): number =>
    sum.length + prices.piece * pieces + prices.dart * dartCount;
  return sumOf(one) < sumOf(other);
}

/** The middle one alone as far as its first answer, from which the others begin; then all take turns: each lets the others run when it pauses. */
async function seekAll(
  wish: Omit<ProposalWish, 'dial'>,
  search: Search,
  offer: (proposal: Proposal) => void,
): Promise<void> {
  const seek = async (kind: SearchKind, start: Partial<ProposalWish>, onFirst?: (first: Proposal) => void) => {
    const work = search.works[KINDS.indexOf(kind)];
    const onBetter = (better: Proposal): void => {
      offer(better);
      onFirst?.(better);
    };
    const best = await propose({ ...wish, ...start, dial: DIALS[kind] }, work, onBetter, () => search.isStopped);
    offer(best);
    return best;
  };
  const others: Promise<Proposal>[] = [];
  const begin = ({ seams: start }: Proposal): void => {
    if (others.length > 0) return;
    others.push(seek('few', { start }), seek('simple', { start }));
    // Called off, the middle one tells it for all.
    for (const other of others) other.catch(() => undefined);
  };
  begin(await seek('between', {}, begin));
  await Promise.all(others);
}

function answerOf(
  surface: SearchSurface,
  shown: Mesh,
  kind: SearchKind,
  proposal: Proposal,
  needs: ProposalNeeds | null,
): ProposalAnswer {
  const { perPiece, pieces, lengthMm, dartCount, feasible, reasons, moves } = proposal;
  const { edges: pairs, paths } = surface.marksOf(proposal.seams.isSeam);
  return {
    kind,
    pairs,
    paths,
    edges: edgesOnBench(shown, proposal.edges),
    pieces,
    lengthMm,
    darts: dartCount,
    stretchPct: Math.max(0, ...perPiece.map(({ stretch99 }) => stretch99)),
    squashPct: Math.max(0, ...perPiece.map(({ squash99 }) => squash99)),
    isFeasible: feasible,
    reasons: reasons.slice(0, MOST_REASONS).map(({ text, triangle }) => ({ text, triangle })),
    picture: picturePieces(proposal),
    moves,
    needs,
  };
}
