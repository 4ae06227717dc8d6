import type { Vec2 } from '../../geom/vec.ts';
import { chainGap, chainSweep, line, type OutlineSegment } from '../../geom/outline.ts';
import { leaningEdge, type EdgeExtra } from '../../model/plain-edge.ts';
import type { ShapeBend, ShapeEdge, ShapeFold, ShapeMark, ShapePiece, ShapeSeam } from '../../model/shape.ts';

/** Ends of neighbouring segments agree to this share of the piece's size: rounding, no more. */
const CLOSED_SHARE = 1e-9;

type LeaningExtra = EdgeExtra & {
  /** Degrees from square, alike all along unless it is given at the start, half-way and at the end. */
  readonly bevelDeg?: number | readonly [number, number, number];
};

/** An edge of one or more segments; its length follows from them. */
export const edge = (
  name: string,
  segments: OutlineSegment | readonly OutlineSegment[],
  { bevelDeg = 0, ...extra }: LeaningExtra = {},
): ShapeEdge => leaningEdge(name, 'kind' in segments ? [segments] : segments, bevelDeg, extra);

/** A straight edge. */
export const side = (name: string, from: Vec2, to: Vec2, extra: LeaningExtra = {}): ShapeEdge =>
  edge(name, line(from, to), extra);

type PieceExtra = {
  readonly quantity?: number;
  readonly holes?: readonly (readonly ShapeEdge[])[];
  readonly bend?: ShapeBend;
  readonly folds?: readonly ShapeFold[];
  readonly marks?: readonly ShapeMark[];
};

/** A piece from its edges, which must close and run counter-clockwise: all else is our own mistake. */
export function piece(name: string, outline: readonly ShapeEdge[], extra: PieceExtra = {}): ShapePiece {
  const { quantity = 1, holes = [], bend = { kind: 'flat' }, folds = [], marks = [] } = extra;
  const outside = ringArea(outline);
  const areaMm2 = holes.reduce((sum, hole) => sum + ringArea(hole), outside);
  for (const ring of [outline, ...holes]) checkClosed(name, ring);
  if (!(outside > 0) || !(areaMm2 > 0)) throw new Error(`piece ${name} has the area ${areaMm2} mm²`);
  return { name, quantity, outline, holes, areaMm2, bend, folds, marks };
}

/** Area of a ring of edges, mm², counter-clockwise > 0. */
export const ringArea = (ring: readonly ShapeEdge[]): number => chainSweep(ring.flatMap((one) => one.segments));

function checkClosed(name: string, ring: readonly ShapeEdge[]): void {
  const segments = ring.flatMap((one) => one.segments);
  const size = segments.reduce((most, { from }) => Math.max(most, Math.abs(from.x), Math.abs(from.y)), 1);
  if (!(chainGap(segments) <= CLOSED_SHARE * size)) throw new Error(`the outline of ${name} is open`);
}

/** The closed polygon through points as edges; `extraOf` tells what each is, by the number of its first point. */
export const polygonEdges = (
  points: readonly Vec2[],
  extraOf: (i: number) => LeaningExtra & { readonly name: string },
): readonly ShapeEdge[] =>
  points.map((from, i) => {
    const { name, ...extra } = extraOf(i);
    return side(name, from, points[(i + 1) % points.length], extra);
  });

/** Pairs of edges that have one seam's name, of one piece with the next like it or of two pieces; and pairs of panels that meet. */
export function seamsOf(pieces: readonly ShapePiece[]): readonly ShapeSeam[] {
  const sides = new Map<string, Side[]>();
  const all = pieces.flatMap(({ name, outline, holes }) =>
    [outline, ...holes].flat().map((one): Side => ({ piece: name, edge: one })),
  );
  for (const one of all)
    if (one.edge.seam !== undefined) sides.set(one.edge.seam, [...(sides.get(one.edge.seam) ?? []), one]);
  const named = [...sides].map(([name, list]) => seamOf(name, list[0], list[1] ?? list[0]));
  const met = new Map<string, ShapeSeam>();
  for (const one of all) {
    const { meets, lengthMm } = one.edge;
    if (meets === undefined || meets < one.piece) continue;
    const name = `${one.piece} to ${meets}`;
    // Of pieces that are cut from one template some may have other neighbours than the one that stands for all.
    const ofMate = all.filter((other) => other.piece === meets);
    const facing = ofMate.filter((other) => other.edge.meets === one.piece);
    const other = (facing.length > 0 ? facing : ofMate).reduce((best, next) =>
      Math.abs(next.edge.lengthMm - lengthMm) < Math.abs(best.edge.lengthMm - lengthMm) ? next : best,
    );
    const key = `${name} ${lengthMm.toPrecision(9)}`;
    if (!met.has(key)) met.set(key, seamOf(name, one, other));
  }
  return [...named, ...met.values()];
}

interface Side {
  readonly piece: string;
  readonly edge: ShapeEdge;
}

const seamOf = (name: string, a: Side, b: Side): ShapeSeam => ({
  name,
  pieces: [a.piece, b.piece],
  edges: [a.edge.name, b.edge.name],
  lengthMm: [a.edge.lengthMm, b.edge.lengthMm],
});

/** What can be meant by pieces that only bend: the least and greatest radius of the surface that keeps its length. */
export const rolled = (leastRadiusMm: number, greatestRadiusMm = leastRadiusMm): ShapeBend => ({
  kind: 'rolled',
  leastRadiusMm,
  greatestRadiusMm,
});
