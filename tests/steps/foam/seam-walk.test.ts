import { describe, expect, it } from 'vitest';
import { seamId } from '../../../src/base/ids.ts';
import { FOAM_RULES } from '../../../src/model/foam-settings.ts';
import type { SeamChain } from '../../../src/model/seams.ts';
import {
  areMarksNear,
  markedLength,
  markPlaces,
  sideStations,
  trueStations,
} from '../../../src/steps/foam/piece-marks.ts';
import type { PieceShape } from '../../../src/steps/foam/piece-shape.ts';
import {
  placeAt,
  placeOn,
  stationAt,
  walkSeam,
  type MarkPlace,
  type WalkedSide,
} from '../../../src/steps/foam/seam-walk.ts';

const side = (flat: readonly number[], own: readonly number[] = flat): WalkedSide => ({
  flat: Float64Array.from(flat),
  own: Float64Array.from(own),
});

const mark = (edge: number, a: number, b = a): MarkPlace => ({ edge, shares: [a, b] });

const CHAIN: SeamChain = {
  id: seamId('s1'),
  letter: 'A',
  kind: 'butt',
  vertices: Uint32Array.of(4, 2, 7),
  closed: false,
  sides: [],
  foldRad: new Float64Array(2),
  allowanceMm: 0,
  lapSide: 0,
};

describe('places along a side of a seam', () => {
  const stations = Float64Array.of(0, 10, 10, 40);

  it.each([
    [-5, 0, 0],
    [0, 0, 0],
    [4, 0, 0.4],
    [10, 2, 0],
    [16, 2, 0.2],
    [40, 2, 1],
    [99, 2, 1],
  ])('after %d mm are on edge %i at %d of it', (s, edge, share) => {
    const place = placeAt(stations, s);
    expect(place.edge).toBe(edge);
    expect(place.share).toBeCloseTo(share, 12);
  });

  it('lie as far along as edge and share say, either side by its own share', () => {
    expect(stationAt(stations, { edge: 2, share: 0.3 })).toBeCloseTo(19, 12);
    expect(placeOn(mark(2, 0.3, 0.6), 0)).toEqual({ edge: 2, share: 0.3 });
    expect(placeOn(mark(2, 0.3, 0.6), 1)).toEqual({ edge: 2, share: 0.6 });
  });
});

describe('a seam that is walked', () => {
  it('tells how far its sides come apart from the start, and at which corner most since the last mark', () => {
    // Beyond their own lengths: 0, 1, 3, 2 and 0, 0, -1, 1.
    const a = side([0, 11, 23, 32], [0, 10, 20, 30]);
    const b = side([0, 10, 19, 31], [0, 10, 20, 30]);
    const walk = walkSeam([a, b], []);
    expect(walk).toEqual({ lengthMm: [32, 31], differenceMm: 1, worstSlipMm: 4, worstMisalignmentMm: 4, worstAt: 2 });
  });

  it('starts anew at each mark, where the maker lines both up', () => {
    const a = side([0, 11, 23, 32], [0, 10, 20, 30]);
    const b = side([0, 10, 19, 31], [0, 10, 20, 30]);
    // At the mark on the first corner they are 1 apart: 3 more at the second, 3 less again at the last; from the start still 4.
    expect(walkSeam([a, b], [mark(1, 0)])).toMatchObject({ worstSlipMm: 3, worstMisalignmentMm: 4, worstAt: 2 });
    // A mark half-way along the second edge: 2 and -0.5, so 2.5 apart.
    expect(walkSeam([a, b], [mark(1, 0.5)])).toMatchObject({ worstSlipMm: 2.5, worstAt: 1 });
    // And with both.
    expect(walkSeam([a, b], [mark(1, 0), mark(1, 0.5), mark(2, 0)])).toMatchObject({ worstSlipMm: 3, worstAt: 3 });
  });

  it('takes each side at its own share of the edge', () => {
    const a = side([0, 12], [0, 10]);
    const b = side([0, 10], [0, 10]);
    // Side 0 has run 0.5 beyond its own at a quarter; side 1 nothing anywhere.
    expect(walkSeam([a, b], [mark(0, 0.25, 0.75)])).toMatchObject({
      worstSlipMm: 1.5,
      worstMisalignmentMm: 2,
      worstAt: 1,
    });
    expect(walkSeam([b, a], [mark(0, 0.25, 0.75)])).toMatchObject({
      worstSlipMm: 1.5,
      worstMisalignmentMm: 2,
      worstAt: 0,
    });
  });

  it('has nothing to compare at an open edge', () => {
    expect(walkSeam([side([0, 12, 30])], [mark(0, 0.5)])).toEqual({
      lengthMm: [30],
      differenceMm: 0,
      worstSlipMm: 0,
      worstMisalignmentMm: 0,
      worstAt: 0,
    });
  });
});

describe('where marks of a seam stand', () => {
  const rules = { ...FOAM_RULES, markSpacingMm: 80, markLeastSeamMm: 25 };
  const both = (edge: number, share: number): MarkPlace => mark(edge, share, 1 - share);
  const placesOf = (chain: Partial<SeamChain>, sides: readonly WalkedSide[], longestMm = 0) =>
    markPlaces({ ...CHAIN, ...chain }, sides, rules, ({ edge, share }) => both(edge, share), longestMm);

  it('is counted on the longest of all lengths, step by step', () => {
    // Steps of 60 and 40 mm: 100 mm, so a mark at 40, two thirds along the first.
    const sides = [side([0, 60, 90], [0, 50, 80]), side([0, 55, 95], [0, 30, 60])];
    expect(markedLength(sides)).toBe(100);
    const places = placesOf({}, sides, 100);
    expect(places).toHaveLength(1);
    expect(places[0].edge).toBe(0);
    expect(places[0].shares[0]).toBeCloseTo(2 / 3, 12);
    expect(places[0].shares[1]).toBeCloseTo(1 / 3, 12);
  });

  it('begins at the start of a seam that comes back to it', () => {
    const sides = [side([0, 60, 100])];
    for (const chain of [{ closed: true }, { vertices: Uint32Array.of(4, 2, 4) }]) {
      expect(placesOf(chain, sides, 100).map(({ edge }) => edge)).toEqual([0, 0]);
      expect(placesOf(chain, sides, 100)[0].shares[0]).toBe(0);
    }
  });

  it('is nowhere on an open edge and where no piece could be made', () => {
    expect(placesOf({ kind: 'open' }, [side([0, 60, 100])], 100)).toEqual([]);
    expect(placesOf({}, [], 100)).toEqual([]);
    expect(markedLength([])).toBe(0);
  });

  it('is near enough while no stretch is longer than the rule, to the last bit', () => {
    const sides = [side([0, 80, 160, 200])];
    expect(areMarksNear(sides, [mark(1, 0), mark(2, 0)], rules)).toBe(true);
    expect(areMarksNear(sides, [mark(1, 0.01), mark(2, 0)], rules)).toBe(false);
    expect(areMarksNear(sides, [mark(1, 0), mark(2, 0.01)], rules)).toBe(false);
    // From the last mark to the end.
    expect(areMarksNear(sides, [mark(1, 0), mark(1, 0.4)], rules)).toBe(false);
    expect(areMarksNear(sides, [], rules)).toBe(false);
    expect(areMarksNear([side([0, 80 + 1e-9])], [], rules)).toBe(true);
    expect(areMarksNear([], [], rules)).toBe(true);
  });
});

describe('lengths along a seam', () => {
  it('on the prop are added up over its vertices', () => {
    const positions = new Float64Array(24);
    positions.set([1, 1, 1], 3 * 4);
    positions.set([4, 5, 1], 3 * 2);
    positions.set([4, 5, 13], 3 * 7);
    expect([...trueStations(CHAIN, positions)]).toEqual([0, 5, 17]);
  });

  it('on the piece are in the order of the seam, also where the ring runs against it', () => {
    const shape = { neutral: [Float64Array.of(0, 0, 30, 0, 30, 40, 0, 40)] } as unknown as PieceShape;
    const run = { chain: 0, side: 0 as const, ring: 0, from: 0, to: 2, count: 2, reversed: false };
    expect([...sideStations(shape, run)]).toEqual([0, 30, 70]);
    expect([...sideStations(shape, { ...run, side: 1, reversed: true })]).toEqual([0, 40, 70]);
  });
});
