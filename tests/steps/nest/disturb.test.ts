import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/base/random.ts';
import { changePlaces, scatter } from '../../../src/steps/nest/disturb.ts';
import { firstFit } from '../../../src/steps/nest/first-fit.ts';
import { Layout } from '../../../src/steps/nest/layout.ts';
import { PoseTable } from '../../../src/steps/nest/pose-table.ts';
import { shapeOf } from '../../../src/steps/nest/shape.ts';
import { TriedPool } from '../../../src/steps/nest/tried-pool.ts';

describe('a disturbance', () => {
  const rooms = Float64Array.of(0, 0, 90_000, 30_000);
  const laid = (ring: readonly number[], turns: number): { table: PoseTable; layout: Layout } => {
    const stances = Array.from({ length: turns }, (_, k) => ({ turnRad: k * Math.PI, isFlipped: false }));
    const table = new PoseTable([shapeOf([Float64Array.from(ring)], stances)], true);
    const layout = new Layout(5, 5);
    expect(firstFit(table, layout, rooms)).toEqual([]);
    return { table, layout };
  };

  it.each([
    ['of a hook', [0, 0, 20_000, 0, 20_000, 4000, 4000, 4000, 4000, 12_000, 0, 12_000], 2],
    ['that looks the same however it is turned', [0, 0, 9000, 0, 9000, 7000, 0, 7000], 2],
  ])('changes something where all pieces are %s', (_, ring, turns) => {
    const { table, layout } = laid(ring, turns);
    const before = layout.copy();
    const rand = seededRandom(2);
    for (let k = 0; k < 8; k += 1) changePlaces(table, layout, rooms, rand);
    expect([...layout.pose, ...layout.x, ...layout.y]).not.toEqual([...before.pose, ...before.x, ...before.y]);
    expectInside(table, layout);
  });

  it('that scatters puts all anywhere in the last room, and nothing beyond its walls', () => {
    const { table, layout } = laid([0, 0, 20_000, 0, 20_000, 4000, 4000, 4000, 4000, 12_000, 0, 12_000], 2);
    const before = layout.copy();
    scatter(table, layout, rooms, seededRandom(4));
    for (let i = 0; i < 5; i += 1) expect([layout.x[i], layout.y[i]]).not.toEqual([before.x[i], before.y[i]]);
    expectInside(table, layout);
  });

  function expectInside(table: PoseTable, layout: Layout): void {
    for (let i = 0; i < 5; i += 1) {
      const [p, x, y] = [layout.pose[i], layout.x[i], layout.y[i]];
      expect(Math.min(x + table.minX[p], y + table.minY[p])).toBeGreaterThanOrEqual(0);
      expect(x + table.maxX[p]).toBeLessThanOrEqual(90_000);
      expect(y + table.maxY[p]).toBeLessThanOrEqual(30_000);
    }
  }
});

describe('layouts tried', () => {
  it('are drawn the more often the less overlaps in them, and the worst are let go', () => {
    const pool = new TriedPool();
    const tried = (x: number): Layout => {
      const layout = new Layout(1, 1);
      layout.x[0] = x;
      return layout;
    };
    for (let k = 40; k > 0; k -= 1) pool.add(tried(k), k);
    expect(pool.draw(() => 0).x[0]).toBe(1);
    expect(pool.draw(() => 1 - 1e-9).x[0]).toBe(30);
    const rand = seededRandom(3);
    const drawn = Array.from({ length: 300 }, () => pool.draw(rand).x[0]);
    expect(drawn.filter((x) => x <= 10).length).toBeGreaterThan(180);
    pool.clear();
    pool.add(tried(7), 2);
    expect(pool.draw(rand).x[0]).toBe(7);
  });
});
