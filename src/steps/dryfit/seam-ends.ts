import type { PieceId, SeamId } from '../../base/ids.ts';
import { length3, sub3, type Vec2, type Vec3 } from '../../geom/vec.ts';
import type { FoamSeam } from '../../model/foam-piece.ts';
import type { Skin } from './cut-edge.ts';
import { edgeCount, neutralRing, ringPoint, seamVertex, type FitSide } from './fit-side.ts';
import { corners, heightOf, placed, type BentSide, type EdgePlace, type Placed } from './placed-edge.ts';

/** One side's edge where a seam ends, put together: the last stretch of its cut, up to the corner of the piece. */
export interface SeamEnd {
  readonly seam: SeamId;
  readonly piece: PieceId;
  readonly pieceName: string;
  /** Of the sculpt. */
  readonly vertex: number;
  /** The corner of the piece: a ring of its neutral outline and the point on it. */
  readonly ring: number;
  readonly at: number;
  /** Whether the ring, with the piece on its left, arrives at the corner by this seam or leaves it. */
  readonly isArriving: boolean;
  /** The corner of the cut at each skin, and the other end of its line there. */
  readonly corner: Readonly<Record<Skin, Vec3>>;
  readonly next: Readonly<Record<Skin, Vec3>>;
  /** The same two places on the flat piece, mm. */
  readonly flat: { readonly corner: Readonly<Record<Skin, Vec2>>; readonly next: Readonly<Record<Skin, Vec2>> };
  /** The piece's outward normal at the corner, and the way outward across the seam, length 1. */
  readonly normal: Vec3;
  readonly outward: Vec3;
}

/** A cut line no longer than this tells no way, mm. */
const NO_LENGTH_MM = 1e-6;

/**
 * The four ends of a seam, two on each side. None of a seam without ends, and of edges that are not cut on the plane that halves their fold:
 * laps and rebates, and folds built otherwise, lie on each other by right.
 */
export function seamEnds(seam: FoamSeam, [a, b]: readonly [BentSide, BentSide]): readonly SeamEnd[] {
  if (seam.kind !== 'butt' || seam.standSide !== undefined || seam.steep !== undefined) return [];
  return ([0, 1] as const).flatMap((stop) => {
    const i = stop === 0 ? 0 : edgeCount(a.side) - 1;
    const points = (skin: Skin, end: 0 | 1): readonly EndPoint[] =>
      corners({ a, b, i }, skin, end).map((place, which) => {
        const bent = which === 0 ? a : b;
        return { ...placed(bent, i, place, heightOf(bent, skin)), flat: flatPlace(bent.side, i, place) };
      });
    const [face, back] = [points('face', stop), points('back', stop)];
    const other = stop === 0 ? 1 : 0;
    const [nextFace, nextBack] = [points('face', other), points('back', other)];
    return [a, b].flatMap(({ side }, which): SeamEnd[] => {
      const { edge, patch, piece } = side;
      if (edge.from === edge.to) return [];
      const next = { face: nextFace[which].at, back: nextBack[which].at };
      const corner = { face: face[which].at, back: back[which].at };
      if (length3(sub3(next.face, corner.face)) < NO_LENGTH_MM) return [];
      if (length3(sub3(next.back, corner.back)) < NO_LENGTH_MM) return [];
      const { normal, outward } = face[which];
      return [
        {
          seam: seam.id,
          piece: piece.id,
          pieceName: piece.name,
          vertex: patch.meshVertices[seamVertex(side, i, stop)],
          ring: edge.ring,
          at: ringPoint(side, i, stop),
          isArriving: (stop === 1) !== edge.reversed,
          corner,
          next,
          flat: {
            corner: { face: face[which].flat, back: back[which].flat },
            next: { face: nextFace[which].flat, back: nextBack[which].flat },
          },
          normal,
          outward,
        },
      ];
    });
  });
}

interface EndPoint extends Placed {
  readonly flat: Vec2;
}

/** A place of a side's edge `i` on the flat piece. */
function flatPlace(side: FitSide, i: number, { f, out }: EdgePlace): Vec2 {
  const ring = neutralRing(side);
  const [p, q] = [2 * ringPoint(side, i, 0), 2 * ringPoint(side, i, 1)];
  const [dx, dy] = [ring[q] - ring[p], ring[q + 1] - ring[p + 1]];
  const length = Math.hypot(dx, dy);
  const o = length > 0 ? (side.edge.reversed ? -out : out) / length : 0;
  return { x: ring[p] + f * dx + o * dy, y: ring[p + 1] + f * dy - o * dx };
}
