import type { Result } from '../base/result.ts';
import type { Comparison } from '../model/comparison.ts';
import type { Project } from '../project/project.ts';
import type { Progress } from './workshop-api.ts';

/** Two states of a project side by side, worked out beside the job at work. */
export interface Comparing {
  /**
   * Runs both as far as they go; while the job at work is worked out, this stands still. A later call ends an earlier one.
   * @returns null when it was called off. Fails where a file that one of them is made from is not here.
   */
  compare(one: Project, other: Project, onProgress: (progress: Progress) => void): Promise<Result<Comparison | null>>;
  /** Calls it off, and lets go of what was remembered for it. */
  stopComparing(): Promise<void>;
}
