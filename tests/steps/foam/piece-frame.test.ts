import { describe, expect, it } from 'vitest';
import type { Patch } from '../../../src/model/patch.ts';
import { turnUpright } from '../../../src/steps/foam/piece-frame.ts';

/** A rectangle of 30 × 40 mm in two triangles, of vertices 0 to 3 of the mesh in another order. */
const PATCH = {
  meshVertices: Uint32Array.of(3, 0, 1, 2),
  meshTriangles: Uint32Array.of(0, 1),
  triangles: Uint32Array.of(0, 1, 2, 0, 2, 3),
  loops: [Uint32Array.of(0, 1, 2, 3)],
} as unknown as Patch;

/** Flat, turned by the angle of 0.6, 0.8: its sides of 30 mm run along 0.6, 0.8. */
const FLAT = [
  [0, 0],
  [18, 24],
  [-14, 48],
  [-32, 24],
];
const UV = Float64Array.from(FLAT.flat());

/** Places in space whose height on an axis is a function of the flat place. */
function standing(axis: 0 | 1 | 2, height: (x: number, y: number) => number): Float64Array {
  const positions = new Float64Array(12);
  FLAT.forEach(([x, y], local) => {
    const v = PATCH.meshVertices[local];
    positions[3 * v + axis] = height(x, y);
  });
  return positions;
}

const expectNear = (found: ArrayLike<number>, wanted: readonly number[]): void =>
  wanted.forEach((mm, i) => expect(found[i]).toBeCloseTo(mm, 9));

describe('the frame of a piece', () => {
  it.each([
    ['x', 0],
    ['y', 1],
    ['z', 2],
  ] as const)('turns the rise of the sculpt along %s straight up the page', (upAxis, axis) => {
    // It rises along its sides of 40 mm, which run along -0.8, 0.6.
    const frame = turnUpright(
      PATCH,
      UV,
      standing(axis, (x, y) => 0.5 * (-0.8 * x + 0.6 * y)),
      upAxis,
    );
    expect(frame.up).toEqual({ x: 0, y: 1 });
    expectNear(frame.uv, [0, 0, 30, 0, 30, 40, 0, 40]);
  });

  it('turns a slanting rise upright', () => {
    const frame = turnUpright(
      PATCH,
      UV,
      standing(2, (x) => 0.4 * x),
      'z',
    );
    // What ran to the right runs up now: a quarter turn.
    expectNear(frame.uv, [0, 0, -24, 18, -48, -14, -24, -32]);
    expect(frame.up).toEqual({ x: 0, y: 1 });
  });

  it('lays what rises by less than 0.15 mm a mm along the long side of its tightest rectangle', () => {
    const level = turnUpright(
      PATCH,
      UV,
      standing(2, (x) => 0.149 * x),
      'z',
    );
    expect(level.up).toBeNull();
    const [dx, dy] = [level.uv[6] - level.uv[0], level.uv[7] - level.uv[1]];
    expect(Math.abs(dx)).toBeCloseTo(40, 9);
    expect(dy).toBeCloseTo(0, 9);
    expect(
      turnUpright(
        PATCH,
        UV,
        standing(2, (x) => 0.151 * x),
        'z',
      ).up,
    ).toEqual({ x: 0, y: 1 });
  });

  it('takes the mean of the slopes by area', () => {
    // Heights 0, 0, 20, 20 of a square of 40 mm: along y on both triangles.
    const square = Float64Array.of(0, 0, 40, 0, 40, 40, 0, 40);
    const positions = new Float64Array(12);
    [0, 0, 20, 20].forEach((z, local) => (positions[3 * PATCH.meshVertices[local] + 2] = z));
    expectNear(turnUpright(PATCH, square, positions, 'z').uv, [...square]);
    // Heights 0, 20, 20, 0 of a square: along x on both.
    [0, 20, 20, 0].forEach((z, local) => (positions[3 * PATCH.meshVertices[local] + 2] = z));
    expectNear(turnUpright(PATCH, square, positions, 'z').uv, [0, 0, 0, 40, -40, 40, -40, 0]);
    // Heights 0, 0, 0, 20: the upper triangle alone rises, along -x and y, so 45 degrees to the left.
    [0, 0, 0, 20].forEach((z, local) => (positions[3 * PATCH.meshVertices[local] + 2] = z));
    const turned = turnUpright(PATCH, square, positions, 'z').uv;
    // The upper left corner comes to stand as far to the right as up.
    expectNear(turned.slice(6), [40 * Math.SQRT1_2, 40 * Math.SQRT1_2]);
  });

  it('of a sliver without area is its own', () => {
    const line = Float64Array.of(0, 0, 30, 0, 30, 0, 0, 0);
    const frame = turnUpright(
      PATCH,
      line,
      standing(2, (x) => x),
      'z',
    );
    expect(frame.up).toBeNull();
    expect(Math.abs(frame.uv[2] - frame.uv[0])).toBeCloseTo(30, 9);
  });

  it('is a pure turn: no length changes', () => {
    const { uv } = turnUpright(
      PATCH,
      UV,
      standing(1, (x, y) => 0.3 * x + 0.7 * y),
      'y',
    );
    for (const [a, b] of [
      [0, 1],
      [1, 2],
      [0, 2],
      [1, 3],
    ]) {
      const before = Math.hypot(UV[2 * a] - UV[2 * b], UV[2 * a + 1] - UV[2 * b + 1]);
      expect(Math.hypot(uv[2 * a] - uv[2 * b], uv[2 * a + 1] - uv[2 * b + 1])).toBeCloseTo(before, 9);
    }
    // And no mirror: the ring still runs counter-clockwise.
    const area = (uv[2] - uv[0]) * (uv[5] - uv[1]) - (uv[4] - uv[0]) * (uv[3] - uv[1]);
    expect(area).toBeCloseTo(1200, 6);
  });
});
