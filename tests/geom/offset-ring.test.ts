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
