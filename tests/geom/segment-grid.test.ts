import { describe, expect, it } from 'vitest';
import type { Box2 } from '../../src/geom/ring.ts';
import { SegmentGrid } from '../../src/geom/segment-grid.ts';
import { doesSegmentMeetBox } from '../../src/geom/turned-box.ts';
import { forAll } from '../support/for-all.ts';

const box = (minX: number, minY: number, maxX: number, maxY: number): Box2 => ({ minX, minY, maxX, maxY });

/** What is offered for a box, each as it comes. */
function offered(grid: SegmentGrid, where: Box2): number[][] {
  const found: number[][] = [];
  const isFound = grid.some(where, (...segment) => {
    found.push(segment);
    return false;
  });
  expect(isFound).toBe(false);
  return found;
}

describe('SegmentGrid', () => {
  it('holds the parts of a line, and of a closed one the last too', () => {
    const all = (isClosed: boolean): number[][] => {
      const grid = new SegmentGrid(5);
      grid.addLine([1, 2, 3, 4, 5, 7], isClosed);
      const found: number[][] = [];
      grid.forEach((...segment) => found.push(segment));
      return found;
    };
    expect(all(false)).toEqual([
      [1, 2, 3, 4],
      [3, 4, 5, 7],
    ]);
    expect(all(true)).toEqual([
      [1, 2, 3, 4],
      [3, 4, 5, 7],
      [5, 7, 1, 2],
    ]);
  });

  it('offers what stands in the same cells and stops at the first that passes', () => {
    const grid = new SegmentGrid(10);
    grid.addLine([1, 2, 3, 4, 5, 7], true);
    grid.addLine([-1, -2, -3, -4], false);
    expect(offered(grid, box(0, 0, 9, 9))).toEqual([
      [1, 2, 3, 4],
      [3, 4, 5, 7],
      [5, 7, 1, 2],
    ]);
    expect(offered(grid, box(-9, -9, -5, -5))).toEqual([[-1, -2, -3, -4]]);
    expect(offered(grid, box(-5, -5, 5, 5))).toHaveLength(4);
    expect(offered(grid, box(20, 0, 30, 9))).toEqual([]);
    let tried = 0;
    expect(grid.some(box(0, 0, 9, 9), (ax) => (tried += 1) > 0 && ax === 3)).toBe(true);
    expect(tried).toBe(2);
  });

  it('is entered by a long segment along its way alone, not in all of its box', () => {
    const grid = new SegmentGrid(2);
    grid.addLine([0, 0, 40, 20], false);
    expect(offered(grid, box(20.5, 10.5, 21, 10.9))).toEqual([[0, 0, 40, 20]]);
    expect(offered(grid, box(30, 2, 38, 8))).toEqual([]);
    expect(offered(grid, box(2, 8, 8, 18))).toEqual([]);
  });

  it('never keeps back what lies in the box', async () => {
    const gen = (rand: () => number) => Array.from({ length: 45 }, () => 60 * rand() - 30);
    await forAll(gen, (n) => {
      const grid = new SegmentGrid(1 + Math.abs(n[44]) / 6);
      grid.addLine(n.slice(0, 40), true);
      const [w, h] = [Math.abs(n[42]) / 4, Math.abs(n[43]) / 4];
      const turned = { x: n[40], y: n[41], halfWidth: w, halfHeight: h, angleRad: 0 };
      const names = new Set(offered(grid, box(n[40] - w, n[41] - h, n[40] + w, n[41] + h)).map(String));
      grid.forEach((ax, ay, bx, by) => {
        if (doesSegmentMeetBox(ax, ay, bx, by, turned)) expect(names).toContain(String([ax, ay, bx, by]));
      });
    });
  });

  it('keeps far cells apart on either side of the origin', () => {
    const grid = new SegmentGrid(1);
    grid.addLine([-400_000, 3, -400_000.5, 3.5], false);
    grid.addLine([400_000, -7, 400_000.5, -7.5], false);
    expect(offered(grid, box(-400_001, 3, -400_000, 3))).toHaveLength(2);
    for (let row = -20; row <= 20; row += 1) expect(offered(grid, box(-3, row, 3, row))).toEqual([]);
    for (let row = -20; row <= 20; row += 1)
      expect(offered(grid, box(400_000, row, 400_000, row)).length > 0).toBe(row === -7 || row === -8);
  });
});
