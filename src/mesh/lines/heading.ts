import { cross3, dot3, pointAt3, sub3, unit3, type Vec2, type Vec3 } from '../../geom/vec.ts';
import { triangleNormal } from '../measure.ts';
import type { Surface } from '../surface.ts';
import { trianglesAt, weightsIn, type Weights } from './mesh-point.ts';
import type { MeshPoint } from './mesh-line.ts';
import { sideShapesOf } from './side-shapes.ts';

/**
 * A direction on the surface: in the plane of a triangle that is laid flat with its first side along x and its first corner at the origin.
 * `x`, `y` have length 1 together.
 */
export interface Heading extends Vec2 {
  readonly triangle: number;
}

/** The corners of triangle `t` laid flat as a heading sees it: x0 = y0 = y1 = 0. */
export function flatCorners(surface: Surface, t: number): readonly [Vec2, Vec2, Vec2] {
  const { length, foot, height } = sideShapesOf(surface);
  return [
    { x: 0, y: 0 },
    { x: length[3 * t], y: 0 },
    { x: foot[3 * t], y: height[3 * t] },
  ];
}

/** A heading as a direction in space, length 1. */
export function headingInSpace(surface: Surface, { triangle, x, y }: Heading): Vec3 {
  const [u, v] = axesOf(surface, triangle);
  return { x: x * u.x + y * v.x, y: x * u.y + y * v.y, z: x * u.z + y * v.z };
}

function axesOf({ positions, triangles }: Surface, t: number): [Vec3, Vec3] {
  const u = unit3(sub3(pointAt3(positions, triangles[3 * t + 1]), pointAt3(positions, triangles[3 * t])));
  return [u, cross3(triangleNormal(positions, triangles, t), u)];
}

/**
 * The heading at a point that a direction in space shows, seen square to the surface. On an edge or a corner it lies in that triangle whose
 * part of the round about the point holds it; a direction that falls between two of them, or off the surface at an open edge, takes the nearest side.
 * @returns null where the direction stands square to every triangle at the point, or shows off the surface with no side within a right angle.
 */
export function headingTowards(surface: Surface, at: MeshPoint, direction: Vec3): Heading | null {
  const { topology, triangles } = surface;
  let best: Heading | null = null;
  // In a triangle's part of the round, the most slanting wins; outside of it, what turns the direction least.
  let bestRank = -Infinity;
  const towards = unit3(direction);
  for (const t of trianglesAt(surface, at)) {
    const weights = weightsIn(topology, triangles, at, t);
    if (weights === null) continue;
    const [u, v] = axesOf(surface, t);
    const flat = { x: dot3(towards, u), y: dot3(towards, v) };
    const size = Math.hypot(flat.x, flat.y);
    const [low, high] = partOfRound(surface, t, weights);
    const isInside = low === null || high === null || isBetween(flat, low, high);
    if (isInside && size > LEAST_SLANT) {
      if (3 + size > bestRank) {
        bestRank = 3 + size;
        best = { triangle: t, x: flat.x / size, y: flat.y / size };
      }
      continue;
    }
    for (const side of isInside ? [] : [low, high]) {
      if (side === null) continue;
      const rank = side.x * flat.x + side.y * flat.y;
      if (rank > Math.max(bestRank, LEAST_SLANT)) {
        bestRank = rank;
        best = { triangle: t, ...side };
      }
    }
  }
  return best;
}

/** Share of a direction that must lie in the surface for it to show a way there: rounding of a direction square to it. */
const LEAST_SLANT = 1e-9;

/** The directions, length 1, between which the triangle's part of the round about a point lies, counter-clockwise; null inside it. */
function partOfRound(surface: Surface, t: number, weights: Weights): [Vec2 | null, Vec2 | null] {
  const corners = flatCorners(surface, t);
  const way = (from: number, to: number): Vec2 => {
    const [dx, dy] = [corners[to].x - corners[from].x, corners[to].y - corners[from].y];
    const size = Math.hypot(dx, dy);
    return size > 0 ? { x: dx / size, y: dy / size } : { x: 1, y: 0 };
  };
  const own = [0, 1, 2].filter((k) => weights[k] > 0);
  if (own.length === 3) return [null, null];
  if (own.length === 1) return [way(own[0], (own[0] + 1) % 3), way(own[0], (own[0] + 2) % 3)];
  // On the side across corner k, which runs from k + 1 to k + 2 with the triangle on its left.
  const k = [0, 1, 2].find((one) => weights[one] === 0) as number;
  const along = way((k + 1) % 3, (k + 2) % 3);
  return [along, { x: -along.x, y: -along.y }];
}

const isBetween = (d: Vec2, low: Vec2, high: Vec2): boolean =>
  low.x * d.y - low.y * d.x >= 0 && d.x * high.y - d.y * high.x >= 0;

/** The heading of the straight piece from one point to another in a triangle that holds both; null where they lie on one spot. */
export function headingBetween(surface: Surface, t: number, from: Weights, to: Weights): Heading | null {
  const corners = flatCorners(surface, t);
  const at = (w: Weights, axis: 'x' | 'y'): number =>
    w[0] * corners[0][axis] + w[1] * corners[1][axis] + w[2] * corners[2][axis];
  const [dx, dy] = [at(to, 'x') - at(from, 'x'), at(to, 'y') - at(from, 'y')];
  const size = Math.hypot(dx, dy);
  return size > 0 ? { triangle: t, x: dx / size, y: dy / size } : null;
}
