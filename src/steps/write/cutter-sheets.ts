import type { PieceId } from '../../base/ids.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import type { Finding } from '../../base/finding.ts';
import type { Region } from '../../geom/polygon-boolean.ts';
import { ringArea } from '../../geom/ring.ts';
import { TakenLines } from '../../geom/taken-lines.ts';
import { layPoint, layPoints, layRing, type Lay2 } from '../../geom/lay-over.ts';
import {
  THROUGH_ROLES,
  type CutterChoice,
  type CutterLine,
  type CutterPiece,
  type CutterSheet,
} from '../../model/cutter.ts';
import type { FoamPiece } from '../../model/foam-piece.ts';
import type { CutBeside } from '../../model/plain-piece.ts';
import type { Placement, Sheet, SheetLayout } from '../../model/sheet.ts';
import type { Drawing, Template } from '../../model/template.ts';
import { bridgeGaps } from './cutter-bridges.ts';
import { pieceCuts, SAME_CUT_MM } from './cutter-cuts.ts';
import { drawnLines } from './cutter-lines.ts';
import { cutterShape } from './cutter-shape.ts';
import { sheetDrawings } from './sheet-drawings.ts';

/** Round a piece that fits no sheet, mm. */
const GROUND_BORDER_MM = 10;

/** Everything of one piece in the frame of its template. */
interface Prepared {
  readonly piece: FoamPiece | CutBeside;
  readonly template: Template;
  readonly drawn: readonly CutterLine[];
  readonly through: readonly CutterLine[];
  readonly shape: readonly Region[];
}

export interface CutterInput {
  /** Pieces and strips. */
  readonly pieces: readonly (FoamPiece | CutBeside)[];
  readonly templates: readonly Template[];
  readonly layout: SheetLayout;
  readonly choice: CutterChoice;
}

/**
 * All sheets of foam as a machine takes them: lines by what they do, in the order they are to be worked, nothing cut twice, words apart.
 * @returns fails with `cutter/opening-lost` where the cut is wider than an opening. Notes tell which edges are left to the knife, and which
 *   small pieces got fewer bridges.
 */
export function cutterSheets({ pieces, templates, layout, choice }: CutterInput): Result<readonly CutterSheet[]> {
  const byId = new Map<PieceId, Prepared>();
  for (const piece of pieces) {
    const template = templates.find(({ piece: id }) => id === piece.id);
    if (template === undefined) throw new Error(`cutterSheets: no template of ${piece.id}`);
    const shape = cutterShape(piece);
    const cuts = pieceCuts(shape, choice.cutWidthMm, nameOf(piece));
    if (!cuts.ok) return fail(cuts.problem.code, cuts.problem.text, { piece: piece.id });
    const drawn = drawnLines(template, shape);
    byId.set(piece.id, { piece, template, drawn, through: cuts.value.lines, shape: cuts.value.shape });
  }
  const need = (id: PieceId): Prepared => {
    const found = byId.get(id);
    if (found === undefined) throw new Error(`cutterSheets: ${id} lies on a sheet and is no piece`);
    return found;
  };
  const sheets = layout.sheets.map((sheet, i): CutterSheet => ({
    number: i + 1,
    foam: sheet.foam,
    thicknessMm: sheet.thicknessMm,
    widthMm: sheet.widthMm,
    heightMm: sheet.heightMm,
    isTooLarge: false,
    ...onSheet(sheet, need, choice),
  }));
  const grounds = [
    ...layout.tooLarge.flatMap((id) => copiesOf(need(id)).map((copy) => groundFor(need(id), copy))),
    ...(layout.odd?.unlaid ?? []).map(({ piece, copy }) => groundFor(need(piece), copy)),
  ];
  const own = grounds.map(({ place, ...ground }, i): CutterSheet => ({
    ...ground,
    number: sheets.length + i + 1,
    isTooLarge: true,
    ...onSheet({ ...ground, placements: [place] }, need, choice),
  }));
  return ok([...sheets, ...own], [...knifeNotes([...byId.values()]), ...bridgeNotes([...byId.values()], choice)]);
}

const nameOf = ({ number, name }: FoamPiece | CutBeside): string => `${number} ${name}`;

const copiesOf = ({ piece }: Prepared): readonly number[] => Array.from({ length: piece.quantity }, (_, copy) => copy);

/** Ground for a copy that has no place on a sheet, so that nothing is left out. */
function groundFor({ piece, template }: Prepared, copy: number) {
  const { minX, minY, maxX, maxY } = template.foamBox;
  return {
    foam: piece.foam,
    thicknessMm: piece.thicknessMm,
    widthMm: maxX - minX + 2 * GROUND_BORDER_MM,
    heightMm: maxY - minY + 2 * GROUND_BORDER_MM,
    place: { piece: piece.id, copy, x: GROUND_BORDER_MM - minX, y: GROUND_BORDER_MM - minY, turnRad: 0 },
  };
}

/** Pieces of one sheet, the smallest first: what lies within an opening of another is then cut before that opening is. */
function onSheet(
  sheet: Pick<Sheet, 'widthMm' | 'heightMm' | 'outline' | 'keepOut' | 'placements'>,
  need: (id: PieceId) => Prepared,
  choice: CutterChoice,
): Pick<CutterSheet, 'pieces' | 'list' | 'listMm'> {
  const { placements } = sheet;
  const { drawings, list, listMm } = sheetDrawings(
    sheet,
    placements.map(({ piece }) => need(piece).template),
  );
  const laid = placements
    .map((place, i) => layDown(need(place.piece), place, drawings[i]))
    .sort((a, b) => outerArea(a) - outerArea(b));
  const taken = new TakenLines(SAME_CUT_MM);
  const { bridges, cutWidthMm } = choice;
  if (bridges !== undefined) {
    // The beam eats half its width into either end of a gap.
    const gaps = laid.flatMap(({ shape }) =>
      shape.flatMap(({ outer }) => bridgeGaps(outer, bridges.count, bridges.widthMm + cutWidthMm)),
    );
    for (const gap of gaps) taken.block(gap);
  }
  const pieces = laid.map((piece) => ({ ...piece, lines: piece.lines.flatMap((line) => onceOnly(line, taken)) }));
  return { pieces, list, listMm };
}

/** What is left of a through cut when earlier ones and bridges are taken off; other lines as they are. */
function onceOnly(line: CutterLine, taken: TakenLines): readonly CutterLine[] {
  if (!THROUGH_ROLES.includes(line.role)) return [line];
  const { free } = taken.take(line);
  if (free.length === 1 && free[0] === line) return [line];
  return free.map(({ points, closed }) => ({ role: line.role, points, closed }));
}

const outerArea = ({ shape }: CutterPiece): number =>
  shape.reduce((most, { outer }) => Math.max(most, ringArea(outer)), 0);

function layDown({ piece, drawn, through, shape }: Prepared, place: Placement, drawing: Drawing): CutterPiece {
  const leaders = drawing.strokes.filter(({ role }) => role === 'leader');
  return {
    piece: piece.id,
    number: piece.number,
    name: piece.name,
    copy: place.copy,
    lines: [
      ...leaders.map(({ points, closed }): CutterLine => ({ role: 'words', points, closed })),
      ...[...drawn, ...through].map((line) => movedLine(line, place)),
    ],
    words: drawing.words,
    shape: shape.map(({ outer, holes }) => ({
      outer: layRing(outer, place),
      holes: holes.map((hole) => layRing(hole, place)),
    })),
    drawing,
  };
}

function movedLine(line: CutterLine, move: Lay2): CutterLine {
  const { circle } = line;
  const moved = { ...line, points: layPoints(line.points, move) };
  return circle === undefined ? moved : { ...moved, circle: { ...circle, centre: layPoint(circle.centre, move) } };
}

function knifeNotes(prepared: readonly Prepared[]): readonly Finding[] {
  const leaning = prepared.filter(({ drawn }) => drawn.some(({ role }) => role === 'knife'));
  if (leaning.length === 0) return [];
  const text = `A machine cuts upright: ${leaning.length} of ${prepared.length} pieces have edges that lean, are cut at the larger of face and back, and get their bevels by knife along the lines marked for it.`;
  return [{ code: 'cutter/knife', severity: 'note', text, where: {} }];
}

function bridgeNotes(prepared: readonly Prepared[], { bridges, cutWidthMm }: CutterChoice): readonly Finding[] {
  if (bridges === undefined) return [];
  const { count, widthMm } = bridges;
  return prepared.flatMap(({ piece, shape }) => {
    const got = shape.reduce((sum, { outer }) => sum + bridgeGaps(outer, count, widthMm + cutWidthMm).length, 0);
    if (got >= count) return [];
    const text = `${nameOf(piece)} is too small for ${count} bridges of ${widthMm} mm and gets ${got === 0 ? 'none: hold it down' : got}.`;
    return [{ code: 'cutter/few-bridges', severity: 'warning', text, where: { piece: piece.id } }];
  });
}
