import type { Result } from '../base/result.ts';
import { Cancelled, type Work } from '../base/work.ts';
import type { FlatPiece } from '../model/flat-piece.ts';
import type { FlattenTask } from './flatten-crew.ts';

/** Who waits for a job. */
interface Client {
  readonly work: Work;
  readonly look: FlattenTask['look'];
  settle(result: Result<FlatPiece>): void;
  leave(error: Error): void;
}

/**
 * One task on its way through the crew. Who asked for it may call it off and is answered at once; the job itself may then be gone on with
 * for another who asks for the same.
 */
export class CrewJob {
  readonly task: FlattenTask;
  readonly #onLeft: (job: CrewJob) => void;
  #client: Client | null = null;
  #first: FlatPiece | null = null;
  #result: Result<FlatPiece> | null = null;

  /** @param onLeft  called when nobody waits for the job any more although it is not done. */
  constructor(task: FlattenTask, onLeft: (job: CrewJob) => void) {
    this.task = task;
    this.#onLeft = onLeft;
  }

  /** How large it is, triangles. */
  get size(): number {
    return this.task.patch.meshTriangles.length;
  }

  get isWanted(): boolean {
    return this.#client !== null;
  }

  get isDone(): boolean {
    return this.#result !== null;
  }

  isFor(task: FlattenTask): boolean {
    const own = this.task;
    return own.patch === task.patch && own.positions === task.positions && own.wishes === task.wishes;
  }

  /**
   * Waits for the job; rejects with {@link Cancelled} as soon as the work is called off.
   * @param look  called with its first shape, also when that is known already.
   */
  wait(work: Work, look: FlattenTask['look']): Promise<Result<FlatPiece>> {
    const result = this.#result;
    if (result !== null) return Promise.resolve(result);
    return new Promise((resolve, reject) => {
      const onAbort = (): void => this.#leave(new Cancelled());
      const done = (): void => work.signal?.removeEventListener('abort', onAbort);
      this.#client = {
        work,
        look,
        settle: (settled) => {
          done();
          resolve(settled);
        },
        leave: (error) => {
          done();
          reject(error);
        },
      };
      work.signal?.addEventListener('abort', onAbort);
      if (work.signal?.aborted === true) onAbort();
      else if (this.#first !== null) look?.(this.#first);
    });
  }

  /** How far it is, told from another thread. */
  told(done: number): void {
    try {
      // The other thread does the work: this one has nothing to let others run for.
      this.#client?.work.pause(done)?.catch(() => undefined);
    } catch (error) {
      this.#leave(error as Error);
    }
  }

  looked(flat: FlatPiece): void {
    this.#first = flat;
    this.#client?.look?.(flat);
  }

  finish(result: Result<FlatPiece>): void {
    this.#result = result;
    this.#client?.settle(result);
    this.#client = null;
  }

  /** It came to grief where it was last tried. */
  fail(error: Error): void {
    this.#client?.leave(error);
    this.#client = null;
  }

  /** The job as work in this thread: stops when nobody waits any more. */
  get work(): Work {
    return {
      pause: (done, text) => {
        if (this.#client === null) throw new Cancelled();
        return this.#client.work.pause(done, text);
      },
    };
  }

  #leave(error: Error): void {
    if (this.#client === null) return;
    this.#client.leave(error);
    this.#client = null;
    this.#onLeft(this);
  }
}
