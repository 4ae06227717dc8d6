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

  it('keeps apart two that only a side of the one parts, whichever comes first', () => {
    const [wide, tip] = [
      [0, 0, 4, 0, 0, 4],
      [2.1, 2.1, 3, 1.5, 1.5, 3],
    ];
    expect(pairsOf([...wide, ...tip], [0, 1, 2, 3, 4, 5])).toEqual([]);
    expect(pairsOf([...tip, ...wide], [0, 1, 2, 3, 4, 5])).toEqual([]);
    expect(pairsOf([...wide, ...tip.map((value) => value - 0.2)], [0, 1, 2, 3, 4, 5])).toEqual([[0, 1]]);
  });

  it('counts a millionth of a mm as touching, on long sides as on short ones', () => {
    const reaching = (mm: number, side: number) =>
      pairsOf([0, 0, side, 0, side / 2, side, side / 2, -side, side, mm, 0, mm], [0, 1, 2, 3, 4, 5]);
    for (const side of [0.01, 1, 1000]) expect([reaching(5e-7, side), reaching(5e-6, side)]).toEqual([[], [[0, 1]]]);
  });

  it('finds every pair once, however small or far they lie', () => {
    const row = (step: number, at: number) =>
      Array.from({ length: 9 }, (_, i) => [at + i * step, -at, at + i * step + 2, -at, at + i * step, 1 - at]).flat();
    const order = Array.from({ length: 27 }, (_, i) => i);
    const neighbours = Array.from({ length: 8 }, (_, i) => `${i} ${i + 1}`);
    for (const at of [0, -70, 500])
      expect(
        pairsOf(row(1.5, at), order)
          .map((pair) => pair.join(' '))
          .sort(),
      ).toEqual(neighbours);
    expect(pairsOf(row(2.5, 0), order)).toEqual([]);
    const upright = row(1.5, 3).map((_, i, all) => all[i ^ 1]);
    expect(
      pairsOf(
        upright,
        order.map((_, i) => 3 * Math.floor(i / 3) + [0, 2, 1][i % 3]),
      ),
    ).toHaveLength(8);
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
