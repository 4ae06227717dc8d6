import { coveredRegions, type Region } from '../../geom/polygon-boolean.ts';
import { ringArea, type Box2, type Ring } from '../../geom/ring.ts';
import type { Template } from '../../model/template.ts';

/** What a template takes of a sheet: within either edge of its bevels, less its holes; mm, in the numbers of its drawing. */
export function foamArea({ foamRings, foamBox }: Pick<Template, 'foamRings' | 'foamBox'>): Region {
  if (foamRings === undefined) return { outer: boxRing(foamBox), holes: [] };
  const [largest] = coveredRegions(foamRings);
  return largest ?? { outer: boxRing(foamBox), holes: [] };
}

export const boxRing = ({ minX, minY, maxX, maxY }: Box2): Ring =>
  Float64Array.of(minX, minY, maxX, minY, maxX, maxY, minX, maxY);

/** mm². */
export const areaOfRegion = ({ outer, holes }: Region): number =>
  ringArea(outer) + holes.reduce((sum, hole) => sum + ringArea(hole), 0);
