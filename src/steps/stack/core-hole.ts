import type { Region } from '../../geom/polygon-boolean.ts';
import type { Vec2 } from '../../geom/vec.ts';
import { depthInside, widestSpot } from '../../geom/widest-spot.ts';
import type { CoreWish } from '../../model/stack.ts';
import { meeting, ringsOf, type FineGrid } from './regions.ts';

/** Where the core goes, and through which layers. */
export interface CoreHole {
  readonly at: Vec2;
  readonly radiusMm: number;
  /** For each layer whether it has room for the hole and its margin. */
  readonly through: readonly boolean[];
}

/** How near the widest place is found, mm. */
const PLACE_MM = 0.05;

/**
 * The hole of a core through all layers. Left to choose, it stands where all layers together have most room; where they have none in common, in
 * the widest place of the widest layer.
 * @param sound  for each layer what of it lies wholly in the solid.
 */
export function coreHole(sound: readonly (readonly Region[])[], wish: CoreWish, grid: FineGrid): CoreHole {
  const radiusMm = wish.diameterMm / 2 + wish.clearanceMm / 2;
  const at = wish.at ?? placeOf(sound, grid);
  const through = sound.map(
    (regions) => regions.length > 0 && depthInside(ringsOf(regions), at.x, at.y) >= radiusMm + wish.marginMm - PLACE_MM,
  );
  return { at: { x: at.x, y: at.y }, radiusMm, through };
}

function placeOf(sound: readonly (readonly Region[])[], grid: FineGrid): Vec2 {
  const filled = sound.filter((regions) => regions.length > 0);
  let common = filled[0] ?? [];
  for (const regions of filled.slice(1)) common = meeting(common, regions, grid);
  const candidates = common.length > 0 ? common : filled.flat();
  let best = { x: 0, y: 0, radiusMm: 0 };
  for (const { outer, holes } of candidates) {
    const spot = widestSpot([outer, ...holes], PLACE_MM / 10);
    if (spot.radiusMm > best.radiusMm) best = spot;
  }
  return best;
}
