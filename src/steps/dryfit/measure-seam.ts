import { add3, cross3, dot3, scale3, sub3, unit3, type Vec3 } from '../../geom/vec.ts';
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
}

/** Two points that should be one, taken apart. */
interface Meeting {
  readonly slipMm: number;
  readonly gapMm: number;
  readonly stepMm: number;
}

/** Where on an edge of the seam is measured: at both its ends, as far as both sides reach, and in between. */
const STOPS = [0, 0.5, 1] as const;

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
  const count = edgeCount(sides[0]);
  const isClosed = sides.every(({ edge }) => edge.from === edge.to);
  const samples = emptySamples(count * STOPS.length);
  const worst = { gap: 0, overlap: 0, slip: 0, step: 0, badness: -1, at: [0, 0, 0] as [number, number, number] };
  let station = 0;
  for (let i = 0; i < count; i += 1) {
    const { start, along, lengthMm } = a.edges[i];
    for (const [k, stop] of STOPS.entries()) {
      const isEnd = !isClosed && ((i === 0 && stop === 0) || (i === count - 1 && stop === 1));
      const meet = (skin: Skin): Meeting => meetAt(a, b, i, stop, skin, isEnd, seam.kind === 'lap');
      const [face, back] = [meet('face'), meet('back')];
      const n = i * STOPS.length + k;
      const point = add3(start, scale3(along, stop * lengthMm));
      samples.stationMm[n] = station + stop * lengthMm;
      samples.points.set([point.x, point.y, point.z], 3 * n);
      samples.faceGapMm[n] = face.gapMm;
      samples.backGapMm[n] = back.gapMm;
      for (const { slipMm, gapMm, stepMm } of [face, back]) {
        worst.gap = Math.max(worst.gap, gapMm);
        worst.overlap = Math.max(worst.overlap, -gapMm);
        worst.slip = Math.max(worst.slip, Math.abs(slipMm));
        worst.step = Math.max(worst.step, Math.abs(stepMm));
        if (Math.abs(gapMm) > worst.badness) [worst.badness, worst.at] = [Math.abs(gapMm), [point.x, point.y, point.z]];
      }
    }
    station += lengthMm;
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

function bentSides(sides: readonly [FitSide, FitSide], mostShare: number): readonly [BentSide, BentSide] {
  const edges = bentEdges(sides);
  const trueMm = new Float64Array(edges[0].length + 1);
  edges[0].forEach(({ lengthMm }, i) => (trueMm[i + 1] = trueMm[i] + lengthMm));
  const bent = (which: 0 | 1): BentSide => {
    const side = sides[which];
    const cuts = { face: cutEdges(side, 'face'), back: cutEdges(side, 'back') };
    return { side, edges: edges[which], cuts, aheadAt: laidAlong(side, trueMm, mostShare) };
  };
  return [bent(0), bent(1)];
}

/** @param isEnd  true at an end of the seam, where the corners of both cuts belong together. */
function meetAt(
  a: BentSide,
  b: BentSide,
  i: number,
  stop: number,
  skin: Skin,
  isEnd: boolean,
  isLap: boolean,
): Meeting {
  const [cutA, cutB] = [a.cuts[skin][i], b.cuts[skin][i]];
  const from = Math.max(cutA.f0, cutB.f0);
  const to = Math.max(from, Math.min(cutA.f1, cutB.f1));
  const common = from + stop * (to - from);
  const shareOf = ({ f0, f1 }: CutEdge): number =>
    isEnd ? (stop === 0 ? f0 : f1) : Math.min(f1, Math.max(f0, common));
  const height = (side: FitSide): number =>
    isLap ? 0 : (skin === 'face' ? 1 - side.neutralFraction : -side.neutralFraction) * side.piece.thicknessMm;
  const placed = ({ side, edges, aheadAt }: BentSide, cut: CutEdge): Placed => {
    const f = shareOf(cut);
    return place(edges[i], f, aheadAt(i, f), offsetAt(cut, f) - side.edge.allowanceMm, height(side));
  };
  return apart(a.edges[i], placed(a, cutA), placed(b, cutB));
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

/**
 * Takes the way from a point of side 0 to its like on side 1 apart: along the seam, out of the surface (along the half of both normals, in
 * the plane that halves the fold) and across, from side 0 to side 1.
 */
function apart({ along }: BentEdge, a: Placed, b: Placed): Meeting {
  const normals = add3(a.normal, b.normal);
  const outwards = add3(a.outward, b.outward);
  // On a fold near half a turn the normals cancel and the ways outward tell the plane that halves it; one of them always does.
  const up = add3(normals, scale3(outwards, dot3(normals, outwards) < 0 ? -1 : 1));
  const out = unit3(sub3(up, scale3(along, dot3(up, along))));
  const way = sub3(b.at, a.at);
  return { slipMm: dot3(way, along), gapMm: dot3(way, cross3(along, out)), stepMm: dot3(way, out) };
}

const emptySamples = (count: number): FitSamples => ({
  stationMm: new Float64Array(count),
  points: new Float64Array(3 * count),
  faceGapMm: new Float64Array(count),
  backGapMm: new Float64Array(count),
});
