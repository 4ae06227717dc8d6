import { SEAM_DIFFERENCE_MM, SEAM_DIFFERENCE_SHARE } from '../../src/base/tolerance.ts';
import type { FlatPiece } from '../../src/model/flat-piece.ts';
import type { FoamPiece, FoamSeam } from '../../src/model/foam-piece.ts';

/** What of a finished part is looked at: its pieces as foam and as laid flat, and its seams walked. */
export interface WalkedPart {
  readonly pieces: readonly Pick<FoamPiece, 'id' | 'patch' | 'surfaceAreaMm2'>[];
  /** One per patch. */
  readonly flats: readonly (Pick<FlatPiece, 'stretchPct' | 'squashPct' | 'energy'> | null)[];
  readonly seams: readonly Pick<FoamSeam, 'letter' | 'kind' | 'pieces' | 'lengthMm' | 'worstMisalignmentMm'>[];
}

/** A seam with two sides against what a shop's eye and tape allow. */
export interface SeamFit {
  readonly letter: string;
  readonly lengthMm: number;
  /** Greatest difference of the arc lengths on the walk from its start. */
  readonly misalignmentMm: number;
  readonly allowedMm: number;
  /** The gentler of the pieces it joins: the smaller 99th percentile of stretch, per cent. */
  readonly gentlestP99Pct: number;
}

/** All seams that join two edges. The sides of an open edge have nothing to meet. */
export function seamFits({ pieces, flats, seams }: WalkedPart): SeamFit[] {
  const p99 = new Map(pieces.map(({ id, patch }) => [id, flats[patch]?.stretchPct.p99 ?? Infinity]));
  return seams
    .filter(({ kind }) => kind !== 'open')
    .map(({ letter, pieces: joined, lengthMm, worstMisalignmentMm }) => ({
      letter,
      lengthMm: Math.max(...lengthMm),
      misalignmentMm: worstMisalignmentMm,
      allowedMm: Math.max(SEAM_DIFFERENCE_MM, SEAM_DIFFERENCE_SHARE * Math.max(...lengthMm)),
      gentlestP99Pct: Math.min(...joined.map((id) => p99.get(id) ?? Infinity)),
    }));
}

export const isWithin = ({ misalignmentMm, allowedMm }: SeamFit): boolean => misalignmentMm <= allowedMm;

/** How the pieces of a part are stretched, all together; per cent. */
export interface PartStretch {
  readonly maxPct: number;
  /** Greatest 99th percentile of any piece. */
  readonly p99Pct: number;
  readonly squashMaxPct: number;
  /** Mean over the area of all pieces; 4 is an isometry. */
  readonly energy: number;
}

export function partStretch({ pieces, flats }: WalkedPart): PartStretch {
  const laid = pieces.flatMap(({ patch, surfaceAreaMm2 }) => {
    const flat = flats[patch];
    return flat === null ? [] : [{ flat, area: surfaceAreaMm2 }];
  });
  const total = laid.reduce((sum, { area }) => sum + area, 0);
  return {
    maxPct: Math.max(...laid.map(({ flat }) => flat.stretchPct.max)),
    p99Pct: Math.max(...laid.map(({ flat }) => flat.stretchPct.p99)),
    squashMaxPct: Math.max(...laid.map(({ flat }) => flat.squashPct.max)),
    energy: laid.reduce((sum, { flat, area }) => sum + area * flat.energy, 0) / total,
  };
}
