import type { Patch } from '../model/patch.ts';
import type { CrewJob } from './crew-job.ts';
import { patchAlone, positionsOf, type FromHand, type ToHand } from './crew-messages.ts';

/** A thread that sits at a `CrewDesk`, as its starter gives it. */
export interface HandPort {
  post(message: ToHand, transfer: ArrayBuffer[]): void;
  /** Ends the thread at once, whatever it does. */
  end(): void;
}

/**
 * Starts a thread.
 * @param heard   called with what it says.
 * @param failed  called when it cannot start or has died.
 */
export type StartHand = (heard: (message: FromHand) => void, failed: () => void) => HandPort;

/** What a hand reports to its crew. */
export interface HandEvents {
  /** It can take a job. */
  free(): void;
  /** It could not do this job, which another may. */
  broke(job: CrewJob): void;
  /**
   * It is gone, and with it the job it had.
   * @param hasFailed  it could not start or died by itself, and was not ended because it would not stop.
   */
  gone(hand: CrewHand, job: CrewJob | null, hasFailed: boolean): void;
}

/** Time within which a hand that was told to stop must have done so, ms. */
const STOP_MS = 200;
/** Patches a hand keeps at most, and their triangles in all: the plan of a triangle takes about a kilobyte. */
const MOST_KEPT = 64;
const MOST_TRIANGLES_KEPT = 400_000;

/** One thread of the crew, seen from the thread that gives out the work. */
export class CrewHand {
  readonly #events: HandEvents;
  readonly #port: HandPort;
  /** Patches it keeps, the one used last at the end. */
  readonly #kept = new Map<Patch, number>();
  #lastNumber = 0;
  #lastTask = 0;
  #job: CrewJob | null = null;
  #deadline: ReturnType<typeof setTimeout> | undefined;
  #isEnded = false;

  /** @throws whatever `start` throws. */
  constructor(start: StartHand, events: HandEvents) {
    this.#events = events;
    this.#port = start(
      (message) => this.#hear(message),
      () => this.#end(true),
    );
  }

  /** What it works on; null when it is free. */
  get job(): CrewJob | null {
    return this.#job;
  }

  knows(patch: Patch): boolean {
    return this.#kept.has(patch);
  }

  give(job: CrewJob): void {
    const { task } = job;
    const { patch } = task;
    const known = this.#kept.get(patch);
    const number = known ?? (this.#lastNumber += 1);
    this.#kept.delete(patch);
    this.#kept.set(patch, number);
    this.#job = job;
    this.#lastTask += 1;
    const positions = positionsOf(task);
    const given = known === undefined ? { patch: patchAlone(patch) } : {};
    const [wantsFirst, { options }] = [task.look !== undefined, task];
    this.#port.post({ kind: 'solve', task: this.#lastTask, number, positions, options, wantsFirst, ...given }, [
      positions.buffer as ArrayBuffer,
    ]);
    this.#forgetOld();
  }

  /** Tells it to leave its job; ends it when it does not listen. */
  stop(): void {
    if (this.#job === null || this.#deadline !== undefined) return;
    this.#port.post({ kind: 'stop', task: this.#lastTask }, []);
    this.#deadline = setTimeout(() => this.end(), STOP_MS);
  }

  end(): void {
    this.#end(false);
  }

  #end(hasFailed: boolean): void {
    if (this.#isEnded) return;
    this.#isEnded = true;
    clearTimeout(this.#deadline);
    this.#port.end();
    const job = this.#job;
    this.#job = null;
    this.#events.gone(this, job, hasFailed);
  }

  #hear(message: FromHand): void {
    const job = this.#job;
    if (this.#isEnded || job === null || message.task !== this.#lastTask) return;
    if (message.kind === 'progress') return job.told(message.done);
    if (message.kind === 'first') return job.looked(message.flat);
    clearTimeout(this.#deadline);
    this.#deadline = undefined;
    this.#job = null;
    if (message.kind === 'done') job.finish(message.result);
    else if (message.kind === 'broke') this.#events.broke(job);
    this.#events.free();
  }

  #forgetOld(): void {
    let triangles = 0;
    for (const { meshTriangles } of this.#kept.keys()) triangles += meshTriangles.length;
    for (const [patch, number] of this.#kept) {
      if (this.#kept.size === 1 || (this.#kept.size <= MOST_KEPT && triangles <= MOST_TRIANGLES_KEPT)) return;
      this.#kept.delete(patch);
      triangles -= patch.meshTriangles.length;
      this.#port.post({ kind: 'forget', number }, []);
    }
  }
}
