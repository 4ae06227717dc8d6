import { describe, expect, it } from 'vitest';
import { overlappingTriangles } from '../../src/geom/overlap.ts';
import { orient2d } from '../../src/geom/predicates.ts';

const pairsOf = (corners: number[], triangles: number[]): (readonly [number, number])[] =>
  overlappingTriangles(Float64Array.from(corners), Uint32Array.from(triangles), 100).pairs;

describe('overlappingTriangles', () => {
  it('tells lying on each other from touching along a side, in a corner, and lying apart', () => {
    expect(pairsOf([0, 0, 4, 0, 0, 4, 1, 1, 5, 1, 1, 5], [0, 1, 2, 3, 4, 5])).toEqual([[0, 1]]);
    expect(pairsOf([0, 0, 4, 0, 0, 4, 4, 4], [0, 1, 2, 1, 3, 2])).toEqual([]);
    expect(pairsOf([0, 0, 4, 0, 0, 4, 4, 0, 8, 0, 8, 4], [0, 1, 2, 3, 4, 5])).toEqual([]);
    expect(pairsOf([0, 0, 1, 0, 0, 1, 9, 9, 10, 9, 9, 10], [0, 1, 2, 3, 4, 5])).toEqual([]);
  });

  it('finds one triangle inside another and neighbours folded onto each other', () => {
    expect(pairsOf([0, 0, 9, 0, 0, 9, 1, 1, 2, 1, 1, 2], [0, 1, 2, 3, 4, 5])).toEqual([[0, 1]]);
    expect(pairsOf([0, 0, 4, 0, 2, 3, 2, 2], [0, 1, 2, 0, 1, 3])).toEqual([[0, 1]]);
  });

  it('lists no more than was asked for but counts all', () => {
    const triangles = Array.from({ length: 8 }, () => [0, 1, 2]).flat();
    const { pairs, count } = overlappingTriangles(
      Float64Array.from([0, 0, 4, 0, 0, 4]),
      Uint32Array.from(triangles),
      5,
    );
    expect([pairs.length, count]).toEqual([5, 28]);
  });
});

describe('orient2d', () => {
  it('is positive counter-clockwise and exactly 0 on a line that rounding hides', () => {
    expect(orient2d(0, 0, 1, 0, 0, 1)).toBe(1);
    expect(orient2d(0.5, 0.5, 12, 12, 24, 24)).toBe(0);
    expect(Math.sign(orient2d(0.5, 0.5 + 2 ** -53, 12, 12, 24, 24))).not.toBe(0);
  });
});
