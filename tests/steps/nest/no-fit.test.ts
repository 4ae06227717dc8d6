import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/base/random.ts';
import { ringArea } from '../../../src/geom/ring.ts';
import { DepthGrid } from '../../../src/steps/nest/depth-grid.ts';
import { latticeRing } from '../../../src/steps/nest/lattice.ts';
import { Layout } from '../../../src/steps/nest/layout.ts';
import { noFitRings } from '../../../src/steps/nest/no-fit.ts';
import { doAreasMeet } from '../../../src/steps/nest/overlap-check.ts';
import { PoseTable } from '../../../src/steps/nest/pose-table.ts';
import { shapeOf, type Shape, type Stance } from '../../../src/steps/nest/shape.ts';
import { Surroundings } from '../../../src/steps/nest/surroundings.ts';

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
      const grid = table.grids[table.gridOf(p, q)];
      const depth = grid.depth(a * x + c * y, b * x + d * y);
      const cell = grid.cellAt(a * x + c * y, b * x + d * y);
      expect(depth).toBeGreaterThanOrEqual(cell < 0 ? 0 : grid.floorOf(cell));
      if (cell < 0) expect(depth).toBe(0);
      // The other stands still, this one moves: the same pair.
      const swapped = table.depth(q, p, -x, -y);
      if (depth === 0) expect(swapped).toBeLessThan(2 * table.clear);
      if (swapped === 0) expect(depth).toBeLessThan(2 * table.clear);
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

describe('what a piece meets', () => {
  it('costs what its overlaps cost one by one, whichever of a pair stands still', () => {
    const rand = seededRandom(11);
    const quarters = [0, 1, 2, 3].map((k) => ({ turnRad: (k * Math.PI) / 2, isFlipped: false }));
    const table = new PoseTable([
      shape([[0, 0, 5000, 0, 5000, 1000, 1000, 1000, 1000, 4000, 0, 4000]], quarters),
      shape([[0, 0, 3000, 0, 0, 2500]], quarters),
      shape([box(2000, 700)], quarters),
    ]);
    const layout = new Layout(6, 6);
    const around = new Surroundings(table, 6);
    const weights = new Float64Array(36).fill(1);
    let met = 0;
    for (let k = 0; k < 400; k += 1) {
      for (let i = 0; i < 6; i += 1) {
        layout.pose[i] = table.firstOf[i % 3] + Math.floor(4 * rand());
        layout.x[i] = Math.floor(9000 * rand());
        layout.y[i] = Math.floor(9000 * rand());
      }
      const [piece, pose] = [k % 6, layout.pose[k % 6]];
      const [x, y] = [layout.x[piece], layout.y[piece]];
      let sum = 0;
      for (let j = 0; j < 6; j += 1) {
        const other = layout.pose[j];
        if (j !== piece) sum += table.scale[other] * table.depth(other, pose, x - layout.x[j], y - layout.y[j]);
      }
      around.gather(layout, weights, piece, pose);
      const price = around.priceAt(x, y, Infinity);
      expect(Math.abs(price - sum)).toBeLessThan(300);
      expect(price > 0).toBe(sum > 0);
      around.narrow(x, y, 10);
      expect(around.nearPriceAt(x, y, Infinity)).toBeCloseTo(price, 3);
      if (price > 0) expect(around.priceAt(x, y, price / 2)).toBeGreaterThan(price / 2);
      if (price > 0) met += 1;
    }
    expect(met).toBeGreaterThan(200);
  });

  it('is tried once in poses that look alike', () => {
    const quarters = [0, 1, 2, 3].map((k) => ({ turnRad: (k * Math.PI) / 2, isFlipped: false }));
    const long = [0, 0, 3000, 0, 3000, 700, 0, 700];
    const table = new PoseTable([
      shape([box(2000, 2000)], quarters),
      shape([long], quarters),
      shape([[0, 0, 3000, 0, 0, 2500]], quarters),
    ]);
    expect(table.looks.map((looks) => [...looks])).toEqual([[0], [4, 5], [8, 9, 10, 11]]);
  });
});
