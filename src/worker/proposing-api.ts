import type { Result } from '../base/result.ts';
import type { SeamCost } from '../model/seam-cost.ts';

/** How few pieces are sought: few with darts, more and simpler ones, or between. */
export type ProposalKind = 'few' | 'between' | 'simple';

/** What is asked for. */
export interface ProposalAsk {
  /** `anew`: seams are sought from nothing but those that are held. `rest`: all that is marked stays, what is missing is added. */
  readonly from: 'anew' | 'rest';
  /** 99th percentile of stretch and of squash that no piece may pass, per cent, > 0. */
  readonly limitPct: number;
  /** With `rest`: the one piece to ease, the number of its patch in the sheet that is seen; all others stay as they are. */
  readonly only?: number;
}

/** Sheets and pages that a proposal comes to, as they would be cut and printed, and its foam, mm². */
export interface ProposalNeeds {
  readonly sheets: number;
  readonly pages: number;
  readonly foamMm2: number;
}

/** One of three answers, as good as it is by now. */
export interface ProposalAnswer {
  readonly kind: ProposalKind;
  /** All seams as pairs of file numbers, and as edges of the sculpt on show. */
  readonly pairs: readonly (readonly [number, number])[];
  readonly edges: readonly number[];
  readonly pieces: number;
  readonly lengthMm: number;
  readonly darts: number;
  /** Of the piece that gives most: 99th percentile, per cent. */
  readonly stretchPct: number;
  readonly squashPct: number;
  /** False where a limit is broken yet. */
  readonly isFeasible: boolean;
  /** Why not, worst first, a sentence each with the triangle of the sculpt where it is worst. */
  readonly reasons: readonly { readonly text: string; readonly triangle: number }[];
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
  /** Ends the search; the answers stand. */
  stopProposing(): Promise<void>;
  /**
   * Joins each seam of the last compute by itself and lays the piece that comes of it flat.
   * @param onCost called with each as it is known.
   * @returns when all are told, or it was called off.
   */
  seamCosts(limitPct: number, onCost: (cost: SeamCost) => void): Promise<Result<null>>;
  stopCosting(): Promise<void>;
}
