import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { FlatPiece } from '../../src/model/flat-piece.ts';
import type { EarlyOutcome } from '../../src/pipeline/outcome.ts';
import { EarlyPost } from '../../src/worker/early-post.ts';

const FLAT = {} as FlatPiece;
const earlyOf = (...flats: (FlatPiece | null)[]): EarlyOutcome =>
  ({ flats, isFinal: flats.map(() => false) }) as unknown as EarlyOutcome;

/** A post whose screen takes what it is sent when the test says so. */
function postTo(needsAll: boolean) {
  const sent: { early: EarlyOutcome; have: number }[] = [];
  const takes: ((isTaken: boolean) => void)[] = [];
  const post = new EarlyPost(
    () => new Promise((resolve) => takes.push(resolve)),
    7,
    needsAll,
    (early, have) => {
      sent.push({ early, have });
      return { number: 7 + sent.length };
    },
  );
  return { post, sent, take: (isTaken: boolean) => takes.shift()?.(isTaken) };
}

describe('shapes sent ahead', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  it('are not sent for a run that is over soon', async () => {
    const { post, sent } = postTo(false);
    post.offer(earlyOf(FLAT));
    await vi.advanceTimersByTimeAsync(35);
    post.end();
    await vi.advanceTimersByTimeAsync(1000);
    expect(sent).toEqual([]);
  });

  it('are the latest there are, more seldom each time, and only when the screen took the last ones', async () => {
    const { post, sent, take } = postTo(false);
    const [first, second, third, fourth] = [earlyOf(FLAT), earlyOf(FLAT), earlyOf(FLAT), earlyOf(FLAT)];
    post.offer(first);
    post.offer(second);
    await vi.advanceTimersByTimeAsync(45);
    expect(sent.map(({ early }) => early)).toEqual([second]);
    post.offer(third);
    await vi.advanceTimersByTimeAsync(5000);
    expect(sent).toHaveLength(1);
    take(true);
    await vi.advanceTimersByTimeAsync(75);
    expect(sent).toHaveLength(1);
    await vi.advanceTimersByTimeAsync(10);
    expect(sent[1]).toEqual({ early: third, have: 8 });
    take(false);
    await vi.advanceTimersByTimeAsync(1000);
    post.offer(fourth);
    expect(sent[2]).toEqual({ early: fourth, have: 8 });
    expect(post.have).toBe(8);
  });

  it('are sent once where all is laid flat soon, and else left to the result that is near then', async () => {
    const { post, sent, take } = postTo(false);
    const done = { ...earlyOf(FLAT), isFinal: [true] };
    post.offer(earlyOf(FLAT));
    post.offer(done);
    await vi.advanceTimersByTimeAsync(1000);
    expect(sent.map(({ early }) => early)).toEqual([done]);
    post.offer(done);
    take(true);
    await vi.advanceTimersByTimeAsync(1000);
    expect(sent).toHaveLength(1);
  });

  it('wait for a shape of every piece where the screen shows pieces', async () => {
    const { post, sent } = postTo(true);
    post.offer(earlyOf(FLAT, null));
    await vi.advanceTimersByTimeAsync(1000);
    expect(sent).toEqual([]);
    post.offer(earlyOf(FLAT, FLAT));
    expect(sent).toHaveLength(1);
  });
});
