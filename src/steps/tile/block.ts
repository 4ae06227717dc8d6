import type { PieceId } from '../../base/ids.ts';
import type { Box2 } from '../../geom/ring.ts';
import type { Size2 } from '../../geom/shelf-pack.ts';
import { movePoint, movePoints, type Move2 } from '../../geom/turn-and-move.ts';
import type { Drawing, Template } from '../../model/template.ts';
import type { Lattice } from './lattice.ts';

/** One template in a block's space. */
export interface PlacedTemplate {
  readonly piece: PieceId;
  /** Its twin, where that is cut with the template turned over. */
  readonly turned?: PieceId;
  readonly move: Move2;
  readonly drawing: Drawing;
}

/** Templates that share a page, or one template over several, with the tiles that are worth a page. */
export interface Block {
  readonly lattice: Lattice;
  readonly templates: readonly PlacedTemplate[];
  /** Per tile, row by row from the bottom. */
  readonly isPrinted: readonly boolean[];
}

/** The template's drawing moved into the block. */
export function placeTemplate({ piece, turned, drawing }: Template, move: Move2): PlacedTemplate {
  return { piece, ...(turned === undefined ? {} : { turned }), move, drawing: moveDrawing(drawing, move) };
}

/** Everything drawn, turned and moved. */
export function moveDrawing({ strokes, words }: Drawing, move: Move2): Drawing {
  return {
    strokes: strokes.map((stroke) => ({ ...stroke, points: movePoints(stroke.points, move) })),
    words: words.map((line) => ({ ...line, at: movePoint(line.at, move), angleRad: line.angleRad + move.turnRad })),
  };
}

export function sizeOf(box: Box2): Size2 {
  return { width: box.maxX - box.minX, height: box.maxY - box.minY };
}
