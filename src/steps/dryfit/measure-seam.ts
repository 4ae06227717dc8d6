import type { EdgeOffsets } from '../../geom/offset-ring.ts';
import { add3, cross3, dot3, rad, scale3, sub3, unit3 } from '../../geom/vec.ts';
import type { FitSamples, SeamFit } from '../../model/dry-fit.ts';
import type { FoamSeam } from '../../model/foam-piece.ts';
import type { BentEdge } from './bent-edge.ts';
import type { Skin } from './cut-edge.ts';
import { edgeCount, type FitSide } from './fit-side.ts';
import {
  bentSides,
  commonPlaces,
  corners,
  heightOf,
  placed,
  type BentSide,
  type EdgePair,
  type Pair,
  type Placed,
} from './placed-edge.ts';
import { standMeetings } from './stand-meetings.ts';

/** Two points that should be one, taken apart. */
export interface Meeting {
  readonly slipMm: number;
  readonly gapMm: number;
  readonly stepMm: number;
}

/**
 * Brings the finished edges of a seam's two sides together and measures between them, at the face and at the back of the foam.
 *
 * Each piece is a plate bent on its neutral surface: from a point of the seam its cut edge lies `o` outward in the piece's own surface and
 * `z` along the piece's own normal, with `o` taken from the finished outline and `z` the height of that skin over the neutral surface.
 * Where a seam begins and ends, corner is compared with corner. A lapped edge is compared at its lap line, on the neutral surface,
 * and the sides of a rebate each with the surface of the other it ends on ({@link standMeetings}). Room left for a strip or a filling counts as
 * filled.
 * @param mostShare  how far foam may be pulled or gathered along the seam, a share of its length.
 */
export const measureSeam = (seam: FoamSeam, sides: readonly [FitSide, FitSide], mostShare: number): SeamFit =>
  measureBent(seam, bentSides(sides, mostShare));

/** The same of sides that are bent already. */
export function measureBent(seam: FoamSeam, [a, b]: readonly [BentSide, BentSide]): SeamFit {
  const sides = [a.side, b.side];
  const stops = stopsAlong(
    edgeCount(sides[0]),
    // At the ends of a rebate one piece goes on past the other: no corners belong together.
    seam.standSide !== undefined || sides.every(({ edge }) => edge.from === edge.to),
  );
  const samples = emptySamples(stops.length);
  const worst = { gap: 0, overlap: 0, slip: 0, step: 0, badness: -1, at: [0, 0, 0] as [number, number, number] };
  for (const [n, { i, stop, isCorner }] of stops.entries()) {
    const edges = { a, b, i };
    const meet = (skin: Skin): Meeting =>
      meetAt(edges, isCorner ? corners(edges, skin, stop) : commonPlaces(edges, skin, stop), skin, seam);
    const [face, back] =
      seam.standSide === undefined ? [meet('face'), meet('back')] : standMeetings(edges, seam.standSide, stop);
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
    goneMm: goneMm([a, b]),
    at: worst.at,
    samples,
  };
}

/** Edges of which a side has no cut but a point. */
const goneMm = (sides: readonly [BentSide, BentSide]): number =>
  sides[0].edges.reduce((sum, { lengthMm }, i) => {
    const isGone = sides.some(({ cuts }) => [cuts.face[i], cuts.back[i]].some(({ f0, f1 }) => f0 === f1));
    return isGone ? sum + lengthMm : sum;
  }, 0);

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

function meetAt(edges: EdgePair, pair: Pair, skin: Skin, { kind, steep }: FoamSeam): Meeting {
  const isLap = kind === 'lap';
  const { a, b, i } = edges;
  const [placedA, placedB] = [a, b].map((bent, which) => {
    const { f, out } = pair[which];
    const heightMm = isLap ? 0 : heightOf(bent, skin);
    return placed(bent, i, { f, out: out - bent.side.edge.allowanceMm }, heightMm);
  });
  const met = apart(a.edges[i], placedA, placedB);
  return steep === undefined ? met : { ...met, gapMm: met.gapMm - roomAt(steep.room[skin], i, pair[0].f) };
}

/** Room at a share of edge `i`. */
const roomAt = ({ atStart, atEnd }: EdgeOffsets, i: number, f: number): number =>
  atStart[i] + f * (atEnd[i] - atStart[i]);

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
  // A step stands up from the surface, and where that leans along the seam, as at the end of a ring, the step does too.
  const level = unit3(sub3(along, scale3(up, dot3(up, along) / dot3(up, up))));
  return { slipMm: dot3(way, level), gapMm: dot3(way, across) / halfFoldCosine, stepMm: dot3(way, out) };
}

const emptySamples = (count: number): FitSamples => ({
  stationMm: new Float64Array(count),
  points: new Float64Array(3 * count),
  faceGapMm: new Float64Array(count),
  backGapMm: new Float64Array(count),
});
