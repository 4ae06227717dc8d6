/** Which earlier states of jobs are kept in the browser, and which are let go: by time, and by what they weigh. Pure. */

/** What is known of a kept state without its document. */
export interface Stamp {
  /** Its key in the storage. */
  readonly id: string;
  /** Key of its job. */
  readonly job: string;
  /** When it was kept, ms since 1970. */
  readonly atMs: number;
  /** True for the state a job was in last: it stays as long as the job does. */
  readonly isNow: boolean;
  /** Weight of its document as text, bytes. */
  readonly bytes: number;
  /** Hashes of the files it needs. */
  readonly sources: readonly string[];
}

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

/** Of each job: the newest states, then the newest of each hour and of each day. Shop judgement. */
export const RING = {
  /** Newest states that are kept whatever their time. */
  recent: 10,
  hours: 24,
  days: 30,
  /** Jobs at most; the one worked on longest ago goes first. */
  jobs: 12,
  /** All documents and source files together, bytes. */
  mostBytes: 250e6,
  /** Changes with less time between them belong to one state, ms. */
  quietMs: 20_000,
  /** A state is kept after so long even where changes never stop, ms. */
  mostMs: 5 * MINUTE,
} as const;

/**
 * Whether the state before a change is kept as an earlier one: work paused before the change, or went on for long.
 * @param lastMs  when that state was written
 * @param sinceMs when work towards it began
 */
export const isWorthKeeping = (lastMs: number, sinceMs: number, nowMs: number): boolean =>
  nowMs - lastMs >= RING.quietMs || lastMs - sinceMs >= RING.mostMs;

/**
 * The states that are let go.
 * @param weights bytes of each source file by its hash; it weighs once, however many states need it
 * @param inHand  job that is worked on: its newest state stays whatever it weighs
 */
export function lettingGo(
  stamps: readonly Stamp[],
  weights: ReadonlyMap<string, number>,
  inHand: string,
  nowMs: number,
): string[] {
  const jobs = stamps
    .filter(({ isNow }) => isNow)
    .sort((a, b) => Number(b.job === inHand) - Number(a.job === inHand) || b.atMs - a.atMs)
    .map(({ job }) => job);
  const kept = jobs.slice(0, RING.jobs);
  const inTime = new Set(
    kept.flatMap((job) =>
      keptByTime(
        stamps.filter((stamp) => stamp.job === job),
        nowMs,
      ),
    ),
  );
  const light = lightEnough(
    stamps.filter(({ id }) => inTime.has(id)),
    weights,
    new Set(kept.slice(0, 2)),
  );
  return stamps.filter(({ id }) => !light.has(id)).map(({ id }) => id);
}

/** Earlier states, the oldest first: the order in which room is made. */
export const oldestFirst = (stamps: readonly Stamp[]): readonly Stamp[] =>
  stamps.filter(({ isNow }) => !isNow).sort((a, b) => a.atMs - b.atMs);

function keptByTime(stamps: readonly Stamp[], nowMs: number): string[] {
  const newestFirst = stamps.filter(({ isNow }) => !isNow).sort((a, b) => b.atMs - a.atMs);
  const spans = new Set<string>();
  const isFirstOf = (atMs: number, span: number, most: number): boolean => {
    const key = `${span} ${Math.floor(atMs / span)}`;
    if (nowMs - atMs > span * most || spans.has(key)) return false;
    spans.add(key);
    return true;
  };
  const earlier = newestFirst.filter(({ atMs }, i) => {
    // Both are asked: a state that is the newest of its hour may be that of its day too.
    const isOfSpan = [isFirstOf(atMs, HOUR, RING.hours), isFirstOf(atMs, DAY, RING.days)].includes(true);
    return i < RING.recent || isOfSpan;
  });
  return [...stamps.filter(({ isNow }) => isNow), ...earlier].map(({ id }) => id);
}

/** The oldest earlier states go until the rest is light enough, then whole jobs, but for those that `stay`. */
function lightEnough(
  stamps: readonly Stamp[],
  weights: ReadonlyMap<string, number>,
  stay: ReadonlySet<string>,
): Set<string> {
  const last = stamps.filter(({ isNow, job }) => isNow && !stay.has(job)).sort((a, b) => a.atMs - b.atMs);
  let kept = stamps;
  for (const stamp of [...oldestFirst(stamps), ...last]) {
    if (weightOf(kept, weights) <= RING.mostBytes) break;
    kept = kept.filter(({ id }) => id !== stamp.id);
  }
  return new Set(kept.map(({ id }) => id));
}

/** Documents and the files they need, each file once, bytes. */
export function weightOf(stamps: readonly Stamp[], weights: ReadonlyMap<string, number>): number {
  const needed = new Set(stamps.flatMap(({ sources }) => sources));
  return (
    stamps.reduce((sum, { bytes }) => sum + bytes, 0) +
    [...needed].reduce((sum, hash) => sum + (weights.get(hash) ?? 0), 0)
  );
}
