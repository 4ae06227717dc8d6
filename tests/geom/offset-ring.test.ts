import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import { offsetRing, type EdgeOffsets } from '../../src/geom/offset-ring.ts';
import { ringArea } from '../../src/geom/ring.ts';

const perEdge = (...o: number[]): EdgeOffsets => ({ atStart: Float64Array.from(o), atEnd: Float64Array.from(o) });

describe('offsetRing', () => {
  const square = Float64Array.from([0, 0, 10, 0, 10, 10, 0, 10]);

  it('is the ring itself, to the last bit, where nothing moves', () => {
    const odd = Float64Array.from([0.1, 0.2, 10 / 3, 0.7, 2.2, 9.1]);
    expect([...offsetRing(odd, perEdge(0, 0, 0)).ring]).toEqual([...odd]);
  });

  it('moves each edge of a square by its own distance', () => {
    const { ring } = offsetRing(square, perEdge(1, 2, 0, -3));
    expect([...ring]).toEqual([3, -1, 12, -1, 12, 10, 3, 10]);
  });

  it('keeps each moved edge parallel to its own at the distance asked for', () => {
    const random = seededRandom(3);
    for (let round = 0; round < 50; round += 1) {
      const sides = 3 + Math.floor(random() * 9);
      const source = Float64Array.from(
        Array.from({ length: sides }, (_, i) => {
          const a = (2 * Math.PI * i) / sides;
          return [50 * Math.cos(a) * (1 + 0.2 * random()), 50 * Math.sin(a) * (1 + 0.2 * random())];
        }).flat(),
      );
      const asked = Array.from({ length: sides }, () => 4 * random() - 2);
      const { ring, startOf, endOf } = offsetRing(source, perEdge(...asked));
      for (let i = 0; i < sides; i += 1) {
        const j = (i + 1) % sides;
        const [dx, dy] = [source[2 * j] - source[2 * i], source[2 * j + 1] - source[2 * i + 1]];
        for (const p of [startOf[i], endOf[i]]) {
          const distance =
            ((ring[2 * p] - source[2 * i]) * dy - (ring[2 * p + 1] - source[2 * i + 1]) * dx) / Math.hypot(dx, dy);
          expect(distance).toBeCloseTo(asked[i], 9);
        }
      }
    }
  });

  it('steps where the offset changes along a straight line', () => {
    const straight = Float64Array.from([0, 0, 5, 0, 10, 0, 10, 10, 0, 10]);
    const { ring, startOf, endOf } = offsetRing(straight, perEdge(0, 2, 0, 0, 0));
    expect([...ring]).toEqual([0, 0, 5, 0, 5, -2, 10, -2, 10, 10, 0, 10]);
    expect([endOf[0], startOf[1]]).toEqual([1, 2]);
  });

  it('steps where lines nearly in one would cross only far along the edges', () => {
    const dip = (mm: number) => Float64Array.from([0, 0, 40, -mm, 80, 0, 80, 50, 0, 50]);
    // Turned by 2 atan(dip / 40), the two lines cross 0.3 / sin of it beyond the corner: 8.6 mm and 1.5 mm.
    expect(offsetRing(dip(0.7), perEdge(1, 1.3, 0, 0, 0)).ring).toHaveLength(12);
    const { ring, startOf } = offsetRing(dip(4), perEdge(1, 1.3, 0, 0, 0));
    expect(ring).toHaveLength(10);
    expect(Math.hypot(ring[2 * startOf[1]] - 40, ring[2 * startOf[1] + 1] + 4)).toBeGreaterThan(1.5);
  });

  describe('where two lines turn by 16 degrees', () => {
    // Sine 0.28, cosine 0.96. Lines moved by o1 and o2 cross (o2 - 0.96 o1) / 0.28 along the first and (0.96 o2 - o1) / 0.28 along the second.
    const isCorner = (o1: number, o2: number, length1: number, length2: number): boolean => {
      const [x, y] = [0.96 * length2, 0.28 * length2];
      const bent = Float64Array.from([-length1, 0, 0, 0, x, y, x, 500, -length1, 500]);
      const { startOf, endOf } = offsetRing(bent, perEdge(o1, o2, 0, 0, 0));
      return startOf[1] === endOf[0];
    };

    it('lets them cross as far along as either is long', () => {
      // 7.14 and 6.30 mm along them.
      expect([7.1, 7.2].map((length1) => isCorner(2, 3.92, length1, 90))).toEqual([false, true]);
      expect([6.1, 6.2, 6.4, 6.5].map((length2) => isCorner(2, 3.92, 90, length2))).toEqual([false, false, true, true]);
    });

    it('lets them cross up to four times the greater offset along', () => {
      expect(isCorner(0.5, 1.5, 90, 90)).toBe(true);
      expect(isCorner(1.5, 0.5, 90, 90)).toBe(true);
      // 4.15 and 4.07 offsets; 3.93 and 3.86 offsets.
      expect([isCorner(-0.21, 1, 90, 90), isCorner(-0.1, 1, 90, 90)]).toEqual([false, true]);
      expect([isCorner(1, -0.21, 90, 90), isCorner(1, -0.1, 90, 90)]).toEqual([false, true]);
      expect(isCorner(-1, 1, 90, 90)).toBe(false);
    });

    it('asks for no such thing where both move alike', () => {
      expect(isCorner(3, 3, 0.1, 0.1)).toBe(true);
      expect(isCorner(3, 3 + 1e-10, 0.1, 0.1)).toBe(true);
    });
  });

  it('puts given points in place of a corner and leaves the rest', () => {
    const points = [
      { x: 12, y: -2 },
      { x: 13, y: -1 },
      { x: 12.5, y: 0.5 },
    ];
    const moved = offsetRing(square, perEdge(1, 1, 1, 1), new Map([[1, points]]));
    expect([...moved.ring]).toEqual([-1, -1, 12, -2, 13, -1, 12.5, 0.5, 11, 11, -1, 11]);
    expect([...moved.startOf]).toEqual([0, 3, 4, 5]);
    expect([...moved.endOf]).toEqual([1, 4, 5, 0]);
    expect([...moved.outward]).toEqual([-1, -1, 1, -1, 1, -1, 1, -1, 1, 1, -1, 1].map((v) => v + 0));
  });

  it('tells which way is outward, at both points of a step too', () => {
    const straight = Float64Array.from([0, 0, 5, 0, 10, 0, 10, 10, 0, 10]);
    const { outward } = offsetRing(straight, perEdge(0, 2, 0, 0, 0));
    expect([...outward].map((v) => v + 0)).toEqual([-1, -1, 0, -1, 0, -1, 1, -1, 1, 1, -1, 1]);
  });

  it('lets an edge lean where its ends move by different distances', () => {
    const { ring } = offsetRing(square, { atStart: Float64Array.of(1, 0, 0, 2), atEnd: Float64Array.of(3, 0, 0, 4) });
    expect([...ring]).toEqual([-4, -1, 10, -3, 10, 10, -2, 10]);
  });

  it('cuts a needle off instead of letting it run out', () => {
    const needle = Float64Array.from([0, 0, 100, -2, 100, 2]);
    const { ring } = offsetRing(needle, perEdge(3, 3, 3));
    for (let i = 0; i < ring.length; i += 2) expect(ring[i]).toBeGreaterThan(-3.01);
    expect(ring.length / 2).toBe(4);
  });

  it('opens a slit on both sides and leaves its end square', () => {
    // A square with a cut from the middle of its lower edge to its centre, there and back.
    const slit = Float64Array.from([0, 0, 5, 0, 5, 5, 5, 0, 10, 0, 10, 10, 0, 10]);
    const { ring } = offsetRing(slit, perEdge(0, -0.5, -0.5, 0, 0, 0, 0));
    expect(ringArea(ring)).toBeCloseTo(100 - 5, 9);
  });

  it('treats holes alike: outward is into the hole', () => {
    const hole = Float64Array.from([0, 0, 0, 10, 10, 10, 10, 0]);
    expect(ringArea(offsetRing(hole, perEdge(1, 1, 1, 1)).ring)).toBe(-64);
  });

  it('is not upset by an edge without length', () => {
    const doubled = Float64Array.from([0, 0, 10, 0, 10, 0, 10, 10, 0, 10]);
    const { ring } = offsetRing(doubled, perEdge(1, 1, 1, 1, 1));
    expect(ringArea(ring)).toBeCloseTo(144, 9);
  });
});
