import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import { dissectionOrder } from '../../src/geom/dissection-order.ts';
import { SparseLdl } from '../../src/geom/sparse-ldl.ts';

/** Laplacian of an n x n grid plus a little on the diagonal. */
function grid(n: number) {
  const points = new Float64Array(2 * n * n);
  const edges: number[] = [];
  for (let j = 0; j < n; j += 1) {
    for (let i = 0; i < n; i += 1) {
      const v = j * n + i;
      points.set([i, j], 2 * v);
      if (i + 1 < n) edges.push(v, v + 1);
      if (j + 1 < n) edges.push(v, v + n);
    }
  }
  return { points, edges: Uint32Array.from(edges), count: n * n };
}

function systemOf(count: number, edges: Uint32Array, weight: (e: number) => number) {
  const edgeCount = edges.length / 2;
  const rows = new Int32Array(count + edgeCount);
  const cols = new Int32Array(count + edgeCount);
  const values = new Float64Array(count + edgeCount);
  for (let v = 0; v < count; v += 1) {
    rows[v] = cols[v] = v;
    values[v] = 0.01;
  }
  for (let e = 0; e < edgeCount; e += 1) {
    const [a, b] = [edges[2 * e], edges[2 * e + 1]];
    rows[count + e] = b;
    cols[count + e] = a;
    values[count + e] = -weight(e);
    values[a] += weight(e);
    values[b] += weight(e);
  }
  return { rows, cols, values };
}

function residual(
  count: number,
  { rows, cols, values }: ReturnType<typeof systemOf>,
  x: Float64Array,
  b: Float64Array,
): number {
  const ax = new Float64Array(count);
  for (let k = 0; k < rows.length; k += 1) {
    ax[rows[k]] += values[k] * x[cols[k]];
    if (rows[k] !== cols[k]) ax[cols[k]] += values[k] * x[rows[k]];
  }
  const norm = (v: Float64Array): number => Math.hypot(...v);
  return norm(ax.map((value, i) => value - b[i])) / norm(b);
}

describe('SparseLdl', () => {
  it.each([5, 20, 60])('solves a grid Laplacian of side %i to a relative residual under 1e-12', (n) => {
    const { points, edges, count } = grid(n);
    const system = systemOf(count, edges, (e) => 1 + (e % 7));
    const ldl = new SparseLdl(count, system.rows, system.cols, dissectionOrder(points, 2, edges));
    expect(ldl.factor(system.values)).toBe(true);
    const rand = seededRandom(n);
    const b = Float64Array.from({ length: count }, () => rand() - 0.5);
    const x = b.slice();
    ldl.solve(x);
    expect(residual(count, system, x, b)).toBeLessThan(1e-12);
  });

  it('agrees with dense elimination on random graphs, in any order, factored twice', () => {
    const rand = seededRandom(5);
    for (let trial = 0; trial < 20; trial += 1) {
      const count = 2 + Math.floor(rand() * 25);
      const pairs = new Set<string>();
      for (let k = 0; k < 2 * count; k += 1) {
        const [a, b] = [Math.floor(rand() * count), Math.floor(rand() * count)];
        if (a !== b) pairs.add(`${Math.min(a, b)} ${Math.max(a, b)}`);
      }
      const edges = Uint32Array.from([...pairs].flatMap((pair) => pair.split(' ').map(Number)));
      const order = Int32Array.from({ length: count }, (_, i) => i).sort(
        (a, b) => Math.sin(a + trial) - Math.sin(b + trial),
      );
      const first = systemOf(count, edges, () => 1);
      const weights = Float64Array.from({ length: edges.length / 2 }, () => 0.5 + rand());
      const second = systemOf(count, edges, (e) => weights[e]);
      const ldl = new SparseLdl(count, first.rows, first.cols, order);
      ldl.factor(first.values);
      expect(ldl.factor(second.values)).toBe(true);
      const b = Float64Array.from({ length: count }, () => rand() - 0.5);
      const x = b.slice();
      ldl.solve(x);
      const dense = denseSolve(count, second, b);
      x.forEach((value, i) => expect(value).toBeCloseTo(dense[i], 9));
    }
  });

  it('says when a matrix is not positive definite, and takes the next one', () => {
    const rows = Int32Array.from([0, 1, 0]);
    const cols = Int32Array.from([0, 1, 1]);
    const ldl = new SparseLdl(2, rows, cols, Int32Array.from([0, 1]));
    expect(ldl.factor(Float64Array.from([1, 1, 2]))).toBe(false);
    expect(ldl.factor(Float64Array.from([2, 2, 1]))).toBe(true);
    const x = Float64Array.from([3, 3]);
    ldl.solve(x);
    expect([...x]).toEqual([1, 1]);
  });
});

describe('dissectionOrder', () => {
  it('names every point once and keeps the factor of a grid far thinner than the natural order', () => {
    const { points, edges, count } = grid(40);
    const order = dissectionOrder(points, 2, edges);
    expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, i) => i));
    const { rows, cols } = systemOf(count, edges, () => 1);
    const natural = Int32Array.from({ length: count }, (_, i) => i);
    expect(new SparseLdl(count, rows, cols, order).fillIn).toBeLessThan(
      0.45 * new SparseLdl(count, rows, cols, natural).fillIn,
    );
  });
});

/** Gaussian elimination with a full matrix, the plain way. */
function denseSolve(count: number, { rows, cols, values }: ReturnType<typeof systemOf>, b: Float64Array): number[] {
  const m = Array.from({ length: count }, (_, i) => [...Array<number>(count).fill(0), b[i]]);
  for (let k = 0; k < rows.length; k += 1) {
    m[rows[k]][cols[k]] += values[k];
    if (rows[k] !== cols[k]) m[cols[k]][rows[k]] += values[k];
  }
  for (let i = 0; i < count; i += 1) {
    for (let r = i + 1; r < count; r += 1) {
      const factor = m[r][i] / m[i][i];
      for (let c = i; c <= count; c += 1) m[r][c] -= factor * m[i][c];
    }
  }
  const x = Array<number>(count).fill(0);
  for (let i = count - 1; i >= 0; i -= 1) {
    x[i] = m[i][count];
    for (let c = i + 1; c < count; c += 1) x[i] -= m[i][c] * x[c];
    x[i] /= m[i][i];
  }
  return x;
}
