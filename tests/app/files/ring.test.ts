import { describe, expect, it } from 'vitest';
import { isWorthKeeping, lettingGo, RING, type Stamp } from '../../../src/app/files/ring.ts';
import { forAll } from '../../support/for-all.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;
const NOW = Date.UTC(2030, 5, 15, 12, 30);

const stamp = (job: string, agoMs: number, more: Partial<Stamp> = {}): Stamp => ({
  id: `${job} ${agoMs}`,
  job,
  atMs: NOW - agoMs,
  isNow: false,
  bytes: 1000,
  sources: [job],
  ...more,
});
const now = (job: string, agoMs = 0, more: Partial<Stamp> = {}): Stamp => stamp(job, agoMs, { isNow: true, ...more });
const kept = (stamps: readonly Stamp[], weights: ReadonlyMap<string, number> = new Map(), inHand = 'a'): string[] => {
  const gone = lettingGo(stamps, weights, inHand, NOW);
  return stamps.map(({ id }) => id).filter((id) => !gone.includes(id));
};

describe('which earlier states are kept', () => {
  it('keeps the ends of stretches of work, not every change', () => {
    expect(isWorthKeeping(NOW - 5000, NOW - MINUTE, NOW)).toBe(false);
    expect(isWorthKeeping(NOW - RING.quietMs, NOW - MINUTE, NOW)).toBe(true);
    // Changes that never stop: one is kept every five minutes all the same.
    expect(isWorthKeeping(NOW - 1000, NOW - RING.mostMs - 1000, NOW)).toBe(true);
  });

  it('keeps the newest ten whatever their time, then one an hour for a day and one a day for a month', () => {
    // Every ten minutes for forty days, and the state of now.
    const all = Array.from({ length: 40 * 24 * 6 }, (_, i) => stamp('a', (i + 1) * 10 * MINUTE));
    const left = new Set(kept([now('a'), ...all]));
    const ages = all.filter(({ id }) => left.has(id)).map(({ atMs }) => NOW - atMs);
    expect(left.has('a 0')).toBe(true);
    expect(ages.slice(0, 10)).toEqual(Array.from({ length: 10 }, (_, i) => (i + 1) * 10 * MINUTE));
    const lastDay = ages.filter((age) => age <= DAY);
    expect(lastDay).toHaveLength(10 + 24 - 2);
    const hours = lastDay.slice(10).map((age) => Math.floor((NOW - age) / HOUR));
    expect(new Set(hours).size).toBe(hours.length);
    const later = ages.filter((age) => age > DAY).map((age) => Math.floor((NOW - age) / DAY));
    expect(new Set(later).size).toBe(later.length);
    expect(later).toHaveLength(29);
    expect(Math.max(...ages)).toBeLessThanOrEqual(30 * DAY);
  });

  it('never lets go of a job in hand or of the one before it, whatever they weigh', () => {
    const weights = new Map([
      ['a', RING.mostBytes],
      ['b', RING.mostBytes],
    ]);
    expect(kept([now('a'), now('b', DAY), now('c', 2 * DAY), stamp('a', HOUR)], weights)).toEqual([
      'a 0',
      'b 86400000',
    ]);
  });

  it('counts a source once, and lets the oldest states go until the rest is light enough', () => {
    const third = RING.mostBytes / 3;
    const states = [now('a'), ...[1, 2, 3, 4].map((hours) => stamp('a', hours * HOUR, { bytes: third }))];
    expect(kept(states, new Map([['a', third / 2]]))).toEqual(['a 0', `a ${HOUR}`, `a ${2 * HOUR}`]);
  });

  it('keeps twelve jobs, the one in hand among them however long ago it was worked on', () => {
    const jobs = Array.from({ length: 15 }, (_, i) => now(`job ${i}`, i * HOUR));
    const left = kept(jobs, new Map(), 'job 14');
    expect(left).toHaveLength(RING.jobs);
    expect(left).toContain(`job 14 ${14 * HOUR}`);
    expect(left).not.toContain(`job 12 ${12 * HOUR}`);
  });

  it('lets go of nothing more when it is asked again', () =>
    forAll(
      (rand) => ({
        stamps: [
          now('a'),
          now('b', rand() * DAY),
          ...Array.from({ length: 60 }, () =>
            stamp(rand() < 0.5 ? 'a' : 'b', Math.floor(rand() * 20 * DAY), { bytes: rand() * RING.mostBytes * 0.05 }),
          ),
        ],
      }),
      ({ stamps }) => {
        const gone = new Set(lettingGo(stamps, new Map(), 'a', NOW));
        const left = stamps.filter(({ id }) => !gone.has(id));
        expect(lettingGo(left, new Map(), 'a', NOW)).toEqual([]);
        expect(left.reduce((sum, { bytes }) => sum + bytes, 0)).toBeLessThanOrEqual(RING.mostBytes);
      },
    ));
});
