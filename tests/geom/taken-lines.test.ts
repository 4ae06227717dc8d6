import { describe, expect, it } from 'vitest';
import { TakenLines, type PlainLine } from '../../src/geom/taken-lines.ts';
import { ringLength } from '../../src/geom/ring.ts';
import { forAll } from '../support/for-all.ts';

const ring = (...xy: number[]): PlainLine => ({ points: Float64Array.from(xy), closed: true });
const open = (...xy: number[]): PlainLine => ({ points: Float64Array.from(xy), closed: false });
const listed = (lines: readonly PlainLine[]) => lines.map(({ points }) => [...points]);
const lengthOf = ({ points, closed }: PlainLine): number =>
  closed
    ? ringLength(points)
    : ringLength(points) - Math.hypot(points[0] - points[points.length - 2], points[1] - points[points.length - 1]);

describe('TakenLines', () => {
  it('gives a line that shares nothing back as itself', () => {
    const taken = new TakenLines(0.01);
    const square = ring(0, 0, 10, 0, 10, 10, 0, 10);
    expect(taken.take(square)).toEqual({ free: [square], covered: [] });
    expect(taken.take(ring(20, 0, 30, 0, 25, 5)).covered).toEqual([]);
  });

  it('leaves out an edge two squares share, whole or in part', () => {
    const taken = new TakenLines(0.01);
    taken.take(ring(0, 0, 10, 0, 10, 10, 0, 10));
    const { free, covered } = taken.take(ring(10, 5, 20, 5, 20, 15, 10, 15));
    expect(listed(covered)).toEqual([[10, 10, 10, 5]]);
    expect(listed(free)).toEqual([[10, 5, 20, 5, 20, 15, 10, 15, 10, 10]]);
  });

  it('takes a slit once that a ring runs along there and back', () => {
    const { free, covered } = new TakenLines(0.01).take(ring(0, 0, 10, 0, 10, 5, 4, 5, 10, 5, 10, 10, 0, 10));
    expect(listed(covered)).toEqual([[4, 5, 10, 5]]);
    expect(free.reduce((sum, line) => sum + lengthOf(line), 0)).toBeCloseTo(40 + 6, 9);
  });

  it('tells lines that cross or only meet at an end from lines that share a stretch', () => {
    const taken = new TakenLines(0.01);
    taken.take(open(0, 0, 10, 0));
    expect(taken.take(open(5, -5, 5, 5)).covered).toEqual([]);
    expect(taken.take(open(10, 0, 20, 0)).covered).toEqual([]);
    expect(taken.take(open(0, 0.02, 10, 0.02)).covered).toEqual([]);
    expect(taken.take(open(20, 8, 3, 0)).covered).toEqual([]);
  });

  it('leaves gaps where they are blocked', () => {
    const taken = new TakenLines(0.01);
    taken.block(open(4, 0, 6, 0));
    expect(listed(taken.take(ring(0, 0, 10, 0, 10, 10, 0, 10)).free)).toEqual([
      [6, 0, 10, 0, 10, 10, 0, 10, 0, 0, 4, 0],
    ]);
  });

  it('loses nothing and cuts nothing twice, however two rectangles lie on one line', () =>
    forAll(
      (rand) => {
        const [a, b, width] = [40 * rand() - 10, 5 + 30 * rand(), 5 + 20 * rand()];
        return { a, b: a + b, width, angle: 2 * Math.PI * rand() };
      },
      ({ a, b, width, angle }) => {
        const turn = (...xy: number[]): PlainLine => {
          const [c, s] = [Math.cos(angle), Math.sin(angle)];
          return ring(
            ...xy.flatMap((_, i) => (i % 2 === 0 ? [c * xy[i] - s * xy[i + 1], s * xy[i] + c * xy[i + 1]] : [])),
          );
        };
        const taken = new TakenLines(0.01);
        taken.take(turn(0, 0, 20, 0, 20, 8, 0, 8));
        const { free, covered } = taken.take(turn(a, 8, b, 8, b, 8 + width, a, 8 + width));
        const shared = Math.max(0, Math.min(20, b) - Math.max(0, a));
        const sum = (lines: readonly PlainLine[]) => lines.reduce((all, line) => all + lengthOf(line), 0);
        expect(Math.abs(sum(covered) - shared)).toBeLessThan(0.06);
        expect(Math.abs(sum(free) + sum(covered) - 2 * (b - a + width))).toBeLessThan(0.03);
      },
    ));
});
