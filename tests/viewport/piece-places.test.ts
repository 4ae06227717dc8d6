import { Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { foamId } from '../../src/base/ids.ts';
import type { PiecesView } from '../../src/model/bench-view.ts';
import type { SheetLayout } from '../../src/model/sheet.ts';
import { placePieces } from '../../src/viewport/piece-places.ts';
import { squarePiece, templateOf } from './piece-records.ts';

/** An L of 60 by 40 mm cannot be mistaken for its mirror image. */
const ELL = [0, 0, 60, 0, 60, 10, 10, 10, 10, 40, 0, 40];

function viewOf(tracedSide: 'face' | 'back'): PiecesView {
  const piece = squarePiece('p1', 1, ELL, 8, tracedSide);
  return {
    patchOfTriangle: new Int32Array(0),
    patches: [],
    pieces: [piece],
    seams: [],
    templates: [templateOf(piece)],
    isFinal: true,
    benchPatches: 0,
    sheet: 1,
    cutOffers: [],
  };
}

const sheet = (placements: { x: number; y: number; turnRad: number; isFlipped?: boolean }[]): SheetLayout => ({
  sheets: [
    {
      foam: foamId('f'),
      name: { stock: 'buy', nth: 0 },
      fillAlong: 'x',
      filledMm: 0,
      thicknessMm: 8,
      widthMm: 600,
      heightMm: 400,
      usedShare: 0.1,
      placements: placements.map((place) => ({ ...place, piece: squarePiece('p1', 1, ELL, 8, 'face').id, copy: 0 })),
    },
  ],
  tooLarge: [],
});
const footprint = { width: 300, depth: 250 };

describe('where a flat piece lies', () => {
  it('lies face up in its sheet, as high as the sheet', () => {
    const places = placePieces(footprint, viewOf('face'), sheet([{ x: 100, y: 50, turnRad: 0 }]));
    const move = places.sceneFromDrawing[0].clone().multiply(places.drawingFromFlat[0]);
    const corner = places.sceneFromSheet[0];
    // Lower left corner of the drawing, on the underside of the foam.
    const at = new Vector3(0, 0, -4).applyMatrix4(move);
    expect(at.distanceTo(new Vector3(100, 50, 0).applyMatrix4(corner))).toBeLessThan(1e-9);
    expect(at.y).toBeCloseTo(0, 9);
    expect(new Vector3(0, 0, 4).applyMatrix4(move).y).toBeCloseTo(8, 9);
    // The drawing's up is away from the viewer.
    const foot = new Vector3(0, 40, 4).applyMatrix4(move);
    expect(foot.z).toBeCloseTo(at.z - 40, 9);
  });

  it('lies on its face where it is turned over, in the mirror of its place', () => {
    const places = placePieces(footprint, viewOf('face'), sheet([{ x: 100, y: 50, turnRad: 0, isFlipped: true }]));
    const move = places.sceneFromDrawing[0].clone().multiply(places.drawingFromFlat[0]);
    const corner = places.sceneFromSheet[0];
    // The drawing's nought is where it was, what was right of it is left of it, and its face is down.
    const at = new Vector3(0, 0, 4).applyMatrix4(move);
    expect(at.distanceTo(new Vector3(100, 50, 0).applyMatrix4(corner))).toBeLessThan(1e-9);
    expect(new Vector3(0, 0, -4).applyMatrix4(move).y).toBeCloseTo(8, 9);
    const right = new Vector3(30, 0, 4).applyMatrix4(move);
    expect(right.distanceTo(new Vector3(70, 50, 0).applyMatrix4(corner))).toBeLessThan(1e-9);
  });

  it('lies inside its larger cut where the foam will shrink, about one origin', () => {
    const shrinkage = { alongPct: 5, acrossPct: 5 };
    const view = viewOf('face');
    const [piece] = view.pieces;
    const larger = templateOf({ ...piece, outline: piece.outline.map((x) => x / 0.95) });
    const places = placePieces(
      footprint,
      { ...view, pieces: [{ ...piece, shrinkage }], templates: [larger] },
      sheet([{ x: 100, y: 50, turnRad: 0 }]),
    );
    const origin = new Vector3(0, 0, -4).applyMatrix4(places.drawingFromFlat[0]);
    expect(origin.distanceTo(new Vector3(0, 0, 0))).toBeLessThan(1e-9);
    const corner = new Vector3(60, 0, -4).applyMatrix4(places.drawingFromFlat[0]);
    expect(corner.x).toBeCloseTo(60, 9);
  });

  it('lies on its face where the back is traced', () => {
    const places = placePieces(footprint, viewOf('back'), sheet([{ x: 100, y: 50, turnRad: 0 }]));
    const move = places.sceneFromDrawing[0].clone().multiply(places.drawingFromFlat[0]);
    const corner = new Vector3(100, 50, 0).applyMatrix4(places.sceneFromSheet[0]);
    const backOfFoot = new Vector3(0, 40, -4).applyMatrix4(move);
    expect(backOfFoot.y).toBeCloseTo(8, 9);
    // Mirrored in the drawing: what is left on the face is right here. The drawing's own corner is at -60.
    expect(backOfFoot.x).toBeCloseTo(corner.x, 9);
    expect(new Vector3(60, 0, 4).applyMatrix4(move).x).toBeCloseTo(corner.x - 60, 9);
    expect(move.determinant()).toBeCloseTo(1, 9);
  });

  it('follows the turn of its placement', () => {
    const places = placePieces(footprint, viewOf('face'), sheet([{ x: 100, y: 50, turnRad: Math.PI / 2 }]));
    const move = places.sceneFromDrawing[0].clone().multiply(places.drawingFromFlat[0]);
    const from = new Vector3(0, 0, 0).applyMatrix4(move);
    const to = new Vector3(60, 0, 0).applyMatrix4(move);
    expect(to.sub(from).distanceTo(new Vector3(0, 0, -60))).toBeLessThan(1e-9);
    expect(places.sheetOfPiece).toEqual([0]);
  });

  it('lies on the bench without a sheet', () => {
    const places = placePieces(footprint, viewOf('face'), null);
    expect(places.sheetOfPiece).toEqual([-1]);
    const move = places.sceneFromDrawing[0].clone().multiply(places.drawingFromFlat[0]);
    expect(new Vector3(0, 0, -4).applyMatrix4(move).y).toBeCloseTo(0, 9);
    expect(new Vector3(0, 0, 0).applyMatrix4(move).z).toBeGreaterThan(125);
  });
});
