import { rad, type Vec2 } from '../../geom/vec.ts';
import { hasGrain } from '../../model/cut-larger.ts';
import type { GrainWish, HeatShrinkage } from '../../model/flatten-settings.ts';

/** How a piece lies on its sheet, and what it is cut larger by. */
export interface PieceGrain {
  readonly grainRad?: number;
  readonly shrinkage?: HeatShrinkage;
}

/**
 * The sheet's length lies as the maker wishes it, counted from the up arrow, or from the piece's x axis where it lies level; unwished only where
 * the foam shrinks more one way than the other.
 * @param shrinkage what is allowed for, or undefined; a foam that loses nothing is as none.
 */
export function grainOf(
  wish: GrainWish | undefined,
  up: Vec2 | null,
  shrinkage: HeatShrinkage | undefined,
): PieceGrain {
  const loses = shrinkage !== undefined && (shrinkage.alongPct !== 0 || shrinkage.acrossPct !== 0);
  const from = up === null ? 0 : Math.atan2(up.y, up.x);
  return {
    ...(wish !== undefined || (loses && hasGrain(shrinkage)) ? { grainRad: from + rad(wish?.angleDeg ?? 0) } : {}),
    ...(loses ? { shrinkage } : {}),
  };
}

/** Whether the grain of one piece is the mirror image of another's, up arrow on up arrow. */
export function doGrainsMirror(a: GrainWish | undefined, b: GrainWish | undefined): boolean {
  if (a === undefined || b === undefined) return a === b;
  return a.stretch === b.stretch && Math.abs(Math.sin(rad(a.angleDeg + b.angleDeg))) < SAME_GRAIN;
}

/** Sine of the angle between grains that are one: wishes are whole degrees or tenths. */
const SAME_GRAIN = 1e-4;
