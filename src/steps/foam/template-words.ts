import { formatPlain } from '../../base/format-length.ts';
import { leanSeenFrom, SQUARE_DEG } from '../../base/lean-words.ts';
import type { Say } from '../../base/paper-language.ts';
import { cutFactor, hasGrain } from '../../model/cut-larger.ts';
import type { FoamPiece, FoamSeam, PieceEdge, PieceFold, PiecePlacing } from '../../model/foam-piece.ts';
import { stepText } from './step-words.ts';
import { steepEdgeText } from './steep-words.ts';

/** Along an edge the bevel is told again wherever it has changed by this much, degrees (foam model 4). */
export const BEVEL_STEP_DEG = 5;

/** What the words need to know beyond the piece. */
export interface WordContext {
  readonly projectName: string;
  readonly foamName: string;
  /** Number of the piece with a given id; what a mate or twin is called by. */
  readonly numberOf: (id: string) => number | undefined;
  /** Why a piece may not be cut with its twin's template turned over; left out where it may. */
  readonly apart?: string | undefined;
  /** True for a small template: its name, how often it is cut if more than once, and the project, no more. */
  readonly isBrief?: boolean | undefined;
  /** The language of the paper; English if left out. */
  readonly say?: Say | undefined;
}

/** What is said first of a piece: what it is called, how often it is cut, of what. */
export interface Title {
  /** Stands alone where there is no room for more. */
  readonly number: string;
  /** Name and quantity. */
  readonly head: readonly string[];
  readonly rest: readonly string[];
}

/** The lines that say what a piece is, most needed first; of two pieces where the template also serves for its twin, turned over. */
export function titleOf(piece: FoamPiece, context: WordContext, twin?: FoamPiece): Title {
  if (context.isBrief === true) return briefTitle(piece, context);
  const making = makingLines(piece);
  const foam = foamText(piece.thicknessMm, context.foamName);
  const cut =
    twin === undefined ? `${piece.quantity}` : `${piece.quantity + twin.quantity}, turn ${twin.quantity} over`;
  return {
    number: twin === undefined ? `${piece.number}` : `${piece.number}, turned ${twin.number}`,
    head: [
      `${piece.number}  ${piece.name}`,
      ...(twin === undefined ? [] : [`turned over: ${twin.number}  ${twin.name}`]),
      `cut ${cut} · ${foam}`,
    ],
    rest: [
      ...making.slice(0, making.length - shrinkLines(piece).length),
      ...(twin === undefined ? handLines(piece, context) : ['turn the paper, never the foam']),
      ...shrinkLines(piece),
      `${context.projectName} · piece revision ${piece.revision}${twin === undefined ? '' : ` · ${twin.revision} turned`}`,
    ],
  };
}

const briefTitle = ({ number, name, quantity }: FoamPiece, { projectName }: WordContext): Title => ({
  number: `${number}`,
  head: [`${number}  ${name}`],
  rest: [...(quantity === 1 ? [] : [`cut ${quantity}`]), projectName],
});

/** What is said of how a piece is made, beyond its edges and folds. */
export function makingLines(piece: FoamPiece): readonly string[] {
  const back = piece.tracedSide === 'back';
  return [
    ...(back ? ['traced on the back, printed reversed', 'other side out'] : ['traced on the face, this side out']),
    ...grooveLine(piece),
    ...kerfLinesOf(piece),
    ...scoreLines(piece),
    ...outlineLines(piece),
    ...placingLines(piece),
    ...engravingLines(piece),
    ...letInLines(piece),
    ...cornerLine(piece),
    ...shrinkLines(piece),
  ];
}

/** Grooves of a piece are all as deep: `grooves 4.5 mm deep, leave 1.5 mm`. */
function grooveLine({ folds }: FoamPiece): readonly string[] {
  const groove = folds.find((fold) => fold.groove !== undefined)?.groove;
  if (groove === undefined) return [];
  const [depth, hinge] = [groove.depthMm, groove.hingeMm].map((length) => `${Math.round(10 * length) / 10} mm`);
  return [`grooves ${depth} deep, leave ${hinge}`];
}

/** `kerfs on this side, 3 mm wide, 4.5 mm deep, leave 1.5 mm` and how many there are, how far apart. */
function kerfLinesOf({ kerfs, tracedSide }: FoamPiece): readonly string[] {
  if (kerfs === undefined) return [];
  const { side, widthMm, depthMm, hingeMm, lines, spacingMm, mouthMm } = kerfs;
  const where = side === tracedSide ? 'on this side' : 'on the other side';
  const [near, far] = [spacingMm.least, spacingMm.most].map((length) => tenths(length));
  const apart = near === far ? `${near} mm` : `${near} to ${far} mm`;
  const shut = mouthMm < 0.05 ? 'shut' : `close to ${tenths(mouthMm)} mm`;
  return [
    `kerfs ${where} ${tenths(widthMm)} mm wide, ${tenths(depthMm)} mm deep, leave ${tenths(hingeMm)} mm`,
    lines.length === 1
      ? `one of them: bend until it has ${shut}`
      : `${lines.length} of them, ${apart} apart: bend until they ${shut}`,
  ];
}

/** One line for each depth and width: `score the face 3 mm deep, opens to 2 mm when warmed`. */
function scoreLines({ scores = [] }: FoamPiece): readonly string[] {
  const told = scores.map(({ depthMm, openMm }) => {
    const opens = openMm === 0 ? '' : `, opens to ${formatPlain(openMm)} mm when warmed`;
    return `score the face ${formatPlain(depthMm)} mm deep${opens}`;
  });
  return [...new Set(told)];
}

/** One line for each raised sheet: `Flame is glued on inside the dots`. */
const outlineLines = ({ outlines = [] }: FoamPiece): readonly string[] =>
  [...new Set(outlines.map(({ name }) => name))].map((name) => `${name} is glued on inside the dots, on the face`);

/** `Covers: glued on between the dots, mark to mark`. */
const placingLines = ({ placings = [] }: FoamPiece): readonly string[] =>
  namesOf(placings.filter(({ what }) => what !== 'engraving')).map(
    (strip) => `${strip}: glued on between the dots, mark to mark`,
  );

/** `Flame: engrave the thin lines`; of a piece traced on its back, where they are to go. */
const engravingLines = ({ placings = [], tracedSide }: FoamPiece): readonly string[] =>
  namesOf(placings.filter(({ what }) => what === 'engraving')).map(
    (name) => `${name}: engrave ${tracedSide === 'face' ? 'the thin lines' : 'its lines on the other side, the face'}`,
  );

const namesOf = (placings: readonly PiecePlacing[]): readonly string[] => [
  ...new Set(placings.map(({ strip }) => strip)),
];

/** `Handle goes through: cut its hole, square`, each once. */
const letInLines = ({ letIns = [] }: FoamPiece): readonly string[] => [...new Set(letIns.map(({ text }) => text))];

/** `EVA 6 mm, 1000 × 2000` → `EVA 6 mm`: the sheet's size is no concern of a piece. */
export function foamText(thicknessMm: number, foamName: string): string {
  const name = foamName.split(',')[0].trim();
  const thickness = `${Math.round(thicknessMm * 10) / 10} mm`;
  return name.includes(thickness) ? name : `${thickness} ${name}`.trim();
}

/** `corner cut back 1.7 mm`, or `3 corners cut back, up to 4.4 mm`. */
function cornerLine({ cornerCuts = [] }: FoamPiece): readonly string[] {
  if (cornerCuts.length === 0) return [];
  const most = `${tenths(Math.max(...cornerCuts.map(({ cutMm }) => cutMm)))} mm`;
  return [cornerCuts.length === 1 ? `corner cut back ${most}` : `${cornerCuts.length} corners cut back, up to ${most}`];
}

function handLines(piece: FoamPiece, context: WordContext): readonly string[] {
  if (piece.twinOf === undefined) return [];
  const twin = context.numberOf(piece.twinOf);
  const hand = piece.hand === undefined ? '' : `${piece.hand}, `;
  const how =
    context.apart === undefined ? 'turn the paper, never the foam' : `not to be turned over, ${context.apart}`;
  return [`${hand}twin of ${twin ?? 'its mirror'}: ${how}`];
}

/** What the drawing is larger by: `drawn 2 % longer along the grain, 1 % wider across`. */
function shrinkLines({ shrinkage }: FoamPiece): readonly string[] {
  if (shrinkage === undefined) return [];
  const along = growthText(shrinkage.alongPct, hasGrain(shrinkage) ? ['longer', 'shorter'] : ['larger', 'smaller']);
  const across = growthText(shrinkage.acrossPct, ['wider', 'narrower']);
  const how = !hasGrain(shrinkage)
    ? along
    : along === ''
      ? `${across} across the grain`
      : `${along} along the grain${across === '' ? '' : `, ${across} across`}`;
  return [`drawn ${how}`, 'comes to size when warmed'];
}

/** How much more or less is cut for what is lost of it, to a tenth of a per cent; nothing where nothing is lost. */
function growthText(lostPct: number, [more, less]: readonly [string, string]): string {
  if (lostPct === 0) return '';
  const pct = Math.round(1000 * Math.abs(cutFactor(lostPct) - 1)) / 10;
  return `${pct} % ${lostPct > 0 ? more : less}`;
}

/** An edge's mate letter, the number of the piece it meets, and how the cut leans. */
export interface EdgeWords {
  readonly mate: string;
  /** '' for a square cut. */
  readonly cut: string;
}

/** What an edge meets, and its twin's edge where the template is turned over. */
export interface EdgeMate {
  readonly seam: FoamSeam;
  /** Number of the piece it meets, its own for a dart or a closing seam; undefined where numbers are not known. */
  readonly number?: number | undefined;
  /** What is read there turned over, from `mateText`. */
  readonly turned?: string | undefined;
}

export function mateText(piece: FoamPiece, edge: PieceEdge, number: number | undefined): string {
  if (number === undefined) return edge.letter;
  return number === piece.number ? `${edge.letter} to itself` : `${edge.letter} → ${number}`;
}

export function edgeWords(piece: FoamPiece, edge: PieceEdge, mate: EdgeMate): EdgeWords {
  const name = mateText(piece, edge, mate.number) + (mate.turned === undefined ? '' : ` · turned: ${mate.turned}`);
  if (mate.seam.kind === 'lap') return { mate: name, cut: joinText(edge, mate.seam) };
  const leans = Array.from(edge.bevelDeg, (lean) => leanOnPaper(piece, lean));
  const [low, high] = [Math.min(...leans), Math.max(...leans)];
  const isSquare = Math.max(Math.abs(low), Math.abs(high)) < SQUARE_DEG;
  const cut = [...(isSquare ? [] : [`bevel ${leanRange(low, high)}`]), ...joinTexts(edge, mate.seam)];
  return { mate: name, cut: cut.join(' · ') };
}

/** What is said of how an edge is joined, beyond its bevel. */
export const joinText = (edge: PieceEdge, seam: FoamSeam): string =>
  seam.kind === 'lap' ? lapText(edge, seam) : joinTexts(edge, seam).join(' · ');

/** How a seam is joined where it is not edge to edge: which piece stands at a rebate, what comes between at a fold beyond the blade. */
const joinTexts = ({ side, allowanceMm }: PieceEdge, { standSide, steep, step }: FoamSeam): readonly string[] => [
  ...(allowanceMm > 0 ? [`+${allowanceMm} mm`] : []),
  ...(standSide === undefined ? [] : [standSide === side ? 'rebate, stands on it' : 'rebate, runs on']),
  ...(steep === undefined ? [] : [steepEdgeText(steep)]),
  ...(step === undefined ? [] : [`step ${stepText(step)}`]),
];

/** `lap 12 mm, on top, step 6 mm`: its width, which of the two lies on top, and how far that one's face stands out of the other's. */
function lapText({ side, allowanceMm }: PieceEdge, seam: FoamSeam): string {
  const isTop = (seam.topSide ?? seam.lapSide) === side;
  const own = allowanceMm > 0;
  const where = own ? (isTop ? 'on top' : 'under') : isTop ? 'over the lap' : 'under the lap';
  const step = seam.step === undefined ? '' : `, step ${tenths(seam.step.faceMm)} mm`;
  return own ? `lap ${tenths(allowanceMm)} mm, ${where}${step}` : `${where}, ${tenths(seam.allowanceMm)} mm${step}`;
}

const tenths = (length: number): string => `${Math.round(10 * length) / 10}`;

/** One lean where it hardly changes, else the least and the greatest: `5–44° in under`, `18° out to 8° in under`. */
function leanRange(low: number, high: number): string {
  if (high - low < BEVEL_STEP_DEG) return leanText((low + high) / 2);
  const [from, to] = [Math.round(low), Math.round(high)];
  if (from >= 0) return `${from}–${to}° in under`;
  if (to <= 0) return `${-to}–${-from}° out under`;
  return `${-from}° out to ${to}° in under`;
}

/** Lean seen from the printed side, degrees: positive when the cut runs in under the piece. */
export const leanOnPaper = (piece: FoamPiece, bevelDeg: number): number => leanSeenFrom(piece.tracedSide, bevelDeg);

/** `30° in under` where the far edge stands inside the printed line, `30° out under` where it stands outside. */
export function leanText(leanDeg: number): string {
  const size = Math.round(Math.abs(leanDeg));
  if (size === 0) return 'square';
  return `${size}° ${leanDeg > 0 ? 'in' : 'out'} under`;
}

/** Grooves whose widths differ by less than this are told by the wider one, mm. */
const SAME_WIDTH_MM = 0.15;

/** What is said of a fold: its word, and the width of its groove where it has one. */
export interface FoldWords {
  readonly isOut: boolean;
  readonly lines: readonly string[];
}

/** The words for folds that bend the same way and stand for one another: `fold out 21–34°`, `groove behind 3.2–5.1 mm`. */
export function foldLinesOf(piece: FoamPiece, folds: readonly Pick<PieceFold, 'angleDeg' | 'groove'>[]): FoldWords {
  const isOut = isFoldOut(piece, folds[0].angleDeg);
  const word = foldRange(
    isOut,
    folds.map(({ angleDeg }) => angleDeg),
  );
  const widths = folds.flatMap(({ groove }) => groove?.widthMm ?? []);
  const side = folds.find(({ groove }) => groove !== undefined)?.groove?.side;
  if (side === undefined) return { isOut, lines: [word] };
  const [low, high] = [Math.min(...widths), Math.max(...widths)];
  const width = high - low < SAME_WIDTH_MM ? high.toFixed(1) : `${low.toFixed(1)}–${high.toFixed(1)}`;
  return { isOut, lines: [word, `${side === piece.tracedSide ? 'groove' : 'groove behind'} ${width} mm`] };
}

/** Whether a fold's ridge is on the printed side. */
export const isFoldOut = (piece: FoamPiece, angleDeg: number): boolean =>
  piece.tracedSide === 'face' ? angleDeg > 0 : angleDeg < 0;

/** The words for several folds that bend the same way: `fold out 21–34°`. */
export function foldRange(isOut: boolean, anglesDeg: readonly number[]): string {
  const sizes = anglesDeg.map((angle) => Math.round(Math.abs(angle)));
  const [low, high] = [Math.min(...sizes), Math.max(...sizes)];
  return `fold ${isOut ? 'out' : 'in'} ${low === high ? low : `${low}–${high}`}°`;
}
