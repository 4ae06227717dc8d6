/**
 * One side of a seam as it is walked: flat arc length at each vertex of the chain, in the chain's order, mm, beginning with 0.
 */
export type Stations = Float64Array;

/** One side of a seam as it is walked. */
export interface WalkedSide {
  readonly flat: Stations;
  /**
   * Length run on the surface this side's piece keeps its length on. Where the two pieces keep theirs on surfaces of other depths, as a grooved
   * and a rolled one or two thicknesses do, one side of a seam is rightly longer than the other: what each is off its own is compared.
   */
  readonly own: Stations;
}

/** A place on one side of a chain: on mesh edge `edge`, at share `share` (0 to 1) of it. */
export interface ChainPlace {
  readonly edge: number;
  readonly share: number;
}

/** A match mark on mesh edge `edge`, at a share of it on either side: places that come together when the pieces do. */
export interface MarkPlace {
  readonly edge: number;
  readonly shares: readonly [number, number];
  /** What is printed at it; left out where marks are counted along the chain from 1. */
  readonly number?: number;
}

/** A mark as one side has it. */
export const placeOn = ({ edge, shares }: MarkPlace, side: 0 | 1): ChainPlace => ({ edge, share: shares[side] });

/** What walking a seam tells (foam model 4). All mm, >= 0. */
export interface SeamWalk {
  readonly lengthMm: readonly number[];
  readonly differenceMm: number;
  readonly worstSlipMm: number;
  readonly worstMisalignmentMm: number;
  /** Vertex of the chain where the slip since the last mark was greatest. */
  readonly worstAt: number;
}

/** Arc length at a place, mm. */
export function stationAt(stations: Stations, { edge, share }: ChainPlace): number {
  return stations[edge] + share * (stations[edge + 1] - stations[edge]);
}

/** The place at arc length `s`; before the start and after the end the ends themselves. */
export function placeAt(stations: Stations, s: number): ChainPlace {
  const edges = stations.length - 1;
  let edge = 0;
  while (edge + 1 < edges && stations[edge + 1] <= s) edge += 1;
  const length = stations[edge + 1] - stations[edge];
  return { edge, share: length > 0 ? Math.min(1, Math.max(0, (s - stations[edge]) / length)) : 0 };
}

/**
 * Rolls one side of a seam along the other. At every vertex of the chain and every mark is compared how far each side has run beyond its own
 * length on the prop: from the seam's start, and from the last mark, where the maker lines the two up again.
 * @param marks in the order of the chain.
 */
export function walkSeam(sides: readonly WalkedSide[], marks: readonly MarkPlace[]): SeamWalk {
  const lengthMm = sides.map(({ flat }) => flat[flat.length - 1]);
  if (sides.length < 2) return { lengthMm, differenceMm: 0, worstSlipMm: 0, worstMisalignmentMm: 0, worstAt: 0 };
  const [a, b] = sides.map(({ flat, own }) => flat.map((s, v) => s - own[v]));
  let worstMisalignmentMm = 0;
  let worstSlipMm = 0;
  let worstAt = 0;
  let sinceMark = 0;
  let mark = 0;
  const meet = (apart: number, vertex: number): void => {
    worstMisalignmentMm = Math.max(worstMisalignmentMm, Math.abs(apart));
    const slip = Math.abs(apart - sinceMark);
    if (slip > worstSlipMm) [worstSlipMm, worstAt] = [slip, vertex];
  };
  for (let v = 0; v < a.length; v += 1) {
    meet(a[v] - b[v], v);
    for (; mark < marks.length && marks[mark].edge === v; mark += 1) {
      const apart = stationAt(a, placeOn(marks[mark], 0)) - stationAt(b, placeOn(marks[mark], 1));
      meet(apart, v);
      sinceMark = apart;
    }
  }
  const differenceMm = Math.abs(a[a.length - 1] - b[b.length - 1]);
  return { lengthMm, differenceMm, worstSlipMm, worstMisalignmentMm, worstAt };
}
