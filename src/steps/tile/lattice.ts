import type { Box2 } from '../../geom/ring.ts';
import { letters } from '../../base/ids.ts';

/** Equal tiles in columns and rows, counted from the lower left; neighbours overlap by tile size less step. mm. */
export interface Lattice {
  readonly columns: number;
  readonly rows: number;
  readonly tileWidthMm: number;
  readonly tileHeightMm: number;
  readonly stepXMm: number;
  readonly stepYMm: number;
}

/** A page by itself. */
export const oneTile = (tileWidthMm: number, tileHeightMm: number): Lattice => ({
  columns: 1,
  rows: 1,
  tileWidthMm,
  tileHeightMm,
  stepXMm: tileWidthMm,
  stepYMm: tileHeightMm,
});

/** A length that is longer than a tile by rounding alone needs no second tile, mm. */
const ROUNDING_MM = 1e-9;

/** Tiles along a length: 1 + ceil((length - tile) / step), at least 1 (foam model 7). */
export function tilesAlong(lengthMm: number, tileMm: number, stepMm: number): number {
  return Math.max(1, 1 + Math.ceil((lengthMm - tileMm - ROUNDING_MM) / stepMm));
}

/**
 * A tile shows so much more than itself, mm: templates are laid within a tile but for rounding, and a line along its edge must not be lost to it.
 */
const EDGE_MM = 1e-8;

/** What tile `index` shows of the block, block space; wider than the tile by rounding alone. */
export function tileBox(lattice: Lattice, index: number): Box2 {
  const minX = (index % lattice.columns) * lattice.stepXMm;
  const minY = Math.floor(index / lattice.columns) * lattice.stepYMm;
  return {
    minX: minX - EDGE_MM,
    minY: minY - EDGE_MM,
    maxX: minX + lattice.tileWidthMm + EDGE_MM,
    maxY: minY + lattice.tileHeightMm + EDGE_MM,
  };
}

export type Side = 'left' | 'right' | 'below' | 'above';
export const SIDES: readonly Side[] = ['left', 'right', 'below', 'above'];

/** The tile on that side, or -1 at the rim. */
export function neighbourOf({ columns, rows }: Lattice, index: number, side: Side): number {
  const column = index % columns;
  const row = Math.floor(index / columns);
  if (side === 'left') return column === 0 ? -1 : index - 1;
  if (side === 'right') return column === columns - 1 ? -1 : index + 1;
  if (side === 'below') return row === 0 ? -1 : index - columns;
  return row === rows - 1 ? -1 : index + columns;
}

/** `A1` for the lower left tile: letter for the column, number for the row. */
export function placeName({ columns }: Lattice, index: number): string {
  return `${letters(index % columns)}${Math.floor(index / columns) + 1}`;
}

/** Tiles whose box may hold a point of the range, as first and last column or row. */
export function tilesTouched(
  min: number,
  max: number,
  tileMm: number,
  stepMm: number,
  count: number,
): readonly [number, number] {
  const first = Math.max(0, Math.ceil((min - tileMm - EDGE_MM) / stepMm));
  const last = Math.min(count - 1, Math.floor((max + EDGE_MM) / stepMm));
  return [first, last];
}
