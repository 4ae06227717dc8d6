import type { Region } from '../../geom/polygon-boolean.ts';
import type { Solid } from './frame.ts';
import { layerOutline } from './layer-outline.ts';
import { inside, meeting, type FineGrid } from './regions.ts';

/** Bands that stand for the ball: foam stays off by no more than sqrt(1 + 1/8), 6 per cent, farther than asked for from a plane. */
const BANDS = 8;

/** How much farther than asked for the foam may keep from a flat or hollow skin, as a factor. */
export const COVER_SPREAD = Math.sqrt(1 + 1 / BANDS);

/**
 * What of a layer lies so far inside a skin that a ball of that radius about any place of it stays inside. The ball is put into a stair of round
 * slabs: band k reaches up and down to h(k + 1) = r sqrt((k + 1) / n) and is as wide as the ball is at h(k); a slab fits where what all sections of its
 * height have in common holds it. So nowhere is the cover thinner than asked for, and nothing is sampled.
 */
export function coveredLayer(
  skin: Solid,
  from: number,
  to: number,
  coverMm: number,
  grid: FineGrid,
): readonly Region[] {
  let kept: readonly Region[] | null = null;
  for (let k = BANDS - 1; k >= 0; k -= 1) {
    const up = coverMm * Math.sqrt((k + 1) / BANDS);
    const wide = coverMm * Math.sqrt(1 - k / BANDS);
    const band = inside(layerOutline(skin, from - up, to + up, 'smaller', grid), wide);
    kept = kept === null ? band : meeting(kept, band, grid);
    if (kept.length === 0) return [];
  }
  return kept ?? [];
}
