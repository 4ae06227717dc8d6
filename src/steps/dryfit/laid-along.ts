import { edgeCount, type FitSide } from './fit-side.ts';

/**
 * Lays one side of a seam along the seam in space: by its own flat length from the last match mark (or the seam's start), pulled or gathered
 * only as its forming needs and the foam allows.
 * @param trueMm      length on the neutral surface in space up to each vertex of the seam, mm.
 * @param mostShare   how far foam may be pulled or gathered, a share of its length.
 * @returns how far a place, share `f` of edge `i`, comes to lie past the model point it belongs to, mm; negative where it falls short.
 */
export function laidAlong(side: FitSide, trueMm: Float64Array, mostShare: number): (i: number, f: number) => number {
  const flatMm = seamStations(side);
  const count = edgeCount(side);
  const ahead = new Float64Array(count + 1);
  for (let i = 0; i < count; i += 1) {
    const [flat, space] = [flatMm[i + 1] - flatMm[i], trueMm[i + 1] - trueMm[i]];
    const laid = Math.min(flat * (1 + mostShare), Math.max(flat * (1 - mostShare), space));
    ahead[i + 1] = ahead[i] + laid - space;
  }
  const aheadAt = (s: number): number => {
    let i = 0;
    while (i + 1 < count && flatMm[i + 1] <= s) i += 1;
    const length = flatMm[i + 1] - flatMm[i];
    return ahead[i] + (length > 0 ? (s - flatMm[i]) / length : 0) * (ahead[i + 1] - ahead[i]);
  };
  if (ahead.every((x) => x === 0)) return () => 0;
  const marks = side.piece.marks
    .filter(({ seam, side: which }) => seam === side.edge.seam && which === side.edge.side)
    .map(({ stationMm }) => stationMm)
    .sort((a, b) => a - b);
  const starts = [0, ...marks].map((s) => ({ s, ahead: aheadAt(s) }));
  return (i, f) => {
    const share = Math.min(1, Math.max(0, f));
    const s = flatMm[i] + share * (flatMm[i + 1] - flatMm[i]);
    // At a mark itself what was missing before it counts, so that it is seen.
    const from = starts.findLast((start) => start.s < s) ?? starts[0];
    return ahead[i] + share * (ahead[i + 1] - ahead[i]) - from.ahead;
  };
}

/** Flat neutral length up to each vertex of the seam in its direction, mm. */
function seamStations({ edge }: FitSide): Float64Array {
  const { stationMm } = edge;
  if (!edge.reversed) return stationMm;
  const whole = stationMm[stationMm.length - 1];
  return stationMm.map((_, i) => whole - stationMm[stationMm.length - 1 - i]);
}
