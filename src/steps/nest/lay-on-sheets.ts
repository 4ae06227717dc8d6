import type { FoamId, PieceId } from '../../base/ids.ts';
import { boxOfPoints, joinBoxes, ringArea, type Box2 } from '../../geom/ring.ts';
import { fitsBin, packShelves, type Packed, type PackSize } from '../../geom/shelf-pack.ts';
import { moveBoxTo, movePoints } from '../../geom/turn-and-move.ts';
import type { FoamSheet } from '../../model/foam-stock.ts';
import type { Placement, Sheet, SheetLayout } from '../../model/sheet.ts';
import type { Template } from '../../model/template.ts';

/** A template to be cut `quantity` times from one kind of foam. */
export interface SheetItem {
  readonly piece: PieceId;
  readonly template: Template;
  readonly quantity: number;
  readonly foam: FoamId;
}

/** Clear of the sheet's edge, which is often bruised, mm [J]. */
export const SHEET_BORDER_MM = 10;

/** Between two pieces: room for a leaning blade, mm [J]. */
export const PIECE_GAP_MM = 5;

/** How a template stands on its sheet before it is packed. */
interface Stand {
  readonly item: SheetItem;
  /** Turn of its drawing, radians; 0 where it may be turned by the packing. */
  readonly turnRad: number;
  /** Round what is cut, so turned. */
  readonly box: Box2;
  readonly size: PackSize;
}

interface Copy {
  readonly stand: Stand;
  readonly copy: number;
}

/**
 * Lays every copy of every template on sheets of its foam, on shelves; quarter turns where they help. One with a grain lies with it along the
 * sheet's longer side, and is not turned.
 * @param items quantity >= 0, whole; the foam must be in `foams`, else RangeError.
 * @returns sheets in the order of `foams`; pieces larger than a sheet are named, never dropped in silence.
 */
export function layOnSheets(items: readonly SheetItem[], foams: readonly FoamSheet[]): SheetLayout {
  const lost = items.find((item) => !foams.some((foam) => foam.id === item.foam));
  if (lost !== undefined) throw new RangeError(`piece ${lost.piece} is of foam ${lost.foam}, which is not in the list`);
  const sheets: Sheet[] = [];
  const tooLarge = new Set<PieceId>();
  for (const foam of foams) {
    const bin = { width: foam.sheetWidthMm - 2 * SHEET_BORDER_MM, height: foam.sheetHeightMm - 2 * SHEET_BORDER_MM };
    const own = items.filter((item) => item.foam === foam.id);
    const stands = own.map((item) => standOn(foam, item));
    const fitting = stands.filter(({ size }) => fitsBin(size, bin));
    for (const stand of stands) if (!fitting.includes(stand)) tooLarge.add(stand.item.piece);
    const copies = fitting.flatMap((stand) =>
      Array.from({ length: stand.item.quantity }, (_, copy): Copy => ({ stand, copy })),
    );
    const packed = packShelves(
      copies.map(({ stand }) => stand.size),
      bin,
      PIECE_GAP_MM,
    );
    sheets.push(...sheetsFrom(foam, copies, packed));
  }
  return {
    sheets,
    tooLarge: items
      .map((item) => item.piece)
      .filter((piece, i, all) => tooLarge.has(piece) && all.indexOf(piece) === i),
  };
}

function sheetsFrom(foam: FoamSheet, copies: readonly Copy[], packed: readonly Packed[]): readonly Sheet[] {
  const count = packed.reduce((most, { bin }) => Math.max(most, bin + 1), 0);
  return Array.from({ length: count }, (_, bin) => {
    const here = copies.map((copy, i) => ({ copy, place: packed[i] })).filter(({ place }) => place.bin === bin);
    const used = here.reduce((sum, { copy }) => sum + cutAreaMm2(copy.stand.item.template), 0);
    return {
      foam: foam.id,
      thicknessMm: foam.thicknessMm,
      widthMm: foam.sheetWidthMm,
      heightMm: foam.sheetHeightMm,
      placements: here.map(({ copy, place }) => placementOf(copy, place)),
      usedShare: used / (foam.sheetWidthMm * foam.sheetHeightMm),
    };
  });
}

function placementOf({ stand: { item, turnRad, box }, copy }: Copy, { x, y, turned }: Packed): Placement {
  const [left, bottom] = [SHEET_BORDER_MM + x, SHEET_BORDER_MM + y];
  const move = item.template.grainRad === undefined ? moveBoxTo(box, turned, left, bottom) : null;
  return {
    piece: item.piece,
    copy,
    ...(move ?? { x: left - box.minX, y: bottom - box.minY, turnRad }),
  };
}

function standOn(sheet: FoamSheet, item: SheetItem): Stand {
  const { foamBox, grainRad, drawing } = item.template;
  if (grainRad === undefined) return { item, turnRad: 0, box: foamBox, size: sizeOf(foamBox) };
  const turnRad = turnOfGrain(sheet, grainRad);
  const box = drawing.strokes
    .filter(({ role }) => role === 'cut' || role === 'bevel')
    .map(({ points }) => boxOfPoints(movePoints(points, { x: 0, y: 0, turnRad })))
    .reduce(joinBoxes);
  return { item, turnRad, box, size: { ...sizeOf(box), isFixed: true } };
}

/** The least turn that lays a grain along the sheet's longer side, either way round; a hair off a quarter turn is one. */
function turnOfGrain({ sheetWidthMm, sheetHeightMm }: FoamSheet, grainRad: number): number {
  const lengthRad = sheetHeightMm >= sheetWidthMm ? Math.PI / 2 : 0;
  const halfTurns = Math.round((lengthRad - grainRad) / Math.PI);
  const turn = lengthRad - grainRad - halfTurns * Math.PI;
  const quarters = Math.round(turn / (Math.PI / 2));
  return Math.abs(turn - (quarters * Math.PI) / 2) < SAME_TURN_RAD ? (quarters * Math.PI) / 2 : turn;
}

/** Turns nearer than this are one, radians: less than a hair over the length of a sheet. */
const SAME_TURN_RAD = 1e-9;

const sizeOf = ({ minX, minY, maxX, maxY }: Box2): PackSize => ({ width: maxX - minX, height: maxY - minY });

/** Area inside the cut line less its holes: the largest closed cut stroke is the outside. */
function cutAreaMm2({ drawing, foamBox }: Template): number {
  const areas = drawing.strokes
    .filter(({ role, closed }) => role === 'cut' && closed)
    .map(({ points }) => Math.abs(ringArea(points)));
  if (areas.length === 0) return (foamBox.maxX - foamBox.minX) * (foamBox.maxY - foamBox.minY);
  return 2 * Math.max(...areas) - areas.reduce((sum, area) => sum + area, 0);
}
