import { add3, dot3, length3, scale3, sub3, type Vec3 } from '../../geom/vec.ts';

/** Distance from a place to the straight piece from `a` to `b`, in space, mm. */
export function distanceToPiece(p: Vec3, a: Vec3, b: Vec3): number {
  const way = sub3(b, a);
  const square = dot3(way, way);
  const share = square > 0 ? Math.min(1, Math.max(0, dot3(sub3(p, a), way) / square)) : 0;
  return length3(sub3(p, add3(a, scale3(way, share))));
}

/** Distance from a place to a line through places, in space, mm; Infinity from a line without places. */
export function distanceToLine(p: Vec3, places: readonly Vec3[], closed: boolean): number {
  if (places.length === 1) return length3(sub3(p, places[0]));
  let least = Infinity;
  for (let i = closed ? 0 : 1; i < places.length; i += 1)
    least = Math.min(least, distanceToPiece(p, places[(i + places.length - 1) % places.length], places[i]));
  return least;
}
