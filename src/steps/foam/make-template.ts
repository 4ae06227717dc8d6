import type { FoamId, PieceId } from '../../base/ids.ts';
import { sawTexts } from '../../base/lean-words.ts';
import { inEnglish, type Say } from '../../base/paper-language.ts';
import type { Stepwise } from '../../base/stepwise.ts';
import type { FoamPiece, FoamSeam, PieceEdge } from '../../model/foam-piece.ts';
import type { FoamStrip } from '../../model/foam-strip.ts';
import type { Template } from '../../model/template.ts';
import { bevelSteps, bevelStepStroke, tellBevelSteps } from './bevel-steps.ts';
import { drawGrain, drawUp } from './direction-arrows.ts';
import { mateNumber, nameEdge } from './edge-names.ts';
import { foamDrawing } from './foam-drawing.ts';
import { nameFolds } from './fold-names.ts';
import { nameMarks } from './mark-names.ts';
import { stripTemplate } from './strip-template.ts';
import { foamBoxOf, foamRingsOf, onPaper, pieceStrokes } from './template-lines.ts';
import { saidTitle, writeIfRoom, writeTitle } from './template-title.ts';
import { mateText, titleOf, type WordContext } from './template-words.ts';
import type { TwinPapers } from './twin-paper.ts';
import { bothNames, type TwinReading } from './twin-reading.ts';
import { WordBoard } from './word-board.ts';

export interface TemplateContext {
  readonly projectName: string;
  readonly foamName: string;
  /** Printed number of each piece, so that edges can name the piece they meet and twins each other; left out, letters alone pair edges. */
  readonly mates?: ReadonlyMap<PieceId, number>;
  /** Why a piece may not be cut with its twin's template turned over; left out where it may. */
  readonly apart?: string | undefined;
  /** See {@link WordContext}. */
  readonly isBrief?: boolean | undefined;
  readonly say?: Say | undefined;
}

/** What the templates of a part are called by. */
export interface TemplatesContext {
  readonly projectName: string;
  readonly foamNames: ReadonlyMap<FoamId, string>;
  readonly twins: TwinPapers;
  /** See {@link WordContext}; left out where all is told. */
  readonly isBrief?: boolean;
  readonly say?: Say;
}

/** The templates of all pieces of a part and then of its strips, in stretches; edges name the pieces they meet. */
export function* templateSteps(
  pieces: readonly FoamPiece[],
  seams: readonly FoamSeam[],
  strips: readonly FoamStrip[],
  context: TemplatesContext,
): Stepwise<readonly Template[]> {
  const contextOf = contextOfPieces(pieces, context);
  const templates: Template[] = [];
  for (const piece of pieces) {
    yield;
    templates.push(makeTemplate(piece, seams, contextOf(piece)));
  }
  for (const strip of strips)
    templates.push(stripTemplate(strip, context.projectName, nameOfFoam(strip.foam, context), context.say));
  return templates;
}

/** For each pair of twins that may share paper the one template of both, in stretches: that of the first, with what is read turned over. */
export function* turnedTemplateSteps(
  pieces: readonly FoamPiece[],
  seams: readonly FoamSeam[],
  context: TemplatesContext,
): Stepwise<readonly Template[]> {
  const contextOf = contextOfPieces(pieces, context);
  const templates: Template[] = [];
  for (const piece of pieces) {
    const twin = context.twins.readings.get(piece.id);
    if (twin === undefined) continue;
    yield;
    templates.push(makeTemplate(piece, seams, contextOf(piece), twin));
  }
  return templates;
}

function contextOfPieces(
  pieces: readonly FoamPiece[],
  context: TemplatesContext,
): (piece: FoamPiece) => TemplateContext {
  const mates = new Map(pieces.map((piece) => [piece.id, piece.number]));
  return ({ id, foam }) => ({
    projectName: context.projectName,
    foamName: nameOfFoam(foam, context),
    mates,
    apart: context.twins.apart.get(id),
    isBrief: context.isBrief,
    say: context.say,
  });
}

function nameOfFoam(foam: FoamId, { foamNames }: TemplatesContext): string {
  const name = foamNames.get(foam);
  if (name === undefined) throw new Error(`foam ${foam} has no name`);
  return name;
}

/**
 * Draws a piece as it is laid on foam and traced: seen from the side it is traced on, so a piece traced on its back is the mirror image and
 * says so, and as large as it is cut. Lines by role, words inside where they fit at 2.5 mm or more, else beside the piece on a leader. y up, mm, in the piece's own frame.
 * @param twin what is also said for whoever turns the template over, to cut the piece's twin with it; left out where it is of one piece alone.
 */
export function makeTemplate(
  piece: FoamPiece,
  seams: readonly FoamSeam[],
  context: TemplateContext,
  twin?: TwinReading,
): Template {
  const { say = inEnglish } = context;
  const paper = onPaper(piece);
  const steps = piece.edges.flatMap((edge) => bevelSteps(paper, edge));
  const board = new WordBoard(paper, [...pieceStrokes(paper), ...steps.map(bevelStepStroke)]);
  const words: WordContext = { ...context, numberOf: (id) => context.mates?.get(id as PieceId) };
  const bySeam = new Map(seams.map((seam) => [seam.id, seam]));
  const turnedMate = (edge: PieceEdge): string | undefined => {
    const other = twin?.edges.get(edge);
    const seam = other === undefined ? undefined : bySeam.get(other.seam);
    if (twin === undefined || other === undefined || seam === undefined) return undefined;
    return mateText(twin.piece, other, mateNumber(other, seam, words));
  };
  // What belongs to one point comes first, then what may move along a line, last what may stand anywhere.
  nameMarks(board, paper, twin);
  tellBevelSteps(board, steps, say);
  for (const edge of piece.edges) {
    const seam = bySeam.get(edge.seam);
    if (seam !== undefined && seam.kind !== 'open') nameEdge(board, paper, edge, seam, words, turnedMate(edge));
  }
  nameFolds(board, paper, say);
  drawUp(board, paper, say);
  drawGrain(board, paper, say);
  writeTitle(board, paper, saidTitle(titleOf(piece, words, twin?.piece), say));
  writeIfRoom(board, paper, sawLines(piece, twin).map(say));
  return {
    piece: piece.id,
    drawing: { strokes: board.strokes, words: board.words },
    box: board.box(),
    foamBox: foamBoxOf(paper),
    foamRings: foamRingsOf(paper),
    ...(twin === undefined && context.isBrief !== true ? { onFoam: foamDrawing(paper, say) } : {}),
    ...(paper.grain === null ? {} : { grainRad: Math.atan2(paper.grain.y, paper.grain.x) }),
    reversed: paper.flip === -1,
    ...(twin === undefined ? {} : { turned: twin.piece.id }),
    ...(context.apart === undefined ? {} : { apart: context.apart }),
  };
}

/** How the saw is set for a piece; what is cut by hand stands at its edges. */
function sawLines({ tracedSide, edges, saw }: FoamPiece, twin: TwinReading | undefined): readonly string[] {
  const named = edges.map((edge) => ({ ...edge, letter: bothNames(edge.letter, twin?.edges.get(edge)?.letter) }));
  const texts = sawTexts({ tracedSide, edges: named, saw: { settings: saw?.settings ?? [], byHand: [] } });
  return texts.map((text, i) => (i === 0 ? `saw ${text}` : text));
}
