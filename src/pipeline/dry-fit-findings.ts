import { clipPlaces, type Finding } from '../base/finding.ts';
import { DRY_FIT_MM } from '../base/tolerance.ts';
import type { CornerFit, DryFit, SeamFit } from '../model/dry-fit.ts';
import type { GapReason } from './gap-reasons.ts';

/**
 * One finding for each seam whose finished edges do not meet, with the place where they miss each other most, and one for all corners.
 * @param reasonOf  why a seam does not close; null where nothing tells.
 */
export const dryFitFindings = (
  part: string,
  fit: DryFit,
  reasonOf: (seam: SeamFit) => GapReason | null = () => null,
): readonly Finding[] => [...seamFindings(part, fit, reasonOf), ...cornerFindings(part, fit.corners)];

/** Pieces that meet at a corner only, where one is in the way of the other. */
function cornerFindings(part: string, corners: readonly CornerFit[]): readonly Finding[] {
  const told = corners.filter(({ overlapMm }) => overlapMm > DRY_FIT_MM);
  if (told.length === 0) return [];
  const [worst] = told;
  const [a, b] = worst.names;
  const size = `${worst.overlapMm.toFixed(1)} mm`;
  const others = new Set(told.map(({ vertex }) => vertex)).size - 1;
  const where = others === 0 ? '' : `, the worst of ${others + 1} such corners`;
  return [
    {
      code: 'dryfit/corner',
      severity: 'warning',
      text: `Put together, the corners of ${a} and ${b} run up to ${size} into each other${where}: they share no seam there, so trim one against the other when the pieces between them are in place.`,
      value: worst.overlapMm,
      limit: DRY_FIT_MM,
      unit: 'mm',
      where: { part, vertices: clipPlaces([...new Set(told.map(({ vertex }) => vertex))]), point: worst.at },
    },
  ];
}

function seamFindings(part: string, fit: DryFit, reasonOf: (seam: SeamFit) => GapReason | null): readonly Finding[] {
  return fit.perSeam.flatMap((seam): Finding[] => {
    const isGap = seam.worstGapMm >= seam.worstOverlapMm;
    const value = isGap ? seam.worstGapMm : seam.worstOverlapMm;
    if (value <= DRY_FIT_MM) return [];
    return [
      {
        code: 'dryfit/gap',
        severity: 'warning',
        text: textOf(seam, isGap, value, reasonOf(seam)),
        value,
        limit: DRY_FIT_MM,
        unit: 'mm',
        where: { part, seam: seam.seam, point: seam.at },
      },
    ];
  });
}

function textOf(
  { letter, samples: { faceGapMm, backGapMm } }: SeamFit,
  isGap: boolean,
  value: number,
  reason: GapReason | null,
): string {
  const sign = isGap ? 1 : -1;
  const most = (gaps: Float64Array): number => gaps.reduce((worst, gap) => Math.max(worst, sign * gap), 0);
  const skin = most(faceGapMm) >= most(backGapMm) ? 'face' : 'back';
  const size = `${value.toFixed(1)} mm`;
  if (reason !== null) {
    const how = isGap ? 'stand' : 'run';
    const where = isGap ? 'apart' : 'into each other';
    return `Put together, the edges of seam ${letter} ${how} up to ${size} ${where} on the ${skin}, ${reasonText(reason)}`;
  }
  return isGap
    ? `Put together, the edges of seam ${letter} stand up to ${size} apart on the ${skin}: fill the place or use thinner foam, or move the seam where the surface bends less.`
    : `Put together, the edges of seam ${letter} run up to ${size} into each other on the ${skin}: sand the place down until it closes, or move the seam where the surface bends less.`;
}

function reasonText(reason: GapReason): string {
  return reason.why === 'gone'
    ? `because the sculpt is smaller there than the foam is thick: along ${reason.lengthMm.toFixed(1)} mm the bevels leave nothing of an edge. Use thinner foam, or end the pieces before that place and carve it of solid foam.`
    : `because a facet beside it turns by ${reason.turnDeg.toFixed(0)}° on its way into the foam, where planes that meet at a corner of it find no common point: use thinner foam, smooth the sculpt there, or sand the place until it closes.`;
}
