import type { Box2 } from '../geom/ring.ts';

/**
 * Where things lie on the bench, mm of the scene: x to the right, z towards the viewer, the sculpt standing on the origin.
 */
export interface BenchLayout {
  readonly sheets: readonly SheetPlace[];
  /** For each loose piece the place of its drawing's origin. */
  readonly loose: readonly { readonly x: number; readonly z: number }[];
  /** Extent of the bench top. */
  readonly top: { readonly minX: number; readonly maxX: number; readonly minZ: number; readonly maxZ: number };
}

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
 * Lays the sheets in rows in front of the sculpt, then loose pieces in rows in front of those.
 * @param footprint width (x) and depth (z) of the sculpt.
 * @param sheets    width and height of each sheet.
 * @param loose     box of each piece that is on no sheet, in its own drawing.
 */
export function layBench(
  footprint: { readonly width: number; readonly depth: number },
  sheets: readonly { readonly widthMm: number; readonly heightMm: number }[],
  loose: readonly Box2[],
): BenchLayout {
  const front = footprint.depth / 2 + Math.max(GAP, 0.18 * Math.max(footprint.width, footprint.depth));
  const sizes = sheets.map(({ widthMm, heightMm }) => {
    const isTurned = heightMm > TURN_FROM * widthMm;
    return { isTurned, width: isTurned ? heightMm : widthMm, depth: isTurned ? widthMm : heightMm };
  });
  const sheetRows = rowsOf(sizes, front, widthOfRows(sizes, footprint.width));
  const places = sizes.map(({ isTurned, width, depth }, i) => {
    const { x, z } = sheetRows.corners[i];
    // The corner of the drawing's origin: near left, or near right for a turned sheet.
    return { x: isTurned ? x + width : x, z: z + depth, isTurned };
  });
  const boxes = loose.map((box) => ({ width: box.maxX - box.minX, depth: box.maxY - box.minY }));
  const widest = Math.max(sheetRows.width, widthOfRows(boxes, footprint.width));
  const looseRows = rowsOf(boxes, sheetRows.end, widest);
  const loosePlaces = loose.map((box, i) => {
    const { x, z } = looseRows.corners[i];
    return { x: x - box.minX, z: z + boxes[i].depth + box.minY };
  });
  const half = Math.max(footprint.width, sheetRows.width, looseRows.width) / 2 + MARGIN;
  return {
    sheets: places,
    loose: loosePlaces,
    top: {
      minX: -half,
      maxX: half,
      minZ: -footprint.depth / 2 - MARGIN,
      maxZ: Math.max(looseRows.end - GAP, footprint.depth / 2) + MARGIN,
    },
  };
}

interface Size {
  readonly width: number;
  readonly depth: number;
}

/** How wide rows may become so that bench and sheets make a picture rather wider than deep. */
function widthOfRows(sizes: readonly Size[], least: number): number {
  const area = sizes.reduce((sum, { width, depth }) => sum + (width + GAP) * (depth + GAP), 0);
  return Math.max(least, 1.6 * Math.sqrt(area), ...sizes.map(({ width }) => width));
}

/** Far left corners, in rows from `start` towards the viewer, each row in the middle of the bench. */
function rowsOf(
  sizes: readonly Size[],
  start: number,
  most: number,
): { corners: { x: number; z: number }[]; width: number; end: number } {
  const corners: { x: number; z: number }[] = [];
  let [z, width] = [start, 0];
  for (let i = 0; i < sizes.length;) {
    let [end, across, deep] = [i, 0, 0];
    while (end < sizes.length && (end === i || across + GAP + sizes[end].width <= most)) {
      across += (end === i ? 0 : GAP) + sizes[end].width;
      deep = Math.max(deep, sizes[end].depth);
      end += 1;
    }
    let x = -across / 2;
    for (; i < end; i += 1) {
      corners.push({ x, z });
      x += sizes[i].width + GAP;
    }
    width = Math.max(width, across);
    z += deep + GAP;
  }
  return { corners, width, end: z };
}
