import type { Result } from '../base/result.ts';
import type { Work } from '../base/work.ts';
import type { FlatPiece } from '../model/flat-piece.ts';
import { CrewHand, type StartHand } from './crew-hand.ts';
import { CrewJob } from './crew-job.ts';
import { HomeCrew, type FlattenCrew, type FlattenTask } from './flatten-crew.ts';

/** A patch of fewer triangles may be solved at home: carrying it to a thread that must be started first costs more. */
const SMALL_TRIANGLES = 2000;
/** So many triangles in small patches are worth starting threads for all the same. */
const MANY_TRIANGLES = 20_000;
/** A job called off goes on so long for whoever asks for the same again, unless its hand is needed: a change elsewhere asks at once, ms. */
const GRACE_MS = 250;

/**
 * Lays patches flat in several threads, the largest first. A hand keeps the patches it has solved and what it planned for them, and so
 * gets them again. What a hand cannot do, because it will not start or dies, is done in this thread.
 */
export class ThreadCrew implements FlattenCrew {
  readonly #start: StartHand;
  readonly #leastTriangles: number;
  readonly #home = new HomeCrew();
  /** Threads it may have: one less for each that failed. */
  #most: number;
  #hands: CrewHand[] = [];
  /** Jobs that nobody has begun, the largest first. */
  #queue: CrewJob[] = [];
  /** Jobs with a hand that nobody waits for, each with the timer that ends its grace. */
  readonly #left = new Map<CrewJob, ReturnType<typeof setTimeout>>();
  /** Jobs that a hand could not do. */
  readonly #homeOnly = new WeakSet<CrewJob>();
  #isHomeBusy = false;
  #isDealing = false;

  /**
   * @param most            threads at most, >= 0; they are started when they are needed.
   * @param leastTriangles  below so many in all none is started: a new thread is slow until its code has run for a while.
   */
  constructor(start: StartHand, most: number, leastTriangles = 0) {
    this.#start = start;
    this.#leastTriangles = leastTriangles;
    this.#most = most;
  }

  /** Threads there are now, busy or free. */
  get threads(): number {
    return this.#hands.length;
  }

  flatten(task: FlattenTask, work: Work): Promise<Result<FlatPiece>> {
    const job = this.#takenUp(task) ?? this.#entered(task);
    const result = job.wait(work, task.look);
    this.#dealSoon();
    return result;
  }

  /** Ends all threads. */
  end(): void {
    this.#most = 0;
    for (const hand of [...this.#hands]) hand.end();
  }

  /** A job for the same thing that was called off but is still gone on with. */
  #takenUp(task: FlattenTask): CrewJob | undefined {
    for (const [job, grace] of this.#left) {
      if (!job.isFor(task)) continue;
      clearTimeout(grace);
      this.#left.delete(job);
      return job;
    }
    return undefined;
  }

  #entered(task: FlattenTask): CrewJob {
    const job = new CrewJob(task, (left) => this.#onLeft(left));
    this.#enqueue(job);
    return job;
  }

  #enqueue(job: CrewJob): void {
    const at = this.#queue.findIndex((other) => other.size < job.size);
    this.#queue.splice(at < 0 ? this.#queue.length : at, 0, job);
  }

  #onLeft(job: CrewJob): void {
    this.#unqueue(job);
    if (!this.#hands.some((hand) => hand.job === job)) return;
    this.#left.set(
      job,
      setTimeout(() => this.#giveUp(job), GRACE_MS),
    );
  }

  #giveUp(job: CrewJob): void {
    clearTimeout(this.#left.get(job));
    this.#left.delete(job);
    this.#hands.find((hand) => hand.job === job)?.stop();
  }

  #unqueue(job: CrewJob): void {
    this.#queue = this.#queue.filter((other) => other !== job);
  }

  /** Gives out jobs when all that is asked for at the same moment is known. */
  #dealSoon(): void {
    if (this.#isDealing) return;
    this.#isDealing = true;
    queueMicrotask(() => {
      this.#isDealing = false;
      this.#dealToHands();
      this.#dealHome();
    });
  }

  #dealToHands(): void {
    if (this.#isAlone) return;
    const triangles = this.#trianglesWaiting;
    if (triangles < MANY_TRIANGLES && !this.#queue.some((job) => job.size >= SMALL_TRIANGLES)) return;
    const jobs = this.#queue.filter((job) => !this.#homeOnly.has(job));
    const wanted = jobs.length - this.#hands.filter((hand) => hand.job === null).length;
    for (let i = 0; i < wanted && this.#hands.length < this.#most; i += 1) this.#hire();
    const free = (): CrewHand[] => this.#hands.filter((hand) => hand.job === null);
    const isKnown = ({ task }: CrewJob): boolean => this.#hands.some((hand) => hand.knows(task.patch));
    // A hand's own patches go first; those of another are better begun anew than left waiting for it.
    const rounds: ((hand: CrewHand, job: CrewJob) => boolean)[] = [
      (hand, { task }) => hand.knows(task.patch),
      (_, job) => !isKnown(job),
      () => true,
    ];
    for (const suits of rounds) {
      for (const hand of free()) {
        const job = this.#queue.find((candidate) => !this.#homeOnly.has(candidate) && suits(hand, candidate));
        if (job === undefined) continue;
        this.#unqueue(job);
        hand.give(job);
      }
    }
    if (this.#queue.length > 0) for (const job of [...this.#left.keys()]) this.#giveUp(job);
  }

  #hire(): void {
    const events = {
      free: () => this.#dealSoon(),
      broke: (job: CrewJob) => this.#takeHome(job),
      gone: (hand: CrewHand, job: CrewJob | null, hasFailed: boolean) => this.#onGone(hand, job, hasFailed),
    };
    try {
      this.#hands.push(new CrewHand(this.#start, events));
    } catch {
      this.#most -= 1;
    }
  }

  #onGone(hand: CrewHand, job: CrewJob | null, hasFailed: boolean): void {
    this.#hands = this.#hands.filter((other) => other !== hand);
    if (hasFailed) this.#most -= 1;
    if (job !== null) this.#takeHome(job);
    this.#dealSoon();
  }

  #takeHome(job: CrewJob): void {
    clearTimeout(this.#left.get(job));
    this.#left.delete(job);
    if (!job.isWanted) return;
    this.#homeOnly.add(job);
    this.#enqueue(job);
    this.#dealSoon();
  }

  #dealHome(): void {
    const job = this.#isHomeBusy ? undefined : this.#jobForHome();
    if (job === undefined) return;
    this.#unqueue(job);
    this.#isHomeBusy = true;
    void this.#home
      .flatten(job.task.look === undefined ? job.task : { ...job.task, look: (flat) => job.looked(flat) }, job.work)
      .then(
        (result) => job.finish(result),
        (error: Error) => job.fail(error),
      )
      // Messages of the hands come in before the next one is begun.
      .then(() => new Promise((resolve) => setTimeout(resolve)))
      .then(() => {
        this.#isHomeBusy = false;
        this.#dealSoon();
      });
  }

  get #trianglesWaiting(): number {
    return this.#queue.reduce((sum, job) => sum + job.size, 0);
  }

  /** There is no thread, and none is to be started. */
  get #isAlone(): boolean {
    return this.#hands.length === 0 && (this.#most <= 0 || this.#trianglesWaiting < this.#leastTriangles);
  }

  #jobForHome(): CrewJob | undefined {
    const isAlone = this.#isAlone;
    return (
      this.#queue.find((job) => isAlone || this.#homeOnly.has(job)) ??
      this.#queue.findLast((job) => job.size < SMALL_TRIANGLES)
    );
  }
}
