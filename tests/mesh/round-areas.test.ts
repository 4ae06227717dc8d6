import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { roundAreas, type RoundAreas } from '../../src/mesh/round-areas.ts';
import { roundField } from '../../src/mesh/round-field.ts';
import { distancesFrom, surfaceSides, type OpenedTriangles } from '../../src/mesh/surface-distance.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';
import { meshOf } from '../support/meshes.ts';

/** The triangles of a mesh by their sizes. */
function opened({ positions, triangles }: Mesh): OpenedTriangles {
  const count = triangles.length / 3;
  const [base, foot, height] = [new Float64Array(count), new Float64Array(count), new Float64Array(count)];
  for (let t = 0; t < count; t += 1) {
    const [p, q, r] = [0, 1, 2].map((k) => [
      ...positions.subarray(3 * triangles[3 * t + k], 3 * triangles[3 * t + k] + 3),
    ]);
    const u = q.map((x, i) => x - p[i]);
    const v = r.map((x, i) => x - p[i]);
    base[t] = Math.hypot(...u);
    foot[t] = u.reduce((sum, x, i) => sum + x * v[i], 0) / base[t];
    height[t] = Math.sqrt(v.reduce((sum, x) => sum + x * x, 0) - foot[t] * foot[t]);
  }
  return { vertexCount: positions.length / 3, count, corners: triangles, base, foot, height };
}

/** A sheet of `n` times `n` cells from -1 to 1, its inner points moved about, bent by `bend`. */
function sheet(
  n: number,
  bend: (x: number, y: number) => [number, number, number],
  rough = 0.6,
): { mesh: Mesh; isRim: Uint8Array } {
  const random = seededRandom(7);
  const isRim = new Uint8Array((n + 1) ** 2);
  const points = Array.from(isRim, (_, v) => {
    const [i, j] = [v % (n + 1), Math.floor(v / (n + 1))];
    isRim[v] = i % n === 0 || j % n === 0 ? 1 : 0;
    const move = (): number => (isRim[v] === 1 ? 0 : ((random() - 0.5) * rough * 2) / n);
    return bend((2 * i) / n - 1 + move(), (2 * j) / n - 1 + move());
  });
  const at = (i: number, j: number): number => j * (n + 1) + i;
  const faces = Array.from({ length: n * n }, (_, c) => {
    const [i, j] = [c % n, Math.floor(c / n)];
    const corners = [at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)];
    return random() < 0.5 ? corners : [...corners.slice(1), corners[0]];
  });
  return { mesh: meshOf(points, faces), isRim };
}

async function areasOf(mesh: Mesh, isRim: Uint8Array, source: number): Promise<RoundAreas> {
  const sides = surfaceSides(opened(mesh));
  return roundAreas(sides, roundField(sides, await distancesFrom(sides, [source], isRim, QUIET_WORK)));
}

/** Vertex nearest to the middle of a sheet of `n` cells, n even. */
const middleOf = (n: number): number => (n / 2) * (n + 1) + n / 2;

describe('distances and round areas', () => {
  it('are exact in the plane and on whatever is rolled of it', async () => {
    const bends = [
      (x: number, y: number): [number, number, number] => [x, y, 0],
      (x: number, y: number): [number, number, number] => [x, y, x > 0 ? x : 0],
    ];
    // Bent along a line of points only when they stay in it.
    for (const [which, bend] of bends.entries()) {
      const { mesh, isRim } = sheet(20, which === 0 ? bend : (x, y) => bend(Math.abs(x) < 0.05 ? 0 : x, y));
      const source = middleOf(20);
      const { level, near, area, rim } = await areasOf(mesh, isRim, source);
      for (let l = 0; l < level.length; l += 1) {
        expect(near[l] / level[l]).toBeCloseTo(1, 9);
        expect(area[l] / (Math.PI * level[l] ** 2)).toBeCloseTo(1, 9);
        expect(rim[l] / (2 * Math.PI * level[l])).toBeCloseTo(1, 9);
      }
    }
  });

  it('end before the border', async () => {
    const { mesh, isRim } = sheet(20, (x, y) => [x, y, 0]);
    const source = middleOf(20);
    const { level } = await areasOf(mesh, isRim, source);
    const [x, y] = mesh.positions.subarray(3 * source, 3 * source + 2);
    const top = level[level.length - 1];
    expect(top).toBeLessThan(1 - Math.max(Math.abs(x), Math.abs(y)));
    expect(top).toBeGreaterThan(0.99 * (1 - Math.max(Math.abs(x), Math.abs(y))));
  });

  it('on hills: no rim is nearer than said, and little is lost by saying so', async () => {
    const bend = (x: number, y: number): [number, number, number] => [
      x,
      y,
      0.3 * Math.sin(2 * x + 1) * Math.cos(3 * y),
    ];
    const { mesh, isRim } = sheet(24, bend, 0.5);
    const source = middleOf(24);
    const sides = surfaceSides(opened(mesh));
    const found = await distancesFrom(sides, [source], isRim, QUIET_WORK);
    const { level, near } = roundAreas(sides, roundField(sides, found));
    // Ways over points set close along all sides are real ones: none may come to a vertex beyond a rim sooner than the rim is said to be.
    const way = waysOverPoints(mesh, source);
    for (let v = 0; v < found.value.length; v += 1) {
      for (let l = 0; l < level.length; l += 1)
        if (found.value[v] >= level[l]) expect(way[v]).toBeGreaterThanOrEqual(near[l]);
    }
    for (const v of found.settled) expect(Math.abs(found.value[v] - way[v])).toBeLessThan(0.03 * way[v] + 1e-12);
    expect(near[near.length - 1] / level[level.length - 1]).toBeGreaterThan(0.93);
  });

  it('never say too much, however wrong the values are', async () => {
    const { mesh, isRim } = sheet(20, (x, y) => [x, y, 0], 0.4);
    const source = middleOf(20);
    const sides = surfaceSides(opened(mesh));
    const found = await distancesFrom(sides, [source], isRim, QUIET_WORK);
    const random = seededRandom(11);
    for (const wrong of [() => 1.2, () => 1 + 0.2 * random()]) {
      const value = found.value.map((mm) => mm * wrong());
      const { level, near } = roundAreas(sides, roundField(sides, { ...found, value }));
      for (let l = 0; l < level.length; l += 1) {
        // The nearest vertex beyond the rim is truly this far off; the rim lies before it.
        const beyond = found.value.filter((_, v) => value[v] >= level[l]).reduce((a, b) => Math.min(a, b));
        expect(near[l]).toBeGreaterThan(0);
        expect(near[l]).toBeLessThan(beyond);
      }
    }
  });

  it('waits for others when asked to', async () => {
    const { mesh, isRim } = sheet(80, (x, y) => [x, y, 0], 0);
    let pauses = 0;
    const work = { pause: () => void (pauses += 1) };
    await distancesFrom(surfaceSides(opened(mesh)), [middleOf(80)], isRim, work);
    expect(pauses).toBeGreaterThan(0);
  });
});

/** Shortest ways from a vertex by straight lines inside triangles between points on their sides, 6 inside each side. */
function waysOverPoints({ positions, triangles }: Mesh, source: number): Float64Array {
  const INSIDE = 6;
  const points: number[][] = Array.from({ length: positions.length / 3 }, (_, v) => [
    ...positions.subarray(3 * v, 3 * v + 3),
  ]);
  const vertexCount = points.length;
  const onSide = new Map<string, number[]>();
  const links: Map<number, number>[] = points.map(() => new Map<number, number>());
  const sidePoints = (v: number, w: number): number[] => {
    const key = `${Math.min(v, w)} ${Math.max(v, w)}`;
    const known = onSide.get(key);
    if (known !== undefined) return known;
    const made = Array.from({ length: INSIDE }, (_, i) => {
      const f = (i + 1) / (INSIDE + 1);
      points.push(points[v].map((x, k) => x + f * (points[w][k] - x)));
      links.push(new Map());
      return points.length - 1;
    });
    onSide.set(key, made);
    return made;
  };
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = triangles.subarray(t, t + 3);
    const all = [a, b, c, ...sidePoints(a, b), ...sidePoints(b, c), ...sidePoints(c, a)];
    for (const p of all) {
      for (const q of all) if (p !== q) links[p].set(q, Math.hypot(...points[p].map((x, k) => x - points[q][k])));
    }
  }
  const distance = new Float64Array(points.length).fill(Infinity);
  distance[source] = 0;
  const open = new Set([source]);
  while (open.size > 0) {
    let v = -1;
    for (const w of open) if (v < 0 || distance[w] < distance[v]) v = w;
    open.delete(v);
    for (const [w, length] of links[v]) {
      if (distance[v] + length >= distance[w]) continue;
      distance[w] = distance[v] + length;
      open.add(w);
    }
  }
  return distance.slice(0, vertexCount);
}
