import { add3, cross3, dot3, rad, scale3, sub3, unit3, type Vec3 } from '../../geom/vec.ts';
import type { FitSamples, SeamFit } from '../../model/dry-fit.ts';
import type { FoamSeam } from '../../model/foam-piece.ts';
import { bentEdges, normalAlong, outwardAt, type BentEdge } from './bent-edge.ts';
import { cutEdges, offsetAt, type CutEdge, type Skin } from './cut-edge.ts';
import { edgeCount, type FitSide } from './fit-side.ts';
import { laidAlong } from './laid-along.ts';

/** A side of a seam ready to be compared. */
interface BentSide {
  readonly side: FitSide;
  readonly edges: readonly BentEdge[];
  readonly cuts: Readonly<Record<Skin, readonly CutEdge[]>>;
  readonly aheadAt: (i: number, f: number) => number;
  /** Length on the neutral surface in space up to each vertex of the seam, mm. */
  readonly trueMm: Float64Array;
}

/** Two points that should be one, taken apart. */
interface Meeting {
  readonly slipMm: number;
  readonly gapMm: number;
  readonly stepMm: number;
}

/**
 * Brings the finished edges of a seam's two sides together and measures between them, at the face and at the back of the foam.
 *
 * Each piece is a plate bent on its neutral surface: from a point of the seam its cut edge lies `o` outward in the piece's own surface and
 * `z` along the piece's own normal, with `o` taken from the finished outline and `z` the height of that skin over the neutral surface.
 * Where a seam begins and ends, corner is compared with corner. A lapped edge is compared at its lap line, on the neutral surface.
 * @param mostShare  how far foam may be pulled or gathered along the seam, a share of its length.
 */
export function measureSeam(seam: FoamSeam, sides: readonly [FitSide, FitSide], mostShare: number): SeamFit {
  const [a, b] = bentSides(sides, mostShare);
  const isLap = seam.kind === 'lap';
  const stops = stopsAlong(
    edgeCount(sides[0]),
    sides.every(({ edge }) => edge.from === edge.to),
  );
  const samples = emptySamples(stops.length);
  const worst = { gap: 0, overlap: 0, slip: 0, step: 0, badness: -1, at: [0, 0, 0] as [number, number, number] };
  for (const [n, { i, stop, isCorner }] of stops.entries()) {
    const meet = (skin: Skin): Meeting => {
      const pair = (isCorner ? corners : commonPlaces)(a.cuts[skin][i], b.cuts[skin][i], stop);
      return meetAt(a, b, i, pair, skin, isLap);
    };
    const [face, back] = [meet('face'), meet('back')];
    const { start, along, lengthMm } = a.edges[i];
    const { x, y, z } = add3(start, scale3(along, stop * lengthMm));
    samples.stationMm[n] = a.trueMm[i] + stop * lengthMm;
    samples.points.set([x, y, z], 3 * n);
    samples.faceGapMm[n] = face.gapMm;
    samples.backGapMm[n] = back.gapMm;
    for (const { slipMm, gapMm, stepMm } of [face, back]) {
      worst.gap = Math.max(worst.gap, gapMm);
      worst.overlap = Math.max(worst.overlap, -gapMm);
      worst.slip = Math.max(worst.slip, Math.abs(slipMm));
      worst.step = Math.max(worst.step, Math.abs(stepMm));
      if (Math.abs(gapMm) > worst.badness) [worst.badness, worst.at] = [Math.abs(gapMm), [x, y, z]];
    }
  }
  return {
    seam: seam.id,
    letter: seam.letter,
    pieces: [sides[0].piece.id, sides[1].piece.id],
    worstGapMm: worst.gap,
    worstOverlapMm: worst.overlap,
    worstSlipMm: worst.slip,
    worstStepMm: worst.step,
    at: worst.at,
    samples,
  };
}

/** Where on edge `i` is measured: at its start (`stop` 0), in the middle and at its end (1). */
interface Stop {
  readonly i: number;
  readonly stop: number;
  /** True at an end of the seam, where the corners of both cuts belong together. */
  readonly isCorner: boolean;
}

function stopsAlong(count: number, isClosed: boolean): readonly Stop[] {
  const inner = Array.from({ length: count }, (_, i) =>
    [0, 0.5, 1].map((stop) => ({ i, stop, isCorner: false })),
  ).flat();
  if (isClosed) return inner;
  return [{ i: 0, stop: 0, isCorner: true }, ...inner, { i: count - 1, stop: 1, isCorner: true }];
}

function bentSides(sides: readonly [FitSide, FitSide], mostShare: number): readonly [BentSide, BentSide] {
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

/** Two places on edge `i` that belong together: a share of the edge and a distance outward for either side. */
type Pair = readonly [{ readonly f: number; readonly out: number }, { readonly f: number; readonly out: number }];

/**
 * Where both cuts are at the start (`stop` 0), in the middle or at the end of an edge, as far as both reach: what lies beyond the shorter of
 * the two is a corner's and told as slip.
 */
function commonPlaces(a: CutEdge, b: CutEdge, stop: number): Pair {
  const from = Math.max(a.f0, b.f0);
  const wanted = from + stop * (Math.max(from, Math.min(a.f1, b.f1)) - from);
  const placeOn = (cut: CutEdge) => {
    const f = Math.min(cut.f1, Math.max(cut.f0, wanted));
    return { f, out: offsetAt(cut, f) };
  };
  return [placeOn(a), placeOn(b)];
}

/** The corners of both cuts at the start or the end of an edge. */
function corners(a: CutEdge, b: CutEdge, stop: number): Pair {
  const corner = ({ f0, o0, f1, o1 }: CutEdge) => (stop === 0 ? { f: f0, out: o0 } : { f: f1, out: o1 });
  return [corner(a), corner(b)];
}

function meetAt(a: BentSide, b: BentSide, i: number, pair: Pair, skin: Skin, isLap: boolean): Meeting {
  const [placedA, placedB] = [a, b].map(({ side, edges, aheadAt }, which) => {
    const { f, out } = pair[which];
    const { neutralFraction: k, piece } = side;
    const height = isLap ? 0 : (skin === 'face' ? 1 - k : -k) * piece.thicknessMm;
    return place(edges[i], f, aheadAt(i, f), out - side.edge.allowanceMm, height);
  });
  return apart(a.edges[i], placedA, placedB);
}

/** A point of a cut edge in space, with the piece's outward normal and its way outward there. */
interface Placed {
  readonly at: Vec3;
  readonly normal: Vec3;
  readonly outward: Vec3;
}

function place(edge: BentEdge, f: number, aheadMm: number, outMm: number, heightMm: number): Placed {
  const normal = normalAlong(edge, f);
  const outward = outwardAt(edge, normal);
  const onSeam = add3(edge.start, scale3(edge.along, f * edge.lengthMm + aheadMm));
  return { at: add3(onSeam, add3(scale3(outward, outMm), scale3(normal, heightMm))), normal, outward };
}

/** Folds are opened up no further than to this cosine of their half, that of the steepest bevel drawn, 75 degrees. */
const LEAST_HALF_FOLD_COSINE = Math.cos(rad(75));

/**
 * Takes the way from a point of side 0 to its like on side 1 apart: along the seam, out of the surface (in the plane that halves the fold) and
 * across it, from side 0 to side 1. What stands apart across is told as what the edges lack together in their own surfaces, so that an edge
 * cut 2 mm short shows 2 mm on any fold, and not the lesser distance between the two leaning cut faces:
 *
 *       A ---------.   .            lack = across / cos(fold / 2)
 *         ________/   / \
 *                    /   \ B
 */
function apart({ along }: BentEdge, a: Placed, b: Placed): Meeting {
  const normals = add3(a.normal, b.normal);
  const outwards = add3(a.outward, b.outward);
  // On a fold near half a turn the normals cancel and the ways outward tell the plane that halves it; one of them always does.
  const up = add3(normals, scale3(outwards, dot3(normals, outwards) < 0 ? -1 : 1));
  const out = unit3(sub3(up, scale3(along, dot3(up, along))));
  const across = cross3(along, out);
  const halfFoldCosine = Math.max(LEAST_HALF_FOLD_COSINE, dot3(sub3(a.outward, b.outward), across) / 2);
  const way = sub3(b.at, a.at);
  return { slipMm: dot3(way, along), gapMm: dot3(way, across) / halfFoldCosine, stepMm: dot3(way, out) };
}

const emptySamples = (count: number): FitSamples => ({
  stationMm: new Float64Array(count),
  points: new Float64Array(3 * count),
  faceGapMm: new Float64Array(count),
  backGapMm: new Float64Array(count),
});
