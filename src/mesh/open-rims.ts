import { nextOnRim } from './lines/section-walk.ts';
import type { Topology } from './topology.ts';

/** Vertices of every loop of open half-edges, in the order in which the surface has them on its left; from the loop's first half-edge on. */
export function openRims(triangles: ArrayLike<number>, topology: Topology): readonly (readonly number[])[] {
  const seen = new Uint8Array(triangles.length);
  const rims: number[][] = [];
  for (let first = 0; first < triangles.length; first += 1) {
    if (seen[first] === 1 || topology.twin[first] >= 0) continue;
    const rim: number[] = [];
    for (let h = first; seen[h] === 0; h = nextOnRim(topology, h)) {
      seen[h] = 1;
      rim.push(triangles[h]);
    }
    rims.push(rim);
  }
  return rims;
}
