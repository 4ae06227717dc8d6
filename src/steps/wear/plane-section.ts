import { unit3, type Vec3 } from '../../geom/vec.ts';
import { nextHalfedge, triangleOfHalfedge, type Topology } from '../../mesh/topology.ts';

/** A plane in space: a point of it, mm, and a direction square to it, any length but 0. */
export interface Plane {
  readonly point: Vec3;
  readonly normal: Vec3;
}

/** A surface of triangles with who touches whom; positions may be those of any surface of the foam. */
export interface Surface {
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
  readonly topology: Topology;
}

/** A stretch of a section that bridges an opening: the corner it leaves from, and a vertex of the rim it crosses. */
export interface Bridge {
  readonly after: number;
  readonly rimVertex: number;
}

/** One closed line of a section. */
export interface SectionLoop {
  /** x y z per corner, mm, without a repeated last point. */
  readonly points: Float64Array;
  /** Where the line leaves the surface after a corner and bridges an opening to the next one; ascending. */
  readonly bridges: readonly Bridge[];
}

/**
 * Cuts a surface by a plane.
 *
 * Every vertex is on one side of the plane, a vertex in the plane on the upper one, so each triangle that is cut has exactly one side
 * running up through the plane and one running down. Lines are joined by going from triangle to triangle through these sides: a line can
 * neither tear nor branch, whatever the rounding, through vertices, along edges and over triangles that lie in the plane (the section is
 * then the border of what lies under it). The cut of a side is worked out from its lower-numbered vertex, so both triangles beside it get
 * one point. At an open side the line goes on along the rim above the plane to where that comes down through it again: as if the opening
 * were filled, which is what a tape does.
 * @returns loops in the order of their first triangle; none where the plane misses the surface.
 */
export function planeSection(surface: Surface, plane: Plane): readonly SectionLoop[] {
  const { positions, triangles, topology } = surface;
  const heights = heightsOver(positions, plane);
  const isUp = Uint8Array.from(heights, (height) => (height >= 0 ? 1 : 0));
  const crosses = (h: number): boolean => isUp[triangles[h]] !== isUp[triangles[nextHalfedge(h)]];
  const seen = new Uint8Array(triangles.length / 3);
  const loops: SectionLoop[] = [];
  for (let t = 0; t < seen.length; t += 1) {
    const [a, b, c] = [isUp[triangles[3 * t]], isUp[triangles[3 * t + 1]], isUp[triangles[3 * t + 2]]];
    if (seen[t] === 1 || (a === b && b === c)) continue;
    // The side that runs down: from a corner above to the next, below.
    const first = 3 * t + (a > b ? 0 : b > c ? 1 : 2);
    const points: number[] = [];
    const bridges: Bridge[] = [];
    for (let down = first; seen[triangleOfHalfedge(down)] === 0;) {
      seen[triangleOfHalfedge(down)] = 1;
      pushCut(points, surface, heights, down);
      const up = [nextHalfedge(down), nextHalfedge(nextHalfedge(down))].find(crosses);
      if (up === undefined) throw new Error('plane section: a triangle is cut once');
      const across = topology.twin[up];
      if (across >= 0) down = across;
      else {
        pushCut(points, surface, heights, up);
        bridges.push({ after: points.length / 3 - 1, rimVertex: triangles[up] });
        down = alongRim(surface, up, (h) => crosses(h));
      }
    }
    loops.push(withoutRepeats(points, bridges));
  }
  return loops;
}

/** Height of each vertex over the plane, mm. For a plane square to an axis the sign is exact: one subtraction. */
function heightsOver(positions: Float64Array, plane: Plane): Float64Array {
  const { x: nx, y: ny, z: nz } = unit3(plane.normal);
  const { x, y, z } = plane.point;
  const heights = new Float64Array(positions.length / 3);
  for (let v = 0; v < heights.length; v += 1)
    heights[v] = nx * (positions[3 * v] - x) + ny * (positions[3 * v + 1] - y) + nz * (positions[3 * v + 2] - z);
  return heights;
}

/** From an open half-edge forward along the rim to the next one that is wanted. */
function alongRim({ topology }: Surface, from: number, isWanted: (h: number) => boolean): number {
  for (let h = nextOnRim(topology, from); ; h = nextOnRim(topology, h)) if (isWanted(h)) return h;
}

/** The open half-edge that goes on where an open half-edge ends, round the same fan. */
export function nextOnRim({ twin }: Topology, h: number): number {
  let next = nextHalfedge(h);
  while (twin[next] >= 0) next = nextHalfedge(twin[next]);
  return next;
}

/** Adds the point where a half-edge goes through the plane. */
function pushCut(points: number[], { positions, triangles }: Surface, heights: Float64Array, h: number): void {
  const [a, b] = [triangles[h], triangles[nextHalfedge(h)]];
  const [low, high] = a < b ? [a, b] : [b, a];
  const share = heights[low] / (heights[low] - heights[high]);
  for (let axis = 0; axis < 3; axis += 1) {
    const [p, q] = [positions[3 * low + axis], positions[3 * high + axis]];
    points.push(share === 1 ? q : p + share * (q - p));
  }
}

/** A line through a vertex comes by it in each triangle round it: told once. */
function withoutRepeats(points: readonly number[], bridges: readonly Bridge[]): SectionLoop {
  const kept: number[] = [];
  const moved: Bridge[] = [];
  const rimAfter = new Map(bridges.map(({ after, rimVertex }) => [after, rimVertex]));
  for (let i = 0; i < points.length; i += 3) {
    const last = kept.length - 3;
    const isSame = last >= 0 && [0, 1, 2].every((axis) => points[i + axis] === kept[last + axis]);
    if (!isSame) kept.push(points[i], points[i + 1], points[i + 2]);
    const rimVertex = rimAfter.get(i / 3);
    if (rimVertex !== undefined) moved.push({ after: kept.length / 3 - 1, rimVertex });
  }
  const end = kept.length - 3;
  if (!(end > 0 && [0, 1, 2].every((axis) => kept[axis] === kept[end + axis])))
    return { points: Float64Array.from(kept), bridges: moved };
  return {
    points: Float64Array.from(kept.slice(0, end)),
    bridges: moved.filter(({ after }) => after < end / 3),
  };
}
