import type { Region } from '../../geom/polygon-boolean.ts';
import type { Solid } from './frame.ts';
import { layerOutline } from './layer-outline.ts';
import { areaOf, inside, type FineGrid } from './regions.ts';

/** A hollow smaller than this many walls squared is not worth the cut. */
const LEAST_HOLLOW_WALLS = 1;

/**
 * What is taken out of a layer so that a wall stays all round: what all sections from a wall under the layer to a wall over it have in common,
 * a wall farther in. From every place in it the surface of the solid is at least a wall away, sideways as well as up and down; so the first and
 * last layers close the hollow by themselves, and a layer narrower than two walls keeps whole.
 */
export function hollowOf(solid: Solid, from: number, to: number, wallMm: number, grid: FineGrid): readonly Region[] {
  if (from - wallMm < solid.min.z - solid.snapMm || to + wallMm > solid.max.z + solid.snapMm) return [];
  const within = layerOutline(solid, from - wallMm, to + wallMm, 'smaller', grid);
  return inside(within, wallMm).filter((region) => areaOf([region]) > LEAST_HOLLOW_WALLS * wallMm ** 2);
}
