import { describe, expect, it } from 'vitest';
import { drawSvgPath, readSvgPath, type Stroke } from '../../src/geom/svg-path.ts';
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

  it.each([
    ['M0 0L10', 8, 'a number', ', but it ends there'],
    ['M0 0 K 3', 6, 'a command', ', not “K 3”'],
    [' L10 10', 2, 'a move first', ', not “L10 10”'],
    ['z', 1, 'a move first', ', not “z”'],
    ['10 10', 1, 'a command', ', not “10 10”'],
    ['M0 0z 3 4', 7, 'a command', ', not “3 4”'],
    ['M0 0A5 5 0 2 1 3 3', 12, '0 or 1', ', not “2 1 3 3”'],
    ['M0 0A5 5 0 0', 13, '0 or 1', ', but it ends there'],
    ['M0 0 L 10, x1234567890', 12, 'a number', ', not “x1234567”'],
    ['M0 0 1e999 1', 6, 'a number', ', not “1e999 1”'],
    ['M0 0,,+', 7, 'a number', ', not “+”'],
    ['M0 0 #', 6, 'a number', ', not “#”'],
  ])('says that %j cannot be read at character %d', (text, at, wanted, found) => {
    const said = `The path cannot be read at character ${at}: ${wanted} should stand there${found}.`;
    expect(expectProblem(readSvgPath(text, 1), 'path/unreadable').text).toBe(said);
  });

  it('is read command by command up to the greatest number that is taken', () => {
    const drawn: unknown[] = [];
    const pen = { isDown: true, isFull: false, draw: (...one: unknown[]) => void drawn.push(one) };
    expect(drawSvgPath('M1 2 3 4m5 6 7 8a1 2 3 0 1 4 -9zS1,2,3,4', pen, 9)).toBeNull();
    expect(drawn).toEqual([
      ['M', [1, 2], false],
      ['L', [3, 4], false],
      ['M', [5, 6], true],
      ['L', [7, 8], true],
      ['A', [1, 2, 3, 0, 1, 4, -9], true],
      ['Z', [], true],
      ['S', [1, 2, 3, 4], false],
    ]);
    expect(drawSvgPath('M1 2 L 3 -9.5', pen, 9)).toEqual({ at: 10, wanted: 'a number', found: ', not “-9.5”' });
    drawn.length = 0;
    expect(drawSvgPath('M1 2 L 3 4', { ...pen, isFull: true }, 9)).toBeNull();
    expect(drawn).toEqual([['M', [1, 2], false]]);
  });

  it('has no corner twice and closes no line of two', () => {
    expect(corners('M0 0L0 0 5 0 5 0 5 5 0 0z')).toEqual([
      [
        [0, 0],
        [5, 0],
        [5, -5],
      ],
    ]);
    expect(read('M0 0L5 0z').map(({ closed }) => closed)).toEqual([false]);
    expect(read('M0 0L5 0 0 0z').map(({ points }) => points.length)).toEqual([2]);
    expect(read('M1 1z')).toEqual([]);
    expect(read('M0 0H5V5zz').map(({ closed }) => closed)).toEqual([true]);
    expect(corners('M0 0H5V5zM7 7H9')).toHaveLength(2);
  });

  it('has as many corners as the tolerance asks for, and ends where there would be too many', () => {
    // Second differences of 30: sqrt(6 · 30 · sqrt 2 / 8 / tolerance) and sqrt(2 · 20 / 8 / tolerance) pieces.
    expect(read('M0 0C0 30 30 30 30 0', 1)[0].points).toHaveLength(1 + 6);
    expect(read('M0 0C0 30 30 30 30 0', 0.01)[0].points).toHaveLength(1 + 57);
    expect(read('M0 0Q10 10 20 0', 0.05)[0].points).toHaveLength(1 + 10);
    expect(read('M0 0C1 1 2 2 3 3', 1e-9)[0].points.length).toBeLessThan(4);
    expect(() => readSvgPath('M0 0', -1)).toThrow(new RangeError('tolerance -1'));
    const line = (count: number): string => `M0 0H${Array.from({ length: count }, (_, i) => i + 1).join(' ')}`;
    expect(read(line(100_000))[0].points).toHaveLength(100_001);
    expect(expectProblem(readSvgPath(line(100_001), 1), 'path/too-fine').text).toBe(
      'The path would have more than 100000 corners: give a larger tolerance.',
    );
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
