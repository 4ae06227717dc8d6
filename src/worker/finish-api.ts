import type { Finding } from '../base/finding.ts';
import type { FinishPlan } from '../model/finish.ts';
import type { Hatching } from '../model/hatching.ts';

/** How the prop is finished, as the window shows it. */
export interface FinishView {
  readonly plan: FinishPlan;
  /** What was wanted and cannot be, or is done twice. */
  readonly findings: readonly Finding[];
  readonly groups: readonly FinishGroup[];
  /** How each colour is told from others on paper, by its id; null for the base. */
  readonly hatchings: Readonly<Record<string, Hatching | null>>;
  /** What holds for all of it, whole sentences. */
  readonly rules: readonly string[];
  /** One for each item of clay. */
  readonly clay: readonly string[];
}

/** Steps that are done to one body in a row. */
export interface FinishGroup {
  readonly when: string;
  /** Empty when all is glued. */
  readonly why: string;
  readonly steps: readonly FinishStepWords[];
}

export interface FinishStepWords {
  readonly number: number;
  readonly title: string;
  readonly texts: readonly string[];
  /** Ids of what can hurt in it. */
  readonly cautions: readonly string[];
}
