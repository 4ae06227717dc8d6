import { expect, it } from 'vitest';
import { outcomeOf } from '../support/run-solid.ts';
import { testFont } from '../support/run-sample.ts';
import type { Solid } from '../reference/handbook/polygon-solids.ts';
import { fileFaults, outcomeFaults } from './outcome-faults.ts';

/** A flat sheet of so many cells each way, each 60 mm, and so large that it takes several pages of A4. */
function sheet(cells: number, seams: Solid['seams']): Solid {
  const at = (i: number, j: number): number => j * (cells + 1) + i;
  const range = Array.from({ length: cells + 1 }, (_, i) => i);
  return {
    corners: range.flatMap((j) => range.map((i): [number, number, number] => [60 * i, 60 * j, 0])),
    faces: range
      .slice(1)
      .flatMap((j) => range.slice(1).map((i) => [at(i - 1, j - 1), at(i, j - 1), at(i, j), at(i - 1, j)])),
    seams,
  };
}

it.each([
  ['inside a piece', [[12, 13]]],
  [
    'inside a piece, over several edges',
    [
      [12, 13],
      [13, 18],
      [18, 17],
    ],
  ],
  [
    'from its rim inward',
    [
      [10, 11],
      [11, 12],
    ],
  ],
] as [string, Solid['seams']][])(
  'draws a cut without width %s, and finds it in the finished file',
  async (_, seams) => {
    const outcome = await outcomeOf(sheet(4, seams));
    expect(outcomeFaults(outcome)).toEqual([]);
    expect(await fileFaults(outcome, testFont())).toEqual([]);
  },
);
