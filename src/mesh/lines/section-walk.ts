import { unit3 } from '../../geom/vec.ts';
import type { Plane, Surface } from '../surface.ts';
import { nextHalfedge, triangleOfHalfedge, type Topology } from '../topology.ts';

/** A stretch of a walk that bridges an opening: the place it leaves from, and a vertex of the rim it crosses. */
export interface Bridge {
  /** Number in `halfedges` of the last place before the opening. */
  readonly after: number;
  readonly rimVertex: number;
}

/** One closed walk through the triangles that are cut. */
export interface SectionWalk {
  /** The sides it goes through in turn, as half-edges: where it comes into a triangle, and where it leaves one for an opening. */
  readonly halfedges: readonly number[];
  /** Where the walk leaves the surface after a place and bridges an opening to the next one; ascending. */
  readonly bridges: readonly Bridge[];
}

/**
 * The walks between what lies under 0 and what does not.
 *
 * Every vertex is on one side, a vertex at 0 on the upper one, so each triangle that is cut has exactly one side running up and one running
 * down. Walks go from triangle to triangle through these sides: they can neither tear nor branch, whatever the rounding, through vertices,
 * along edges and over triangles that lie at 0 (the walk is then the border of what lies under them). At an open side the walk goes on along
 * the rim above to where that comes down again: as if the opening were filled.
 * @param heights  one per vertex, for example over a plane.
 * @returns walks in the order of their first triangle, each with the lower part on its right seen from outside.
 */
export function sectionWalks({ triangles, topology }: Surface, heights: ArrayLike<number>): readonly SectionWalk[] {
  const isUp = Uint8Array.from(heights, (height) => (height >= 0 ? 1 : 0));
  const crosses = (h: number): boolean => isUp[triangles[h]] !== isUp[triangles[nextHalfedge(h)]];
  const seen = new Uint8Array(triangles.length / 3);
  const walks: SectionWalk[] = [];
  for (let t = 0; t < seen.length; t += 1) {
    const [a, b, c] = [isUp[triangles[3 * t]], isUp[triangles[3 * t + 1]], isUp[triangles[3 * t + 2]]];
    if (seen[t] === 1 || (a === b && b === c)) continue;
    // The side that runs down: from a corner above to the next, below.
    const first = 3 * t + (a > b ? 0 : b > c ? 1 : 2);
    const halfedges: number[] = [];
    const bridges: Bridge[] = [];
    for (let down = first; seen[triangleOfHalfedge(down)] === 0;) {
      seen[triangleOfHalfedge(down)] = 1;
      halfedges.push(down);
      const up = [nextHalfedge(down), nextHalfedge(nextHalfedge(down))].find(crosses);
      if (up === undefined) throw new Error('section: a triangle is cut once');
      const across = topology.twin[up];
      if (across >= 0) down = across;
      else {
        halfedges.push(up);
        bridges.push({ after: halfedges.length - 1, rimVertex: triangles[up] });
        down = up;
        do down = nextOnRim(topology, down);
        while (!crosses(down));
      }
    }
    walks.push({ halfedges, bridges });
  }
  return walks;
}

/** Height of each vertex over the plane, mm. For a plane square to an axis the sign is exact: one subtraction. */
export function heightsOver(positions: Float64Array, plane: Plane): Float64Array {
  const { x: nx, y: ny, z: nz } = unit3(plane.normal);
  const { x, y, z } = plane.point;
  const heights = new Float64Array(positions.length / 3);
  for (let v = 0; v < heights.length; v += 1)
    heights[v] = nx * (positions[3 * v] - x) + ny * (positions[3 * v + 1] - y) + nz * (positions[3 * v + 2] - z);
  return heights;
}

/** Where a side goes through 0: its vertices, the lower number first, and the share of the way from that one. Both triangles beside it agree. */
export function cutOfSide(
  triangles: Uint32Array,
  heights: ArrayLike<number>,
  h: number,
): { low: number; high: number; share: number } {
  const [a, b] = [triangles[h], triangles[nextHalfedge(h)]];
  const [low, high] = a < b ? [a, b] : [b, a];
  return { low, high, share: heights[low] / (heights[low] - heights[high]) };
}

/** The open half-edge that goes on where an open half-edge ends, round the same fan. */
export function nextOnRim({ twin }: Topology, h: number): number {
  let next = nextHalfedge(h);
  while (twin[next] >= 0) next = nextHalfedge(twin[next]);
  return next;
}
