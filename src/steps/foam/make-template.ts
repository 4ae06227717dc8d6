import type { FoamId, PieceId } from '../../base/ids.ts';
import { sawTexts } from '../../base/lean-words.ts';
import type { Stepwise } from '../../base/stepwise.ts';
import type { FoamPiece, FoamSeam } from '../../model/foam-piece.ts';
import type { FoamStrip } from '../../model/foam-strip.ts';
import type { Template } from '../../model/template.ts';
import { bevelSteps, bevelStepStroke, tellBevelSteps } from './bevel-steps.ts';
import { drawGrain, drawUp } from './direction-arrows.ts';
import { nameEdge } from './edge-names.ts';
import { nameFolds } from './fold-names.ts';
import { nameMarks } from './mark-names.ts';
import { stripTemplate } from './strip-template.ts';
import { foamBoxOf, onPaper, pieceStrokes } from './template-lines.ts';
import { writeIfRoom, writeTitle } from './template-title.ts';
import { titleLines, type WordContext } from './template-words.ts';
import { WordBoard } from './word-board.ts';

export interface TemplateContext {
  readonly projectName: string;
  readonly foamName: string;
  /** Printed number of each piece, so that edges can name the piece they meet and twins each other; left out, letters alone pair edges. */
  readonly mates?: ReadonlyMap<PieceId, number>;
}

/** The templates of all pieces of a part and then of its strips, in stretches; edges name the pieces they meet. */
export function* templateSteps(
  pieces: readonly FoamPiece[],
  seams: readonly FoamSeam[],
  context: {
    readonly projectName: string;
    readonly foamNames: ReadonlyMap<FoamId, string>;
    readonly strips?: readonly FoamStrip[];
  },
): Stepwise<readonly Template[]> {
  const { projectName, foamNames, strips = [] } = context;
  const nameOf = (foam: FoamId): string => {
    const name = foamNames.get(foam);
    if (name === undefined) throw new Error(`templateSteps: foam ${foam} has no name`);
    return name;
  };
  const mates = new Map(pieces.map((piece) => [piece.id, piece.number]));
  const templates: Template[] = [];
  for (const piece of pieces) {
    yield;
    templates.push(makeTemplate(piece, seams, { projectName, foamName: nameOf(piece.foam), mates }));
  }
  for (const strip of strips) templates.push(stripTemplate(strip, projectName, nameOf(strip.foam)));
  return templates;
}

/**
 * Draws a piece as it is laid on foam and traced: seen from the side it is traced on, so a piece traced on its back is the mirror image and
 * says so, and as large as it is cut. Lines by role, words inside where they fit at 2.5 mm or more, else beside the piece on a leader. y up, mm, in the piece's own frame.
 */
export function makeTemplate(piece: FoamPiece, seams: readonly FoamSeam[], context: TemplateContext): Template {
  const paper = onPaper(piece);
  const steps = piece.edges.flatMap((edge) => bevelSteps(paper, edge));
  const board = new WordBoard(paper, [...pieceStrokes(paper), ...steps.map(bevelStepStroke)]);
  const words: WordContext = { ...context, numberOf: (id) => context.mates?.get(id as PieceId) };
  const bySeam = new Map(seams.map((seam) => [seam.id, seam]));
  // What belongs to one point comes first, then what may move along a line, last what may stand anywhere.
  nameMarks(board, paper);
  tellBevelSteps(board, steps);
  for (const edge of piece.edges) {
    const seam = bySeam.get(edge.seam);
    if (seam !== undefined && seam.kind !== 'open') nameEdge(board, paper, edge, seam, words);
  }
  nameFolds(board, paper);
  drawUp(board, paper);
  drawGrain(board, paper);
  writeTitle(board, paper, titleLines(piece, words));
  writeIfRoom(board, paper, sawLines(piece));
  return {
    piece: piece.id,
    drawing: { strokes: board.strokes, words: board.words },
    box: board.box(),
    foamBox: foamBoxOf(paper),
    ...(paper.grain === null ? {} : { grainRad: Math.atan2(paper.grain.y, paper.grain.x) }),
    reversed: paper.flip === -1,
  };
}

/** How the saw is set for a piece; what is cut by hand stands at its edges. */
function sawLines({ tracedSide, edges, saw }: FoamPiece): readonly string[] {
  const texts = sawTexts({ tracedSide, edges, saw: { settings: saw?.settings ?? [], byHand: [] } });
  return texts.map((text, i) => (i === 0 ? `saw ${text}` : text));
}
