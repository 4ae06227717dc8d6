import { describe, expect, it } from 'vitest';
import { borderHalfedges, eachPlateTriangle, PLATE_SKIN, plateVolume, type Plate } from '../../src/geom/plate.ts';

/** Two triangles that make a quad, counter-clockwise. */
const QUAD = Uint32Array.of(0, 1, 2, 0, 2, 3);
const quadAt = (z: number, width: number, depth: number, x = 0, y = 0): number[] => [
  x,
  y,
  z,
  x + width,
  y,
  z,
  x + width,
  y + depth,
  z,
  x,
  y + depth,
  z,
];
const plate = (face: number[], back: number[]): Plate => ({
  triangles: QUAD,
  face,
  back,
  borders: borderHalfedges(QUAD),
});

describe('borderHalfedges', () => {
  it('are those that no triangle runs against', () => {
    expect([...borderHalfedges(QUAD)]).toEqual([0, 1, 4, 5]);
    expect([...borderHalfedges(Uint32Array.of(7, 3, 5))]).toEqual([0, 1, 2]);
    expect(borderHalfedges(new Uint32Array())).toHaveLength(0);
  });

  it('are none on a closed surface', () => {
    expect(borderHalfedges(Uint32Array.of(0, 2, 1, 0, 1, 3, 1, 2, 3, 2, 0, 3))).toHaveLength(0);
  });
});

describe('eachPlateTriangle', () => {
  it('gives face, back and walls, all seen from outside', () => {
    const found: number[][] = [];
    const triangles = Uint32Array.of(0, 1, 2);
    const borders = Uint32Array.of(1, 2);
    eachPlateTriangle({ triangles, face: new Float64Array(9), borders }, (...triangle) => found.push(triangle));
    expect(found).toEqual([
      [0, 1, 2, PLATE_SKIN.face],
      [3, 5, 4, PLATE_SKIN.back],
      [4, 5, 2, PLATE_SKIN.cut],
      [4, 2, 1, PLATE_SKIN.cut],
      [5, 3, 0, PLATE_SKIN.cut],
      [5, 0, 2, PLATE_SKIN.cut],
    ]);
    expect(PLATE_SKIN).toEqual({ face: 0, back: 1, cut: 2 });
  });

  it('closes the skin: every side is run both ways', () => {
    const sides = new Map<string, number>();
    eachPlateTriangle(plate(quadAt(5, 3, 4), quadAt(2, 3, 4)), (a, b, c) => {
      for (const [v, w] of [
        [a, b],
        [b, c],
        [c, a],
      ]) {
        sides.set(`${v} ${w}`, (sides.get(`${v} ${w}`) ?? 0) + 1);
        sides.set(`${w} ${v}`, (sides.get(`${w} ${v}`) ?? 0) - 1);
      }
    });
    expect([...sides.values()].every((left) => left === 0)).toBe(true);
    expect(sides.size).toBe(2 * 18);
  });
});

describe('plateVolume', () => {
  it('is width by depth by thickness for a flat sheet, wherever it lies', () => {
    expect(plateVolume(plate(quadAt(5, 3, 4), quadAt(2, 3, 4)))).toBeCloseTo(36, 12);
    expect(plateVolume(plate(quadAt(5, 3, 4, -700, 900), quadAt(2, 3, 4, -700, 900)))).toBeCloseTo(36, 9);
  });

  it('is that of a frustum where the back is smaller, and of a slanted block where it is moved aside', () => {
    // (a² + a b + b²) h / 3, a = 4, b = 2, h = 3: as any book of tables has it.
    expect(plateVolume(plate(quadAt(3, 4, 4), quadAt(0, 2, 2, 1, 1)))).toBeCloseTo(28, 12);
    expect(plateVolume(plate(quadAt(3, 4, 4, 7, -2), quadAt(0, 4, 4)))).toBeCloseTo(48, 12);
  });

  it('is the same however the sheet stands in space', () => {
    const turned = (xyz: number[]): number[] => [0, 3, 6, 9].flatMap((i) => [xyz[i + 2], xyz[i], xyz[i + 1]]);
    const turnedBack = (xyz: number[]): number[] => turned(turned(xyz));
    for (const turn of [turned, turnedBack])
      expect(plateVolume(plate(turn(quadAt(9, 4, 4, 5, 6)), turn(quadAt(6, 2, 2, 6, 7))))).toBeCloseTo(28, 11);
  });

  it('is negative where face and back have changed places', () => {
    expect(plateVolume(plate(quadAt(2, 3, 4), quadAt(5, 3, 4)))).toBeCloseTo(-36, 12);
  });
});
