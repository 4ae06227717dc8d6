import { SMALLEST_WORDS_MM } from '../../model/line-style.ts';
import type { PieceId } from '../../base/ids.ts';
import type { Vec2 } from '../../geom/vec.ts';
import { tightBox } from '../../geom/convex-hull.ts';
import { widestSpot } from '../../geom/widest-spot.ts';
import type { FoamPiece, FoamSeam, PieceEdge } from '../../model/foam-piece.ts';
import type { Template } from '../../model/template.ts';
import { nearestOnRings } from './cut-lines.ts';
import { chordAt, lengthOf, pointAlong, readableAngle, walkedLine, type WalkedLine } from './edge-places.ts';
import { edgeLine, foamBoxOf, onPaper, pieceStrokes, TICK_MM, type PaperPiece } from './template-lines.ts';
import { BEVEL_STEP_DEG, edgeWords, foldWords, leanOnPaper, leanText, titleLines, type WordContext } from './template-words.ts';
import { CLEARANCE_MM, WordBoard } from './word-board.ts';
import { blockOf, boxAt, oneLine, type WordBlock } from './word-block.ts';

export interface TemplateContext {
  readonly projectName: string;
  readonly projectRevision: number;
  readonly foamName: string;
  /** Printed number of each piece, so that edges can name the piece they meet and twins each other; left out, letters alone pair edges. */
  readonly mates?: ReadonlyMap<PieceId, number>;
}

/** Heights tried for words along edges and folds, and for the title, mm, largest first. */
const EDGE_HEIGHTS_MM = [3.5, 3, SMALLEST_WORDS_MM];
const TITLE_HEIGHTS_MM = [5, 4.5, 4, 3.5, 3, SMALLEST_WORDS_MM];

/** The first line of the title stands this many times higher than the rest. */
const TITLE_LEAD = 1.5;

/** Places along an edge where its words are tried, in shares of its length, and steps inward from as near as they can stand, mm. */
const PLACES_ALONG = [0.5, 0.4, 0.6, 0.3, 0.7, 0.22, 0.78, 0.15, 0.85];
const STEPS_IN_MM = [0, 0.6, 1.2, 2, 3, 4.5, 6, 8, 10, 13, 16];

/**
 * Draws a piece as it is laid on foam and traced: seen from the side it is traced on, so a piece traced on its back is the mirror image and
 * says so. Lines by role, words inside where they fit at 2.5 mm or more, else beside the piece on a leader. y up, mm, in the piece's own frame.
 */
export function makeTemplate(piece: FoamPiece, seams: readonly FoamSeam[], context: TemplateContext): Template {
  const paper = onPaper(piece);
  const board = new WordBoard(paper, pieceStrokes(paper));
  const words: WordContext = { ...context, numberOf: (id) => context.mates?.get(id as PieceId) };
  const bySeam = new Map(seams.map((seam) => [seam.id, seam]));
  for (const edge of piece.edges) {
    const seam = bySeam.get(edge.seam);
    if (seam !== undefined && seam.kind !== 'open') nameEdge(board, paper, edge, seam, words);
  }
  nameFolds(board, paper);
  nameMarks(board, paper);
  for (const edge of piece.edges) tellBevelSteps(board, paper, edge);
  drawUp(board, paper);
  writeTitle(board, paper, titleLines(piece, words));
  return {
    piece: piece.id,
    drawing: { strokes: board.strokes, words: board.words },
    box: board.box(),
    foamBox: foamBoxOf(paper),
    reversed: paper.flip === -1,
  };
}

/** Mate letter, mate's number and bevel beside an edge; in one line where there is room, else in two, else the letter inside and the rest on a leader. */
function nameEdge(board: WordBoard, paper: PaperPiece, edge: PieceEdge, seam: FoamSeam, words: WordContext): void {
  const mate = seam.pieces.length === 2 ? seam.pieces[1 - edge.side] : undefined;
  const mateNumber = mate === undefined ? undefined : words.numberOf(mate);
  const { mate: letter, cut } = edgeWords(paper.piece, edge, {
    kind: seam.kind,
    lapSide: seam.lapSide,
    ...(mateNumber === undefined ? {} : { mateNumber }),
  });
  const line = walkedLine(edgeLine(paper, edge, 'traced'));
  const whole = cut === '' ? letter : `${letter} · ${cut}`;
  if (writeAlong(board, paper, line, (h) => oneLine(whole, h))) return;
  if (cut !== '' && writeAlong(board, paper, line, (h) => blockOf([letter, cut].map((text) => ({ text, heightMm: h }))))) return;
  const isNamed = cut !== '' && writeAlong(board, paper, line, (h) => oneLine(letter, h));
  writeOff(board, paper, line, oneLine(isNamed ? `${edge.letter}: ${cut}` : whole, SMALLEST_WORDS_MM));
}

/** Writes a block along the inner side of an edge, as large and as near the middle as there is room. */
function writeAlong(board: WordBoard, paper: PaperPiece, line: WalkedLine, blockAt: (heightMm: number) => WordBlock): boolean {
  const length = lengthOf(line);
  for (const height of EDGE_HEIGHTS_MM) {
    const block = blockAt(height);
    for (const step of STEPS_IN_MM) {
      for (const share of PLACES_ALONG) {
        const chord = chordAt(line, share * length, Math.min(block.widthMm, length));
        if (chord === null) continue;
        // Outward is to the right of the way, and to the left where the paper is mirrored.
        const inward = { x: -paper.flip * chord.right.x, y: -paper.flip * chord.right.y };
        const away = block.heightMm / 2 + CLEARANCE_MM + 0.1 + step;
        const centre = { x: chord.middle.x + away * inward.x, y: chord.middle.y + away * inward.y };
        // Words belong to the edge they stand nearest to.
        if (board.depth(centre) < away - 2) continue;
        if (board.tryInside(block, boxAt(block, centre.x, centre.y, readableAngle(chord.along)))) return true;
      }
    }
  }
  return false;
}

function writeOff(board: WordBoard, paper: PaperPiece, line: WalkedLine, block: WordBlock): void {
  const length = lengthOf(line);
  const chord = chordAt(line, length / 2, Math.min(length, 2)) ?? { middle: pointAlong(line, 0), right: { x: 0, y: -paper.flip } };
  board.writeBeside(block, chord.middle, { x: paper.flip * chord.right.x, y: paper.flip * chord.right.y });
}

/** Each fold's word and angle beside its line. Of lines that carry on from one another with the same words the longest speaks for all. */
function nameFolds(board: WordBoard, { piece, flip }: PaperPiece): void {
  for (const group of speakingFolds(piece)) {
    const { text } = foldWords(piece, group.angleDeg);
    const line = walkedLine(Float64Array.of(flip * group.from.x, group.from.y, flip * group.to.x, group.to.y));
    if (!writeAtFold(board, line, text)) {
      const chord = chordAt(line, lengthOf(line) / 2, lengthOf(line));
      if (chord !== null) board.writeBeside(oneLine(text, SMALLEST_WORDS_MM), chord.middle, chord.right);
    }
  }
}

function writeAtFold(board: WordBoard, line: WalkedLine, text: string): boolean {
  const length = lengthOf(line);
  for (const height of EDGE_HEIGHTS_MM.slice(1)) {
    const block = oneLine(text, height);
    for (const step of [0, 1, 2.5, 5]) {
      for (const share of PLACES_ALONG) {
        const chord = chordAt(line, share * length, Math.min(block.widthMm, length));
        if (chord === null) continue;
        for (const sign of [-1, 1]) {
          const away = sign * (block.heightMm / 2 + CLEARANCE_MM + 0.1 + step);
          const [x, y] = [chord.middle.x + away * chord.right.x, chord.middle.y + away * chord.right.y];
          if (board.tryInside(block, boxAt(block, x, y, readableAngle(chord.along)))) return true;
        }
      }
    }
  }
  return false;
}

interface SpeakingFold {
  readonly from: Vec2;
  readonly to: Vec2;
  readonly angleDeg: number;
}

/** Ends of fold lines that lie this near each other are one point, mm. */
const SAME_END_MM = 1e-6;

function speakingFolds(piece: FoamPiece): readonly SpeakingFold[] {
  const groups: { words: string; ends: Set<string>; longest: SpeakingFold; lengthMm: number }[] = [];
  const key = (p: Vec2): string => `${Math.round(p.x / SAME_END_MM)} ${Math.round(p.y / SAME_END_MM)}`;
  for (const fold of piece.folds) {
    const words = foldWords(piece, fold.angleDeg).text;
    const ends = [key(fold.from), key(fold.to)];
    const lengthMm = Math.hypot(fold.to.x - fold.from.x, fold.to.y - fold.from.y);
    const touching = groups.filter((group) => group.words === words && ends.some((end) => group.ends.has(end)));
    const joined = { words, ends: new Set(ends), longest: fold, lengthMm };
    for (const group of touching) {
      for (const end of group.ends) joined.ends.add(end);
      if (group.lengthMm > joined.lengthMm) [joined.longest, joined.lengthMm] = [group.longest, group.lengthMm];
      groups.splice(groups.indexOf(group), 1);
    }
    groups.push(joined);
  }
  return groups.map(({ longest }) => longest);
}

/** Letter and number at each tick: inside the piece behind it, else at the tick's outer end, else on a leader. */
function nameMarks(board: WordBoard, { piece, flip }: PaperPiece): void {
  for (const mark of piece.marks) {
    const block = oneLine(`${mark.letter}${mark.index}`, SMALLEST_WORDS_MM);
    const at = { x: flip * mark.at.x, y: mark.at.y };
    const out = { x: flip * mark.outward.x, y: mark.outward.y };
    const reach = (Math.abs(out.x) * block.widthMm + Math.abs(out.y) * block.heightMm) / 2 + CLEARANCE_MM + 0.1;
    const isIn = [0, 1, 2, 3.5, 5.5, 8].some((step) =>
      [0, 2, -2, 4, -4].some((aside) =>
        board.tryInside(block, boxAt(block, at.x - (reach + step) * out.x - aside * out.y, at.y - (reach + step) * out.y + aside * out.x, 0)),
      ),
    );
    if (isIn) continue;
    const tip = TICK_MM + reach;
    const isOut = [0, 0.8, 1.6].some((step) =>
      board.tryOutside(block, boxAt(block, at.x + (tip + step) * out.x, at.y + (tip + step) * out.y, 0)),
    );
    if (!isOut) board.writeBeside(block, { x: at.x + TICK_MM * out.x, y: at.y + TICK_MM * out.y }, out);
  }
}

/**
 * Wherever the bevel has changed by another five degrees along an edge: a thin line from the cut line to the other edge, with the lean there
 * (foam model 4). The first and last lean are in the edge's own words.
 */
function tellBevelSteps(board: WordBoard, paper: PaperPiece, edge: PieceEdge): void {
  const traced = edgeLine(paper, edge, 'traced');
  const other = edgeLine(paper, edge, 'other');
  const leans = Array.from(edge.bevelDeg, (lean) => leanOnPaper(paper.piece, lean));
  let told = leans[0];
  for (let j = 1; j + 1 < leans.length; j += 1) {
    if (Math.abs(leans[j] - told) < BEVEL_STEP_DEG) continue;
    told = leans[j];
    const at = { x: traced[2 * j], y: traced[2 * j + 1] };
    const end = { x: other[2 * j], y: other[2 * j + 1] };
    board.draw({ role: 'bevel', points: Float64Array.of(at.x, at.y, end.x, end.y), closed: false });
    const chord = chordAt(walkedLine(traced), walkedLine(traced).stations[j], 2);
    if (chord === null) continue;
    const out = { x: paper.flip * chord.right.x, y: paper.flip * chord.right.y };
    const block = oneLine(leanText(told).replace(' under', ''), SMALLEST_WORDS_MM);
    const reach = (Math.abs(out.x) * block.widthMm + Math.abs(out.y) * block.heightMm) / 2 + CLEARANCE_MM + 0.1;
    const depth = Math.max(0, (at.x - end.x) * out.x + (at.y - end.y) * out.y);
    const isIn = [0, 1, 2, 4, 6].some((step) =>
      board.tryInside(block, boxAt(block, at.x - (reach + depth + step) * out.x, at.y - (reach + depth + step) * out.y, 0)),
    );
    if (!isIn) board.writeBeside(block, at, out);
  }
}

/** Lengths tried for the up arrow, mm, and its head. */
const ARROWS_MM = [16, 12, 9];
const ARROW_HEAD_MM = 2.6;

/** An arrow with the word, inside where it fits, else beside the piece; nothing on a piece that lies level. */
function drawUp(board: WordBoard, paper: PaperPiece): void {
  const { piece, flip } = paper;
  if (piece.up === null) return;
  const up = { x: flip * piece.up.x, y: piece.up.y };
  const angle = Math.atan2(-up.x, up.y);
  const word = oneLine('up', SMALLEST_WORDS_MM);
  const room = board.room(angle);
  const spot = widestSpot(paper.cutRings, 1);
  const width = ARROW_HEAD_MM + CLEARANCE_MM + word.widthMm;
  for (const length of ARROWS_MM) {
    const box = room.find(width + 2 * CLEARANCE_MM, length + 2 * CLEARANCE_MM, spot);
    if (box === null) continue;
    drawArrow(board, word, box, up, length, width);
    return;
  }
  const { minX, minY } = board.box();
  const length = ARROWS_MM[ARROWS_MM.length - 1];
  const half = width / 2 + CLEARANCE_MM;
  drawArrow(board, word, { x: minX - half - length / 2, y: minY + length / 2 }, up, length, width);
}

function drawArrow(board: WordBoard, word: WordBlock, centre: Vec2, up: Vec2, length: number, width: number): void {
  const right = { x: up.y, y: -up.x };
  const at = (along: number, aside: number): [number, number] => [
    centre.x + along * up.x + aside * right.x,
    centre.y + along * up.y + aside * right.y,
  ];
  const shaft = -width / 2 + ARROW_HEAD_MM / 2;
  const head = length / 2 - ARROW_HEAD_MM;
  board.draw({ role: 'mark', points: Float64Array.of(...at(-length / 2, shaft), ...at(head, shaft)), closed: false });
  board.draw({
    role: 'mark',
    points: Float64Array.of(...at(length / 2, shaft), ...at(head, shaft - ARROW_HEAD_MM / 2), ...at(head, shaft + ARROW_HEAD_MM / 2)),
    closed: true,
    filled: true,
  });
  const [x, y] = at(0, width / 2 - word.widthMm / 2);
  board.write(word, boxAt(word, x, y, Math.atan2(-up.x, up.y)));
}

/**
 * What the piece is, in the largest letters that fit inside: as a block of lines, level, along the piece or upright; narrower or wider blocks
 * before smaller letters are given up; then the first line inside and the rest beside the piece; then all beside it.
 */
function writeTitle(board: WordBoard, paper: PaperPiece, lines: readonly string[]): void {
  const spot = widestSpot(paper.cutRings, 0.5);
  const box = tightBox(paper.cutRings[0]);
  const angles = [...new Set([0, readableAngle(box), Math.PI / 2])];
  const rooms = angles.map((angle) => board.room(angle));
  const write = (layouts: readonly (readonly string[])[]): boolean => {
    for (const height of TITLE_HEIGHTS_MM) {
      for (const layout of layouts) {
        const block = titleBlock(layout, height);
        for (const room of rooms) {
          const place = room.find(block.widthMm, block.heightMm, spot);
          if (place !== null && board.tryInside(block, place)) return true;
        }
      }
    }
    return false;
  };
  if (write(titleLayouts(lines))) return;
  const edge = nearestOnRings(paper.cutRings.slice(0, 1), { x: spot.x + 1e-3, y: spot.y });
  const away = Math.hypot(edge.x - spot.x, edge.y - spot.y);
  const outward = away > 0 ? { x: (edge.x - spot.x) / away, y: (edge.y - spot.y) / away } : { x: 1, y: 0 };
  const isNamed = write([lines.slice(0, 2), lines.slice(0, 1), [lines[0].split(' ')[0]]]);
  board.writeBeside(titleBlock(isNamed ? [`${lines[0]}:`, ...lines.slice(1)] : lines, SMALLEST_WORDS_MM), edge, outward);
}

const titleBlock = (lines: readonly string[], heightMm: number): WordBlock =>
  blockOf(lines.map((text, i) => (i === 0 ? { text, heightMm: Math.max(SMALLEST_WORDS_MM, TITLE_LEAD * heightMm), bold: true } : { text, heightMm })));

/** The lines as they are, two by two for wide pieces, and broken at their middle for narrow ones. */
function titleLayouts(lines: readonly string[]): readonly (readonly string[])[] {
  const wide = [lines[0]];
  for (let i = 1; i < lines.length; i += 2) wide.push(lines.slice(i, i + 2).join(' · '));
  const narrow = [lines[0], ...lines.slice(1).flatMap(halves)];
  return [lines, wide, narrow];
}

/** A long line broken at the space nearest its middle. */
function halves(line: string): readonly string[] {
  if (line.length < 16) return [line];
  const middle = line.length / 2;
  const spaces = [...line.matchAll(/ /g)].map(({ index }) => index);
  if (spaces.length === 0) return [line];
  const at = spaces.reduce((best, i) => (Math.abs(i - middle) < Math.abs(best - middle) ? i : best));
  return [line.slice(0, at).replace(/ ·$/, ''), line.slice(at + 1).replace(/^· /, '')];
}
