import { cutOfSide, heightsOver, sectionWalks, type Bridge } from '../../mesh/lines/section-walk.ts';
import type { Plane, Surface } from '../../mesh/surface.ts';

/** One closed line of a section. */
export interface SectionLoop {
  /** x y z per corner, mm, without a repeated last point. */
  readonly points: Float64Array;
  /** Where the line leaves the surface after a corner and bridges an opening to the next one; ascending. */
  readonly bridges: readonly Bridge[];
}

/**
 * Cuts a surface by a plane. A vertex in the plane counts as above it, so that no line tears or branches. At an open side the line goes on
 * along the rim above the plane to where that comes down through it again: as if the opening were filled, which is what a tape does.
 * @returns loops in the order of their first triangle; none where the plane misses the surface.
 */
export function planeSection(surface: Surface, plane: Plane): readonly SectionLoop[] {
  const heights = heightsOver(surface.positions, plane);
  return sectionWalks(surface, heights).map(({ halfedges, bridges }) => {
    const points: number[] = [];
    for (const h of halfedges) pushCut(points, surface, heights, h);
    return withoutRepeats(points, bridges);
  });
}

/** Adds the point where a half-edge goes through the plane. */
function pushCut(points: number[], { positions, triangles }: Surface, heights: Float64Array, h: number): void {
  const { low, high, share } = cutOfSide(triangles, heights, h);
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
