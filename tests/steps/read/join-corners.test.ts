import { describe, expect, it } from 'vitest';
import { runAtOnce } from '../../../src/base/stepwise.ts';
import { seededRandom } from '../../../src/base/random.ts';
import { nearPairSteps } from '../../../src/steps/read/near-pairs.ts';
import { PointTable } from '../../../src/steps/read/point-table.ts';
import { facesOf, modelOf, objOf } from './text-model.ts';

/** Two triangles side by side whose common corners are `gap` apart along x, in a sculpt of diagonal 100 √2. */
const crack = (gap: number) =>
  objOf(
    [
      [0, 0, 0],
      [50, 0, 0],
      [50, 100, 0],
      [50 + gap, 0, 0],
      [100, 100, 0],
      [50 + gap, 100, 0],
    ],
    [
      [0, 1, 2],
      [3, 4, 5],
    ],
  );
const DIAGONAL = Math.hypot(100, 100);

describe('joining', () => {
  it('joins exactly equal corners first, and counts them apart', async () => {
    const model = await modelOf(crack(0));
    expect(facesOf(model)).toEqual([
      [0, 1, 2],
      [1, 3, 2],
    ]);
    expect(Array.from(model.fileVertex)).toEqual([0, 1, 2, 4]);
    expect(Array.from(model.vertexOfFile)).toEqual([0, 1, 2, 1, 3, 2]);
    expect(model.joined).toMatchObject({ inFile: 6, afterExact: 4, afterNear: 4 });
    expect(model.afterExactJoin).toBeUndefined();
  });

  it('joins within a millionth of the diagonal, not beyond', async () => {
    const near = await modelOf(crack(0.99e-6 * DIAGONAL));
    expect(near.joined.afterExact).toBe(6);
    expect(near.joined.afterNear).toBe(4);
    expect(near.joined.toleranceUnits).toBeCloseTo(1e-6 * DIAGONAL, 9);
    expect(near.afterExactJoin).toMatchObject({ vertices: 6, edges: 6, openLoops: 2 });
    // The lowest number leads, with its own place.
    expect(near.positions[3]).toBe(50);
    expect((await modelOf(crack(1.01e-6 * DIAGONAL))).joined.afterNear).toBe(6);
  });

  it('joins within two steps of single precision where those are larger', async () => {
    const moved = (gap: number) =>
      objOf(
        [
          [4000, 0, 0],
          [4050, 0, 0],
          [4050, 100, 0],
          [4050 + gap, 0, 0],
          [4095, 100, 0],
          [4050 + gap, 100, 0],
        ],
        [
          [0, 1, 2],
          [3, 4, 5],
        ],
      );
    // Between 2048 and 4096 single precision steps by 2^-12.
    const step = 2 ** -12;
    expect((await modelOf(moved(1.99 * step))).joined).toMatchObject({ afterNear: 4, toleranceUnits: 2 * step });
    expect((await modelOf(moved(2.01 * step))).joined.afterNear).toBe(6);
  });

  it('never joins two corners of one face, and takes the nearest pair first', async () => {
    // A sliver of 1e-5 between two large triangles, in a sculpt of 100 by 100: all its corners are near each other.
    const points = [
      [0, 0, 0],
      [100, 0, 0],
      [100, 1e-5, 0],
      [100, 100, 0],
      [100, 0.6e-5, 0],
    ];
    const sliver = await modelOf(
      objOf(points, [
        [0, 1, 2],
        [0, 4, 3],
      ]),
    );
    expect(facesOf(sliver).every((face) => new Set(face).size === face.length)).toBe(true);
    // Vertex 4 lies 0.6e-5 from 1 and 0.4e-5 from 2; it joins 2, and so can no longer join 1.
    expect(Array.from(sliver.vertexOfFile)).toEqual([0, 1, 2, 3, 2]);
  });

  it('joins chains, each link within the tolerance', async () => {
    const link = 0.9e-6 * DIAGONAL;
    const far = Array.from({ length: 5 }, (_, i) => [
      [50 + i * link, 0, 0],
      [10 * i, 100, i],
      [100, 100 - 7 * i, -i],
    ]);
    const model = await modelOf(
      objOf(
        [[0, 0, 0], [100, 100, 0], [0, 100, 0], ...far.flat()],
        [[0, 1, 2], ...far.map((_, i) => [3 + 3 * i, 4 + 3 * i, 5 + 3 * i])],
      ),
    );
    const first = far.map((_, i) => model.vertexOfFile[3 + 3 * i]);
    expect(new Set(first).size).toBe(1);
    expect(first[0]).toBe(model.vertexOfFile[3]);
  });

  it('does not depend on the order of vertices and faces', async () => {
    const random = seededRandom(2);
    const corners = Array.from({ length: 40 }, () => [100 * random(), 100 * random(), 100 * random()]);
    const points: number[][] = [
      [0, 0, 0],
      [100, 100, 100],
    ];
    const faces: number[][] = [];
    for (let f = 0; f < 60; f += 1) {
      const face = [0, 13, 27].map((shift) => corners[(Math.floor(13 * random()) + shift) % 40]);
      faces.push(face.map((corner) => points.push(corner.map((value) => value + 1e-4 * (random() - 0.5))) - 1));
    }
    faces.push([0, 1, 2]);
    const plain = await modelOf(objOf(points, faces));
    expect(plain.joined.afterNear).toBeLessThan(plain.joined.afterExact);
    const order = points.map((_, i) => i).sort((a, b) => Math.sin(a * 7.3) - Math.sin(b * 7.3));
    const place = new Map(order.map((old, now) => [old, now]));
    const mixed = await modelOf(
      objOf(
        order.map((old) => points[old]),
        faces.map((face) => face.map((v) => place.get(v) as number)).reverse(),
      ),
    );
    expect(mixed.joined).toEqual(plain.joined);
    const groups = (vertexOf: (v: number) => number): string[] => {
      const sets = new Map<number, number[]>();
      for (let v = 0; v < points.length; v += 1) sets.set(vertexOf(v), [...(sets.get(vertexOf(v)) ?? []), v]);
      return Array.from(sets.values(), (set) => set.join(' ')).sort();
    };
    expect(groups((v) => mixed.vertexOfFile[place.get(v) as number])).toEqual(groups((v) => plain.vertexOfFile[v]));
  });

  it('lets an unused vertex that lies exactly on a used one lead to it', async () => {
    const model = await modelOf('v 1 0 0\nv 0 0 0\nv 1 0 0\nv 0 1 0\nv 5 5 5\nf 2 3 4\n');
    expect(Array.from(model.vertexOfFile)).toEqual([0, 1, 0, 2, -1]);
    expect(Array.from(model.fileVertex)).toEqual([0, 1, 3]);
  });

  it('joins only equal corners where the sculpt lies too far out for single precision, and says so', async () => {
    const far = (gap: number) =>
      objOf(
        [
          [1e6, 0, 0],
          [1e6 + 5, 0, 0],
          [1e6 + 5, 10, 0],
          [1e6 + 5 + gap, 0, 0],
          [1e6 + 10, 10, 0],
          [1e6 + 5 + gap, 10, 0],
        ],
        [
          [0, 1, 2],
          [3, 4, 5],
        ],
      );
    expect((await modelOf(far(0))).joined.afterNear).toBe(4);
    const model = await modelOf(far(0.01));
    expect(model.joined).toMatchObject({ afterNear: 6, toleranceUnits: 0 });
    expect(model.findings.map((finding) => finding.code)).toEqual(['read/far-from-origin']);
  });
});

describe('nearPairSteps', () => {
  it('finds all pairs within the tolerance, as comparing every two does', () => {
    const random = seededRandom(9);
    // Points in twos, threes and fours, some near enough and some not quite; few share a cell of the grid.
    const xyz = new Float64Array(3 * 900);
    for (let i = 0; i < xyz.length; i += 1) xyz[i] = i % 12 < 3 ? 100 * random() : xyz[i - 3] + 0.8 * (random() - 0.5);
    const members = Uint32Array.from({ length: 900 }, (_, i) => i).filter((i) => i % 7 !== 0);
    const tolerance = 0.4;
    const slow: string[] = [];
    for (const [n, p] of members.entries()) {
      for (const q of members.subarray(n + 1)) {
        const d = [0, 1, 2].reduce((sum, axis) => sum + (xyz[3 * p + axis] - xyz[3 * q + axis]) ** 2, 0);
        if (d <= tolerance ** 2) slow.push(`${p} ${q}`);
      }
    }
    const pairs = runAtOnce(nearPairSteps(xyz, members, tolerance));
    const found = Array.from(pairs.first, (p, i) => `${p} ${pairs.second[i]}`);
    expect(slow.length).toBeGreaterThan(300);
    expect(found.toSorted()).toEqual(slow.toSorted());
    expect(pairs.squared.every((d, i) => i === 0 || d >= pairs.squared[i - 1])).toBe(true);
  });
});

describe('PointTable', () => {
  it('numbers points by first appearance and grows', () => {
    const table = new PointTable(1);
    for (let round = 0; round < 2; round += 1) {
      for (let i = 0; i < 5000; i += 1) expect(table.numberOf(i % 50, Math.floor(i / 50), -0)).toBe(i);
    }
    expect(table.count).toBe(5000);
    expect(table.points.length).toBe(15_000);
    expect(table.numberOf(1, 0, 0)).toBe(1);
  });
});
