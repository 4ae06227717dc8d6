import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/base/random.ts';
import { firstFit } from '../../../src/steps/nest/first-fit.ts';
import { Layout } from '../../../src/steps/nest/layout.ts';
import { firstOverlap } from '../../../src/steps/nest/overlap-check.ts';
import { PoseTable } from '../../../src/steps/nest/pose-table.ts';
import { shapeOf } from '../../../src/steps/nest/shape.ts';
import { StripSearch } from '../../../src/steps/nest/strip-search.ts';

const STANCES = [0, 1].map((k) => ({ turnRad: k * Math.PI, isFlipped: false }));

const HOOK = [0, 0, 20_000, 0, 20_000, 4000, 4000, 4000, 4000, 12_000, 0, 12_000];

/** So many of one shape on a strip. */
function searchOf(ring: readonly number[], count: number, height: number, exploreMoves: number) {
  const table = new PoseTable([shapeOf([Float64Array.from(ring)], STANCES)], true);
  const start = new Layout(count, count);
  expect(firstFit(table, start, Float64Array.of(0, 0, 3e7, height))).toEqual([]);
  const search = new StripSearch(table, start, Float64Array.of(0, 0, 3e7, height), seededRandom(1), exploreMoves);
  const isClear = (): boolean =>
    firstOverlap(table, search.best, Float64Array.of(0, 0, search.length, height)) === null;
  return { search, isClear };
}

describe('the search for a shorter strip', () => {
  it('goes on without a gain where a strip is as short as its piece', () => {
    const { search, isClear } = searchOf([0, 0, 9000, 0, 9000, 4000, 0, 4000], 1, 5000, 100);
    const moves = search.moves();
    for (let k = 0; k < 300; k += 1) expect(moves.next().done).toBe(false);
    expect(search.length).toBe(9000);
    expect(isClear()).toBe(true);
  });

  it('locks hooks into each other, round after round, and never lets go of the shortest', () => {
    const { search, isClear } = searchOf(HOOK, 8, 57_500, 200);
    const first = search.length;
    const moves = search.moves();
    let shortest = first;
    for (let k = 0; k < 3000; k += 1) {
      moves.next();
      expect(search.length).toBeLessThanOrEqual(shortest);
      shortest = search.length;
    }
    expect(shortest).toBeLessThan(0.9 * first);
    expect(isClear()).toBe(true);
  });
});
