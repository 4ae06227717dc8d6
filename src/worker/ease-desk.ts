import { ok, type Result } from '../base/result.ts';
import { Cancelled } from '../base/work.ts';
import { topologyOf } from '../mesh/topology.ts';
import type { Outcome } from '../pipeline/outcome.ts';
import { easePiece, type EaseOffer } from '../pipeline/propose/ease-piece.ts';
import type { LimitReason } from '../pipeline/propose/proposal.ts';
import { edgesOnBench, wishOf, type SearchWish } from './proposal-wish.ts';
import { picturePieces } from './piece-picture.ts';
import { NO_SIZE, type ProposeHost } from './propose-desk.ts';
import type { EaseAsk, EasePlace, ProposalAnswer, Proposing, ToldReason } from './proposing-api.ts';
import { WaitingWork } from './waiting-work.ts';

const PLACES = ['first', 'second', 'third'] as const satisfies readonly EasePlace[];

/** Between few and simple pieces. */
const DIAL = 0.5;

/** Seeks the least that brings one piece under its limits. One piece at a time. */
export class EaseDesk implements Pick<Proposing, 'ease'> {
  readonly #host: ProposeHost;
  #work: WaitingWork | null = null;

  constructor(host: ProposeHost) {
    this.#host = host;
  }

  async ease(
    { patch, limitPct }: EaseAsk,
    onAnswer: (answer: ProposalAnswer) => void,
  ): Promise<Result<readonly ToldReason[]>> {
    this.#work?.cancel();
    const outcome = this.#host.outcome();
    const sought = outcome === null ? null : wishOf(outcome, { from: 'rest', limitPct });
    if (outcome === null || sought === null) return NO_SIZE;
    const work = new WaitingWork(() => this.#host.isBusy());
    this.#work = work;
    try {
      const { reasons, offers } = await easePiece({ ...sought.wish, dial: DIAL }, pieceOf(outcome, patch), work);
      const answers = offers.map((offer, i) => answerOf(outcome, sought, PLACES[i], offer));
      for (const answer of answers) onAnswer(answer);
      for (const answer of answers) {
        const needs = await this.#host.needsOf(outcome, { edges: answer.pairs, paths: answer.paths });
        if (this.#work !== work) break;
        onAnswer({ ...answer, needs });
      }
      return ok(reasons.map(told));
    } catch (error) {
      if (!(error instanceof Cancelled)) throw error;
      return ok([]);
    } finally {
      if (this.#work === work) this.#work = null;
    }
  }

  stop(): void {
    this.#work?.cancel();
    this.#work = null;
  }
}

/** A patch of the sheet that is seen, as pieces are numbered where seams are sought: by their lowest triangle. */
function pieceOf({ cut }: Outcome, patch: number): number {
  const patches = cut?.patches ?? [];
  return patches.filter(({ meshTriangles }) => meshTriangles[0] < patches[patch].meshTriangles[0]).length;
}

const told = ({ text, triangle }: LimitReason): ToldReason => ({ text, triangle });

function answerOf(
  { cut }: Outcome,
  { surface, wish: { mesh, start } }: SearchWish,
  kind: EasePlace,
  offer: EaseOffer,
): ProposalAnswer {
  const topology = topologyOf(mesh);
  const isSeam = start?.isSeam.slice() ?? new Uint8Array(topology.edgeCount);
  for (const [v, w] of offer.edges) isSeam[topology.edgeBetween(v, w)] = 1;
  const { edges: pairs, paths } = surface.marksOf(isSeam);
  return {
    kind,
    pairs,
    paths,
    edges: edgesOnBench(cut?.mesh ?? mesh, offer.edges),
    pieces: offer.pieces,
    lengthMm: offer.lengthMm,
    darts: offer.darts,
    stretchPct: Math.max(0, offer.stretch99),
    squashPct: Math.max(0, offer.squash99),
    isFeasible: offer.isEnough,
    mends: offer.mends,
    reasons: offer.reasons.map(told),
    picture: picturePieces({ perPiece: offer.parts }),
    moves: 0,
    needs: null,
  };
}
