import type { FoamPiece } from '../model/foam-piece.ts';
import type { Bench } from './bench-state.ts';

/** A polygon of the file that lies in a piece: by it the document knows the piece when seams change. */
export function faceOfPiece(bench: Bench, piece: FoamPiece): number {
  const triangle = bench.pieces?.patches[piece.patch].meshTriangles[0] ?? 0;
  return bench.sculpt?.faceOfTriangle[triangle] ?? 0;
}
