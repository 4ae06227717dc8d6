/**
 * How a long job stays polite: it tells how far it is, lets others run, and stops when asked.
 * Core code awaits `work.pause(...)` inside its outer loops and nothing else.
 */
export interface Work {
  /**
   * @param done share of this job that is finished, 0 to 1.
   * @param text what is being done now, a short phrase for people; kept from the last call when left out.
   * @returns a promise only when it is time to let others run: `await` it in any case.
   * @throws Cancelled when the job was called off.
   */
  pause(done: number, text?: string): Promise<void> | undefined;
  /** Fires when the job is called off: for whoever waits for others to do it. Missing where a job cannot be called off. */
  readonly signal?: AbortSignal;
}

/** Thrown out of {@link Work.pause} when the job was called off. Not an error: whoever started the job expects it. */
export class Cancelled extends Error {
  constructor() {
    super('cancelled');
    this.name = 'Cancelled';
  }
}

/** Never pauses, never stops: for tests and for jobs too short to matter. */
export const QUIET_WORK: Work = { pause: () => undefined };

/** A part of a larger job: maps its 0..1 onto `from`..`to` of the whole. */
export function shareOfWork(work: Work, from: number, to: number): Work {
  return partOfWork(work, (done, text) => work.pause(from + (to - from) * clamped(done), text));
}

/**
 * Parts of a job that are done at the same time.
 * @param sizes  how large each part is beside the others, >= 0; not all of them 0.
 * @returns one for each part: the whole is done by the sum of what the parts have told.
 */
export function sharesOfWork(work: Work, sizes: readonly number[]): readonly Work[] {
  const total = sizes.reduce((sum, size) => sum + size, 0);
  const done = sizes.map(() => 0);
  let sum = 0;
  return sizes.map((size, i) =>
    partOfWork(work, (share, text) => {
      const now = Math.max(done[i], (size / total) * clamped(share));
      sum += now - done[i];
      done[i] = now;
      return work.pause(Math.min(1, sum), text);
    }),
  );
}

const partOfWork = (work: Work, pause: Work['pause']): Work =>
  work.signal === undefined ? { pause } : { pause, signal: work.signal };

const clamped = (share: number): number => Math.min(1, Math.max(0, share));
