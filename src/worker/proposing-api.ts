import type { Result } from '../base/result.ts';
import type { SeamCost } from '../model/seam-cost.ts';
import type { SeamPath } from '../model/seams.ts';
import type { LimitReason } from '../pipeline/propose/proposal.ts';

/** How few pieces are sought: few with darts, more and simpler ones, or between. */
export type SearchKind = 'few' | 'between' | 'simple';

/** The least costly place to ease one piece, and the next ones. */
export type EasePlace = 'first' | 'second' | 'third';

export type ProposalKind = SearchKind | EasePlace;

/** A limit of the foam or the sheet. */
export type LimitName = LimitReason['limit'];

/** Why a limit is broken, in a sentence, with the triangle on the bench where it is worst. */
export interface ToldReason {
  readonly text: string;
  readonly triangle: number;
}

/** What is asked for. */
export interface ProposalAsk {
  /** `anew`: seams are sought from nothing but those that are held. `rest`: all that is marked stays, what is missing is added. */
  readonly from: 'anew' | 'rest';
  /** 99th percentile of stretch and of squash that no piece may pass, per cent, > 0. */
  readonly limitPct: number;
}

/** One piece that is to keep its limits: all others, and all seams, stay as they are. */
export interface EaseAsk {
  /** The number of its patch in the sheet that is seen. */
  readonly patch: number;
  /** As in {@link ProposalAsk}. */
  readonly limitPct: number;
}

/** Sheets and pages that a proposal comes to, as they would be cut and printed, and its foam, mm². */
export interface ProposalNeeds {
  readonly sheets: number;
  readonly pages: number;
  readonly foamMm2: number;
}

/** One of three answers, as good as it is by now. Of a place to ease one piece, figures are of what comes of the piece and of what is added. */
export interface ProposalAnswer {
  readonly kind: ProposalKind;
  /** All seams as pairs of file numbers, and those across faces. */
  readonly pairs: readonly (readonly [number, number])[];
  readonly paths: readonly SeamPath[];
  /** The seams as edges of what is on the bench; of a place to ease a piece, those that are added. */
  readonly edges: readonly number[];
  readonly pieces: number;
  readonly lengthMm: number;
  readonly darts: number;
  /** Of the piece that gives most: 99th percentile, per cent. */
  readonly stretchPct: number;
  readonly squashPct: number;
  /** False where a limit is broken yet. */
  readonly isFeasible: boolean;
  /** Of a place to ease a piece: limits it breaks now and not any more then. */
  readonly mends?: readonly LimitName[];
  /** Why not, worst first. */
  readonly reasons: readonly ToldReason[];
  /** Flat pieces laid out beside each other, as outlines x y, mm, y up; `size` is what they take up. */
  readonly picture: { readonly outlines: readonly Float32Array[]; readonly size: readonly [number, number] };
  /** Changes tried before it was found. */
  readonly moves: number;
  /** Known once the search was stopped and the answer was worked out in full. */
  readonly needs: ProposalNeeds | null;
}

/** Seams found by search. One search at a time: a new one stops the one before. */
export interface Proposing {
  /**
   * Seeks three answers at once until it is told to stop, for the sculpt and the foam of the last compute.
   * @param onAnswer called with each answer that is better than all of its kind before, and once more with what it needs after the stop.
   * @returns when all is told. Fails with `propose/no-size`.
   */
  propose(ask: ProposalAsk, onAnswer: (answer: ProposalAnswer) => void): Promise<Result<null>>;
  /**
   * Seeks the least seams or darts that bring one piece under its limits, at the three best places: the least costly first, those that are enough
   * before all others.
   * @param onAnswer called with each once all are known, and once more with what it needs.
   * @returns which limits the piece breaks now, worst first; none where it keeps all or the search was called off. Fails with `propose/no-size`.
   */
  ease(ask: EaseAsk, onAnswer: (answer: ProposalAnswer) => void): Promise<Result<readonly ToldReason[]>>;
  /** Ends either search; the answers stand. */
  stopProposing(): Promise<void>;
  /**
   * Joins each seam of the last compute by itself and lays the piece that comes of it flat.
   * @param onCost called with each as it is known.
   * @returns when all are told, or it was called off.
   */
  seamCosts(limitPct: number, onCost: (cost: SeamCost) => void): Promise<Result<null>>;
  stopCosting(): Promise<void>;
}
