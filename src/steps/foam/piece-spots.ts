import { boxOfPoints } from '../../geom/ring.ts';
import { turnBetween } from '../../geom/turn-between.ts';
import { movePoint } from '../../geom/turn-and-move.ts';
import { rad, type Vec2 } from '../../geom/vec.ts';
import type { FlatPiece } from '../../model/flat-piece.ts';
import type { FoamSpot, WorstSpot } from '../../model/forming.ts';
import type { PieceShape } from './piece-shape.ts';

/** A place that is more than this share of its piece is no longer somewhere on it. */
const MOST_OF_IT = 0.5;
/** A direction this near to an arrow runs along it, radians. */
const NEARLY_ALONG = rad(22.5);

/**
 * The worst spots of a flat piece in the piece's own frame, with words. The words hold whichever side is traced: they speak of the up arrow
 * and of ends and sides, never of left and right.
 */
export function pieceSpots(
  flat: FlatPiece,
  shape: Pick<PieceShape, 'uv' | 'up' | 'neutral'>,
  areaMm2: number,
): readonly FoamSpot[] {
  const spots = flat.spots ?? [];
  if (spots.length === 0) return [];
  const turnRad = turnBetween(flat.uv, shape.uv);
  return spots.map((spot) => {
    const at = movePoint(spot.at, { x: 0, y: 0, turnRad });
    const alongRad = (((spot.alongRad + turnRad) % Math.PI) + Math.PI) % Math.PI;
    const placeText = spot.areaMm2 > MOST_OF_IT * areaMm2 ? 'over more than half of it' : placeOf(at, shape);
    return { ...spot, at, alongRad, placeText, wayText: wayOf(spot, alongRad, shape.up) };
  });
}

/** Where in the box round a piece a point lies, by thirds. */
function placeOf(at: Vec2, { up, neutral }: Pick<PieceShape, 'up' | 'neutral'>): string {
  const { minX, minY, maxX, maxY } = boxOfPoints(neutral[0]);
  const third = (value: number, min: number, max: number): number =>
    max > min ? ((value - min) / (max - min)) * 3 : 1.5;
  const [x, y] = [third(at.x, minX, maxX), third(at.y, minY, maxY)];
  const isMiddle = (value: number): boolean => value >= 1 && value <= 2;
  if (isMiddle(x) && isMiddle(y)) return 'in the middle';
  // With an arrow, up runs up; without, the longer side of the piece runs along x.
  if (up !== null) return isMiddle(y) ? 'at one side, half way up' : y > 2 ? 'near the top' : 'near the bottom';
  return isMiddle(x) ? 'at the middle of a long side' : 'near one end';
}

function wayOf({ kind, way }: WorstSpot, alongRad: number, up: Vec2 | null): string {
  const verb = kind === 'stretch' ? 'pull it' : 'gather it';
  if (way === 'all') return `${verb} in every direction`;
  if (way === 'edge') return `${verb} along the edge`;
  if (way === 'varied') return `${verb} the way the strokes show`;
  const arrow = up ?? { x: 1, y: 0 };
  const off = Math.acos(Math.min(1, Math.abs(Math.cos(alongRad) * arrow.x + Math.sin(alongRad) * arrow.y)));
  const isAlong = off <= NEARLY_ALONG;
  const isAcross = off >= Math.PI / 2 - NEARLY_ALONG;
  if (up === null) return `${verb} ${isAlong ? 'lengthwise' : isAcross ? 'crosswise' : 'aslant to its length'}`;
  return `${verb} ${isAlong ? 'along' : isAcross ? 'across' : 'aslant to'} the up arrow`;
}
