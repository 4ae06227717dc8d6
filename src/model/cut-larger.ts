import type { Ring } from '../geom/ring.ts';
import { scaleAlong, scaledPoints, type ScaleAlong } from '../geom/scale-along.ts';
import type { HeatShrinkage } from './flatten-settings.ts';
import type { FoamPiece } from './foam-piece.ts';

/** How much longer foam is cut that loses this much when warmed: 2 % lost of the cut length leave the wanted one, so 1 / 0.98. */
export const cutFactor = (lostPct: number): number => 1 / (1 - lostPct / 100);

/** From the finished piece to what is cut, about the origin of its frame; null where it is cut as it is to be. */
export function cutScaleOf({ shrinkage, grainRad }: Pick<FoamPiece, 'shrinkage' | 'grainRad'>): ScaleAlong | null {
  if (shrinkage === undefined) return null;
  return scaleAlong(grainRad ?? 0, cutFactor(shrinkage.alongPct), cutFactor(shrinkage.acrossPct));
}

/** A ring of the finished piece as it is cut; the ring itself where they are one. */
export function cutRing(piece: Pick<FoamPiece, 'shrinkage' | 'grainRad'>, ring: Ring): Ring {
  const scale = cutScaleOf(piece);
  return scale === null ? ring : scaledPoints(ring, scale);
}

/** True when a foam loses more one way than the other, so that it matters how a piece lies on its sheet. */
export const hasGrain = ({ alongPct, acrossPct }: HeatShrinkage): boolean => alongPct !== acrossPct;
