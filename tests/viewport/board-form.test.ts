import { describe, expect, it } from 'vitest';
import { boardForm } from '../../src/viewport/board-form.ts';
import { enclosedVolume } from '../support/enclosed-volume.ts';

const SIZES = { width: 600, depth: 400, thickness: 24, corner: 14, edge: 1.5 };

describe('the board of the bench', () => {
  const { positions, normals, corners } = boardForm(SIZES);
  const at = (packed: Float32Array, i: number): number[] => [...packed.subarray(3 * i, 3 * i + 3)];
  const triangles = Array.from({ length: corners.length / 3 }, (_, t) => corners.slice(3 * t, 3 * t + 3));

  it('is as large as it is said to be, and holds what it encloses', () => {
    const along = (axis: number): number[] => {
      const values = [...positions].filter((_, i) => i % 3 === axis);
      return [Math.min(...values), Math.max(...values)];
    };
    expect([along(0), along(1), along(2)]).toEqual([
      [-301.5, 301.5],
      [-24, 0],
      [-201.5, 201.5],
    ]);
    const volume = enclosedVolume({ positions: Float64Array.from(positions), triangles: Uint32Array.from(corners) });
    // Between the prism of its upper face and that of its widest place, both with round corners: w d - (4 - pi) r^2.
    const prism = (out: number): number =>
      ((600 + 2 * out) * (400 + 2 * out) - (4 - Math.PI) * (14 + out) ** 2) * SIZES.thickness;
    expect(volume).toBeGreaterThan(prism(0));
    expect(volume).toBeLessThan(prism(1.5));
  });

  it('is closed, and its normals look out', () => {
    const sides = new Set(triangles.flatMap(([a, b, c]) => [`${a} ${b}`, `${b} ${c}`, `${c} ${a}`]));
    expect(sides.size).toBe(corners.length);
    for (const side of sides) expect(sides.has(side.split(' ').reverse().join(' '))).toBe(true);
    for (const triangle of triangles) {
      const [a, b, c] = triangle.map((i) => at(positions, i));
      const [u, v] = [b, c].map((p) => p.map((value, k) => value - a[k]));
      const across = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
      for (const i of triangle) expect(at(normals, i).reduce((sum, n, k) => sum + n * across[k], 0)).toBeGreaterThan(0);
    }
  });
});
