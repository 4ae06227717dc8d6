import { describe, expect, it } from 'vitest';
import { readSvgPath, type Stroke } from '../../src/geom/svg-path.ts';
import { expectOk, expectProblem } from '../support/expect-ok.ts';

const read = (text: string, tolerance = 0.01): readonly Stroke[] => expectOk(readSvgPath(text, tolerance));
const corners = (text: string): number[][][] => read(text).map(({ points }) => points.map(({ x, y }) => [x, y]));
const lengthOf = ({ points, closed }: Stroke): number =>
  points.reduce((sum, p, i) => {
    const q = points[i + 1] ?? (closed ? points[0] : p);
    return sum + Math.hypot(q.x - p.x, q.y - p.y);
  }, 0);

describe('the text of a path', () => {
  it('is read with all straight commands, y turned up', () => {
    expect(corners('M10 20 L30 20 H40 V5 l-5 -5 h-10 v2 z')).toEqual([
      [
        [10, -20],
        [30, -20],
        [40, -20],
        [40, -5],
        [35, 0],
        [25, 0],
        [25, -2],
      ],
    ]);
    expect(read('M0 0 10 0 10 10z').map(({ closed }) => closed)).toEqual([true]);
    expect(read('M0 0 10 0 10 10').map(({ closed }) => closed)).toEqual([false]);
  });

  it('is read however close its numbers stand', () => {
    expect(corners('M1-2.5.5,+3e0\n4-5E-1')).toEqual(corners('M 1 -2.5 L 0.5 3 L 4 -0.5'));
    expect(corners('M1-2L.5.5-3-4')).toEqual([
      [
        [1, 2],
        [0.5, -0.5],
        [-3, 4],
      ],
    ]);
    // Flags of an arc without spaces.
    expect(read('M0 0a5 5 0 0110 0')).toEqual(read('M0 0 a 5 5 0 0 1 10 0'));
  });

  it('begins a new stroke at each move, and where a closed one began', () => {
    expect(corners('m1 1 l4 0 l0 4 z l-2 0 m3 3 l1 1')).toEqual([
      [
        [1, -1],
        [5, -1],
        [5, -5],
      ],
      [
        [1, -1],
        [-1, -1],
      ],
      [
        [2, -4],
        [3, -5],
      ],
    ]);
  });

  it('keeps circles of arcs within the tolerance, whichever way and however large', () => {
    for (const tolerance of [0.5, 0.01]) {
      const [circle] = read('M-10 0 A10 10 0 1 0 10 0 A 10 10 0 0 0 -10 0 z', tolerance);
      for (const [i, p] of circle.points.entries()) {
        const q = circle.points[(i + 1) % circle.points.length];
        expect(Math.hypot(p.x, p.y)).toBeCloseTo(10, 9);
        expect(10 - Math.hypot((p.x + q.x) / 2, (p.y + q.y) / 2)).toBeLessThan(tolerance * (1 + 1e-9));
      }
    }
    // The same ends, a quarter and three quarters round: 2 pi r / 4 and 3/4 of it.
    expect(lengthOf(read('M10 0A10 10 0 0 1 0 10', 1e-5)[0])).toBeCloseTo(5 * Math.PI, 3);
    expect(lengthOf(read('M10 0A10 10 0 1 0 0 10', 1e-5)[0])).toBeCloseTo(15 * Math.PI, 3);
    // The four arcs between two ends, by where their middles lie.
    const middle = (flags: string): number[] => {
      const [{ points }] = read(`M10 0A10 10 0 ${flags} 0 10`, 1e-3);
      return [(points.length - 1) >> 1].flatMap((i) => [points[i].x, points[i].y]).map((value) => Math.round(value));
    };
    expect(['0 1', '0 0', '1 1', '1 0'].map(middle)).toEqual([
      [7, -7],
      [3, -3],
      [17, -17],
      [-7, 7],
    ]);
    // Radii too short for the ends: half round.
    expect(lengthOf(read('M-10 0 A1 1 0 0 1 10 0', 1e-5)[0])).toBeCloseTo(10 * Math.PI, 3);
    expect(corners('M0 0A0 5 0 0 1 4 4')).toEqual([
      [
        [0, 0],
        [4, -4],
      ],
    ]);
  });

  it('keeps curves within the tolerance and joins smooth ones to the last', () => {
    // x = 3t(1-t)^2 ... from (0, 0) with handles (0, 30), (30, 30) to (30, 0): its middle is (15, 22.5).
    const [curve] = read('M0 0C0 30 30 30 30 0', 0.001);
    expect(Math.min(...curve.points.map(({ y }) => y))).toBeCloseTo(-22.5, 2);
    const gapTo = ({ points }: Stroke, x: number, y: number): number =>
      Math.min(
        ...points.slice(1).map((b, i) => {
          const [a, dx, dy] = [points[i], b.x - points[i].x, b.y - points[i].y];
          const share = Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy)));
          return Math.hypot(a.x + share * dx - x, a.y + share * dy - y);
        }),
      );
    for (let t = 0; t <= 1; t += 0.001) {
      const [x, y] = [90 * t * t * (1 - t) + 30 * t ** 3, -90 * t * (1 - t)];
      expect(gapTo(curve, x, y)).toBeLessThan(0.001);
    }
    expect(read('M0 0C0 30 30 30 30 0S60-30 60 0')).toEqual(read('M0 0C0 30 30 30 30 0C30-30 60-30 60 0'));
    expect(read('M0 0Q10 20 20 0T40 0')).toEqual(read('M0 0Q10 20 20 0Q30-20 40 0'));
    expect(read('M0 0L20 0T40 0')).toEqual(read('M0 0L20 0Q20 0 40 0'));
    // The parabola of a quadratic: length by the closed form of y = x - x^2 / 20 on 0..20.
    const slope = (u: number): number => 5 * (u * Math.hypot(1, u) + Math.asinh(u));
    expect(lengthOf(read('M0 0Q10-10 20 0', 1e-4)[0])).toBeCloseTo(2 * slope(1), 3);
  });

  it('says where it cannot be read', () => {
    expect(expectProblem(readSvgPath('M0 0L10', 1), 'path/unreadable').text).toContain('character 8');
    expectProblem(readSvgPath('L10 10', 1), 'path/unreadable');
    expectProblem(readSvgPath('M0 0 K 3', 1), 'path/unreadable');
    expectProblem(readSvgPath('M0 0A5 5 0 2 1 3 3', 1), 'path/unreadable');
    expectProblem(readSvgPath('10 10', 1), 'path/unreadable');
    expectProblem(readSvgPath('M0 0C0 1e9 1e9 1e9 1e9 0', 1e-9), 'path/too-fine');
    expect(read('')).toEqual([]);
    expect(read('M3 3')).toEqual([]);
    expect(() => readSvgPath('M0 0', 0)).toThrow(RangeError);
  });
});
