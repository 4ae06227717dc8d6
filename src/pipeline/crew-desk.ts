import { Cancelled, type Work } from '../base/work.ts';
import type { FlatPiece } from '../model/flat-piece.ts';
import type { Patch } from '../model/patch.ts';
import { flattenPatch } from '../steps/flatten/flatten-patch.ts';
import { memoryOf, type FromHand, type ToHand } from './crew-messages.ts';

/** Work that can be called off. */
export interface StoppableWork extends Work {
  cancel(): void;
}

/** Where a hand of the crew sits: takes tasks, keeps the patches it has seen, and answers. */
export class CrewDesk {
  readonly #say: (message: FromHand, transfer: ArrayBuffer[]) => void;
  readonly #beginWork: (tell: (done: number) => void) => StoppableWork;
  readonly #patches = new Map<number, Patch>();
  #running: { readonly task: number; readonly work: StoppableWork } | null = null;

  /** @param beginWork  gives the work of one task; `tell` takes how much of it is done, 0 to 1. */
  constructor(
    say: (message: FromHand, transfer: ArrayBuffer[]) => void,
    beginWork: (tell: (done: number) => void) => StoppableWork,
  ) {
    this.#say = say;
    this.#beginWork = beginWork;
  }

  take(message: ToHand): void {
    switch (message.kind) {
      case 'solve':
        return void this.#solve(message);
      case 'stop':
        if (this.#running?.task === message.task) this.#running.work.cancel();
        return;
      case 'forget':
        this.#patches.delete(message.number);
    }
  }

  async #solve(message: ToHand & { kind: 'solve' }): Promise<void> {
    const { task, number, patch, positions, options, wantsFirst } = message;
    if (patch !== undefined) this.#patches.set(number, patch);
    const work = this.#beginWork((done) => this.#say({ kind: 'progress', task, done }, []));
    this.#running = { task, work };
    try {
      const kept = this.#patches.get(number);
      if (kept === undefined) throw new Error('solve: a patch that was never given');
      const look = (flat: FlatPiece): void => this.#say({ kind: 'first', task, flat }, memoryOf(flat));
      const result = await flattenPatch(kept, positions, options, work, wantsFirst ? look : undefined);
      this.#say({ kind: 'done', task, result }, result.ok ? memoryOf(result.value) : []);
    } catch (error) {
      this.#say({ kind: error instanceof Cancelled ? 'stopped' : 'broke', task }, []);
    }
    this.#running = null;
  }
}
