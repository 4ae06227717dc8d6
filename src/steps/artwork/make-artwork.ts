import type { Finding } from '../../base/finding.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import type { ArtDrawing, ArtPiece, ArtShape, Artwork } from '../../model/artwork.ts';
import type { StrokeReading } from '../../model/artwork-choice.ts';
import {
  crossingFinding,
  doubledFinding,
  joinedFinding,
  openFillFinding,
  openFinding,
  regularFinding,
  symmetryFindings,
  remarkFinding,
} from './artwork-findings.ts';
import { EdgeNet } from './edge-net.ts';
import { joinEnds, type PieceLine } from './join-ends.ts';
import { findCrossings, findDoubled } from './line-faults.ts';
import { pieceOfLines, type MeasuredLine } from './piece-of-lines.ts';
import { regularise } from './regularise.ts';
import { boxOfPaths } from './segment-box.ts';
import { flatPath, mappedPath } from './segments.ts';
import { symmetrise } from './symmetrise.ts';

/** What the maker asks of artwork. */
export interface ArtworkWishes {
  /** mm of the finished artwork for one of the file, > 0. */
  readonly scale: number;
  /** Greatest distance of straight parts from their curve, mm, > 0. */
  readonly deviationMm: number;
  /** Open ends no farther apart than this are joined, mm; 0 for none. */
  readonly closeMm: number;
  /** How far a line may move to become a circle, arc or straight line, mm; 0 for not at all. */
  readonly regulariseMm: number;
  /** How far a closed line may move to become exactly symmetric, mm; 0 or left out for not at all. */
  readonly symmetricMm?: number;
  readonly strokes: StrokeReading;
}

/** Corners of all straight parts together. */
const MOST_POINTS = 400_000;
/** Lines of a drawing. */
const MOST_LINES = 20_000;
/** Findings of one kind for each piece; the rest are counted. */
const MOST_TOLD = 12;
/** What lies so near is doubled, beside twice the deviation, mm: finer than any knife. */
const DOUBLED_MM = 0.01;
/** A line so much of which lies on another is the same line drawn twice. */
const SAME_LINE = 0.98;

/**
 * Artwork in its true size: pieces with areas, holes and open lines. What is open, crosses, is doubled or was changed is told.
 * @returns fails with `artwork/too-fine`, `artwork/too-large` or `artwork/tangled`.
 */
export function makeArtwork(drawing: ArtDrawing, wishes: ArtworkWishes): Result<Artwork> {
  const { scale, deviationMm } = wishes;
  const scaled = drawing.shapes.map((shape) => ({
    ...shape,
    paths: shape.paths.map((path) => mappedPath([scale, 0, 0, scale, 0, 0], path)),
    stroke: shape.stroke === null ? null : { ...shape.stroke, widthMm: shape.stroke.widthMm * scale },
  }));
  const count = scaled.reduce((sum, { paths }) => sum + paths.length, 0);
  if (count > MOST_LINES)
    return fail(
      'artwork/too-large',
      `The drawing has more than ${MOST_LINES} lines: take it apart into several files.`,
    );
  const findings: Finding[] = [];
  const pieces: ArtPiece[] = [];
  let points = 0;
  for (const { name, shapes, isLoose } of piecesOf(drawing, scaled, wishes.strokes)) {
    const own: Finding[] = [];
    const lines = linesOf(name, shapes, wishes, own);
    points += lines.reduce((sum, line) => sum + line.points.length / 2, 0);
    if (points > MOST_POINTS)
      return fail(
        'artwork/too-fine',
        `The drawing would have more than ${MOST_POINTS} corners: allow a greater deviation than ${deviationMm} mm.`,
      );
    const made = madePiece(name, lines, wishes, own);
    if (!made.ok) return made;
    // Loose lines are no piece: what is told of them names their shapes.
    for (const one of own) findings.push(isLoose ? { ...one, where: withoutPiece(one.where) } : one);
    for (const piece of isLoose ? apart(made.value) : [made.value]) pieces.push(piece);
  }
  const box = boxOfPaths(scaled.flatMap(({ paths }) => paths));
  return ok({ pieces, widthMm: box.maxX - box.minX, heightMm: box.maxY - box.minY, scale, deviationMm }, findings);
}

/** A piece still as shapes. Loose lines without fill are nested together first and come apart again after that. */
interface ShapedPiece {
  readonly name: string;
  readonly shapes: readonly ArtShape[];
  readonly isLoose: boolean;
}

const LOOSE = 'Loose lines';

function piecesOf({ pieces: names }: ArtDrawing, shapes: readonly ArtShape[], strokes: StrokeReading): ShapedPiece[] {
  const members = names.map((): ArtShape[] => []);
  for (const shape of shapes) members[shape.piece].push(shape);
  const pieces: ShapedPiece[] = [];
  const loose: ArtShape[] = [];
  for (const [i, own] of members.entries()) {
    const isLine = own.length === 1 && own[0].fill === null && !(strokes === 'outline' && own[0].stroke !== null);
    if (isLine && own[0].name === names[i]) loose.push(own[0]);
    else if (own.length > 0) pieces.push({ name: names[i], shapes: own, isLoose: false });
  }
  return loose.length === 0 ? pieces : [...pieces, { name: LOOSE, shapes: loose, isLoose: true }];
}

function linesOf(
  piece: string,
  shapes: readonly ArtShape[],
  { closeMm, regulariseMm, symmetricMm = 0, deviationMm, strokes }: ArtworkWishes,
  findings: Finding[],
): MeasuredLine[] {
  const drawn = shapes.flatMap(({ name, paths, fill, stroke }, shapeNumber): PieceLine[] =>
    paths.map((path) => ({ shape: name, shapeNumber, path, fill, stroke })),
  );
  // A stroke that is read as its outline stays as it was drawn: each line has its own width and ends.
  const isKept = (line: PieceLine): boolean => strokes === 'outline' && line.stroke !== null && line.fill === null;
  const { lines: ended, joined } = joinEnds(
    drawn.filter((line) => !isKept(line)),
    closeMm,
  );
  tell(
    findings,
    joined.map((one) => joinedFinding(piece, one)),
  );
  const regular: Finding[] = [];
  const lines = [...ended, ...drawn.filter(isKept)].map((line): MeasuredLine => {
    const made = regulariseMm > 0 ? regularise(line.path, regulariseMm) : { path: line.path, changes: [] };
    if (made.changes.length > 0) regular.push(regularFinding(piece, line.shape, made.changes));
    const even = symmetricMm > 0 ? symmetrise(made.path, symmetricMm) : null;
    if (even !== null) regular.push(...symmetryFindings(piece, line.shape, even, symmetricMm));
    const path = even?.path ?? made.path;
    return { ...line, path, points: flatPath(path, deviationMm) };
  });
  tell(findings, regular);
  return lines;
}

function madePiece(
  name: string,
  lines: readonly MeasuredLine[],
  { deviationMm, strokes }: ArtworkWishes,
  findings: Finding[],
): Result<ArtPiece> {
  const net = new EdgeNet(lines.map(({ points, path }) => ({ points, isClosed: path.isClosed })));
  const crossings = findCrossings(net);
  if (!crossings.ok) return crossings;
  const doubled = findDoubled(net, 2 * deviationMm + DOUBLED_MM);
  if (!doubled.ok) return doubled;
  const namesOf = ([a, b]: readonly [number, number]): [string, string] => [lines[a].shape, lines[b].shape];
  const leftOut = new Set<number>();
  const twice: Finding[] = [];
  for (const one of doubled.value) {
    const [a, b] = one.lines;
    const isSame = a !== b && one.lengthMm >= SAME_LINE * Math.max(net.lengths[a], net.lengths[b]);
    if (isSame) leftOut.add(b);
    twice.push(doubledFinding(name, namesOf(one.lines), one, isSame));
  }
  const crossed = crossings.value.filter(({ lines: [a, b] }) => !leftOut.has(a) && !leftOut.has(b));
  tell(
    findings,
    crossed.map((one) => crossingFinding(name, namesOf(one.lines), one)),
  );
  tell(findings, twice);
  const kept = lines.map((_, i) => i).filter((i) => !leftOut.has(i));
  const placeOf = new Map(kept.map((line, place) => [line, place]));
  const pairs = crossed.map(({ lines: [a, b] }) => [placeOf.get(a) ?? 0, placeOf.get(b) ?? 0] as const);
  const { piece, remarks } = pieceOfLines(
    name,
    kept.map((i) => lines[i]),
    strokes,
    deviationMm,
    pairs,
  );
  for (const remark of remarks) findings.push(remarkFinding(name, remark));
  tell(
    findings,
    lines.flatMap(({ fill, path, shape }) =>
      fill === null || path.isClosed
        ? []
        : [openFillFinding(name, shape, path.segments[0].from, path.segments[path.segments.length - 1].to)],
    ),
  );
  tell(
    findings,
    piece.lines.map((line) => openFinding(name, line)),
  );
  return ok(piece);
}

const withoutPiece = ({ point }: Finding['where']): Finding['where'] => (point === undefined ? {} : { point });

/** Findings of one kind: the first of them, and how many more there are. */
function tell(findings: Finding[], more: readonly Finding[]): void {
  const sorted = [...more].sort((a, b) => rank(a) - rank(b));
  findings.push(...sorted.slice(0, MOST_TOLD));
  if (sorted.length <= MOST_TOLD) return;
  const { code, severity, where } = sorted[MOST_TOLD];
  const rest = sorted.length - MOST_TOLD;
  findings.push({
    code,
    severity,
    text: `And ${rest} more like these in ${where.piece ?? 'the drawing'}: look there after the first are mended.`,
    value: rest,
    where: where.piece === undefined ? {} : { piece: where.piece },
  });
}

const rank = ({ severity }: Finding): number => (severity === 'note' ? 1 : 0);

/** Loose lines as pieces of their own: each area with its holes, named by its outermost line, and each open line. */
function apart({ regions, lines: open }: ArtPiece): ArtPiece[] {
  const taken = new Map<string, number>();
  const own = (name: string): string => {
    const count = (taken.get(name) ?? 0) + 1;
    taken.set(name, count);
    return count === 1 ? name : `${name} ${count}`;
  };
  return [
    ...regions.map((region): ArtPiece => {
      const lengthMm = [region.outline, ...region.holes].reduce((sum, one) => sum + one.lengthMm, 0);
      return {
        name: own(region.outline.shape ?? LOOSE),
        regions: [region],
        lines: [],
        areaMm2: region.areaMm2,
        lengthMm,
      };
    }),
    ...open.map((line): ArtPiece => ({
      name: own(line.shape),
      regions: [],
      lines: [line],
      areaMm2: 0,
      lengthMm: line.lengthMm,
    })),
  ];
}
