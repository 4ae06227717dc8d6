import type { BenchPick } from '../viewport/bench-contract.ts';
import type { Bench } from './bench-state.ts';
import type { FitReading } from './view-state.ts';

/** What was measured on the seam under the pointer, at the sample nearest to it; null off the seams. */
export function fitAt({ dryFit, seams }: Bench, { seam, point }: BenchPick): FitReading | null {
  const chain = seam === undefined ? undefined : seams?.chains[seam];
  const fit = dryFit?.perSeam.find((candidate) => candidate.seam === chain?.id);
  if (fit === undefined || point === undefined) return null;
  const { points, faceGapMm, backGapMm } = fit.samples;
  let [nearest, least] = [0, Infinity];
  for (let i = 0; i < faceGapMm.length; i += 1) {
    const away = Math.hypot(...point.map((x, k) => x - points[3 * i + k]));
    if (away < least) [nearest, least] = [i, away];
  }
  return { letter: fit.letter, faceGapMm: faceGapMm[nearest], backGapMm: backGapMm[nearest] };
}
