import { describe, expect, it } from 'vitest';
import { curve } from '../../src/geom/outline-curve.ts';
import {
  arc,
  arcBetween,
  chainGap,
  chainLength,
  chainPoints,
  chainRing,
  chainRound,
  chainSweep,
  chainThrough,
  curveThrough,
  CURVE_DEVIATION_MM,
  layChain,
  line,
  reversedChain,
  segmentLength,
  segmentPoints,
  segmentSweep,
  type OutlineSegment,
} from '../../src/geom/outline.ts';
import { layRing, type Lay2 } from '../../src/geom/lay-over.ts';
import { ringArea } from '../../src/geom/ring.ts';
import { forAll } from '../support/for-all.ts';

const at = (x: number, y: number) => ({ x, y });

describe('segments', () => {
  it('sweep the area of a disc and of a half disc off the origin', () => {
    expect(segmentSweep(arc(at(30, -20), 10, 1, 2 * Math.PI))).toBeCloseTo(100 * Math.PI, 9);
    const half = arc(at(30, -20), 10, 0, Math.PI);
    expect(segmentSweep(half) + segmentSweep(line(half.to, half.from))).toBeCloseTo(50 * Math.PI, 9);
  });

  it('of a curve have the length and the area of the curve, not of its chords', () => {
    // An ellipse with half axes 50 and 30: area pi a b; length 4 a E(0.8) = 255.1, tabled to 1e-9 (Abramowitz and Stegun, table 17.6: E at k² 0.64 is 1.2763499431699).
    const ellipse = curve((t) => at(50 * Math.cos(t), 30 * Math.sin(t)), 0, 2 * Math.PI);
    expect(ellipse.sweptMm2).toBeCloseTo(1500 * Math.PI, 7);
    expect(ellipse.lengthMm).toBeCloseTo(4 * 50 * 1.2763499431699, 7);
  });

  it('of a curve are sampled within their deviation, and not much finer', () => {
    const round = curve((t) => at(100 * Math.cos(t), 100 * Math.sin(t)), 0, Math.PI);
    round.points.slice(1).forEach((q, i) => {
      const p = round.points[i];
      const sagitta = 100 - Math.hypot((p.x + q.x) / 2, (p.y + q.y) / 2);
      expect(sagitta).toBeLessThanOrEqual(CURVE_DEVIATION_MM);
      expect(sagitta).toBeGreaterThan(CURVE_DEVIATION_MM / 20);
    });
  });

  it('of a curve keep its corners', () => {
    const roof = curve((t) => at(t, Math.abs(t - 1 / 3)), 0, 1, [1 / 3]);
    expect(roof.points).toContainEqual(at(1 / 3, 0));
    expect(roof.lengthMm).toBeCloseTo(Math.SQRT2, 12);
  });

  it('of an arc are points within a deviation', () => {
    const points = segmentPoints(arc(at(0, 0), 1000, 0, 1), 0.1);
    expect(points.length).toBe(Math.ceil(1 / (2 * Math.acos(1 - 0.1 / 1000))));
    expect(segmentLength(arc(at(0, 0), 1000, 0, -1))).toBe(1000);
  });
});

describe('an arc between two points', () => {
  it('turns by what is asked for, to either side', () =>
    forAll(
      (rand) => ({ p: at(20 * rand(), 20 * rand()), q: at(30 + rand(), 9 * rand()), turn: 12 * rand() - 6 }),
      ({ p, q, turn }) => {
        const { centre, radius, from, to } = arcBetween(p, q, turn);
        expect([from, to]).toEqual([p, q]);
        const again = arc(centre, radius, Math.atan2(p.y - centre.y, p.x - centre.x), turn);
        for (const [one, other] of [
          [again.from, p],
          [again.to, q],
        ])
          expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeLessThan(1e-8);
      },
      { runs: 30 },
    ));
  it('is a half circle of the chord as diameter', () => {
    const half = arcBetween(at(10, 0), at(-10, 0), Math.PI);
    expect(half.radius).toBeCloseTo(10, 12);
    expect(segmentSweep(half)).toBeCloseTo(50 * Math.PI, 9);
  });
});

/** A slot with one wavy side: all three kinds of parts. */
const slot = (): readonly OutlineSegment[] => {
  const wave = curve((t) => at(t, 2 * Math.sin((Math.PI * t) / 20)), 0, 40);
  return [
    wave,
    arc(at(40, 10), 10, -Math.PI / 2, Math.PI),
    line(at(40, 20), at(0, 20)),
    arc(at(0, 10), 10, Math.PI / 2, Math.PI),
  ];
};

describe('chains', () => {
  it('through points and round rings are straight', () => {
    const square = chainRound(Float64Array.of(0, 0, 10, 0, 10, 10, 0, 10));
    expect([square.length, chainLength(square), chainSweep(square), chainGap(square)]).toEqual([4, 40, 100, 0]);
    expect(chainRound([at(0, 0), at(4, 0), at(0, 3)])).toHaveLength(3);
    expect(chainThrough([at(0, 0), at(4, 0), at(0, 3)])).toHaveLength(2);
    expect(curveThrough([at(0, 0), at(4, 0), at(4, 3)], 0.1)).toMatchObject({ lengthMm: 7, sweptMm2: 6 });
  });

  it('of arcs and curves become rings within a deviation', () => {
    const chain = slot();
    expect(chainGap(chain)).toBeLessThan(1e-12);
    // A straight slot: a whole wave takes as much as it gives.
    expect(chainSweep(chain)).toBeCloseTo(800 + 100 * Math.PI, 7);
    const ring = chainRing(chain, 0.05);
    expect(Math.abs(ringArea(ring) - chainSweep(chain))).toBeLessThan(0.05 * chainLength(chain));
    expect(chainPoints(chain, 0.05)).toHaveLength(ring.length / 2 + 1);
    // A circle far smaller than the deviation is still a ring.
    expect(chainRing([arc(at(0, 0), 0.01, 0, 2 * Math.PI)], 5)).toHaveLength(8);
  });

  it('keep length and area under every lay, and what is turned over runs the same way round', () =>
    forAll(
      (rand): Lay2 => ({ x: 99 * rand(), y: -50 * rand(), turnRad: 7 * rand(), isFlipped: rand() < 0.5 }),
      (lay) => {
        const [chain, laid] = [slot(), layChain(slot(), lay)];
        expect(chainGap(laid)).toBeLessThan(1e-9);
        expect(chainLength(laid)).toBeCloseTo(chainLength(chain), 9);
        expect(chainSweep(laid)).toBeCloseTo(chainSweep(chain), 7);
        // As the ring of its points is laid, from another first point on.
        const [straight, rings] = [chainRing(laid), layRing(chainRing(chain), lay)];
        expect(ringArea(straight)).toBeCloseTo(ringArea(rings), 7);
        expect(Math.max(...straight)).toBeCloseTo(Math.max(...rings), 9);
      },
      { runs: 20 },
    ));

  it('run through the other way shut in the same area the other way round, twice gives the same', () => {
    const chain = slot();
    expect(chainSweep(reversedChain(chain))).toBeCloseTo(-chainSweep(chain), 9);
    expect(reversedChain(reversedChain(chain))).toEqual(chain);
  });
});
