import type { FinishView } from './finish-api.ts';
import type { Finding } from '../base/finding.ts';
import type { SeamId } from '../base/ids.ts';
import type { GluingPlan } from '../model/gluing.ts';
import type { PartWork } from '../model/part-work.ts';
import type { Quantities } from '../model/quantities.ts';
import type { SeamOfPieces } from '../model/shop-choices.ts';
import type { Drawing } from '../model/template.ts';

/** What lies beside the work, as the window shows it: of the last compute, never saved. */
export interface ShopView {
  readonly gluing: GluingPlan;
  readonly quantities: Quantities;
  /** Seams of the innermost sheet in the order in force, and what names each in the document. */
  readonly order: readonly OrderedSeam[];
  /** One for each step, in the words of the build sheet. */
  readonly steps: readonly StepWords[];
  /** One for each batch. */
  readonly batches: readonly BatchWords[];
  /** The work on parts that no sculpt was parted for. */
  readonly parts: readonly PartWork[];
  /** How it is finished, in the words of the build sheet. */
  readonly finish: FinishView;
  /** What is said of an order that was accepted and cannot be. */
  readonly findings: readonly Finding[];
}

/** A seam of an order of gluing. */
export interface OrderedSeam {
  readonly seam: SeamId;
  readonly name: SeamOfPieces;
}

/** A step as the build sheet tells it. */
export interface StepWords {
  /** Without its number. */
  readonly title: string;
  /** One for each of its runs. */
  readonly runs: readonly string[];
  readonly warm: readonly string[];
  /** What is painted before it, a sentence; empty where nothing is. */
  readonly painted: string;
}

/** When a batch is brushed and joined, as the build sheet tells it. */
export interface BatchWords {
  readonly title: string;
  readonly times: string;
}

/** A picture beside a step: lines and words, lower left corner at 0, mm. */
export interface StepPicture {
  readonly drawing: Drawing;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** What is asked about the work at the bench. All of it waits for a compute that runs, and is called off by one that begins: then null. */
export interface Shop {
  /** What lies beside the work; null where the chain has not run to its end. */
  shop(): Promise<ShopView | null>;
  /** How the prop looks when a step is done. @param step its number, from 1. */
  stepPicture(step: number): Promise<StepPicture | null>;
  /** Why seams cannot be glued in an order; none where they can be. */
  tryGluing(order: readonly SeamOfPieces[]): Promise<readonly Finding[] | null>;
}
