import { convexHull } from '../../geom/convex-hull.ts';
import { isSimpleArea } from '../../geom/ring-simple.ts';
import { ringArea, type Ring } from '../../geom/ring.ts';
import { centreAt, type FlatCentre } from './flat-centre.ts';

export interface StripSides {
  readonly leftMm: number;
  readonly rightMm: number;
}

/** Stations along a strip at which its edges are looked at. */
const MOST_LOOKED_AT = 400;

/** The outline of part of a strip, roughly: counter-clockwise, packed. */
function roughRing(centre: FlatCentre, from: number, to: number, { leftMm, rightMm }: StripSides): Ring {
  const step = centre.ways[1] - centre.ways[0];
  const count = Math.max(2, Math.min(MOST_LOOKED_AT, Math.ceil((to - from) / step)));
  const side = (mm: number): number[] =>
    Array.from({ length: count + 1 }, (_, i) => {
      const { x, y, heading } = centreAt(centre, from + ((to - from) * i) / count);
      return [x - mm * Math.sin(heading), y + mm * Math.cos(heading)];
    }).flat();
  const left = side(leftMm);
  const back: number[] = [];
  for (let i = left.length - 2; i >= 0; i -= 2) back.push(left[i], left[i + 1]);
  return Float64Array.from([...side(-rightMm), ...back]);
}

/** Longest way across the flat strip, mm: what a sheet must be long for it, at most. */
export function flatReach(centre: FlatCentre, from: number, to: number, sides: StripSides): number {
  const hull = convexHull(roughRing(centre, from, to, sides));
  let most = 0;
  for (let i = 0; i < hull.length; i += 2)
    for (let j = i + 2; j < hull.length; j += 2)
      most = Math.max(most, Math.hypot(hull[j] - hull[i], hull[j + 1] - hull[i + 1]));
  return most;
}

/** False where the flat strip would lie on itself or touch itself. */
export function isFlatSimple(centre: FlatCentre, from: number, to: number, sides: StripSides): boolean {
  const ring = roughRing(centre, from, to, sides);
  return ringArea(ring) > 0 && isSimpleArea([ring]);
}
