import { Matrix4 } from 'three';
import type { PiecesView } from '../model/bench-view.ts';
import type { Placement, SheetLayout } from '../model/sheet.ts';
import { boxOfPoints, joinBoxes, type Box2 } from '../geom/ring.ts';
import { cutRing } from '../model/cut-larger.ts';
import type { FoamPiece } from '../model/foam-piece.ts';
import type { Template } from '../model/template.ts';
import { benchFromDrawing } from './journey.ts';
import { layBench, type BenchLayout } from './bench-layout.ts';

/** Where every piece lies in the end, as moves between spaces. A drawing is a template as traced: seen from above, y away from the viewer. */
export interface PiecePlaces {
  readonly layout: BenchLayout;
  /** Per piece: drawing with z up from the underside of the foam, to scene. */
  readonly sceneFromDrawing: readonly Matrix4[];
  /** Per piece: flat piece (face up, neutral surface at z 0) to its drawing. */
  readonly drawingFromFlat: readonly Matrix4[];
  /** Per sheet: drawing of the sheet with z up from the bench, to scene. */
  readonly sceneFromSheet: readonly Matrix4[];
  /** Sheet that each piece lies on, or -1. */
  readonly sheetOfPiece: readonly number[];
}

/**
 * Lays sheets and pieces out on the bench.
 * @param footprint width and depth of the sculpt, mm of the scene.
 */
export function placePieces(
  footprint: { readonly width: number; readonly depth: number },
  view: PiecesView | null,
  layout: SheetLayout | null,
): PiecePlaces {
  const pieces = view?.pieces ?? [];
  const sheets = layout?.sheets ?? [];
  const templates = pieces.map((piece) => view?.templates.find((template) => template.piece === piece.id));
  const drawingFromFlat = pieces.map((piece, i) => flatIntoDrawing(piece, templates[i]));
  const sheetOfPiece = pieces.map(({ id }) =>
    sheets.findIndex(({ placements }) => placements.some((place) => place.piece === id)),
  );
  const loose = pieces.map((_, i) => i).filter((i) => sheetOfPiece[i] < 0);
  const bench = layBench(
    footprint,
    sheets,
    loose.map((i) => drawnBox(pieces[i], templates[i])),
  );
  const sceneFromSheet = bench.sheets.map(({ x, z, isTurned }) => {
    const flat = benchFromDrawing(x, 0, z);
    return isTurned ? flat.multiply(new Matrix4().makeRotationZ(Math.PI / 2)) : flat;
  });
  const sceneFromDrawing = pieces.map(({ id }, i) => {
    const s = sheetOfPiece[i];
    if (s < 0) {
      const { x, z } = bench.loose[loose.indexOf(i)];
      return benchFromDrawing(x, 0, z);
    }
    const place = sheets[s].placements.find(({ piece }) => piece === id);
    if (place === undefined) return sceneFromSheet[s];
    return sceneFromSheet[s].clone().multiply(sheetFromDrawing(place, pieces[i].thicknessMm));
  });
  return { layout: bench, sceneFromDrawing, drawingFromFlat, sceneFromSheet, sheetOfPiece };
}

/** Where a template lies on its sheet, z up from the underside of the foam; one that is turned over lies on what was its upper side. */
export function sheetFromDrawing(
  { x, y, turnRad, isFlipped = false }: Pick<Placement, 'x' | 'y' | 'turnRad' | 'isFlipped'>,
  thicknessMm: number,
): Matrix4 {
  const move = new Matrix4().makeTranslation(x, y, 0).multiply(new Matrix4().makeRotationZ(turnRad));
  if (!isFlipped) return move;
  return move.multiply(new Matrix4().makeTranslation(0, 0, thicknessMm)).multiply(new Matrix4().makeRotationY(Math.PI));
}

/** Box of the cut lines as they are cut, both edges of every bevel, seen from the face. */
function cutBox(piece: FoamPiece): Box2 {
  return joinBoxes(boxOfPoints(cutRing(piece, piece.outline)), boxOfPoints(cutRing(piece, piece.otherOutline)));
}

/** Box of what is cut, in the template's drawing. */
function drawnBox(piece: FoamPiece, template: Template | undefined): Box2 {
  return template?.foamBox ?? cutBox(piece);
}

/** A template may be moved against its piece, larger than it where the foam will shrink (about one origin), and is mirrored where the back is traced: the piece then lies on its face. */
function flatIntoDrawing(piece: FoamPiece, template: Template | undefined): Matrix4 {
  const cut = cutBox(piece);
  const drawn = drawnBox(piece, template);
  const isReversed = template?.reversed ?? false;
  const move = new Matrix4().makeTranslation(
    drawn.minX - (isReversed ? -cut.maxX : cut.minX),
    drawn.minY - cut.minY,
    piece.thicknessMm / 2,
  );
  return isReversed ? move.multiply(new Matrix4().makeRotationY(Math.PI)) : move;
}
