import type { Ring } from '../geom/ring.ts';
import { cutRing, cutScaleOf } from '../model/cut-larger.ts';
import type { FoamPiece } from '../model/foam-piece.ts';
import type { FoamStrip } from '../model/foam-strip.ts';
import { letInRole } from '../model/let-in.ts';
import { LINE_STYLES } from '../model/line-style.ts';
import type { PageSet } from '../model/page.ts';
import { findPaper } from '../model/papers.ts';
import { isPlain, type CutBeside } from '../model/plain-piece.ts';
import type { LineRole } from '../model/template.ts';
import { printerOf } from '../project/printer-commands.ts';
import type { Project } from '../project/project.ts';
import type { WantedPaper, WantedPiece } from '../steps/read-back/check-paper.ts';

/** What paper must show of these pieces, from the pieces themselves and not from what was drawn of them. */
export function wantedPaper(
  project: Project,
  plan: PageSet,
  pieces: readonly FoamPiece[],
  beside: readonly CutBeside[],
): WantedPaper {
  const { name, widthMm, heightMm } = project.paper;
  const paper = findPaper(name, widthMm, heightMm);
  return {
    plan,
    pieces: [...pieces.map(wantedPiece), ...beside.map(wantedBeside)],
    printer: printerOf(project),
    isRoll: paper.ok && paper.value.roll,
  };
}

/** What is traced on the back is drawn as it is seen from there. */
function wantedPiece(piece: FoamPiece): WantedPiece {
  // Of a hole both edges are told: on the traced side it is cut, the other is the lean of its wall.
  const letIn = (piece.letIns ?? []).filter((line) => isCut(letInRole(line, piece.tracedSide)));
  const closed = letIn.filter((line) => line.closed).map(({ points }) => points);
  const rings = [piece.outline, ...piece.holes, ...closed].map((ring) => cutRing(piece, ring));
  const { xx, xy, yy } = cutScaleOf(piece) ?? { xx: 1, xy: 0, yy: 1 };
  return {
    piece: piece.id,
    number: piece.number,
    rings: piece.tracedSide === 'face' ? rings : rings.map(mirrored),
    roundMm2: (piece.tipHoles ?? []).map(({ diameterMm }) => (Math.PI / 4) * diameterMm ** 2 * (xx * yy - xy * xy)),
    isParted: letIn.some((line) => !line.closed),
  };
}

function wantedBeside(piece: CutBeside): WantedPiece {
  const lines = isPlain(piece) ? piece.draft.lines.filter(({ role }) => isCut(role)) : [];
  return {
    piece: piece.id,
    number: piece.number,
    rings: [
      ...(isPlain(piece) ? piece.faceRings : [stripRing(piece)]),
      ...lines.filter((line) => line.closed).map(({ points }) => points),
    ],
    roundMm2: [],
    isParted: lines.some((line) => !line.closed),
  };
}

const isCut = (role: LineRole): boolean => LINE_STYLES[role].layer === 'cut';

const stripRing = ({ lengthMm, faceMm: { max } }: FoamStrip): Ring =>
  Float64Array.of(0, 0, lengthMm, 0, lengthMm, max, 0, max);

const mirrored = (ring: Ring): Ring => ring.map((mm, i) => (i % 2 === 0 ? -mm : mm));
