import type { Work } from '../../base/work.ts';

/** Thrown out of a pause in the midst of a change when there is no time left to end it: the best so far is the answer. */
export class TimeUp extends Error {
  constructor() {
    super('time is up');
    this.name = 'TimeUp';
  }
}

/** The same work, called off with {@link TimeUp} at the first pause after time is up: one change on a dense surface takes seconds. */
export const workUntil = (work: Work, isLate: () => boolean): Work => ({
  ...(work.signal === undefined ? {} : { signal: work.signal }),
  pause(done, text) {
    if (isLate()) throw new TimeUp();
    return work.pause(done, text);
  },
});
