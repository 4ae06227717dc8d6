import type { Bench } from './bench-state.ts';

/** What a maker judges a way of laying flat by. */
export interface FitFigures {
  /** Greatest of all pieces, per cent. */
  readonly stretch: number;
  readonly squash: number;
  /** Most that the two sides of a seam differ in length, mm. */
  readonly seams: number;
}

/** The figures of the pieces on show; null while there is none. */
export function fitFigures({ pieces }: Bench): FitFigures | null {
  if (pieces === null || pieces.pieces.length === 0) return null;
  const worst = (which: 'stretchSpread' | 'squashSpread'): number =>
    Math.max(0, ...pieces.patches.map((patch) => patch[which]?.max ?? 0));
  return {
    stretch: worst('stretchSpread'),
    squash: worst('squashSpread'),
    seams: Math.max(0, ...pieces.seams.map((seam) => Math.abs(seam.differenceMm))),
  };
}
