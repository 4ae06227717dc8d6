import type { DryFit } from '../../model/dry-fit.ts';

/** How the finished pieces meet when they are put together. */
export function dryFitReport({ worstGapMm, worstOverlapMm, perSeam, corners }: DryFit): Record<string, unknown> {
  return {
    worstGapMm,
    worstOverlapMm,
    perSeam: perSeam.map((fit) => ({
      seam: fit.seam,
      letter: fit.letter,
      pieces: fit.pieces,
      worstGapMm: fit.worstGapMm,
      worstOverlapMm: fit.worstOverlapMm,
      worstSlipMm: fit.worstSlipMm,
      worstStepMm: fit.worstStepMm,
      goneMm: fit.goneMm,
      at: fit.at,
      samples: {
        stationMm: [...fit.samples.stationMm],
        faceGapMm: [...fit.samples.faceGapMm],
        backGapMm: [...fit.samples.backGapMm],
      },
    })),
    corners: corners.map(({ pieces, overlapMm, at }) => ({ pieces, overlapMm, at })),
  };
}
