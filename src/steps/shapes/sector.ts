import type { Vec2 } from '../../geom/vec.ts';
import { arc, onCircle } from '../../geom/outline.ts';
import type { ShapeBend, ShapeEdge, ShapePiece } from '../../model/shape.ts';
import { edge, piece, side } from './pieces.ts';

const ORIGIN: Vec2 = { x: 0, y: 0 };

export interface Sector {
  /** Radii of the arcs, mm, outer > inner >= 0. */
  readonly outer: number;
  readonly inner: number;
  /** Radians, up to a whole turn. */
  readonly angle: number;
}

/**
 * A sector, or a part of a ring where `inner` > 0, about the origin with its middle on +y: the development of a cone or of a frustum.
 *
 *      start \  outer  / end        counter-clockwise: outer, end, inner, start
 *             \_inner_/
 *                 o
 */
export function sectorPiece(
  name: string,
  { outer, inner, angle }: Sector,
  extra: {
    readonly quantity?: number;
    readonly bend?: ShapeBend;
    readonly seam?: string;
    readonly outerSeam?: string | undefined;
    readonly innerSeam?: string | undefined;
    readonly outerName?: string;
    readonly innerName?: string;
    /** Of the arcs that belong to a seam. */
    readonly rimBevelDeg?: number;
  } = {},
): ShapePiece {
  const { seam, outerSeam, innerSeam, rimBevelDeg = 0, outerName = 'base', innerName = 'top', ...rest } = extra;
  const first = (Math.PI - angle) / 2;
  const at = (radius: number, end: 0 | 1): Vec2 =>
    radius === 0 ? ORIGIN : onCircle(ORIGIN, radius, first + end * angle);
  const edges: ShapeEdge[] = [
    edge(outerName, arc(ORIGIN, outer, first, angle), {
      seam: outerSeam,
      bevelDeg: outerSeam === undefined ? 0 : rimBevelDeg,
    }),
    side('end', at(outer, 1), at(inner, 1), { seam }),
  ];
  if (inner > 0)
    edges.push(
      edge(innerName, arc(ORIGIN, inner, first + angle, -angle), {
        seam: innerSeam,
        bevelDeg: innerSeam === undefined ? 0 : rimBevelDeg,
      }),
    );
  edges.push(side('start', at(inner, 0), at(outer, 0), { seam }));
  return piece(name, edges, rest);
}

/** Where a place of a cone lies in its sector: the share of the way round, and the distance from the apex, mm. */
export const inSector = ({ angle }: Sector, share: number, radius: number): Vec2 =>
  onCircle(ORIGIN, radius, (Math.PI - angle) / 2 + angle * share);
