import { describe, expect, it } from 'vitest';
import { runAtOnce } from '../../src/base/stepwise.ts';
import { buildTree, treeFromSerialised } from '../../src/geom/bvh.ts';
import { pointAt3 } from '../../src/geom/vec.ts';
import { seededRandom } from '../../src/base/random.ts';
import { boxMesh, torusMesh } from '../support/meshes.ts';

const torus = torusMesh(24, 12, 50, 20);

/** All pairs whose boxes touch, the slow way. */
function slowPairs(positions: Float64Array, triangles: Uint32Array): string[] {
  const count = triangles.length / 3;
  const box = (t: number) =>
    [0, 1, 2].map((axis) => {
      const values = [0, 1, 2].map((k) => positions[3 * triangles[3 * t + k] + axis]);
      return [Math.min(...values), Math.max(...values)];
    });
  const boxes = Array.from({ length: count }, (_, t) => box(t));
  const pairs: string[] = [];
  for (let a = 0; a < count; a += 1) {
    for (let b = a + 1; b < count; b += 1) {
      if (boxes[a].every(([low, high], axis) => low <= boxes[b][axis][1] && boxes[b][axis][0] <= high))
        pairs.push(`${a} ${b}`);
    }
  }
  return pairs;
}

describe('buildTree', () => {
  it('keeps the numbering and the arrays of the caller', () => {
    const before = torus.triangles.slice();
    const tree = buildTree(torus.positions, torus.triangles);
    expect(torus.triangles).toEqual(before);
    const middle = [0, 1, 2].reduce(
      (sum, k) => {
        const p = pointAt3(torus.positions, torus.triangles[3 * 100 + k]);
        return { x: sum.x + p.x / 3, y: sum.y + p.y / 3, z: sum.z + p.z / 3 };
      },
      { x: 0, y: 0, z: 0 },
    );
    expect(tree.nearest(middle)?.triangle).toBe(100);
    expect(tree.nearest(middle)?.distance).toBeLessThan(1e-12);
  });

  it('measures in double precision', () => {
    const box = boxMesh(100);
    const hit = buildTree(box.positions, box.triangles).nearest({ x: 50, y: 40, z: 100.000000123 });
    expect(hit?.distance).toBeCloseTo(0.000000123, 13);
    expect(hit?.point.z).toBe(100);
  });

  it('looks no farther than it is told, and no closer than it need', () => {
    const tree = buildTree(torus.positions, torus.triangles);
    const [near, most] = [2, 9];
    let [inside, between, beyond] = [0, 0, 0];
    for (let i = 0; i < 300; i += 1) {
      const place = { x: 70 * Math.cos(i), y: 70 * Math.sin(2 * i), z: 25 * Math.sin(7 * i) };
      const distance = tree.nearest(place)?.distance ?? NaN;
      const told = tree.distanceBetween(place, near, most);
      if (distance < near) expect([(inside += 1), told < near]).toEqual([inside, true]);
      else if (distance <= most) expect([(between += 1), told]).toEqual([between, distance]);
      else expect([(beyond += 1), told]).toEqual([beyond, Infinity]);
      expect(tree.nearest(place, most)?.distance ?? null).toBe(distance <= most ? distance : null);
    }
    expect(Math.min(inside, between, beyond)).toBeGreaterThan(10);
  });

  it('finds the first hit of a ray from either side, with a direction of any length', () => {
    const box = boxMesh(100);
    const tree = buildTree(box.positions, box.triangles);
    const outside = tree.raycast({ x: 30, y: 20, z: 500 }, { x: 0, y: 0, z: -7 });
    expect(outside?.point.z).toBeCloseTo(100, 12);
    expect(outside?.distance).toBeCloseTo(400, 12);
    const inside = tree.raycast({ x: 30, y: 20, z: 50 }, { x: 0, y: 0, z: -0.01 });
    expect(inside?.distance).toBeCloseTo(50, 12);
    expect(tree.raycast({ x: 30, y: 20, z: 500 }, { x: 0, y: 0, z: 1 })).toBeNull();
  });

  it('visits every two triangles whose boxes touch, once, lower number first', () => {
    const random = seededRandom(7);
    const positions = Float64Array.from({ length: 3 * 240 }, () => 10 * random());
    const triangles = Uint32Array.from({ length: 240 }, (_, i) => i);
    const found: string[] = [];
    const visit = (a: number, b: number): boolean => {
      found.push(`${a} ${b}`);
      return false;
    };
    const all = runAtOnce(buildTree(positions, triangles).pairSteps(visit));
    expect(all).toBe(true);
    expect(found.toSorted()).toEqual(slowPairs(positions, triangles).toSorted());
  });

  it('stops when told, and says so', () => {
    let seen = 0;
    const tree = buildTree(torus.positions, torus.triangles);
    const all = runAtOnce(tree.pairSteps(() => (seen += 1) === 5));
    expect(all).toBe(false);
    expect(seen).toBe(5);
  });

  it('lets an error of the visitor out and works again afterwards', () => {
    const tree = buildTree(torus.positions, torus.triangles);
    const fails = (): boolean => {
      throw new Error('visitor');
    };
    expect(() => runAtOnce(tree.pairSteps(fails))).toThrow('visitor');
    expect(runAtOnce(tree.pairSteps(() => false))).toBe(true);
  });

  it('holds more triangles on one spot than a leaf can count, in bounded time', () => {
    const count = 100_000;
    // All have the same middle; only the last one, ten times as large, reaches the point asked for.
    const positions = Float64Array.from([0, 0, 0, 1, 0, 0, 0, 1, 0, -9.5, -9.5, 0, 10.5, -9.5, 0, -9.5, 10.5, 0]);
    const triangles = Uint32Array.from({ length: 3 * count }, (_, i) => (i < 3 * (count - 1) ? i % 3 : 3 + (i % 3)));
    const tree = buildTree(positions, triangles);
    expect(tree.nearest({ x: -9, y: -9, z: 3 })).toMatchObject({ triangle: count - 1, distance: 3 });
    let seen = 0;
    const visit = (): boolean => (seen += 1) < 0;
    const all = runAtOnce(tree.pairSteps(visit, 50_000));
    expect(all).toBe(false);
    expect(seen).toBe(50_000);
  });

  it('answers null for a surface without triangles', () => {
    const tree = buildTree(new Float64Array(0), new Uint32Array(0));
    expect(tree.nearest({ x: 0, y: 0, z: 0 })).toBeNull();
    expect(tree.distanceBetween({ x: 0, y: 0, z: 0 }, 1, 2)).toBe(Infinity);
    expect(tree.raycast({ x: 0, y: 0, z: 0 }, { x: 1, y: 0, z: 0 })).toBeNull();
    expect(runAtOnce(tree.pairSteps(() => false))).toBe(true);
    expect(tree.pairsWith(tree, () => expect.fail('no pairs'))).toBe(true);
  });

  it('names every pair of two surfaces whose boxes touch once, and stops at the most', () => {
    const other = torusMesh(7, 5, 40, 12);
    const moved = other.positions.map((value, i) => value + (i % 3 === 0 ? 35 : 4));
    const tree = buildTree(torus.positions, torus.triangles);
    const found: string[] = [];
    const own = torus.triangles.length / 3;
    expect(tree.pairsWith(buildTree(moved, other.triangles), (a, b) => void found.push(`${a} ${own + b}`))).toBe(true);
    const both = slowPairs(
      Float64Array.from([...torus.positions, ...moved]),
      Uint32Array.from([...torus.triangles, ...other.triangles.map((v) => v + torus.positions.length / 3)]),
    ).filter((pair) => pair.split(' ').filter((t) => Number(t) < own).length === 1);
    expect(both.length).toBeGreaterThan(20);
    expect(found.sort()).toEqual(both.sort());
    expect(tree.pairsWith(buildTree(moved, other.triangles), () => {}, 5)).toBe(false);
  });
});

describe('treeFromSerialised', () => {
  it('answers as the tree it came from, also on positions rounded to float32', () => {
    const tree = buildTree(torus.positions, torus.triangles);
    const copy = structuredClone(tree.serialise());
    const rounded = treeFromSerialised(Float32Array.from(torus.positions), torus.triangles, copy);
    for (let i = 0; i < 50; i += 1) {
      const origin = { x: 100 * Math.cos(i), y: 100 * Math.sin(i), z: (i % 10) - 5 };
      const direction = { x: -origin.x, y: -origin.y, z: 0.3 };
      const hit = tree.raycast(origin, direction);
      const again = rounded.raycast(origin, direction);
      expect(again?.triangle).toBe(hit?.triangle);
      expect(again?.distance).toBeCloseTo(hit?.distance ?? NaN, 4);
    }
  });

  it('does not share buffers with the tree it came from', () => {
    const tree = buildTree(torus.positions, torus.triangles);
    const { roots } = tree.serialise();
    new Uint8Array(roots[0]).fill(0);
    expect(tree.nearest({ x: 0, y: 0, z: 0 })?.distance).toBeGreaterThan(25);
  });
});
