import type { Region } from '../../geom/polygon-boolean.ts';
import type { StackRule } from '../../model/stack.ts';
import type { Solid } from './frame.ts';
import { covered, turnedRing, type FineGrid } from './regions.ts';
import { sectionAt, slabBetween, type Slab } from './slab.ts';

/**
 * The outline of a layer. Over a place the solid fills the layer from face to face, or not at all, or its surface passes there; so
 *
 *     larger  = section just over the lower face  +  shadow of the surface between the faces   (the union of all sections)
 *     smaller = section just over the lower face  -  shadow of the surface between the faces   (what all sections have in common)
 *
 * without any sampling: but for the grid nothing of the solid stands out of the larger face, and nothing of the smaller out of the solid.
 */
export function layerOutline(
  solid: Solid,
  from: number,
  to: number,
  rule: StackRule,
  grid: FineGrid,
  slab: Slab = slabBetween(solid, from, to),
): readonly Region[] {
  if (rule === 'middle') return covered(sectionAt(solid, (from + to) / 2, 'under'), grid);
  const foot = sectionAt(solid, from, 'over');
  return covered([...foot, ...(rule === 'larger' ? slab.shadow : slab.shadow.map(turnedRing))], grid);
}
