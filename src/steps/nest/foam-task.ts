import type { PieceId } from '../../base/ids.ts';
import { grownRegions, type Region } from '../../geom/polygon-boolean.ts';
import { tightBox, type TightBox } from '../../geom/convex-hull.ts';
import { boxOfPoints, ringArea, type Ring } from '../../geom/ring.ts';
import type { FoamSheet } from '../../model/foam-stock.ts';
import type { FillRule, HeldCopy, StockChoices, StockSheet } from '../../model/stock.ts';
import type { Template } from '../../model/template.ts';
import { areaOfRegion, foamArea } from './foam-area.ts';
import { boughtRoom, moveInRoom, stockRoom, type FoamRoom, type RoomMove } from './foam-room.ts';
import { latticeRing, stepsPerUnit } from './lattice.ts';
import { simplifiedRegion } from './outward.ts';
import { shapeOf, turnOf, turnRing, type Shape, type Stance } from './shape.ts';
import { sidesFor, stancesOf } from './stances.ts';

/** A template to be cut `quantity` times from one kind of foam. */
export interface SheetItem {
  readonly piece: PieceId;
  readonly template: Pick<Template, 'foamRings' | 'foamBox' | 'grainRad'>;
  readonly quantity: number;
  readonly foam: FoamSheet['id'];
}

/** A piece as it is laid. */
export interface FoamPart {
  readonly piece: PieceId;
  /** What it takes, in the numbers of its template. */
  readonly area: Region;
  readonly areaMm2: number;
  /** Pieces with the same word lie on one sheet; null: anywhere. */
  readonly group: string | null;
  /** The same simplified outward with half the spacing, in steps of the lattice. */
  readonly shape: Shape;
}

export interface FoamCopy {
  readonly part: number;
  readonly copy: number;
}

/** Where a copy lies: in a room, in its numbers. */
export interface RoomPlace extends RoomMove {
  readonly room: number;
}

/** All that is to be laid on sheets of one foam. */
export interface FoamTask {
  readonly foam: FoamSheet;
  readonly fill: FillRule;
  readonly parts: readonly FoamPart[];
  readonly copies: readonly FoamCopy[];
  /** Sheets there are: in hand from small to large, then as many as could be bought. */
  readonly rooms: readonly FoamRoom[];
  /** By copies: where it is held; null where it is not. */
  readonly held: readonly (RoomPlace | null)[];
  /** Copies that are to be held on a sheet that is not there. */
  readonly heldNowhere: readonly number[];
  /** By parts: whether it fits no sheet, however it is laid. */
  readonly isTooLarge: readonly boolean[];
  /** Steps of the lattice for a mm. */
  readonly perMm: number;
  /** How far outlines stand outside what is cut, at least, mm: half the spacing and a hair. */
  readonly growMm: number;
}

/** Outlines are followed so closely, mm: a knife is no truer. */
const TOLERANCE_MM = 0.3;
/** So many steps stay clear about each outline, that what rounding moves does not touch. */
const HAIR_STEPS = 5;

/** @param isWide whether pieces may lie along more than their tightest box: a search has the time for it. */
export function foamTask(
  items: readonly SheetItem[],
  foam: FoamSheet,
  fill: FillRule,
  stock: StockChoices,
  isWide: boolean,
): FoamTask {
  const copies = items.flatMap(({ quantity }, part) =>
    Array.from({ length: quantity }, (_, copy): FoamCopy => ({ part, copy })),
  );
  const fills = new Map((stock.pieces ?? []).map((one) => [one.piece, one]));
  const heldOf = ({ part, copy }: FoamCopy): HeldCopy | undefined =>
    fills.get(items[part].piece)?.held?.find((one) => one.copy === copy);
  const rooms = roomsOf(
    foam,
    fill,
    stock.sheets ?? [],
    copies.length,
    copies.flatMap((copy) => heldOf(copy) ?? []),
  );
  const reach = rooms.reduce((most, { alongMm, acrossMm }) => Math.max(most, alongMm, acrossMm), foam.sheetWidthMm);
  const perMm = stepsPerUnit(2 * reach);
  const growMm = fill.spacingMm / 2 + HAIR_STEPS / perMm;
  const areas = items.map(({ template }) => foamArea(template));
  const leastHole = Math.min(...areas.map(areaOfRegion));
  const boxes = areas.map(({ outer }) => tightBox(outer));
  const fits = (width: number, height: number): boolean =>
    rooms.some(({ free }) => width <= free.maxX - free.minX + SNUG_MM && height <= free.maxY - free.minY + SNUG_MM);
  const sides = isWide ? sidesFor(items.length, fill.turnOver) : 1;
  const parts = items.map(({ piece, template }, i): FoamPart => {
    const stances = stancesOf(areas[i].outer, template.grainRad, fill, sides, fits);
    const holes = areas[i].holes.filter((hole) => boxes.some((box) => fitsBox(box, tightBox(hole))));
    const simple = simplifiedRegion({ outer: areas[i].outer, holes }, growMm, TOLERANCE_MM, leastHole);
    // What just fits a sheet as it is may not do so any more when its outline is followed less closely.
    const isSnug = fitsLaid(areas[i].outer, stances, 0, fits) && !fitsLaid(simple[0], stances, growMm, fits);
    const rings = isSnug ? [grownRegions([areas[i].outer], growMm)[0].outer, ...simple.slice(1)] : simple;
    const clean = rings.map((ring, k) => latticeRing(ring, perMm, k > 0)).filter((ring) => ring.length >= 6);
    return {
      piece,
      area: areas[i],
      areaMm2: areaOfRegion(areas[i]),
      group: fills.get(piece)?.group ?? null,
      shape: shapeOf(clean, stances),
    };
  });
  const placeOf = (held: HeldCopy): RoomPlace | null => {
    const room = rooms.findIndex(({ name }) => name.stock === held.sheet.stock && name.nth === held.sheet.nth);
    return room < 0 ? null : { room, ...moveInRoom(rooms[room], pickMove(held)) };
  };
  const holds = copies.map(heldOf);
  const held = holds.map((hold) => (hold === undefined ? null : placeOf(hold)));
  return {
    foam,
    fill,
    parts,
    copies,
    rooms,
    held,
    heldNowhere: copies.map((_, i) => i).filter((i) => holds[i] !== undefined && held[i] === null),
    isTooLarge: parts.map(({ area, shape }) => !fitsLaid(area.outer, shape.stances, 0, fits)),
    perMm,
    growMm,
  };
}

/** Whether a ring, less what it was grown by, fits in one of its stances. */
const fitsLaid = (
  ring: Ring,
  stances: readonly Stance[],
  grownMm: number,
  fits: (width: number, height: number) => boolean,
): boolean =>
  stances.some((stance) => {
    const { minX, minY, maxX, maxY } = boxOfPoints(turnRing(ring, turnOf(stance)));
    return fits(maxX - minX - 2 * grownMm, maxY - minY - 2 * grownMm);
  });

/** A hole that no piece fits is filled: outlines without holes are far quicker to lay. */
const fitsBox = (piece: TightBox, hole: TightBox): boolean =>
  piece.longMm <= hole.longMm && piece.shortMm <= hole.shortMm;

/** Room for rounding where a piece is exactly as large as its place, mm. */
const SNUG_MM = 1e-6;

/** Move of a hold or a kept place. */
export const pickMove = ({
  x,
  y,
  turnRad,
  isFlipped = false,
}: {
  readonly x: number;
  readonly y: number;
  readonly turnRad: number;
  readonly isFlipped?: boolean;
}): RoomMove => ({ x, y, turnRad, isFlipped });

function roomsOf(
  foam: FoamSheet,
  fill: FillRule,
  sheets: readonly StockSheet[],
  copies: number,
  held: readonly HeldCopy[],
): readonly FoamRoom[] {
  const own = sheets.filter((sheet) => sheet.foam === foam.id && sheet.leftBy === undefined);
  const inHand = own.flatMap((sheet) => {
    const asked = held.filter((one) => one.sheet.stock === sheet.id).map((one) => one.sheet.nth + 1);
    const count = Math.min(sheet.count, Math.max(copies, ...asked));
    return Array.from({ length: count }, (_, nth) => stockRoom(sheet, fill, nth)).filter((room) => room !== null);
  });
  const bySize = inHand.map((room) => room).sort((a, b) => areaOfRoom(a) - areaOfRoom(b));
  if (!fill.buys) return bySize;
  const asked = held.filter((one) => one.sheet.stock === 'buy').map((one) => one.sheet.nth + 1);
  const count = Math.min(MOST_BOUGHT, Math.max(copies, ...asked));
  return [...bySize, ...Array.from({ length: count }, (_, nth) => boughtRoom(foam, fill, nth))];
}

/** More sheets of one foam than any prop takes. */
const MOST_BOUGHT = 2000;

/** mm²: of what is there, not of the box of a traced outline. */
export const areaOfRoom = ({ alongMm, acrossMm, stock }: FoamRoom): number =>
  stock?.shape.kind === 'outline' ? Math.abs(ringArea(stock.shape.points)) : alongMm * acrossMm;
