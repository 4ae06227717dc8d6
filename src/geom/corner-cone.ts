import { cross3, dot3, length3, scale3, sub3, unit3, type Vec3 } from './vec.ts';

/**
 * Where one of the planes round a corner belongs to it alone, when all of them move away from the corner by the same distance: the part of its
 * moved plane that no other has passed. Distances are along the outward normals; places are seen from the corner.
 */
export interface CornerShare {
  /** Where the moved plane meets its two neighbours', for a distance of 1 outward; of -1 inward it is the opposite. */
  readonly mitre: Vec3;
  /** Corners of its part for a distance of 1 inward, from the edge with the plane before it to that with the next; one, where all planes meet. */
  readonly inner: readonly Vec3[];
  /** The same for 1 outward. */
  readonly outer: readonly Vec3[];
}

/** Corners nearer than this are one, in distances. */
const SAME_PLACE = 1e-9;

/** Planes that turn by less than this from each other do not part, sine. */
const LEAST_TURN = 1e-6;

/** A corner no farther out than this many distances is kept: beyond are spikes, which are blunted elsewhere. */
const LONGEST = 8;

/**
 * Parts the planes round a corner among themselves. The moved surface is the upper one of the moved planes at a convex corner, the lower one at
 * a concave corner, so that each owns the cone `(n_i - n_j) . x >= 0` (or `<= 0`) of all its rivals `j`, cut at its distance.
 * @param normals   of the planes in their order round the corner, counter-clockwise from outside, length 1; at least three.
 * @param isConvex  true where every edge at the corner is convex, false where every one is concave.
 * @returns null where a plane lies in the run of its neighbours or a corner runs out too far.
 */
export function cornerShares(normals: readonly Vec3[], isConvex: boolean): readonly CornerShare[] | null {
  const shares: CornerShare[] = [];
  for (const i of normals.keys()) {
    const mitre = meetingOf(
      normals[i],
      normals[(i + normals.length - 1) % normals.length],
      normals[(i + 1) % normals.length],
    );
    if (mitre === null || length3(mitre) > LONGEST) return null;
    const [inner, outer] = [partOf(normals, i, -1, isConvex), partOf(normals, i, 1, isConvex)];
    if (inner === null || outer === null) return null;
    shares.push({ mitre, inner, outer });
  }
  return shares;
}

/** The point at distance 1 along all three normals. */
function meetingOf(a: Vec3, b: Vec3, c: Vec3): Vec3 | null {
  const [bc, ca, ab] = [cross3(b, c), cross3(c, a), cross3(a, b)];
  const det = dot3(a, bc);
  if (Math.abs(det) < LEAST_TURN) return null;
  return scale3({ x: bc.x + ca.x + ab.x, y: bc.y + ca.y + ab.y, z: bc.z + ca.z + ab.z }, 1 / det);
}

/** Corners of plane `i`'s part at distance `level`, in order. */
function partOf(normals: readonly Vec3[], i: number, level: 1 | -1, isConvex: boolean): readonly Vec3[] | null {
  const own = normals[i];
  const rivals = normals.filter((_, j) => j !== i);
  const sign = isConvex ? 1 : -1;
  /** How far a place is on the plane's own side of a rival, in distances. */
  const inside = (x: Vec3, rival: Vec3): number => sign * dot3(sub3(own, rival), x);
  const found: Vec3[] = [];
  for (let j = 0; j < rivals.length; j += 1) {
    for (let k = j + 1; k < rivals.length; k += 1) {
      const place = meetingOf(own, rivals[j], rivals[k]);
      if (place === null) continue;
      const x = scale3(place, level);
      if (length3(x) > LONGEST || rivals.some((rival) => inside(x, rival) < -SAME_PLACE)) continue;
      if (!found.some((other) => length3(sub3(other, x)) < SAME_PLACE)) found.push(x);
    }
  }
  if (found.length === 0) return null;
  const before = normals[(i + normals.length - 1) % normals.length];
  const next = normals[(i + 1) % normals.length];
  // Ways away from the corner along both edges; from one ray of the part to the other its corners go one after the other across.
  const away = sub3(unit3(scale3(cross3(next, own), sign)), unit3(scale3(cross3(own, before), sign)));
  return found.sort((a, b) => dot3(a, away) - dot3(b, away));
}
