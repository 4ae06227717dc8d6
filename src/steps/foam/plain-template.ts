import { inEnglish, type Say } from '../../base/paper-language.ts';
import { boxOfPoints, joinBoxes } from '../../geom/ring.ts';
import { edgeLeans, type PlainPiece } from '../../model/plain-piece.ts';
import { SMALLEST_WORDS_MM } from '../../model/line-style.ts';
import type { Stroke, Template } from '../../model/template.ts';
import { wordsOnFoam } from './foam-drawing.ts';
import { foamText } from './template-words.ts';
import { saidTitle, writeIfRoom, writeTitle } from './template-title.ts';
import { oneLine } from './word-block.ts';
import { WordBoard } from './word-board.ts';

/** A piece that no sculpt was parted for, in true size as it is traced on its face; y up, mm, in its own frame. */
export function plainTemplate(piece: PlainPiece, projectName: string, foamName: string, say = inEnglish): Template {
  const { draft, faceRings, backRings } = piece;
  const cut: Stroke[] = faceRings.map((points) => ({ role: 'cut', points, closed: true }));
  const other: Stroke[] =
    backRings === faceRings ? [] : backRings.map((points) => ({ role: 'bevel', points, closed: true }));
  const lines: Stroke[] = draft.lines.map(({ role, points, closed }) => ({ role, points, closed }));
  const strokes = [...other, ...lines, ...cut];
  const paper = { cutRings: faceRings };
  const board = new WordBoard(paper, strokes);
  nameLines(board, piece, say);
  const title = {
    number: String(piece.number),
    head: [`${piece.number}  ${piece.name}`, `cut ${piece.quantity} · ${foamText(piece.thicknessMm, foamName)}`],
    rest: [
      'traced on the face, this side out',
      ...edgeLeans(draft),
      `${projectName} · piece revision ${piece.revision}`,
    ],
  };
  writeTitle(board, paper, saidTitle(title, say));
  writeIfRoom(board, paper, draft.notes.map(say));
  const foamBox = strokes
    .filter(({ role }) => role === 'cut' || role === 'bevel')
    .map(({ points }) => boxOfPoints(points))
    .reduce(joinBoxes);
  return {
    piece: piece.id,
    drawing: { strokes: board.strokes, words: board.words },
    box: board.box(),
    foamBox,
    foamRings: backRings === faceRings ? faceRings : [...faceRings, ...backRings],
    onFoam: wordsOnFoam(faceRings, strokes, piece),
    ...(draft.grainRad === undefined ? {} : { grainRad: draft.grainRad }),
    reversed: false,
  };
}

/** What a line is called, beside its middle. */
function nameLines(board: WordBoard, { draft }: PlainPiece, say: Say): void {
  for (const { points, text } of draft.lines) {
    if (text === undefined) continue;
    const at = 2 * Math.floor(points.length / 4);
    const target = { x: points[at], y: points[at + 1] };
    board.writeBeside(oneLine(say(text), SMALLEST_WORDS_MM), [
      { target, outward: { x: 0, y: 1 }, insideMm: Math.max(0, board.depth(target)) },
    ]);
  }
}
