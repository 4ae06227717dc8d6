import type { Ring } from '../geom/ring.ts';

/** What a project comes to, in the figures that two states of it are judged by. */
export interface VersionFigures {
  /** Why it could not be made as far as paper, one sentence; null where it was. Figures are then of as far as it came. */
  readonly stopped: string | null;
  /** Kinds of pieces, and pieces that are cut, copies counted. */
  readonly pieces: number;
  readonly cuts: number;
  /** Foam that is cut, in the order of the project's foams; one that nothing is cut from is left out. */
  readonly foams: readonly FoamFigures[];
  readonly sheets: number;
  readonly pages: number;
  /** Seams without the open edges of the prop, and their length on it, mm. */
  readonly seams: number;
  readonly seamMm: number;
  /** Worst of all pieces that are bent from a sculpt, per cent, and which one; null where there is none. */
  readonly stretch: Worst | null;
  readonly squash: Worst | null;
  /** Worst of all seams when the finished pieces are put together, mm, and which one; null where it was not tried. */
  readonly gap: Worst | null;
  readonly overlap: Worst | null;
  /** Most that the two sides of a seam differ between two match marks, mm. */
  readonly slip: Worst | null;
  /** Steepest bevel that is cut, degrees from square. */
  readonly bevel: Worst | null;
  /** Findings that are more than notes. */
  readonly warnings: number;
}

export interface Worst {
  readonly value: number;
  /** Number and name of the piece, or letter of the seam. */
  readonly at: string;
}

export interface FoamFigures {
  readonly id: string;
  readonly name: string;
  readonly thicknessMm: number;
  /** Of all that is cut from it, copies counted. */
  readonly areaMm2: number;
  readonly sheets: number;
}

/** A piece as it is compared. */
export interface PieceFigures {
  readonly id: string;
  readonly number: number;
  readonly name: string;
  readonly foam: string;
  readonly thicknessMm: number;
  readonly quantity: number;
  /** Changes when anything printed on its template does. */
  readonly revision: string;
  readonly areaMm2: number;
  /** Per cent; null in a piece of no sculpt. */
  readonly stretchPct: number | null;
  readonly squashPct: number | null;
  /** The line to cut: outer ring, then holes, mm. */
  readonly rings: readonly Ring[];
}

/**
 * One piece in both states. same: nothing printed on its template differs, nor how many are cut from which foam. changed: something does. gone: only
 * the first has it. come: only the second.
 */
export interface ComparedPiece {
  readonly kind: 'same' | 'changed' | 'gone' | 'come';
  readonly one: PieceFigures | null;
  /** Its rings lie on those of the first, where both are there. */
  readonly other: PieceFigures | null;
  /** How far its edge has moved at most, as the two lie best on each other, mm; null where only one is there. */
  readonly movedMm: number | null;
}

/** Two states of a project side by side. */
export interface Comparison {
  readonly one: VersionFigures;
  readonly other: VersionFigures;
  /** Those that differ first, as they are numbered. */
  readonly pieces: readonly ComparedPiece[];
}
