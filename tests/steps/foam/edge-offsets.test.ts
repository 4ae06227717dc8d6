import { describe, expect, it } from 'vitest';
import { seamId } from '../../../src/base/ids.ts';
import type { EdgeOffsets } from '../../../src/geom/offset-ring.ts';
import { rad } from '../../../src/geom/vec.ts';
import type { SeamChain } from '../../../src/model/seams.ts';
import {
  allowanceOf,
  pieceEdges,
  ringOffsets,
  roleOf,
  stationsAlong,
  type RingOffsets,
} from '../../../src/steps/foam/edge-offsets.ts';
import { chainEdge, type EdgeRun } from '../../../src/steps/foam/edge-runs.ts';
import type { SeamCut, SideCut } from '../../../src/steps/foam/seam-cuts.ts';

const chainWith = (change: Partial<SeamChain>): SeamChain => ({
  id: seamId('s1'),
  letter: 'A',
  kind: 'butt',
  vertices: new Uint32Array(0),
  closed: false,
  sides: [],
  foldRad: new Float64Array(0),
  allowanceMm: 0,
  lapSide: 0,
  ...change,
});

const offsets = (atStart: readonly number[], atEnd: readonly number[]): EdgeOffsets => ({
  atStart: Float64Array.from(atStart),
  atEnd: Float64Array.from(atEnd),
});

/** Figures along a chain of two edges that all differ, by whose side they are of. */
const sideCut = (base: number): SideCut => ({
  bevel: offsets([base + 1, base + 2], [base + 3, base + 4]),
  face: offsets([base + 11, base + 12], [base + 13, base + 14]),
  back: offsets([base + 21, base + 22], [base + 23, base + 24]),
});

const cutOf = (...sides: readonly SideCut[]): SeamCut => ({
  joining: 'halved',
  sides,
  step: { faceMm: 0, backMm: 0 },
});

const run = (change: Partial<EdgeRun>): EdgeRun => ({
  chain: 0,
  side: 0,
  ring: 0,
  from: 0,
  to: 2,
  count: 2,
  reversed: false,
  ...change,
});

/** The numbers at the starts, then at the ends of a ring's edges. */
const listed = ({ bevel, face, back }: RingOffsets): readonly (readonly number[])[] =>
  [bevel, face, back].flatMap(({ atStart, atEnd }) => [[...atStart], [...atEnd]]);

describe('offsets of a ring', () => {
  const chains = [
    chainWith({ kind: 'lap', allowanceMm: 7, lapSide: 1 }),
    chainWith({ id: seamId('s2'), letter: 'B', kind: 'open', allowanceMm: 9, lapSide: 0 }),
  ];
  const cuts = [cutOf(sideCut(100), sideCut(200)), cutOf(sideCut(300))];

  it('are those of the seam edge by edge, round the start of the ring, its ends exchanged where it runs against the seam', () => {
    // Side 0 of the first seam on edges 3 and 0, side 1 of it on 1 and 2, where the ring runs against it.
    const runs = [run({ from: 3, to: 1 }), run({ side: 1, from: 1, to: 3, reversed: true })];
    const [ring] = ringOffsets([{ length: 4 }], runs, chains, cuts);
    expect(listed(ring)).toEqual([
      [102, 204, 203, 101],
      [104, 202, 201, 103],
      // The allowance of 7 mm is on side 1 alone, on face and back.
      [112, 221, 220, 111],
      [114, 219, 218, 113],
      [122, 231, 230, 121],
      [124, 229, 228, 123],
    ]);
  });

  it('are told ring by ring, and an open edge carries no allowance', () => {
    const runs = [run({ from: 0, to: 0 }), run({ chain: 1, ring: 1, from: 1, to: 0 })];
    const [outer, hole] = ringOffsets([{ length: 2 }, { length: 3 }], runs, chains, cuts);
    expect(listed(outer)[2]).toEqual([111, 112]);
    expect(listed(hole)).toEqual([
      [0, 301, 302],
      [0, 303, 304],
      [0, 311, 312],
      [0, 313, 314],
      [0, 321, 322],
      [0, 323, 324],
    ]);
  });
});

describe('the allowance', () => {
  it('is on the side that carries it, and on no open edge', () => {
    const lap = chainWith({ kind: 'lap', allowanceMm: 6, lapSide: 1 });
    expect([allowanceOf(lap, 0), allowanceOf(lap, 1)]).toEqual([0, 6]);
    const butt = chainWith({ kind: 'butt', allowanceMm: 6, lapSide: 0 });
    expect([allowanceOf(butt, 0), allowanceOf(butt, 1)]).toEqual([6, 0]);
    const open = chainWith({ kind: 'open', allowanceMm: 6, lapSide: 0 });
    expect([allowanceOf(open, 0), allowanceOf(open, 1)]).toEqual([0, 0]);
  });
});

describe('what a side of a seam does', () => {
  const both = (change: Partial<SeamChain>): readonly string[] => {
    const chain = chainWith(change);
    return [roleOf(chain, 0), roleOf(chain, 1)];
  };

  it('is alike on both sides of a butt seam, with the way it is built where that is steep', () => {
    expect(both({})).toEqual(['butt', 'butt']);
    expect(both({ steep: 'fill' })).toEqual(['butt fill', 'butt fill']);
    expect(both({ kind: 'open' })).toEqual(['open', 'open']);
  });

  it('is over or under at a lap: the side that carries it lies on top unless said otherwise', () => {
    expect(both({ kind: 'lap', lapSide: 1 })).toEqual(['lap under', 'lap over']);
    expect(both({ kind: 'lap', lapSide: 1, topSide: 0 })).toEqual(['lap over', 'lap under']);
  });

  it('is to stand or to run through at a rebate', () => {
    expect(both({ kind: 'rebate', standSide: 1 })).toEqual(['runs through', 'stands']);
    expect(both({ kind: 'rebate', standSide: 0 })).toEqual(['stands', 'runs through']);
  });
});

/** Sides of 30, 40, 30 and 40 mm. */
const RING = Float64Array.of(0, 0, 30, 0, 30, 40, 0, 40);

describe('lengths along a run', () => {
  it('are added up from its first point, round the start of the ring', () => {
    expect([...stationsAlong(RING, run({ from: 1, to: 3, count: 2 }))]).toEqual([0, 40, 70]);
    expect([...stationsAlong(RING, run({ from: 3, to: 1, count: 2 }))]).toEqual([0, 40, 70]);
    expect([...stationsAlong(RING, run({ from: 2, to: 2, count: 4 }))]).toEqual([0, 30, 70, 100, 140]);
  });

  it('are measured along slanting edges', () => {
    const slanting = Float64Array.of(1, 2, 4, 6, 9, 18, -3, 2);
    expect([...stationsAlong(slanting, run({ from: 0, to: 2, count: 2 }))]).toEqual([0, 5, 18]);
  });

  it('are counted from the end of a seam that the ring runs against', () => {
    expect([0, 1, 2].map((j) => chainEdge(run({ count: 3 }), j))).toEqual([0, 1, 2]);
    expect([0, 1, 2].map((j) => chainEdge(run({ count: 3, reversed: true }), j))).toEqual([2, 1, 0]);
  });
});

describe('edges of a piece', () => {
  const chains = [
    chainWith({ id: seamId('s7'), letter: 'G', kind: 'lap', allowanceMm: 5, lapSide: 1 }),
    chainWith({ id: seamId('s9'), letter: 'J' }),
  ];
  const ring: RingOffsets = {
    bevel: offsets([rad(10), rad(20), rad(30), rad(44)], [rad(12), rad(26), rad(40), rad(8)]),
    face: offsets([1, 2, 3, 5], [8, 13, 21, 34]),
    back: offsets([-1, -2, -3, -5], [-8, -13, -21, -34]),
  };

  it('tell the figures at their ends as they are there, and their mean where two edges of the run meet', () => {
    const runs = [run({ side: 1, from: 3, to: 1, count: 2, reversed: true }), run({ chain: 1, from: 1, to: 3 })];
    const [first, second] = pieceEdges([RING], runs, chains, [ring]);
    const { bevelDeg, faceOffsetMm, backOffsetMm, stationMm, ...rest } = first;
    expect(rest).toEqual({
      seam: 's7',
      letter: 'G',
      side: 1,
      ring: 0,
      from: 3,
      to: 1,
      reversed: true,
      allowanceMm: 5,
    });
    expect([...stationMm]).toEqual([0, 40, 70]);
    [44, (8 + 10) / 2, 12].forEach((deg, i) => expect(bevelDeg[i]).toBeCloseTo(deg, 9));
    expect([...faceOffsetMm]).toEqual([5, (34 + 1) / 2, 8]);
    expect([...backOffsetMm]).toEqual([-5, -(34 + 1) / 2, -8]);
    expect(second).toMatchObject({ seam: 's9', letter: 'J', side: 0, from: 1, to: 3, reversed: false, allowanceMm: 0 });
    expect([...second.faceOffsetMm]).toEqual([2, (13 + 3) / 2, 21]);
  });

  it('tell the mean at the start of an edge without ends too', () => {
    const [whole] = pieceEdges([RING], [run({ chain: 1, from: 1, to: 1, count: 4 })], chains, [ring]);
    expect([...whole.faceOffsetMm]).toEqual([(8 + 2) / 2, (13 + 3) / 2, (21 + 5) / 2, (34 + 1) / 2, (8 + 2) / 2]);
  });
});
