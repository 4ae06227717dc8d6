import { boxOfPoints, joinBoxes, type Box2, type Ring } from '../../geom/ring.ts';
import { scaledDirection, scaledNormal, scaledPoint, type ScaleAlong } from '../../geom/scale-along.ts';
import type { Vec2 } from '../../geom/vec.ts';
import { cutScaleOf } from '../../model/cut-larger.ts';
import type { FoamPiece, MatchMark, PieceEdge, PieceFold, PiecePlacing, TracedSide } from '../../model/foam-piece.ts';
import { letInRole, type LetIn } from '../../model/let-in.ts';
import type { LineRole, Stroke } from '../../model/template.ts';
import type { PieceTipHole } from '../../model/tip-hole.ts';
import { grooveLines } from './groove-lines.ts';
import { isFoldOut } from './template-words.ts';

/** Length of a match mark's tick, mm, and how far it stands off the line to cut: never a notch in a butt edge (foam model 4). */
export const TICK_MM = 4;
const TICK_GAP_MM = 0.3;

/** Points of two edges that lie this near each other are one, mm. */
const SAME_POINT_MM = 1e-6;

/**
 * Everything of a piece that a template shows, on paper: mirrored for one traced on its back, and larger where its foam will shrink.
 * Lines grow; words, arrows and the length of ticks do not.
 */
export interface PaperPiece {
  readonly piece: FoamPiece;
  /** 1, or -1 where x is mirrored. */
  readonly flip: 1 | -1;
  /** From the finished piece to what is cut, or null where they are one. */
  readonly scale: ScaleAlong | null;
  readonly cutRings: readonly Ring[];
  readonly otherRings: readonly Ring[];
  readonly folds: readonly PieceFold[];
  /** Edges of the grooves on the printed side. */
  readonly grooves: readonly Float64Array[];
  /** The same on the other side. */
  readonly groovesBehind: readonly Float64Array[];
  /** Middles of kerfs. */
  readonly kerfs: readonly Float64Array[];
  /** Slits in the face. */
  readonly scores: readonly Float64Array[];
  /** Where raised sheets are laid. */
  readonly outlines: readonly Float64Array[];
  /** Lines under strips of trim and marks beside them, and lines of artwork. */
  readonly placings: readonly PiecePlacing[];
  /** What other parts leave on it. */
  readonly letIns: readonly LetIn[];
  /** Round holes, as rings of {@link HOLE_SIDES} sides. */
  readonly holes: readonly Ring[];
  readonly marks: readonly MatchMark[];
  /** Length 1, or null. */
  readonly up: Vec2 | null;
  readonly grain: Vec2 | null;
}

export function onPaper(piece: FoamPiece): PaperPiece {
  const flip = piece.tracedSide === 'back' ? -1 : 1;
  const scale = cutScaleOf(piece);
  const mirrored = ({ x, y }: Vec2): Vec2 => ({ x: flip * x, y });
  const point = (p: Vec2): Vec2 => mirrored(scale === null ? p : scaledPoint(p, scale));
  const direction = (way: Vec2): Vec2 => mirrored(scale === null ? way : scaledDirection(way, scale));
  const normal = (way: Vec2): Vec2 => mirrored(scale === null ? way : scaledNormal(way, scale));
  const ringOnPaper = (ring: Ring): Ring => (flip === 1 && scale === null ? ring : mapped(ring, point));
  const { grainRad } = piece;
  return {
    piece,
    flip,
    scale,
    cutRings: [piece.outline, ...piece.holes].map(ringOnPaper),
    otherRings: [piece.otherOutline, ...piece.otherHoles].map(ringOnPaper),
    folds: piece.folds.map((fold) => ({ ...fold, from: point(fold.from), to: point(fold.to) })),
    grooves: grooveLines(piece, piece.tracedSide).map((line) => mapped(line, point)),
    groovesBehind: grooveLines(piece, otherSide(piece.tracedSide)).map((line) => mapped(line, point)),
    kerfs: (piece.kerfs?.lines ?? []).map((line) => mapped(line, point)),
    scores: (piece.scores ?? []).map(({ points }) => mapped(points, point)),
    outlines: (piece.outlines ?? []).map(({ points }) => mapped(points, point)),
    placings: (piece.placings ?? []).map((one) => ({ ...one, points: mapped(one.points, point) })),
    letIns: (piece.letIns ?? []).map((one) => ({ ...one, points: mapped(one.points, point) })),
    holes: (piece.tipHoles ?? []).map((hole) => mapped(circleOf(hole), point)),
    marks: piece.marks.map((mark) => ({ ...mark, at: point(mark.at), outward: normal(mark.outward) })),
    up: piece.up === null ? null : direction(piece.up),
    grain: grainRad === undefined ? null : mirrored({ x: Math.cos(grainRad), y: Math.sin(grainRad) }),
  };
}

/** Sides of a round hole as it is drawn: at 20 mm they lie 0.02 mm inside the circle. */
const HOLE_SIDES = 48;

function circleOf({ at, diameterMm }: PieceTipHole): Ring {
  return Float64Array.from({ length: 2 * HOLE_SIDES }, (_, i) => {
    const angle = (2 * Math.PI * Math.floor(i / 2)) / HOLE_SIDES;
    return i % 2 === 0 ? at.x + (diameterMm / 2) * Math.cos(angle) : at.y + (diameterMm / 2) * Math.sin(angle);
  });
}

const otherSide = (side: TracedSide): TracedSide => (side === 'face' ? 'back' : 'face');

const kerfRole = ({ kerfs, tracedSide }: FoamPiece): LineRole => (kerfs?.side === tracedSide ? 'kerf' : 'kerf-behind');

/** Artwork lies on the face: on a piece that is traced on its back it is to be carried over. */
function placingRole(what: PiecePlacing['what'], { tracedSide }: FoamPiece): LineRole {
  if (what === 'engraving') return tracedSide === 'face' ? 'engrave' : 'groove-behind';
  return what === 'edge' ? 'placement' : 'mark';
}

function mapped(points: ArrayLike<number>, map: (p: Vec2) => Vec2): Float64Array {
  const found = new Float64Array(points.length);
  for (let i = 0; i + 1 < points.length; i += 2) {
    const { x, y } = map({ x: points[i], y: points[i + 1] });
    found[i] = x;
    found[i + 1] = y;
  }
  return found;
}

/** Round what is cut from foam: the larger of both edges of every bevel. */
export function foamBoxOf({ cutRings, otherRings }: PaperPiece): Box2 {
  return [...cutRings, ...otherRings].map(boxOfPoints).reduce(joinBoxes);
}

/** Both edges of what is cut; mirrored ones run as they should again. */
export const foamRingsOf = ({ cutRings, otherRings, flip }: PaperPiece): readonly Ring[] =>
  [...cutRings, ...otherRings].map((ring) => (flip === 1 ? ring : turnedRound(ring)));

const turnedRound = (ring: Ring): Ring => ring.map((_, k) => ring[ring.length - 2 - 2 * (k >> 1) + (k & 1)]);

/**
 * How far a match mark reaches into the piece on foam, mm. On paper it stands outside the line to cut; on foam it would fall away with the waste, or
 * lie on the piece beside it.
 */
const INWARD_TICK_MM = 2;

/** All lines of a piece but those that belong to words: cut, other edge, laps, folds, ticks. Ticks stand outside on paper, inside on foam. */
export function pieceStrokes(paper: PaperPiece, on: 'paper' | 'foam' = 'paper'): readonly Stroke[] {
  const { piece } = paper;
  const [from, to] = on === 'paper' ? [TICK_GAP_MM, TICK_MM] : [-INWARD_TICK_MM, 0];
  return [
    ...paper.cutRings.map((points): Stroke => ({ role: 'cut', points, closed: true })),
    ...otherEdges(paper),
    ...piece.edges
      .filter(({ allowanceMm }) => allowanceMm > 0)
      .map((edge): Stroke => ({ role: 'lap', points: edgeLine(paper, edge, 'bare'), closed: false })),
    ...paper.folds.map(({ from, to, angleDeg }): Stroke => ({
      role: isFoldOut(piece, angleDeg) ? 'fold-out' : 'fold-in',
      points: Float64Array.of(from.x, from.y, to.x, to.y),
      closed: false,
    })),
    ...paper.grooves.map((points): Stroke => ({ role: 'groove', points, closed: false })),
    ...paper.groovesBehind.map((points): Stroke => ({ role: 'groove-behind', points, closed: false })),
    ...paper.kerfs.map((points): Stroke => ({ role: kerfRole(piece), points, closed: false })),
    ...paper.scores.map((points): Stroke => ({ role: 'score', points, closed: false })),
    ...paper.outlines.map((points): Stroke => ({ role: 'placement', points, closed: false })),
    ...paper.placings.map(({ what, points, closed }): Stroke => ({
      role: placingRole(what, piece),
      points,
      closed,
    })),
    ...paper.letIns.map(({ points, closed, ...one }): Stroke => ({
      role: letInRole(one, piece.tracedSide),
      points,
      closed,
    })),
    ...paper.holes.map((points): Stroke => ({ role: 'hole', points, closed: true })),
    ...paper.marks.map(({ at, outward }): Stroke => ({
      role: 'mark',
      points: Float64Array.of(
        at.x + from * outward.x,
        at.y + from * outward.y,
        at.x + to * outward.x,
        at.y + to * outward.y,
      ),
      closed: false,
    })),
  ];
}

/** The other edge of the bevels, left out where it is the cut line itself. */
function otherEdges({ cutRings, otherRings }: PaperPiece): readonly Stroke[] {
  const cut = new Set<string>();
  for (const ring of cutRings) for (let i = 0; i < ring.length; i += 2) cut.add(edgeKey(ring, i));
  const strokes: Stroke[] = [];
  for (const points of otherRings) {
    const count = points.length / 2;
    const isOwn = Array.from({ length: count }, (_, i) => !cut.has(edgeKey(points, 2 * i)));
    if (isOwn.every(Boolean)) {
      strokes.push({ role: 'bevel', points, closed: true });
      continue;
    }
    // Runs of edges of its own, each begun after one that is shared.
    for (let start = 0; start < count; start += 1) {
      if (!isOwn[start] || isOwn[(start + count - 1) % count]) continue;
      const run = [points[2 * start], points[2 * start + 1]];
      for (let i = start; isOwn[i % count]; i += 1) {
        const j = (i + 1) % count;
        run.push(points[2 * j], points[2 * j + 1]);
      }
      strokes.push({ role: 'bevel', points: Float64Array.from(run), closed: false });
    }
  }
  return strokes;
}

function edgeKey(ring: Ring, i: number): string {
  const j = (i + 2) % ring.length;
  return [ring[i], ring[i + 1], ring[j], ring[j + 1]].map((x) => Math.round(x / SAME_POINT_MM)).join(' ');
}

/**
 * The line of one edge on paper, one point for each of its stations: on the side that is traced, on the other side, or on the traced side
 * without its allowance. At its ends straight out from the edge, not at the corner with the next one.
 */
export function edgeLine(
  { piece, flip, scale }: PaperPiece,
  edge: PieceEdge,
  which: 'traced' | 'other' | 'bare',
): Float64Array {
  const ring = edge.ring === 0 ? piece.neutralOutline : piece.neutralHoles[edge.ring - 1];
  const count = ring.length / 2;
  const isFace = (piece.tracedSide === 'face') === (which !== 'other');
  const offsets = isFace ? edge.faceOffsetMm : edge.backOffsetMm;
  const points = new Float64Array(2 * edge.stationMm.length);
  for (let j = 0; j < edge.stationMm.length; j += 1) {
    const at = (edge.from + j) % count;
    const before = j > 0 ? outwardOf(ring, (at + count - 1) % count) : outwardOf(ring, at);
    const after = j + 1 < edge.stationMm.length ? outwardOf(ring, at) : before;
    const spread = Math.max(0.2, 1 + before.x * after.x + before.y * after.y);
    const o = (offsets[j] - (which === 'bare' ? edge.allowanceMm : 0)) / spread;
    const p = { x: ring[2 * at] + o * (before.x + after.x), y: ring[2 * at + 1] + o * (before.y + after.y) };
    const { x, y } = scale === null ? p : scaledPoint(p, scale);
    points[2 * j] = flip * x;
    points[2 * j + 1] = y;
  }
  return points;
}

function outwardOf(ring: Ring, i: number): { x: number; y: number } {
  const j = (i + 1) % (ring.length / 2);
  const [dx, dy] = [ring[2 * j] - ring[2 * i], ring[2 * j + 1] - ring[2 * i + 1]];
  const length = Math.hypot(dx, dy);
  return length > 0 ? { x: dy / length, y: -dx / length } : { x: 0, y: 0 };
}
