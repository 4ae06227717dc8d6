import type { Result } from '../base/result.ts';
import type { Work } from '../base/work.ts';
import type { FlatPiece } from '../model/flat-piece.ts';
import type { Patch } from '../model/patch.ts';
import type { FlattenOptions } from '../steps/flatten/flatten-options.ts';
import { flattenPatch } from '../steps/flatten/flatten-patch.ts';

/** One patch to be laid flat. */
export interface FlattenTask {
  readonly patch: Patch;
  /** Neutral surface of the whole mesh, x y z per vertex of the mesh, mm. */
  readonly positions: Float64Array;
  readonly options: FlattenOptions;
  /** Equal where the same is wished of the same patch: a task called off and asked for again may be gone on with. */
  readonly wishes: string;
  /** Called on the way with shapes that are valid and nearer each time, where there is time to tell. */
  readonly look?: (flat: FlatPiece) => void;
}

/** Those who lay patches flat. The same task gives the same result to the last bit, whoever does it. */
export interface FlattenCrew {
  /**
   * Lays one patch flat. Several may be asked for at once; they are begun in the order of asking.
   * @returns as `flattenPatch` does.
   * @throws Cancelled when the work was called off.
   */
  flatten(task: FlattenTask, work: Work): Promise<Result<FlatPiece>>;
}

/** A crew of one: solves in this thread, one patch after the other. */
export class HomeCrew implements FlattenCrew {
  #last: Promise<unknown> = Promise.resolve();

  flatten({ patch, positions, options, look }: FlattenTask, work: Work): Promise<Result<FlatPiece>> {
    const turn = this.#last.then(async () => {
      await work.pause(0);
      return await flattenPatch(patch, positions, options, work, look);
    });
    this.#last = turn.catch(() => undefined);
    return turn;
  }
}
