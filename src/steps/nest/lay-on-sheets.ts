import type { FoamId, PieceId } from '../../base/ids.ts';
import { ringArea } from '../../geom/ring.ts';
import { fitsBin, packShelves, type Packed, type Size2 } from '../../geom/shelf-pack.ts';
import { moveBoxTo } from '../../geom/turn-and-move.ts';
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

interface Copy {
  readonly item: SheetItem;
  readonly copy: number;
}

/**
 * Lays every copy of every template on sheets of its foam, on shelves; quarter turns where they help.
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
    const fitting = own.filter((item) => fitsBin(foamSize(item.template), bin));
    for (const item of own) if (!fitting.includes(item)) tooLarge.add(item.piece);
    const copies = fitting.flatMap((item) =>
      Array.from({ length: item.quantity }, (_, copy): Copy => ({ item, copy })),
    );
    const packed = packShelves(
      copies.map(({ item }) => foamSize(item.template)),
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
    const used = here.reduce((sum, { copy }) => sum + cutAreaMm2(copy.item.template), 0);
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

function placementOf({ item, copy }: Copy, { x, y, turned }: Packed): Placement {
  return {
    piece: item.piece,
    copy,
    ...moveBoxTo(item.template.foamBox, turned, SHEET_BORDER_MM + x, SHEET_BORDER_MM + y),
  };
}

function foamSize({ foamBox }: Template): Size2 {
  return { width: foamBox.maxX - foamBox.minX, height: foamBox.maxY - foamBox.minY };
}

/** Area inside the cut line less its holes: the largest closed cut stroke is the outside. */
function cutAreaMm2({ drawing, foamBox }: Template): number {
  const areas = drawing.strokes
    .filter(({ role, closed }) => role === 'cut' && closed)
    .map(({ points }) => Math.abs(ringArea(points)));
  if (areas.length === 0) return (foamBox.maxX - foamBox.minX) * (foamBox.maxY - foamBox.minY);
  return 2 * Math.max(...areas) - areas.reduce((sum, area) => sum + area, 0);
}
