import { fail } from '../../base/result.ts';
import { vec3, type Vec3 } from '../../geom/vec.ts';
import type { ShapeFaces } from '../../model/shape.ts';
import { facePieces, netPiece } from './face-pieces.ts';
import type { Polyhedron } from './polyhedron.ts';
import { warning } from './rolled-sheet.ts';
import type { Development } from './shape-kind.ts';
import { choice, count, length } from './size-fields.ts';
import type { Sizes } from './sizes.ts';

export const AS = choice('as', 'panels: every face a piece; net: one piece to fold', ['panels', 'net']);
export const SHEET = length('thickness', 'thickness of the sheet', { default: 0, least: 0, most: 200 });
/** Which side of the panels the sizes are measured on, and how far that lies inside their face, shares of the thickness. */
export const SIDE = choice('surface', 'surface of the panels that the sizes are measured on', [
  'outside',
  'middle',
  'inside',
]);
export const depthOf = (sizes: Sizes): number => ({ outside: 0, middle: 0.5, inside: 1 })[sizes.word('surface')] ?? 0;

/** Circumradius of the base, from the one size of it that is given; side 60 where none is. */
export function baseRadius(sizes: Sizes, sides: number): number | null {
  const given = ['side', 'circumradius', 'across_flats'].filter((name) => sizes.has(name));
  if (given.length > 1) return null;
  const sin = Math.sin(Math.PI / sides);
  if (given[0] === 'circumradius') return sizes.num('circumradius');
  if (given[0] === 'across_flats') return sizes.num('across_flats') / 2 / Math.cos(Math.PI / sides);
  return (given.length === 0 ? 60 : sizes.num('side')) / 2 / sin;
}

export const BASE_SIZES = [
  count('sides', 'sides of the base', { default: 6, least: 3, most: 200, also: ['number_of_sides', 'n'] }),
  length('side', 'side of the base; or give circumradius or across_flats', {
    also: ['base_side', 'side_length', 'base_edge', 'edge'],
  }),
  length('circumradius', 'from the middle of the base to a corner', { also: ['base_radius'] }),
  length('across_flats', 'twice from the middle of the base to a side'),
];

/** Rings of corners one over the other and faces between them: a ring of one corner is an apex. */
export function rings(sides: number, levels: readonly { readonly radius: number; readonly z: number }[]): ShapeFaces {
  const corners: Vec3[] = [];
  const rows = levels.map(({ radius, z }) => {
    if (radius === 0) return [corners.push(vec3(0, 0, z)) - 1];
    // A side of the polygon faces the front.
    return Array.from({ length: sides }, (_, i) => {
      const turn = -Math.PI / 2 + ((i - 0.5) * 2 * Math.PI) / sides;
      return corners.push(vec3(radius * Math.cos(turn), radius * Math.sin(turn), z)) - 1;
    });
  });
  const faces: number[][] = [];
  if (rows[0].length > 1) faces.push([...rows[0]].reverse());
  for (let k = 1; k < rows.length; k += 1)
    for (let i = 0; i < sides; i += 1) {
      const [a, b] = [rows[k - 1], rows[k]];
      const j = (i + 1) % sides;
      faces.push([...new Set([a[i % a.length], a[j % a.length], b[j % b.length], b[i % b.length]])]);
    }
  const last = rows[rows.length - 1];
  if (last.length > 1) faces.push([...last]);
  return { corners, faces };
}

export function withPieces(
  solid: Polyhedron,
  sizes: Sizes,
  nameOf: (face: number) => string,
): Pick<Development, 'pieces' | 'solid' | 'warnings'> & { readonly net: ReturnType<typeof netPiece> } {
  const net = netPiece(solid);
  const isNet = sizes.word('as') === 'net';
  return {
    net,
    solid,
    pieces: isNet ? [net.piece] : facePieces(solid, nameOf),
    warnings:
      isNet && net.overlaps ? [warning('shape/net-overlaps', 'The net lies over itself: cut it as panels.')] : [],
  };
}

export const tooMany = () => fail('shape/too-many-sizes', 'Give one of side, circumradius and across_flats.');
