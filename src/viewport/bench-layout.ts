import type { Box2 } from '../geom/ring.ts';
import type { Sheet } from '../model/sheet.ts';

/**
 * Where things lie on the bench, mm of the scene: x to the right, z towards the viewer, the sculpt standing on the origin.
 */
export interface BenchLayout {
  readonly sheets: readonly SheetPlace[];
  /** For each loose piece the place of its drawing's origin. */
  readonly loose: readonly { readonly x: number; readonly z: number }[];
  /** Where the first row of sheets is cut, its edge towards the sculpt at `minZ`; null without sheets. */
  readonly filled: Area | null;
  /** Extent of the bench top. */
  readonly top: Area;
}

/** A part of the bench, mm. */
export interface Area {
  readonly minX: number;
  readonly maxX: number;
  readonly minZ: number;
  readonly maxZ: number;
}

/** A sheet as far as its place on the bench goes by it. What is missing is taken to be filled all over. */
type Laid = Pick<Sheet, 'widthMm' | 'heightMm'> & Partial<Pick<Sheet, 'fillAlong' | 'filledMm'>>;

/** A sheet's lower left corner; turned sheets have their height running to the left instead of away from the viewer. */
export interface SheetPlace {
  readonly x: number;
  readonly z: number;
  readonly isTurned: boolean;
}

/** Free bench round everything, and between sheets, mm. */
const MARGIN = 70;
const GAP = 40;

/** A sheet this much higher than wide is laid across, so that the far end stays in reach. */
const TURN_FROM = 1.2;

/**
 * Lays the sheets in rows in front of the sculpt, what is cut of each row in the middle, then loose pieces in rows in front of those.
 * @param footprint width (x) and depth (z) of the sculpt.
 * @param sheets    width and height of each sheet, and how far it is filled.
 * @param loose     box of each piece that is on no sheet, in its own drawing.
 */
export function layBench(
  footprint: { readonly width: number; readonly depth: number },
  sheets: readonly Laid[],
  loose: readonly Box2[],
): BenchLayout {
  const front = footprint.depth / 2 + Math.max(GAP, 0.18 * Math.max(footprint.width, footprint.depth));
  const sizes = sheets.map((sheet): Size => {
    const { widthMm, heightMm } = sheet;
    const isTurned = heightMm > TURN_FROM * widthMm;
    const [width, depth] = isTurned ? [heightMm, widthMm] : [widthMm, heightMm];
    return { isTurned, width, depth, filled: filledAcross(sheet, isTurned) };
  });
  const sheetRows = rowsOf(sizes, front, widthOfRows(sizes, footprint.width));
  const places = sizes.map(({ isTurned, width, depth }, i) => {
    const { x, z } = sheetRows.corners[i];
    // The corner of the drawing's origin: near left, or near right for a turned sheet.
    return { x: isTurned ? x + width : x, z: z + depth, isTurned };
  });
  const boxes = loose.map(({ minX, maxX, minY, maxY }): Size => {
    const width = maxX - minX;
    return { isTurned: false, width, depth: maxY - minY, filled: [0, width] };
  });
  const widest = Math.max(sheetRows.width, widthOfRows(boxes, footprint.width));
  const looseRows = rowsOf(boxes, sheetRows.end, widest);
  const loosePlaces = loose.map((box, i) => {
    const { x, z } = looseRows.corners[i];
    return { x: x - box.minX, z: z + boxes[i].depth + box.minY };
  });
  const across = [-footprint.width / 2, footprint.width / 2];
  for (const rows of [sheetRows, looseRows]) across.push(rows.minX, rows.maxX);
  return {
    sheets: places,
    loose: loosePlaces,
    filled: sheetRows.filled,
    top: {
      minX: Math.min(...across) - MARGIN,
      maxX: Math.max(...across) + MARGIN,
      minZ: -footprint.depth / 2 - MARGIN,
      maxZ: Math.max(looseRows.end - GAP, footprint.depth / 2) + MARGIN,
    },
  };
}

/** From where to where a sheet is cut, across the bench from its left edge, mm. */
function filledAcross({ widthMm, heightMm, fillAlong, filledMm }: Laid, isTurned: boolean): readonly [number, number] {
  const width = isTurned ? heightMm : widthMm;
  // A sheet that is filled away from the viewer is cut all across.
  if (filledMm === undefined || fillAlong !== (isTurned ? 'y' : 'x')) return [0, width];
  const filled = Math.max(0, Math.min(width, filledMm));
  return isTurned ? [width - filled, width] : [0, filled];
}

interface Size {
  readonly isTurned: boolean;
  readonly filled: readonly [number, number];
  readonly width: number;
  readonly depth: number;
}

/** How wide rows may become so that bench and sheets make a picture rather wider than deep. */
function widthOfRows(sizes: readonly Pick<Size, 'width' | 'depth'>[], least: number): number {
  const area = sizes.reduce((sum, { width, depth }) => sum + (width + GAP) * (depth + GAP), 0);
  return Math.max(least, 1.6 * Math.sqrt(area), ...sizes.map(({ width }) => width));
}

interface Rows {
  /** Far left ones. */
  readonly corners: readonly { readonly x: number; readonly z: number }[];
  /** Extent; both 0 where there is nothing. */
  readonly minX: number;
  readonly maxX: number;
  readonly width: number;
  readonly end: number;
  /** Of the first row. */
  readonly filled: Area | null;
}

/** In rows from `start` towards the viewer, what is filled of each row in the middle of the bench. */
function rowsOf(sizes: readonly Size[], start: number, most: number): Rows {
  const corners: { x: number; z: number }[] = [];
  let [z, width, minX, maxX] = [start, 0, 0, 0];
  let filled: Area | null = null;
  for (let i = 0; i < sizes.length;) {
    let [end, across, deep] = [i, 0, 0];
    let [from, to] = [Infinity, 0];
    while (end < sizes.length && (end === i || across + GAP + sizes[end].width <= most)) {
      const size = sizes[end];
      const left = across + (end === i ? 0 : GAP);
      [from, to] = [Math.min(from, left + size.filled[0]), Math.max(to, left + size.filled[1])];
      across = left + size.width;
      deep = Math.max(deep, size.depth);
      end += 1;
    }
    let x = -(from + to) / 2;
    filled ??= { minX: x + from, maxX: x + to, minZ: z, maxZ: z + deep };
    [minX, maxX] = [Math.min(minX, x), Math.max(maxX, x + across)];
    for (; i < end; i += 1) {
      corners.push({ x, z });
      x += sizes[i].width + GAP;
    }
    width = Math.max(width, across);
    z += deep + GAP;
  }
  return { corners, minX, maxX, width, end: z, filled };
}
