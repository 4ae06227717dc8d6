import type { PieceId } from '../../base/ids.ts';
import { movePoint, type Move2 } from '../../geom/turn-and-move.ts';
import { scaledPoint } from '../../geom/scale-along.ts';
import type { Vec2 } from '../../geom/vec.ts';
import type { FoamPiece, FoamSeam, MatchMark, PieceEdge, PieceFold } from '../../model/foam-piece.ts';
import type { LineRole } from '../../model/template.ts';
import { drawingsApart, type DrawnLine } from './line-distance.ts';
import { onPaper, pieceStrokes, type PaperPiece } from './template-lines.ts';
import { joinText, makingLines } from './template-words.ts';
import { markKey, type TwinReading } from './twin-reading.ts';

/** Lines of twins on paper may be this far apart, mm: half the width of a line to cut on either side. */
export const TWIN_LINES_MM = 0.05;

/** Lines under strips of trim: a strip keeps to its own line no nearer (shop rule). */
const TWIN_STRIPS_MM = 0.4;

/** Their bevels and folds may differ by this, degrees: nobody sets a blade finer. */
export const TWIN_ANGLES_DEG = 0.5;

/** Directions of their arrows, degrees: they are drawn short. */
const TWIN_ARROWS_DEG = 1;

/** Which pieces may be cut with the template of another turned over, and why others that mirror each other may not. */
export interface TwinPapers {
  /** By the piece whose template it is: what is read from it turned over. */
  readonly readings: ReadonlyMap<PieceId, TwinReading>;
  /** By piece, both of a pair: what differs, without a full stop. */
  readonly apart: ReadonlyMap<PieceId, string>;
}

/** Holds all twins against each other as they would lie on paper, in the order of the pieces. */
export function twinPapers(pieces: readonly FoamPiece[], seams: readonly FoamSeam[]): TwinPapers {
  const readings = new Map<PieceId, TwinReading>();
  const apart = new Map<PieceId, string>();
  const byId = new Map(pieces.map((piece) => [piece.id, piece]));
  const done = new Set<PieceId>();
  for (const first of pieces) {
    const second = first.twinOf === undefined ? undefined : byId.get(first.twinOf);
    if (second === undefined || done.has(first.id)) continue;
    done.add(second.id);
    const read = readTurned(first, second, seams);
    if (typeof read !== 'string') readings.set(first.id, read);
    else for (const { id } of [first, second]) apart.set(id, read);
  }
  return { readings, apart };
}

/** What the template of the first says turned over, of the second; or what differs. */
export function readTurned(first: FoamPiece, second: FoamPiece, seams: readonly FoamSeam[]): TwinReading | string {
  const { twinMove } = first;
  if (twinMove === undefined) return 'which corner lies on which cannot be told';
  if (first.tracedSide !== second.tracedSide) return 'one is traced on the back';
  if (first.foam !== second.foam) return 'they are of different foam';
  const [a, b] = [onPaper(first), onPaper(second)];
  const move = paperMove(twinMove, b);
  const turned = (p: Vec2): Vec2 => movePoint({ x: -p.x, y: p.y }, move);
  const told = linesDifference(a, b, turned) ?? wordsDifference(first, second) ?? arrowsDifference(a, b, move);
  if (told !== null) return told;
  const pairs = pairedEdges(first, second, twinMove);
  if (typeof pairs === 'string') return pairs;
  const marks = pairedMarks(a, b, turned);
  if (typeof marks === 'string') return marks;
  const edges = new Map(pairs.map(({ own, twin }) => [own, twin]));
  return edgesDifference(pairs, seams) ?? foldsDifference(a, b, turned) ?? { piece: second, edges, marks };
}

/** `FoamPiece.twinMove` as the pieces are drawn: larger where their foam will shrink, mirrored where they are traced on the back. */
function paperMove(twinMove: Move2, { flip, scale }: PaperPiece): Move2 {
  const { x, y } = scale === null ? twinMove : scaledPoint(twinMove, scale);
  return { x: flip * x, y, turnRad: flip * twinMove.turnRad };
}

/** Kinds of lines in the order they are told in, and what they are called. */
const LINES: readonly (readonly [LineRole, string])[] = [
  ['cut', 'the line to cut'],
  ['bevel', 'the other edge of the bevels'],
  ['lap', 'where the laps begin'],
  ['fold-out', 'a fold out'],
  ['fold-in', 'a fold in'],
  ['groove', 'a groove'],
  ['groove-behind', 'a groove behind'],
  ['kerf', 'a kerf'],
  ['kerf-behind', 'a kerf behind'],
  ['score', 'a scored line'],
  ['placement', 'where a raised piece lies'],
  ['engrave', 'an engraved line'],
  ['hole', 'a round hole'],
  ['mark', 'a match mark'],
];

function linesDifference(a: PaperPiece, b: PaperPiece, turned: (p: Vec2) => Vec2): string | null {
  const [own, twin] = [a, b].map((paper) => pieceStrokes({ ...paper, placings: [] }));
  for (const [role, name] of LINES) {
    const lines = own.filter((stroke) => stroke.role === role).map((line) => turnedLine(line, turned));
    const apartMm = drawingsApart(
      lines,
      twin.filter((stroke) => stroke.role === role),
    );
    if (apartMm === Infinity) return `only one has ${name.replace(/^the /, '')}`;
    if (apartMm > TWIN_LINES_MM) return `${name} differs by ${lengthText(apartMm)}`;
  }
  for (const [what, name] of STRIP_LINES) {
    const [lines, others] = [a, b].map(({ placings }) => placings.filter((one) => one.what === what));
    const apartMm = drawingsApart(
      lines.map((line) => turnedLine(line, turned)),
      others,
    );
    if (apartMm === Infinity) return `only one has ${name}`;
    if (apartMm > TWIN_STRIPS_MM) return `${name} differ by ${lengthText(apartMm)}`;
  }
  return null;
}

const STRIP_LINES = [
  ['edge', 'edges of trim'],
  ['mark', 'marks beside trim'],
  ['engraving', 'engraved lines'],
] as const;

const lengthText = (mm: number): string => `${mm < 10 ? mm.toFixed(2) : mm.toFixed(0)} mm`;

function turnedLine({ points, closed }: DrawnLine, turned: (p: Vec2) => Vec2): DrawnLine {
  const moved = new Float64Array(points.length);
  for (let i = 0; i < points.length; i += 2) {
    const { x, y } = turned({ x: points[i], y: points[i + 1] });
    moved.set([x, y], i);
  }
  return { points: moved, closed };
}

function wordsDifference(first: FoamPiece, second: FoamPiece): string | null {
  const [own, twin] = [makingLines(first), makingLines(second)];
  const i = own.findIndex((line, k) => line !== twin[k]);
  if (i < 0 && own.length === twin.length) return null;
  const at = i < 0 ? own.length : i;
  const said = own.length > twin.length ? own[at] : twin[at];
  return `only one says “${said}”`;
}

/** Up and the grain run the same way in both; the grain has no head. */
function arrowsDifference(a: PaperPiece, b: PaperPiece, { turnRad }: Move2): string | null {
  const turned = (way: Vec2): Vec2 => movePoint({ x: -way.x, y: way.y }, { x: 0, y: 0, turnRad });
  const arrows: readonly (readonly [string, Vec2 | null, Vec2 | null, boolean])[] = [
    ['up', a.up, b.up, false],
    ['the grain', a.grain, b.grain, true],
  ];
  for (const [name, own, twin, hasTwoHeads] of arrows) {
    if (own === null && twin === null) continue;
    if (own === null || twin === null) return `only one has ${name === 'up' ? 'an up' : 'a grain'}`;
    const { x, y } = turned(own);
    const angle = (Math.atan2(Math.abs(x * twin.y - y * twin.x), x * twin.x + y * twin.y) * 180) / Math.PI;
    const apartDeg = hasTwoHeads ? Math.min(angle, 180 - angle) : angle;
    if (apartDeg > TWIN_ARROWS_DEG) return `${name} runs ${apartDeg.toFixed(1)}° apart`;
  }
  return null;
}

/** An edge's like on the twin, which runs the other way, and where the edge begins on one that goes all round. */
interface EdgePair {
  readonly own: PieceEdge;
  readonly twin: PieceEdge;
  readonly shift: number;
}

function pairedEdges(first: FoamPiece, second: FoamPiece, move: Move2): readonly EdgePair[] | string {
  const pairs: EdgePair[] = [];
  const turned = (p: Vec2): Vec2 => movePoint({ x: -p.x, y: p.y }, move);
  const twins = second.edges.map((twin) => ({ twin, line: neutralLine(second, twin) }));
  for (const own of first.edges) {
    const line = neutralLine(first, own).map(turned);
    const pair = twins.flatMap(({ twin, line: other }) => {
      const shift = other.length === line.length ? shiftOf(line, other, isRound(twin)) : null;
      return shift === null ? [] : [{ own, twin, shift }];
    });
    if (pair.length === 0) return `edge ${own.letter} has none that mirrors it`;
    pairs.push(pair[0]);
  }
  return pairs;
}

const isRound = ({ from, to }: PieceEdge): boolean => from === to;

/** Points of an edge before it is moved outward, mm. */
function neutralLine(piece: FoamPiece, { ring, from, stationMm }: PieceEdge): readonly Vec2[] {
  const points = ring === 0 ? piece.neutralOutline : piece.neutralHoles[ring - 1];
  const count = points.length / 2;
  return Array.from(stationMm, (_, j) => {
    const at = (from + j) % count;
    return { x: points[2 * at], y: points[2 * at + 1] };
  });
}

/** Where the `i`-th point of an edge of `steps` steps lies on its mirror image. */
const placeOnTwin = (i: number, steps: number, isAllRound: boolean, shift: number): number =>
  isAllRound ? (2 * steps + shift - i) % steps : steps - i;

/** For which shift one line is the other from its other end, or null. */
function shiftOf(own: readonly Vec2[], twin: readonly Vec2[], isAllRound: boolean): number | null {
  const steps = own.length - 1;
  for (let shift = 0; shift < (isAllRound ? steps : 1); shift += 1) {
    const isOn = own.every(({ x, y }, i) => {
      const other = twin[placeOnTwin(i, steps, isAllRound, shift)];
      return Math.hypot(x - other.x, y - other.y) <= TWIN_LINES_MM;
    });
    if (isOn) return shift;
  }
  return null;
}

function pairedMarks(a: PaperPiece, b: PaperPiece, turned: (p: Vec2) => Vec2): TwinReading['marks'] | string {
  const pairs = new Map<string, MatchMark>();
  const origin = turned({ x: 0, y: 0 });
  for (const mark of a.marks) {
    const [at, tip] = [turned(mark.at), turned(mark.outward)];
    const out = { x: tip.x - origin.x, y: tip.y - origin.y };
    const twin = b.marks.find(
      (other) =>
        Math.hypot(other.at.x - at.x, other.at.y - at.y) <= TWIN_LINES_MM &&
        other.outward.x * out.x + other.outward.y * out.y > 0,
    );
    if (twin === undefined) return `match mark ${mark.letter}${mark.index} has none that mirrors it`;
    pairs.set(markKey(mark), twin);
  }
  return pairs;
}

/** Bevels all along, and how the edges are joined. */
function edgesDifference(pairs: readonly EdgePair[], seams: readonly FoamSeam[]): string | null {
  const bySeam = new Map(seams.map((seam) => [seam.id, seam]));
  for (const pair of pairs) {
    const { own, twin } = pair;
    const apartDeg = bevelsApart(pair);
    if (apartDeg > TWIN_ANGLES_DEG) return `the bevel at ${lettersOf(own, twin)} differs by ${apartDeg.toFixed(1)}°`;
    const [said, other] = [own, twin].map((edge) => {
      const seam = bySeam.get(edge.seam);
      return seam === undefined ? '' : joinText(edge, seam);
    });
    if (said !== other) return `${own.letter} says “${said}”, ${twin.letter} “${other}”`;
  }
  return null;
}

const lettersOf = (own: PieceEdge, twin: PieceEdge): string =>
  own.letter === twin.letter ? own.letter : `${own.letter} and ${twin.letter}`;

function bevelsApart({ own, twin, shift }: EdgePair): number {
  const steps = own.bevelDeg.length - 1;
  let most = 0;
  for (let i = 0; i <= steps; i += 1)
    most = Math.max(most, Math.abs(own.bevelDeg[i] - twin.bevelDeg[placeOnTwin(i, steps, isRound(twin), shift)]));
  return most;
}

function foldsDifference(a: PaperPiece, b: PaperPiece, turned: (p: Vec2) => Vec2): string | null {
  for (const fold of a.folds) {
    const ends = [turned(fold.from), turned(fold.to)];
    const twin = b.folds.find(
      (other) => isOnLine(ends, [other.from, other.to]) || isOnLine(ends, [other.to, other.from]),
    );
    if (twin === undefined) return 'a fold has none that mirrors it';
    const apartDeg = Math.abs(twin.angleDeg - fold.angleDeg);
    if (apartDeg > TWIN_ANGLES_DEG) return `a fold differs by ${apartDeg.toFixed(1)}°`;
    if (!areGroovedAlike(fold, twin)) return 'a groove is cut otherwise';
  }
  return null;
}

const isOnLine = (ends: readonly Vec2[], others: readonly Vec2[]): boolean =>
  ends.every((p, i) => Math.hypot(p.x - others[i].x, p.y - others[i].y) <= TWIN_LINES_MM);

const areGroovedAlike = ({ groove: a }: PieceFold, { groove: b }: PieceFold): boolean =>
  a === undefined || b === undefined
    ? a === b
    : a.side === b.side &&
      Math.abs(a.widthMm - b.widthMm) <= 2 * TWIN_LINES_MM &&
      Math.abs(a.depthMm - b.depthMm) <= 2 * TWIN_LINES_MM;
