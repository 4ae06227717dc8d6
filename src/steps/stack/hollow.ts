import type { Region } from '../../geom/polygon-boolean.ts';
import type { StackWish } from '../../model/stack.ts';
import type { Solid } from './frame.ts';
import { layerOutline } from './layer-outline.ts';
import { areaOf, inside, type FineGrid } from './regions.ts';

/** A hollow smaller than this many walls squared is not worth the cut. */
const LEAST_HOLLOW_WALLS = 1;

/**
 * What is taken out of a layer so that a wall stays all round: what all sections from a wall under the layer to a wall over it have in common,
 * a wall farther in. From every place in it the surface of the solid is at least a wall away, sideways as well as up and down; so the first and
 * last layers close the hollow by themselves, and a layer narrower than two walls keeps whole. Where an end is open the hollow runs out through it,
 * as far as the solid stands on a flat face there.
 */
export function hollowOf(
  solid: Solid,
  from: number,
  to: number,
  wallMm: number,
  openAt: StackWish['openAt'],
  grid: FineGrid,
): readonly Region[] {
  let [low, high] = [from - wallMm, to + wallMm];
  if (openAt === 'bottom' || openAt === 'both') low = Math.max(low, solid.min.z);
  if (openAt === 'top' || openAt === 'both') high = Math.min(high, solid.max.z);
  if (low >= high || low < solid.min.z - solid.snapMm || high > solid.max.z + solid.snapMm) return [];
  const within = layerOutline(solid, low, high, 'smaller', grid);
  return inside(within, wallMm).filter((region) => areaOf([region]) > LEAST_HOLLOW_WALLS * wallMm ** 2);
}
