import { add3, dot3, scale3, sub3, type Vec3 } from '../../geom/vec.ts';
import { bentEdges, normalAlong, outwardAt, type BentEdge } from './bent-edge.ts';
import { cutEdges, offsetAt, type CutEdge, type Skin } from './cut-edge.ts';
import type { FitSide } from './fit-side.ts';
import { laidAlong } from './laid-along.ts';

/** A side of a seam ready to be compared. */
export interface BentSide {
  readonly side: FitSide;
  readonly edges: readonly BentEdge[];
  readonly cuts: Readonly<Record<Skin, readonly CutEdge[]>>;
  readonly aheadAt: (i: number, f: number) => number;
  /** Length on the neutral surface in space up to each vertex of the seam, mm. */
  readonly trueMm: Float64Array;
}

export function bentSides(sides: readonly [FitSide, FitSide], mostShare: number): readonly [BentSide, BentSide] {
  const edges = bentEdges(sides);
  const bent = (which: 0 | 1): BentSide => {
    const side = sides[which];
    const trueMm = new Float64Array(edges[which].length + 1);
    edges[which].forEach(({ lengthMm }, i) => (trueMm[i + 1] = trueMm[i] + lengthMm));
    const cuts = { face: cutEdges(side, 'face'), back: cutEdges(side, 'back') };
    return { side, edges: edges[which], cuts, aheadAt: laidAlong(side, trueMm, mostShare), trueMm };
  };
  return [bent(0), bent(1)];
}

/** A place on one side's edge: a share of the edge and a distance outward, mm. */
export interface EdgePlace {
  readonly f: number;
  readonly out: number;
}

/** Two places on edge `i` that belong together. */
export type Pair = readonly [EdgePlace, EdgePlace];

/** What is measured between edge `i` of one side and of the other. */
export interface EdgePair {
  readonly a: BentSide;
  readonly b: BentSide;
  readonly i: number;
}

/**
 * Where both cuts are at the start (`stop` 0), in the middle or at the end of an edge, as far as both reach: what lies beyond the shorter of
 * the two is a corner's and told as slip. Sides of two thicknesses keep their length at other depths, so that one edge begins and ends before
 * the other; then places belong together that lie across from each other.
 */
export function commonPlaces({ a, b, i }: EdgePair, skin: Skin, stop: number): Pair {
  const [own, mate] = [a.cuts[skin][i], b.cuts[skin][i]];
  const across = acrossFrom(a.edges[i], b.edges[i]);
  const from = Math.max(own.f0, across.back(mate.f0));
  const wanted = from + stop * (Math.max(from, Math.min(own.f1, across.back(mate.f1))) - from);
  return [placeOn(own, wanted), placeOn(mate, across.there(wanted))];
}

function placeOn(cut: CutEdge, wanted: number): EdgePlace {
  const f = Math.min(cut.f1, Math.max(cut.f0, wanted));
  return { f, out: offsetAt(cut, f) };
}

const SAME = { there: (f: number): number => f, back: (f: number): number => f };

/**
 * Shares of edge `b` that lie across from shares of edge `a`, and back. Where normals lean along the seam, as round a tube, what lies deeper is
 * shorter by itself, and places one above the other belong together.
 */
function acrossFrom(a: BentEdge, b: BentEdge): typeof SAME {
  const away = sub3(a.start, b.start);
  const shift = dot3(away, a.along);
  if (shift === 0 && a.lengthMm === b.lengthMm) return SAME;
  const [first, , last] = b.normals.map((normal) => dot3(away, normal) * dot3(normal, a.along));
  const length = b.lengthMm + last - first;
  if (!(a.lengthMm > 0 && length > 0)) return SAME;
  return {
    there: (f) => (shift + f * a.lengthMm - first) / length,
    back: (f) => (first + f * length - shift) / a.lengthMm,
  };
}

/** The corners of both cuts at the start or the end of an edge. */
export function corners({ a, b, i }: EdgePair, skin: Skin, stop: number): Pair {
  const corner = ({ f0, o0, f1, o1 }: CutEdge): EdgePlace => (stop === 0 ? { f: f0, out: o0 } : { f: f1, out: o1 });
  return [corner(a.cuts[skin][i]), corner(b.cuts[skin][i])];
}

/** Height of a skin over the side's neutral surface, mm. */
export const heightOf = ({ side: { neutralFraction: k, piece } }: BentSide, skin: Skin): number =>
  (skin === 'face' ? 1 - k : -k) * piece.thicknessMm;

/** A point of a cut edge in space, with the piece's outward normal and its way outward there. */
export interface Placed {
  readonly at: Vec3;
  readonly normal: Vec3;
  readonly outward: Vec3;
}

/** A place of a side's edge `i` in space, `heightMm` over its neutral surface. */
export function placed({ edges, aheadAt }: BentSide, i: number, { f, out }: EdgePlace, heightMm: number): Placed {
  const edge = edges[i];
  const normal = normalAlong(edge, f);
  const outward = outwardAt(edge, normal);
  const onSeam = add3(edge.start, scale3(edge.along, f * edge.lengthMm + aheadAt(i, f)));
  return { at: add3(onSeam, add3(scale3(outward, out), scale3(normal, heightMm))), normal, outward };
}
