import { Worker } from 'node:worker_threads';
import type { NestHand, NestState } from '../pipeline/nest-crew.ts';
import type { StripTask } from '../pipeline/nest-instance.ts';
import type { StripLayout } from '../pipeline/nest-strip.ts';

/** What a thread that lays a strip is told. */
export type ToNestThread =
  | {
      readonly kind: 'begin';
      readonly task: StripTask;
      readonly seed: number;
      readonly number: number;
      /** Its first number is 1 when all are to stop. */
      readonly stop: Int32Array;
      /** When all are to stop, ms since 1970; Infinity where moves are counted. */
      readonly endMs: number;
    }
  | { readonly kind: 'run'; readonly untilMoves: number; readonly offered: StripLayout | null };

export type FromNestThread = NestState;

/** Starts a searcher in a thread of its own, from the file beside the command line's. */
export class ThreadHand implements NestHand {
  readonly #thread: Worker;

  constructor(task: StripTask, seed: number, number: number, stop: Int32Array, endMs: number) {
    this.#thread = new Worker(new URL('./cli-nest-thread.js', import.meta.url));
    this.#tell({ kind: 'begin', task, seed, number, stop, endMs });
  }

  run(untilMoves: number, offered: StripLayout | null): Promise<NestState> {
    return new Promise((resolve, reject) => {
      const done = (state: FromNestThread): void => {
        this.#thread.off('error', reject);
        resolve(state);
      };
      this.#thread.once('error', reject);
      this.#thread.once('message', done);
      this.#tell({ kind: 'run', untilMoves, offered });
    });
  }

  end(): void {
    void this.#thread.terminate();
  }

  #tell(message: ToNestThread): void {
    this.#thread.postMessage(message);
  }
}
