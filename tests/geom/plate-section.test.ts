import { describe, expect, it } from 'vitest';
import { plateVolume, type Plate } from '../../src/geom/plate.ts';
import { cutPlate, isInArea, thicknessAt, type CutArea, type SectionPlane } from '../../src/geom/plate-section.ts';
import { ringArea } from '../../src/geom/ring.ts';
import { rad, vec3 } from '../../src/geom/vec.ts';

/** A plate over a square of `side`, `t` thick, whose four edges lean by `bevel`: the back stands inside the face. */
function bevelled(side: number, t: number, bevel: number): Plate {
  const inset = t * Math.tan(bevel);
  const square = (a: number, b: number, z: number): number[] => [a, a, z, b, a, z, b, b, z, a, b, z];
  return {
    triangles: Uint32Array.of(0, 1, 2, 0, 2, 3),
    face: square(0, side, t),
    back: square(inset, side - inset, 0),
    borders: Uint32Array.of(0, 1, 4, 5),
  };
}

/** A tube wall of `sides` panels between two radii, closed round, open above and below. */
function tube(sides: number, outside: number, inside: number, height: number): Plate {
  const triangles: number[] = [];
  const borders: number[] = [];
  const ring = (radius: number): number[] =>
    Array.from({ length: 2 * sides }, (_, i) => {
      const angle = (2 * Math.PI * (i >> 1)) / sides;
      return [radius * Math.cos(angle), radius * Math.sin(angle), i % 2 === 0 ? 0 : height];
    }).flat();
  for (let i = 0; i < sides; i += 1) {
    const [a, b, c, d] = [2 * i, 2 * ((i + 1) % sides), 2 * ((i + 1) % sides) + 1, 2 * i + 1];
    borders.push(3 * (triangles.length / 3), 3 * (triangles.length / 3) + 4);
    triangles.push(a, b, c, a, c, d);
  }
  return {
    triangles: Uint32Array.from(triangles),
    face: ring(outside),
    back: ring(inside),
    borders: Uint32Array.from(borders),
  };
}

const area = ({ outer, holes }: CutArea): number =>
  [outer, ...holes].reduce((sum, { points }) => sum + ringArea(points), 0);

function triangulated({ outer, holes, triangles }: CutArea): number {
  const xy = [outer, ...holes].flatMap(({ points }) => [...points]);
  let sum = 0;
  for (let i = 0; i < triangles.length; i += 3)
    sum += Math.abs(ringArea(triangles.slice(i, i + 3).flatMap((p) => [xy[2 * p], xy[2 * p + 1]])));
  return sum;
}

const LEVEL = (z: number): SectionPlane => ({ origin: vec3(0, 0, z), u: vec3(1, 0, 0), v: vec3(0, 1, 0) });

describe('a plate', () => {
  it('holds the foam of a frustum of a pyramid', () => {
    // V = t (A + a + sqrt(A a)) / 3, with the two squares for A and a.
    for (const [t, bevel] of [
      [6, 0],
      [10, 30],
      [10, 45],
      [15, -20],
    ]) {
      const small = 80 - 2 * t * Math.tan(rad(bevel));
      const volume = (t * (80 * 80 + small * small + 80 * small)) / 3;
      expect(plateVolume(bevelled(80, t, rad(bevel)))).toBeCloseTo(volume, 6);
    }
  });

  it('holds the foam of a tube, on the polygon it is made of', () => {
    const n = 24;
    const ring = (n / 2) * Math.sin((2 * Math.PI) / n) * (60 ** 2 - 50 ** 2);
    expect(plateVolume(tube(n, 60, 50, 200))).toBeCloseTo(200 * ring, 6);
  });
});

describe('a plate cut by a plane', () => {
  it('shows a ring of its polygons where a tube is cut across', () => {
    const n = 24;
    const [cut, ...others] = cutPlate(tube(n, 60, 50, 200), LEVEL(70));
    expect(others).toEqual([]);
    expect(cut.holes).toHaveLength(1);
    const ring = (n / 2) * Math.sin((2 * Math.PI) / n) * (60 ** 2 - 50 ** 2);
    expect(area(cut)).toBeCloseTo(ring, 9);
    expect(triangulated(cut)).toBeCloseTo(ring, 9);
    // Apothems of the two polygons: between them, square to a panel, lies the wall.
    const apothem = Math.cos(Math.PI / n);
    const at = 55 * apothem;
    const [x, y] = [at * Math.cos(Math.PI / n), at * Math.sin(Math.PI / n)];
    expect(isInArea(cut, x, y)).toBe(true);
    expect(isInArea(cut, 0, 0)).toBe(false);
    expect(thicknessAt(cut, x, y)).toBeCloseTo(10 * apothem, 9);
  });

  it('shows the profile of a bevelled plate, and more foam where it is cut at a slant', () => {
    const plate = bevelled(80, 10, rad(45));
    const upright: SectionPlane = { origin: vec3(40, 0, 0), u: vec3(0, 1, 0), v: vec3(0, 0, 1) };
    const [cut] = cutPlate(plate, upright);
    // A trapezium: 80 at the face, 60 at the back, 10 high.
    expect(area(cut)).toBeCloseTo(700, 9);
    expect(thicknessAt(cut, 40, 4)).toBeCloseTo(10, 9);
    // Leaned by 30 degrees about x the plane crosses 10 mm of foam in 10 / cos 30.
    const [s, c] = [Math.sin(rad(30)), Math.cos(rad(30))];
    const leaned: SectionPlane = { origin: vec3(0, 40, 5), u: vec3(1, 0, 0), v: vec3(0, s, c) };
    expect(thicknessAt(cutPlate(plate, leaned)[0], 40, 0)).toBeCloseTo(10 / c, 9);
  });

  it('moves with its shift and is missed beyond its ends', () => {
    const plate = bevelled(80, 10, 0);
    expect(cutPlate(plate, LEVEL(11))).toEqual([]);
    const [cut] = cutPlate(plate, LEVEL(11), vec3(5, 0, 4));
    expect(Math.min(...cut.outer.points.filter((_, i) => i % 2 === 0))).toBeCloseTo(5, 12);
    expect(area(cut)).toBeCloseTo(6400, 9);
  });

  it('closes every line when the plane runs through corners, edges and whole faces', () => {
    const plate = tube(8, 60, 50, 100);
    for (const plane of [
      LEVEL(0),
      LEVEL(100),
      { origin: vec3(0, 0, 0), u: vec3(1, 0, 0), v: vec3(0, 0, 1) },
      { origin: vec3(60, 0, 0), u: vec3(0, 1, 0), v: vec3(0, 0, 1) },
    ]) {
      for (const cut of cutPlate(plate, plane)) {
        expect([...cut.outer.points].every(Number.isFinite)).toBe(true);
        expect(triangulated(cut)).toBeCloseTo(area(cut), 6);
      }
    }
  });
});
