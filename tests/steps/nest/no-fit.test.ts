import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/base/random.ts';
import { ringArea } from '../../../src/geom/ring.ts';
import { DepthGrid } from '../../../src/steps/nest/depth-grid.ts';
import { latticeRing } from '../../../src/steps/nest/lattice.ts';
import { noFitRings } from '../../../src/steps/nest/no-fit.ts';
import { doAreasMeet } from '../../../src/steps/nest/overlap-check.ts';
import { PoseTable } from '../../../src/steps/nest/pose-table.ts';
import { shapeOf, type Shape, type Stance } from '../../../src/steps/nest/shape.ts';

const AS_DRAWN: readonly Stance[] = [{ turnRad: 0, isFlipped: false }];
const shape = (rings: readonly (readonly number[])[], stances = AS_DRAWN): Shape =>
  shapeOf(
    rings.map((ring, i) => latticeRing(ring, 1, i > 0)),
    stances,
  );
const box = (w: number, h: number): readonly number[] => [0, 0, w, 0, w, h, 0, h];

describe('the no-fit area', () => {
  it('of two boxes is the box in which the second may not stand', () => {
    const [ring, ...rest] = noFitRings(shape([box(50, 30)]), shape([box(20, 10)]));
    expect(rest).toEqual([]);
    expect(ringArea(ring)).toBe(70 * 40);
    expect([...ring].filter((_, i) => i % 2 === 0).reduce((a, b) => Math.min(a, b))).toBe(-20);
    expect([...ring].filter((_, i) => i % 2 === 1).reduce((a, b) => Math.min(a, b))).toBe(-10);
  });

  it('leaves a hole where the second fits inside the first', () => {
    const frame = shape([box(100, 100), [20, 20, 80, 20, 80, 80, 20, 80]]);
    const rings = noFitRings(frame, shape([box(40, 50)]));
    expect(rings.map(ringArea).sort((a, b) => a - b)).toEqual([-20 * 10, 140 * 150]);
  });
});

describe('the depth', () => {
  it('in a box is the way to the nearest side, and nothing outside', () => {
    const grid = new DepthGrid([Float64Array.from([0, 0, 1000, 0, 1000, 600, 0, 600])], 0);
    expect(grid.depth(500, 300)).toBe(300);
    expect(grid.depth(990, 300)).toBe(10);
    expect(grid.depth(400, 7)).toBe(7);
    for (const [x, y] of [
      [1000, 300],
      [1001, 300],
      [-1, 0],
      [1e7, 1e7],
    ])
      expect(grid.depth(x, y)).toBe(0);
  });

  it('says overlap exactly where outlines laid out corner by corner overlap, turned and mirrored', () => {
    const rand = seededRandom(5);
    const star = (corners: number, reach: number): readonly number[] =>
      Array.from({ length: corners }, (_, i) => {
        const [angle, far] = [(2 * Math.PI * i) / corners, reach * (0.3 + 0.7 * rand())];
        return [far * Math.cos(angle), far * Math.sin(angle)];
      }).flat();
    const stances = [0, 1, 2, 3, 4, 5].map((k) => ({ turnRad: (k * Math.PI) / 3, isFlipped: k % 2 === 1 }));
    const hollow = [box(90_000, 90_000), [9000, 9000, 81_000, 9000, 81_000, 81_000, 9000, 81_000]];
    const table = new PoseTable([
      shape([star(9, 60_000)], stances),
      shape([star(5, 30_000)], stances),
      shape(hollow, stances),
    ]);
    let [meet, inHole] = [0, 0];
    for (let k = 0; k < 3000; k += 1) {
      const [p, q] = [rand(), rand()].map((r) => Math.floor(r * table.count));
      const [x, y] = [rand(), rand()].map((r) => Math.round((2 * r - 1) * 130_000));
      const [a, b, c, d] = table.turns[p];
      const depth = table.grids[table.gridOf(p, q)].depth(a * x + c * y, b * x + d * y);
      const moved = table.ringsOf(q).map((ring) => ring.map((value, i) => value + (i % 2 === 0 ? x : y)));
      const doMeet = doAreasMeet(table.ringsOf(p), moved);
      if (depth === 0) expect(doMeet, `${p} ${q} ${x} ${y}`).toBe(false);
      // What only nearly touches may be told as overlapping.
      if (depth > 2 * table.clear) expect(doMeet, `${p} ${q} ${x} ${y}`).toBe(true);
      if (doMeet) meet += 1;
      if (!doMeet && table.shapeOf[p] === 2 && Math.hypot(x, y) < 60_000) inHole += 1;
    }
    expect(meet).toBeGreaterThan(500);
    expect(inHole).toBeGreaterThan(5);
  });
});
