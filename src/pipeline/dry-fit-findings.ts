import type { Finding } from '../base/finding.ts';
import { DRY_FIT_MM } from '../base/tolerance.ts';
import type { DryFit, SeamFit } from '../model/dry-fit.ts';

/** One finding for each seam whose finished edges do not meet, with the place where they miss each other most. */
export function dryFitFindings(part: string, fit: DryFit): readonly Finding[] {
  return fit.perSeam.flatMap((seam): Finding[] => {
    const isGap = seam.worstGapMm >= seam.worstOverlapMm;
    const value = isGap ? seam.worstGapMm : seam.worstOverlapMm;
    if (value <= DRY_FIT_MM) return [];
    return [
      {
        code: 'dryfit/gap',
        severity: 'warning',
        text: textOf(seam, isGap, value),
        value,
        limit: DRY_FIT_MM,
        unit: 'mm',
        where: { part, seam: seam.seam, point: seam.at },
      },
    ];
  });
}

function textOf({ letter, samples: { faceGapMm, backGapMm } }: SeamFit, isGap: boolean, value: number): string {
  const sign = isGap ? 1 : -1;
  const most = (gaps: Float64Array): number => gaps.reduce((worst, gap) => Math.max(worst, sign * gap), 0);
  const skin = most(faceGapMm) >= most(backGapMm) ? 'face' : 'back';
  const size = `${value.toFixed(1)} mm`;
  return isGap
    ? `Put together, the edges of seam ${letter} stand up to ${size} apart on the ${skin}: fill the place or use thinner foam, or move the seam where the surface bends less.`
    : `Put together, the edges of seam ${letter} run up to ${size} into each other on the ${skin}: sand the place down until it closes, or move the seam where the surface bends less.`;
}
