import type { PieceId } from '../base/ids.ts';
import type { Ring } from '../geom/ring.ts';
import { cutRing } from '../model/cut-larger.ts';
import type { FoamPiece } from '../model/foam-piece.ts';
import type { FoamStrip } from '../model/foam-strip.ts';
import type { PageSet } from '../model/page.ts';
import { isPlain, type CutBeside } from '../model/plain-piece.ts';
import { printerOf } from '../project/printer-commands.ts';
import type { Project } from '../project/project.ts';
import type { WantedPaper, WantedPiece } from '../steps/read-back/check-paper.ts';

/** What paper must show of these pieces, from the pieces themselves and not from what was drawn of them. */
export const wantedPaper = (
  project: Project,
  plan: PageSet,
  pieces: readonly FoamPiece[],
  beside: readonly CutBeside[],
): WantedPaper => ({
  plan,
  pieces: [...pieces.map(wantedPiece), ...beside.map(wantedBeside)],
  printer: printerOf(project),
  isRoll: project.paper.name === 'roll',
});

/** What is traced on the back is drawn as it is seen from there. */
function wantedPiece(piece: FoamPiece): WantedPiece {
  const rings = [piece.outline, ...piece.holes].map((ring) => cutRing(piece, ring));
  return wanted(piece, piece.tracedSide === 'face' ? rings : rings.map(mirrored));
}

const wantedBeside = (piece: CutBeside): WantedPiece =>
  wanted(piece, isPlain(piece) ? piece.faceRings : [stripRing(piece)]);

const stripRing = ({ lengthMm, faceMm: { max } }: FoamStrip): Ring =>
  Float64Array.of(0, 0, lengthMm, 0, lengthMm, max, 0, max);

const mirrored = (ring: Ring): Ring => ring.map((mm, i) => (i % 2 === 0 ? -mm : mm));

const wanted = (
  { id, number }: { readonly id: PieceId; readonly number: number },
  rings: readonly Ring[],
): WantedPiece => ({
  piece: id,
  number,
  rings,
});
