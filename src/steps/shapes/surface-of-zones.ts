import { vec3 } from '../../geom/vec.ts';
import { arc, onCircle } from '../../geom/outline.ts';
import type { ShapePatch, ShapePiece } from '../../model/shape.ts';
import { edge, piece, rolled, side } from './pieces.ts';
import { inSector, sectorPiece } from './sector.ts';

/** A band of a cone about the z axis, mm: from the rim (r0, z0) to the rim (r1, z1), the outside on the right of that way seen with z up. */
export interface Band {
  readonly r0: number;
  readonly z0: number;
  readonly r1: number;
  readonly z1: number;
}

export interface DevelopedBand {
  readonly piece: ShapePiece;
  readonly patch: ShapePatch;
  readonly slant: number;
  /** Radii of the arcs of its sector, Infinity for a cylinder, and its angle, radians. */
  readonly outer: number;
  readonly inner: number;
  readonly angle: number;
  readonly area: number;
}

/** Lays a band flat: part of a ring, a sector where it comes to a point, a strip where it is a cylinder, a disc's part where it is level. */
export function developBand(
  name: string,
  band: Band,
  seams: { readonly lower: string | undefined; readonly upper: string | undefined },
  bevelDeg = 0,
): DevelopedBand {
  const { r0, z0, r1, z1 } = band;
  const slant = Math.hypot(r1 - r0, z1 - z0);
  const area = Math.PI * (r0 + r1) * slant;
  const solid: ShapePatch['solid'] = (u, v) => {
    const [r, turn] = [r0 + (r1 - r0) * v, 2 * Math.PI * u];
    return vec3(r * Math.cos(turn), r * Math.sin(turn), z0 + (z1 - z0) * v);
  };
  const sin = Math.abs(r1 - r0) / slant;
  // Under this the arcs would be so flat that a strip is nearer than rounding.
  if (sin < 1e-9) {
    const wide = 2 * Math.PI * r0;
    const [a, b, c, d] = [
      { x: 0, y: 0 },
      { x: wide, y: 0 },
      { x: wide, y: slant },
      { x: 0, y: slant },
    ];
    const made = piece(
      name,
      [
        side('lower rim', a, b, { seam: seams.lower, bevelDeg: seams.lower === undefined ? 0 : bevelDeg }),
        side('end', b, c, { seam: `${name} seam` }),
        side('upper rim', c, d, { seam: seams.upper, bevelDeg: seams.upper === undefined ? 0 : bevelDeg }),
        side('start', d, a, { seam: `${name} seam` }),
      ],
      { bend: rolled(r0) },
    );
    return {
      piece: made,
      slant,
      outer: Infinity,
      inner: Infinity,
      angle: 0,
      area,
      patch: { piece: name, solid, flat: (u, v) => ({ x: wide * u, y: slant * v }) },
    };
  }
  const isLowerLarger = r0 > r1;
  const [large, small] = isLowerLarger ? [r0, r1] : [r1, r0];
  if (z0 === z1 || sin === 1) {
    // A level band is a ring without a seam.
    const [outerSeam, innerSeam] = isLowerLarger ? [seams.lower, seams.upper] : [seams.upper, seams.lower];
    const origin = { x: 0, y: 0 };
    const made = piece(
      name,
      [
        edge('outer rim', arc(origin, large, 0, 2 * Math.PI), {
          seam: outerSeam,
          bevelDeg: outerSeam === undefined ? 0 : bevelDeg,
        }),
      ],
      {
        holes:
          small > 0
            ? [
                [
                  edge('inner rim', arc(origin, small, 0, -2 * Math.PI), {
                    seam: innerSeam,
                    bevelDeg: innerSeam === undefined ? 0 : bevelDeg,
                  }),
                ],
              ]
            : [],
      },
    );
    const turn = isLowerLarger ? 1 : -1;
    const flat: ShapePatch['flat'] = (u, v) => onCircle(origin, r0 + (r1 - r0) * v, turn * 2 * Math.PI * u);
    return {
      piece: made,
      slant,
      outer: large,
      inner: small,
      angle: 2 * Math.PI,
      area,
      patch: { piece: name, solid, flat, cut: ['v0', 'v1'] },
    };
  }
  const sector = { outer: large / sin, inner: small / sin, angle: Math.min(2 * Math.PI, 2 * Math.PI * sin) };
  const made = sectorPiece(name, sector, {
    seam: `${name} seam`,
    outerName: isLowerLarger ? 'lower rim' : 'upper rim',
    innerName: isLowerLarger ? 'upper rim' : 'lower rim',
    outerSeam: isLowerLarger ? seams.lower : seams.upper,
    innerSeam: isLowerLarger ? seams.upper : seams.lower,
    rimBevelDeg: bevelDeg,
    bend: rolled(small / Math.sqrt(1 - sin * sin), large / Math.sqrt(1 - sin * sin)),
  });
  const [reach0, reach1] = [r0 / sin, r1 / sin];
  return {
    piece: made,
    slant,
    ...sector,
    area,
    patch: {
      piece: name,
      solid,
      flat: (u, v) => inSector(sector, isLowerLarger ? 1 - u : u, reach0 + (reach1 - reach0) * v),
    },
  };
}
