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
  return { pause: (done, text) => work.pause(from + (to - from) * Math.min(1, Math.max(0, done)), text) };
}
