import { convexHull, tightBox } from '../../geom/convex-hull.ts';
import { boxOfPoints, type Ring } from '../../geom/ring.ts';
import type { FillRule } from '../../model/stock.ts';
import { turnOf, turnRing, type Stance } from './shape.ts';

/** Directions a piece is laid along at most; more tell little. */
const MOST_SIDES = 3;
/** No-fit areas that all pairs of pieces may need: each takes the search a millisecond or two before it can begin. */
const MOST_NO_FITS = 2500;

/** Directions that each of so many pieces may be laid along: few where there are many pieces, at least its tightest box. */
export function sidesFor(pieces: number, turnOver: boolean): number {
  const each = 4 * pieces ** 2 * (turnOver ? 4 : 1);
  return Math.max(1, Math.min(MOST_SIDES, Math.floor(Math.sqrt(MOST_NO_FITS / each))));
}
/** Sides whose directions differ by less than this are one, radians. */
const LIKE_RAD = (3 * Math.PI) / 180;
/** Turns tried for a piece that fits in none of these ways. */
const SLANTS = 90;
/** Room it has there where it can, mm. */
const ROOM_MM = 2;

/**
 * How a piece may lie in a room, whose length runs along x. Any turn: along its tightest box and along the longest sides of its hull, each by quarters.
 * With a grain of its own, or where turns are half or none: that direction (else the up of its drawing) along the room.
 * @param outer     its outline, mm.
 * @param grainRad  how the sheet's length is to lie in its drawing.
 * @param most      directions it may be laid along, >= 1: its tightest box first.
 * @param fits      whether a piece with such a box fits a sheet at all: one that fits in no way is tried slanting.
 */
export function stancesOf(
  outer: Ring,
  grainRad: number | undefined,
  { turns, turnOver }: Pick<FillRule, 'turns' | 'turnOver'>,
  most: number,
  fits: (width: number, height: number) => boolean,
): readonly Stance[] {
  const sides = turnOver ? [false, true] : [false];
  if (turns !== 'any' || grainRad !== undefined) {
    const halves = turns === 'none' ? [0] : [0, Math.PI];
    const along = grainRad ?? Math.PI / 2;
    return sides
      .flatMap((isFlipped) =>
        halves.map((half) => ({ turnRad: half - (isFlipped ? Math.PI - along : along), isFlipped })),
      )
      .sort(asDrawnFirst);
  }
  const bases = directionsOf(outer).slice(0, most);
  const quarters = [0, 1, 2, 3].map((quarter) => (quarter * Math.PI) / 2);
  const all = bases.flatMap((base) =>
    sides.flatMap((isFlipped) =>
      quarters.map((quarter) => ({ turnRad: quarter - (isFlipped ? Math.PI - base : base), isFlipped })),
    ),
  );
  if (all.some((stance) => doesFit(outer, stance, fits))) return all.sort(asDrawnFirst);
  const slants = Array.from({ length: SLANTS }, (_, k): Stance => ({
    turnRad: (Math.PI * k) / SLANTS,
    isFlipped: false,
  }));
  const roomy = (width: number, height: number): boolean => fits(width + ROOM_MM, height + ROOM_MM);
  const first =
    slants.find((stance) => doesFit(outer, stance, roomy)) ?? slants.find((stance) => doesFit(outer, stance, fits));
  return first === undefined ? all : [first, { ...first, turnRad: first.turnRad + Math.PI }];
}

/** Of ways that are as good the one comes first that leaves a drawing on a tall sheet most nearly as it is. */
function asDrawnFirst(a: Stance, b: Stance): number {
  const off = ({ turnRad }: Stance): number => Math.abs(Math.sin((turnRad + Math.PI / 2) / 2));
  return Number(a.isFlipped) - Number(b.isFlipped) || Math.round(1e9 * (off(a) - off(b)));
}

/** Directions along which a piece lies well, radians in [0, a quarter turn): of its tightest box, then of the longest sides of its hull. */
function directionsOf(outer: Ring): readonly number[] {
  const { x, y } = tightBox(outer);
  const hull = convexHull(outer);
  const sides = Array.from({ length: hull.length / 2 }, (_, i) => {
    const j = (2 * i + 2) % hull.length;
    const [dx, dy] = [hull[j] - hull[2 * i], hull[j + 1] - hull[2 * i + 1]];
    return { rad: Math.atan2(dy, dx), mm: Math.hypot(dx, dy) };
  }).sort((a, b) => b.mm - a.mm);
  const found: number[] = [];
  for (const rad of [Math.atan2(y, x), ...sides.map((side) => side.rad)])
    if (!found.some((other) => quarterTurnBetween(rad, other) < LIKE_RAD)) found.push(rad);
  return found;
}

/** Least angle between two directions, quarter turns apart being one. */
function quarterTurnBetween(a: number, b: number): number {
  const quarter = Math.PI / 2;
  const turn = Math.abs(a - b) % quarter;
  return Math.min(turn, quarter - turn);
}

function doesFit(outer: Ring, stance: Stance, fits: (width: number, height: number) => boolean): boolean {
  const box = boxOfPoints(turnRing(outer, turnOf(stance)));
  return fits(box.maxX - box.minX, box.maxY - box.minY);
}
