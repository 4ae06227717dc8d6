import { describe, expect, it } from 'vitest';
import type { PatchView } from '../../src/model/bench-view.ts';
import { roomSigns, stretchStrokes } from '../../src/viewport/stretch-strokes.ts';

/** A square of 100 mm in two triangles, the second of which is triangle 7 of the sculpt. */
function square(stretchPct: readonly [number, number], squashPct: readonly [number, number], angle: number): PatchView {
  return {
    piece: 0,
    kind: 'disc',
    meshTriangles: Uint32Array.of(3, 7),
    triangles: Uint32Array.of(0, 1, 2, 0, 2, 3),
    meshVertices: Uint32Array.of(0, 1, 2, 3),
    uv: Float32Array.of(0, 0, 100, 0, 100, 100, 0, 100),
    stretchPct: Float32Array.from(stretchPct),
    squashPct: Float32Array.from(squashPct),
    majorAngle: Float32Array.of(angle, angle),
    stretchSpread: null,
    squashSpread: null,
    isFinal: true,
  };
}

/** Start and end of each stroke in the flat piece, from its weights. */
function ends({ triangles, weights }: ReturnType<typeof stretchStrokes>, patch: PatchView): number[][] {
  const uv = patch.uv ?? new Float32Array(0);
  return [...triangles].map((t, i) => {
    const corner = 3 * [...patch.meshTriangles].indexOf(t);
    const at = (w: number, k: number): number =>
      [0, 1, 2].reduce((sum, c) => sum + weights[w + c] * uv[2 * patch.triangles[corner + c] + k], 0);
    return [at(6 * i, 0), at(6 * i, 1), at(6 * i + 3, 0), at(6 * i + 3, 1)];
  });
}

describe('strokes of stretch', () => {
  it('run along the stretch and across the squash', () => {
    const pulled = square([4, 4], [0, 0], 0.5);
    for (const [x, y, u, v] of ends(stretchStrokes([pulled], 8), pulled))
      expect(Math.atan2(v - y, u - x)).toBeCloseTo(0.5, 3);
    const gathered = square([0, 0], [4, 4], 0.5);
    for (const [x, y, u, v] of ends(stretchStrokes([gathered], 8), gathered)) {
      expect(Math.abs(Math.sin(Math.atan2(v - y, u - x) - 0.5))).toBeCloseTo(1, 5);
    }
  });

  it('cross where foam is pulled one way and gathered the other: the whole one passes through the gap of the broken one', () => {
    const both = square([8, 8], [4, 4], 0.5);
    const lines = ends(stretchStrokes([both], 8), both);
    expect(lines.length % 3).toBe(0);
    for (let i = 0; i < lines.length; i += 3) {
      const [whole, ...halves] = lines.slice(i, i + 3);
      const middle = [(whole[0] + whole[2]) / 2, (whole[1] + whole[3]) / 2];
      const length = Math.hypot(whole[2] - whole[0], whole[3] - whole[1]);
      const [one, other] = halves.map(([x, y, u, v]) => ({
        near: Math.hypot(x - middle[0], y - middle[1]),
        far: Math.hypot(u - middle[0], v - middle[1]),
        along: Math.cos(Math.atan2(v - middle[1], u - middle[0]) - 0.5 - Math.PI / 2),
      }));
      expect(one.near).toBeGreaterThan(0.5);
      expect(one.near).toBeCloseTo(other.near, 4);
      expect(one.far).toBeCloseTo(other.far, 4);
      expect(2 * one.far).toBeLessThan(length);
      expect(one.along).toBeCloseTo(-other.along, 4);
      expect(Math.abs(one.along)).toBeCloseTo(1, 4);
    }
  });

  it('grow with the change of length up to the limit', () => {
    const length = (pct: number): number => {
      const patch = square([pct, pct], [0, 0], 0);
      const [[x, y, u, v]] = ends(stretchStrokes([patch], 8), patch);
      return Math.hypot(u - x, v - y);
    };
    expect(length(4)).toBeGreaterThan(length(2));
    expect(length(8)).toBeGreaterThan(length(4));
    expect(length(80)).toBeCloseTo(length(8), 4);
  });

  it('stand on the triangle they belong to, and nowhere without a change', () => {
    const { triangles } = stretchStrokes([square([0, 5], [0, 0], 1)], 8);
    expect(new Set(triangles)).toEqual(new Set([7]));
    expect(stretchStrokes([square([0.1, 0.1], [0, 0], 1)], 8).triangles).toHaveLength(0);
    expect(stretchStrokes([{ ...square([5, 5], [0, 0], 1), uv: null }], 8).triangles).toHaveLength(0);
  });
});

it('room is told by signs: a plus where there is room, a minus where the core is in the foam, none where it just touches or is not beside it', () => {
  const patch = square([0, 0], [0, 0], 0);
  const signs = (...atVertices: number[]) => {
    const room = { atVertices: Float32Array.from(atVertices), limitMm: 10, wantedMm: 0 };
    return ends(roomSigns([patch], room), patch);
  };
  const tight = signs(-5, -5, -5, -5);
  expect(tight.length).toBeGreaterThan(0);
  for (const [x, y, u, v] of tight) expect([u - x > 1, Math.abs(v - y) < 1e-3]).toEqual([true, true]);
  const free = signs(5, 5, 5, 5);
  expect(free).toHaveLength(2 * tight.length);
  for (const [x, y, u, v] of free.filter((_, i) => i % 2 === 1))
    expect([v - y > 1, Math.abs(u - x) < 1e-3]).toEqual([true, true]);
  expect(signs(0.5, 0.5, 0.5, 0.5)).toEqual([]);
  expect(signs(NaN, NaN, NaN, NaN)).toEqual([]);
});
