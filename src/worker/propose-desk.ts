import { fail, ok, type Result } from '../base/result.ts';
import { Cancelled } from '../base/work.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { topologyOf, triangleOfHalfedge } from '../mesh/topology.ts';
import type { SeamMarks, SeamSet } from '../model/seams.ts';
import { foamGround } from '../pipeline/foam-ground.ts';
import type { Outcome } from '../pipeline/outcome.ts';
import { pricesOf } from '../pipeline/propose/layout.ts';
import { propose } from '../pipeline/propose/propose.ts';
import type { Proposal, ProposalWish } from '../pipeline/propose/proposal.ts';
import { seamWishesOf, type SeamWishes } from '../pipeline/seam-wishes.ts';
import { setSeams } from '../project/commands.ts';
import type { Project } from '../project/project.ts';
import { seamSetFromMarks } from '../steps/seams/seam-set.ts';
import { picturePieces } from './piece-picture.ts';
import type { ProposalAnswer, ProposalAsk, ProposalKind, ProposalNeeds, Proposing } from './proposing-api.ts';
import { WaitingWork } from './waiting-work.ts';

/** The three answers, and where each stands between few and simple pieces. */
const DIALS: Readonly<Record<ProposalKind, number>> = { few: 0, between: 0.5, simple: 1 };
const KINDS = ['few', 'between', 'simple'] as const satisfies readonly ProposalKind[];
/** Same answers for the same job. */
const SEED = 1;
/** Reasons told of one answer. */
const MOST_REASONS = 3;

/** What the desk needs of the workshop it stands in. */
export interface ProposeHost {
  outcome(): Outcome | null;
  /** True while a compute runs: the search waits for it. */
  isBusy(): boolean;
  /** Runs the whole chain on another document, in its turn; null where a compute came in between. */
  tryOut(project: Project): Promise<Outcome | null>;
}

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
    const wish = outcome === null ? null : wishOf(outcome, ask);
    if (outcome === null || wish === null)
      return fail(
        'propose/no-size',
        'Say how large the sculpt is first: then it is known how far the foam must stretch.',
      );
    const search = new Search(() => this.#host.isBusy());
    this.#search = search;
    const shown = outcome.cut?.mesh ?? wish.mesh;
    const tell = (kind: ProposalKind, proposal: Proposal, needs: ProposalNeeds | null = null): void =>
      onAnswer(answerOf(wish.mesh, shown, kind, proposal, needs));
    const best = new BestOfKinds(tell);
    try {
      await seekAll(wish, search, (proposal) => best.offer(proposal));
      const paths = ask.from === 'rest' ? outcome.part.seams.paths : [];
      for (const [kind, proposal] of best.all)
        tell(kind, proposal, await this.#needsOf(outcome, { edges: pairsOf(wish.mesh, proposal), paths }));
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

  /** The job as it would be with these seams; null where it cannot be laid out. */
  async #needsOf({ project }: Outcome, marks: SeamMarks): Promise<ProposalNeeds | null> {
    const tried = await this.#host.tryOut(setSeams(marks).apply(project));
    if (tried === null || tried.sheets === null || tried.paper === null) return null;
    const foamMm2 = (tried.pieces ?? []).reduce((sum, { areaMm2, quantity }) => sum + areaMm2 * quantity, 0);
    return { sheets: tried.sheets.sheets.length, pages: tried.paper.pages.length, foamMm2 };
  }
}

/** The best answer of each kind, whoever found it: what is sought for few pieces may be the best of the simple ones too. */
class BestOfKinds {
  readonly #best = new Map<ProposalKind, Proposal>();
  readonly #tell: (kind: ProposalKind, proposal: Proposal) => void;

  constructor(tell: (kind: ProposalKind, proposal: Proposal) => void) {
    this.#tell = tell;
  }

  get all(): readonly (readonly [ProposalKind, Proposal])[] {
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
function isBetter(kind: ProposalKind, one: Proposal, other: Proposal): boolean {
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
  const seek = async (kind: ProposalKind, start: Partial<ProposalWish>, onFirst?: (first: Proposal) => void) => {
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

/** What is sought, from the sheet that is seen: its neutral surface, its foam's sheets and rules. Null before there is a size. */
function wishOf(outcome: Outcome, { from, limitPct, only }: ProposalAsk): Omit<ProposalWish, 'dial'> | null {
  const { project, part, sculpt, cut, mirror } = outcome;
  const outermost = part.layers.at(-1);
  const foam = project.foams.find(({ id }) => id === outermost?.foam);
  if (sculpt?.mmPerUnit == null || cut === null || foam === undefined || outermost === undefined) return null;
  const { mesh } = sculpt;
  const marked = seamSetFromMarks(mesh, part.seams, false);
  if (!marked.ok) return null;
  const wishes = seamWishesOf(mesh, part, marked.value, mirror?.partners.ofEdge ?? null);
  const start = from === 'rest' ? marked.value : heldAlone(mesh, marked.value, wishes);
  return {
    mesh,
    // Where the sheet is cut finer its own vertices follow those of the sculpt.
    ...foamGround(mesh, cut.shell, { part, choice: outermost, foam }, limitPct),
    seed: SEED,
    start,
    ...wishes,
    ...(from === 'rest' ? { locked: marked.value.isSeam } : {}),
    ...(only === undefined ? {} : { fixedTriangles: allBut(outcome, mesh, only) }),
  };
}

/** 1 per triangle of the sculpt outside a patch of the sheet that is seen. */
function allBut({ cut, drawn }: Outcome, mesh: Mesh, patch: number): Uint8Array {
  const fixed = new Uint8Array(mesh.triangles.length / 3).fill(1);
  const isFiner = drawn !== null && cut?.mesh === drawn.mesh;
  cut?.patchOfTriangle.forEach((own, t) => {
    if (own === patch) fixed[isFiner ? drawn.sourceOfTriangle[t] : t] = 0;
  });
  return fixed;
}

/** Of the seams there are those that are held, and those round pieces that are. */
function heldAlone(mesh: Mesh, { isSeam }: SeamSet, { locked, fixedTriangles }: SeamWishes): SeamSet {
  const { halfedgeOfEdge, twin } = topologyOf(mesh);
  const isFixed = (h: number): boolean => h >= 0 && fixedTriangles[triangleOfHalfedge(h)] === 1;
  const held = isSeam.map((value, e) =>
    value === 1 && (locked[e] === 1 || isFixed(halfedgeOfEdge[e]) || isFixed(twin[halfedgeOfEdge[e]])) ? 1 : 0,
  );
  return { isSeam: held, count: held.reduce((sum, value) => sum + value, 0) };
}

/** @param shown what is on the bench: the mesh, or the same cut finer, where some edges are no more. */
function answerOf(
  mesh: Mesh,
  shown: Mesh,
  kind: ProposalKind,
  proposal: Proposal,
  needs: ProposalNeeds | null,
): ProposalAnswer {
  const topology = topologyOf(shown);
  const { perPiece, pieces, lengthMm, dartCount, feasible, reasons, moves } = proposal;
  return {
    kind,
    pairs: pairsOf(mesh, proposal),
    edges: proposal.edges.map(([v, w]) => topology.edgeBetween(v, w)).filter((e) => e >= 0),
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

const pairsOf = ({ fileVertex }: Mesh, { edges }: Proposal): readonly (readonly [number, number])[] =>
  edges.map(([v, w]) => [fileVertex[v], fileVertex[w]]);
