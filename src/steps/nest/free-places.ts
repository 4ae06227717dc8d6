import type { PieceId } from '../../base/ids.ts';
import type { Region } from '../../geom/polygon-boolean.ts';
import { boxOfPoints } from '../../geom/ring.ts';
import { restOfWhole, unionOfWhole } from '../../geom/whole-union.ts';
import type { FreeBlock, FreePlaces } from '../../model/free-places.ts';
import { convexParts } from './convex-parts.ts';
import { moveInRoom, type FoamRoom, type RoomMove } from './foam-room.ts';
import { latticeRing, stepsPerUnit } from './lattice.ts';
import { noFitRings, type Outlined } from './no-fit.ts';
import { simplifiedRegion } from './outward.ts';
import { turnOf, turnRing } from './shape.ts';

/** What is cut of a template, and where it lies on its sheet. */
export interface LaidArea {
  readonly piece: PieceId;
  readonly copy: number;
  /** As `foamArea` gives it, in the numbers of the template. */
  readonly area: Region;
  readonly move: RoomMove;
}

/** Outlines are followed so closely, mm: pieces that touch by hand are nearer than those that a search lays. */
const TOLERANCE_MM = 0.05;
/** Smaller holes hold nothing, mm². */
const LEAST_HOLE_MM2 = 100;
/** Kept free beyond the spacing, mm, so that places that touch are clear of one another whatever rounding does to them. */
const TOUCH_MM = 0.002;

/**
 * Where a piece may be put on a sheet while all others stay: the room for its nought less the no-fit areas of the others and of what is kept clear.
 * @param moving  its turn counts, not its place.
 * @returns in the numbers of the sheet.
 */
export function freePlaces(
  room: FoamRoom,
  spacingMm: number,
  moving: LaidArea,
  others: readonly LaidArea[],
): FreePlaces {
  const perMm = stepsPerUnit(2 * Math.max(room.alongMm, room.acrossMm));
  const grow = spacingMm / 2 + TOUCH_MM;
  const own = laidOutline(moving, room, perMm, grow, true);
  const box = boxOfPoints(own.rings[0]);
  const { free } = room;
  const [x0, y0] = [(free.minX - grow) * perMm - box.minX, (free.minY - grow) * perMm - box.minY];
  const [x1, y1] = [(free.maxX + grow) * perMm - box.maxX, (free.maxY + grow) * perMm - box.maxY];
  if (x1 < x0 || y1 < y0) return { free: [], blocks: [] };
  const within = Float64Array.of(x0, y0, x1, y0, x1, y1, x0, y1).map(Math.round);
  const kept = room.blocked.map((area): FreeBlock => ({
    piece: null,
    copy: 0,
    rings: noFitRings(outlined(ringsOn(area, perMm)), own),
  }));
  const taken = others.map(({ piece, copy, ...rest }): FreeBlock => ({
    piece,
    copy,
    rings: noFitRings(laidOutline({ piece, copy, ...rest }, room, perMm, grow, false), own),
  }));
  const blocks = [...taken, ...kept];
  const rest = restOfWhole([within], unionOfWhole(blocks.flatMap(({ rings }) => rings)));
  const onSheet = (rings: readonly Float64Array[]): readonly Float64Array[] =>
    rings.map((ring) =>
      ringOnSheet(
        room,
        ring.map((value) => value / perMm),
      ),
    );
  return { free: onSheet(rest), blocks: blocks.map((block) => ({ ...block, rings: onSheet(block.rings) })) };
}

/**
 * An outline grown by its share of the spacing, on the lattice of its room. The piece that moves is about its own nought and fills its holes: what lies
 * in them does not move with it.
 */
function laidOutline(
  { area, move }: LaidArea,
  room: FoamRoom,
  perMm: number,
  grow: number,
  isMoving: boolean,
): Outlined {
  const rings = simplifiedRegion(isMoving ? { ...area, holes: [] } : area, grow, TOLERANCE_MM, LEAST_HOLE_MM2);
  const { turnRad, isFlipped, ...place } = moveInRoom(room, move);
  const { x, y } = isMoving ? { x: 0, y: 0 } : place;
  const turn = turnOf({ turnRad, isFlipped });
  const laid = rings.map((ring, i) =>
    latticeRing(
      turnRing(ring, turn).map((value, k) => value + ((k & 1) === 0 ? x : y)),
      perMm,
      i > 0,
    ),
  );
  return outlined(laid.filter((ring, i) => i === 0 || ring.length >= 6));
}

const ringsOn = ({ outer, holes }: Region, perMm: number): readonly Float64Array[] => [
  latticeRing(outer, perMm, false),
  ...holes.map((hole) => latticeRing(hole, perMm, true)).filter((ring) => ring.length >= 6),
];

const outlined = (rings: readonly Float64Array[]): Outlined => ({ rings, parts: convexParts(rings) });

/** A ring of the room in the numbers of its sheet. */
const ringOnSheet = ({ isTall, acrossMm }: FoamRoom, ring: Float64Array): Float64Array =>
  isTall ? ring.map((_, k) => ((k & 1) === 0 ? acrossMm - ring[k + 1] : ring[k - 1])) : ring;
