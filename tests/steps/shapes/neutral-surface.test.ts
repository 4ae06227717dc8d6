import { describe, expect, it } from 'vitest';
import { cross3, dot3, length3, sub3, unit3 } from '../../../src/geom/vec.ts';
import type { Shape } from '../../../src/model/shape.ts';
import { shapeFrom } from '../../../src/pipeline/shapes.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { nearLengths, solidArea } from './on-the-solid.ts';

const made = (name: string, sizes: Readonly<Record<string, number | string>>): Shape =>
  expectOk(
    shapeFrom(
      name,
      Object.entries(sizes).map(([size, value]) => [size, String(value)] as const),
    ),
  );
const figure = (shape: Shape, name: string): number => shape.measures.find((one) => one.name === name)?.value as number;

describe('an oblique cone of sheet', () => {
  it('is a right one where it does not lean: as a frustum is by its own formula', () => {
    const sizes = { height: 90, thickness: 8, K: 0.4 };
    const [oblique, right] = [
      made('oblique_cone', { ...sizes, base_radius: 70, top_radius: 30, offset: 0 }),
      made('frustum', { ...sizes, large_radius: 70, small_radius: 30 }),
    ];
    expect(oblique.pieces[0].areaMm2).toBeCloseTo(right.pieces[0].areaMm2, 5);
    const lengths = (shape: Shape) => shape.pieces[0].outline.map(({ lengthMm }) => lengthMm).sort((a, b) => a - b);
    lengths(oblique).forEach((one, i) => expect(one).toBeCloseTo(lengths(right)[i], 6));
  });

  it('has a pointed tip where it does not lean', () => {
    const [oblique, right] = [
      made('oblique_cone', { base_radius: 50, height: 120, offset: 0, thickness: 6 }),
      made('cone', { base_radius: 50, height: 120, thickness: 6 }),
    ];
    expect(oblique.pieces[0].outline).toHaveLength(3);
    // One is cut square to its wall at the base, the other level: the base edges are those of the surface at one distance along the wall.
    expect(oblique.pieces[0].areaMm2).toBeLessThan(right.pieces[0].areaMm2 * 1.05);
    expect(oblique.pieces[0].areaMm2).toBeGreaterThan(right.pieces[0].areaMm2 * 0.9);
  });

  it.each(['outside', 'middle', 'inside'])(
    'measured on its %s lies beside the cone by one distance and is only bent',
    (surface) => {
      const sizes = { base_radius: 60, height: 110, offset: 35, top_radius: 20 };
      const bare = made('oblique_cone', sizes);
      const wall = made('oblique_cone', { ...sizes, thickness: 8, K: 0.3, surface });
      const [inner, outer] = [bare.patches[0], wall.patches[0]];
      const distance = { outside: -5.6, middle: -1.6, inside: 2.4 }[surface] ?? NaN;
      for (const u of [0.05, 0.2, 0.5, 0.83])
        for (const v of [0.1, 0.6]) {
          const h = 1e-5;
          const along = (du: number, dv: number) =>
            sub3(inner.solid(u + h * du, v + h * dv), inner.solid(u - h * du, v - h * dv));
          const normal = unit3(cross3(along(1, 0), along(0, 1)));
          const move = sub3(outer.solid(u, v), inner.solid(u, v));
          expect(dot3(move, normal)).toBeCloseTo(distance, 5);
          expect(length3(move)).toBeCloseTo(Math.abs(distance), 5);
          for (const [du, dv] of [
            [1, 0],
            [0, 1],
            [0.7, -0.4],
          ]) {
            const [onSolid, inFlat] = nearLengths(outer, u, v, du, dv);
            expect(inFlat / onSolid).toBeCloseTo(1, 6);
          }
        }
      expect(solidArea(outer) / wall.pieces[0].areaMm2).toBeCloseTo(1, 6);
    },
  );

  it('that is pointed says how small the opening at its tip is', () => {
    const cone = made('oblique_cone', { thickness: 6 });
    expect(figure(cone, 'tip_opening')).toBeGreaterThan(0);
    expect(figure(cone, 'tip_opening')).toBeLessThan(6);
  });
});

describe('a transition of sheet', () => {
  it.each([
    ['outside', -1],
    ['inside', 1],
  ])('measured on its %s has its flat triangles beside the measured ones by the neutral distance', (surface, sign) => {
    const sizes = { side: 120, diameter: 70, height: 80 };
    const [bare, wall] = [made('square_to_round', sizes), made('square_to_round', { ...sizes, thickness: 6, surface })];
    [0, 2, 4, 6, 8].forEach((i) => {
      const [p, q, r] = [bare.patches[i].solid(0, 0), bare.patches[i].solid(1, 0), bare.patches[i].solid(0, 1)];
      const normal = unit3(cross3(sub3(q, p), sub3(r, p)));
      for (const [u, v] of [
        [0, 0],
        [1, 0],
        [0, 1],
      ])
        expect(dot3(sub3(wall.patches[i].solid(u, v), p), normal)).toBeCloseTo(3 * sign, 9);
    });
  });
});

it('caps and zones of sheet are those of their neutral surface', () => {
  expect(figure(made('spherical_cap', { radius: 100, thickness: 10 }), 'radius')).toBe(95);
  expect(
    figure(made('spherical_cap', { radius: 100, thickness: 10, surface: 'inside', K: 0.4 }), 'cap_area'),
  ).toBeCloseTo(2 * Math.PI * 104 ** 2 * (1 - Math.cos(Math.PI / 6)), 7);
  const [bare, wall] = [
    made('torus_zones', { minor_radius: 26 }),
    made('torus_zones', { minor_radius: 30, thickness: 8 }),
  ];
  expect(figure(wall, 'total_flat_area')).toBeCloseTo(figure(bare, 'total_flat_area'), 8);
  for (const name of ['spherical_cap', 'torus_zones', 'oblique_cone', 'square_to_round'])
    expect(shapeFrom(name, [['thickness', '199']]).ok, name).toBe(false);
});
