import type { PieceId } from '../base/ids.ts';
import type { RuledStrip } from './ruled-strip.ts';
import type { Drawing } from './template.ts';

/** One printed page, mm, origin lower left, y up; everything drawn lies inside the paper. */
export interface Page {
  readonly kind: 'scale' | 'map' | 'tile' | 'strip' | 'build';
  /** `scale`, `map`, `strip`, `build`, or for a tile its block and place: `A1`, `2-B3`. */
  readonly name: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly drawing: Drawing;
  /** Pieces that have a line on this page. */
  readonly pieces: readonly PieceId[];
}

/** Where every template lies on paper before it is parted into tiles: used to check that tiles rejoin, and by the screen's preview. */
export interface PaperBlock {
  /** 1, 2, 3 … */
  readonly number: number;
  readonly columns: number;
  readonly rows: number;
  /** Usable size of one tile and the step from one to the next, mm. */
  readonly tileWidthMm: number;
  readonly tileHeightMm: number;
  readonly stepXMm: number;
  readonly stepYMm: number;
  /** Lower left corner of a tile on its page, mm. */
  readonly originXMm: number;
  readonly originYMm: number;
  /** Templates in the block's own frame, mm; its origin is the lower left corner of the first tile. */
  readonly placements: readonly {
    readonly piece: PieceId;
    readonly x: number;
    readonly y: number;
    readonly turnRad: number;
  }[];
  /** For each tile, row by row from the bottom, the index of its page, or -1 for a blank one that is left out. */
  readonly pageOfTile: readonly number[];
}

export interface PageSet {
  readonly pages: readonly Page[];
  readonly blocks: readonly PaperBlock[];
  readonly blankTiles: number;
  /** Pieces without a template of their own: each is cut with its twin's turned over. */
  readonly turned: readonly TurnedPiece[];
  /** Pieces without paper: they are cut by the ruler, and told on the map. Left out where there is none. */
  readonly ruled?: readonly RuledStrip[];
}

export interface TurnedPiece {
  readonly piece: PieceId;
  readonly template: PieceId;
}
