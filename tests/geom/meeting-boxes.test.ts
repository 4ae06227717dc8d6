import { describe, expect, it } from 'vitest';
import { forEachMeeting } from '../../src/geom/meeting-boxes.ts';
import { forAll } from '../support/for-all.ts';

const pairsOf = (first: number[], second: number[]): string[] => {
  const pairs: string[] = [];
  forEachMeeting(Float64Array.from(first), Float64Array.from(second), (i, j) => pairs.push(`${i} ${j}`));
  return pairs.sort();
};

describe('forEachMeeting', () => {
  it('counts touching as meeting, and boxes outside all others', () => {
    expect(pairsOf([0, 0, 1, 1, -9, -9, -8, -8], [1, 1, 2, 2, 3, 0, 4, 1])).toEqual(['0 0']);
    expect(pairsOf([0, 0, 1, 1], [])).toEqual([]);
    expect(pairsOf([], [0, 0, 1, 1])).toEqual([]);
    expect(pairsOf([5, 5, 5, 5], [5, 5, 5, 5])).toEqual(['0 0']);
  });

  it('finds each meeting pair once, long boxes and points among them', () =>
    forAll(
      (rand) => {
        const boxes = (): number[] =>
          Array.from({ length: Math.floor(rand() * 25) }, () => {
            const [x, y] = [rand() * 10, rand() * 10];
            const size = rand() < 0.2 ? 8 : rand() < 0.3 ? 0 : 1;
            return [x, y, x + size * rand(), y + size * rand()];
          }).flat();
        return { first: boxes(), second: boxes() };
      },
      ({ first, second }) => {
        const expected: string[] = [];
        for (let i = 0; i < first.length; i += 4) {
          for (let j = 0; j < second.length; j += 4) {
            const isApart =
              first[i] > second[j + 2] ||
              second[j] > first[i + 2] ||
              first[i + 1] > second[j + 3] ||
              second[j + 1] > first[i + 3];
            if (!isApart) expected.push(`${i / 4} ${j / 4}`);
          }
        }
        expect(pairsOf(first, second)).toEqual(expected.sort());
      },
      { runs: 300 },
    ));
});
