import { cross3, dot3, pointAt3, sub3, unit3, type Vec3 } from '../../geom/vec.ts';
import type { TightestPlace } from '../../model/clearance.ts';
import { frameOf } from './tape.ts';

/** A rod in space: middle of its axis, direction of any length but 0, outside radius and length, mm; the length may be Infinity. */
export interface Rod {
  readonly point: Vec3;
  readonly direction: Vec3;
  readonly radiusMm: number;
  readonly lengthMm: number;
}

export interface RodClearance {
  readonly tightest: TightestPlace | null;
  /** Per vertex, mm; NaN beyond the ends of the rod. */
  readonly atVertices: Float32Array;
  /** How often the axis runs through the surface within the rod's length. */
  readonly pierced: number;
}

/**
 * How far a surface keeps from the side of a rod: distance from its axis less its radius, over its length. Beyond its ends nothing is in
 * its way. Exact: each triangle is cut off at the ends and looked at along the axis, where the axis is a point and the nearest place of
 * a flat polygon to a point lies inside it, on a side or at a corner.
 */
export function rodClearance(positions: Float64Array, triangles: Uint32Array, rod: Rod): RodClearance {
  const axis = unit3(rod.direction);
  const frame = frameOf({ point: rod.point, normal: axis });
  const half = rod.lengthMm / 2;
  const count = positions.length / 3;
  const local = new Float64Array(3 * count);
  const atVertices = new Float32Array(count);
  for (let v = 0; v < count; v += 1) {
    const d = sub3(pointAt3(positions, v), rod.point);
    const [x, y, along] = [dot3(d, frame.u), dot3(d, frame.v), dot3(d, axis)];
    local.set([x, y, along], 3 * v);
    atVertices[v] = Math.abs(along) <= half ? Math.hypot(x, y) - rod.radiusMm : NaN;
  }
  let nearest = { distance: Infinity, x: 0, y: 0, along: 0, triangle: -1 };
  let pierced = 0;
  for (let t = 0; t < triangles.length / 3; t += 1) {
    if (cannotBeNearer(local, triangles, t, nearest.distance, half)) continue;
    const corners = [0, 1, 2].map((k) => pointAt3(local, triangles[3 * t + k]));
    const part = cutOff(cutOff(corners, half, 1), half, -1);
    if (part.length === 0) continue;
    const place = nearestToAxis(part);
    if (place.isPierced) pierced += 1;
    if (place.distance < nearest.distance) nearest = { ...place, triangle: t };
  }
  if (nearest.triangle < 0) return { tightest: null, atVertices, pierced };
  const { x, y, along, triangle } = nearest;
  const at = (key: 'x' | 'y' | 'z'): number => rod.point[key] + x * frame.u[key] + y * frame.v[key] + along * axis[key];
  return {
    tightest: {
      clearanceMm: nearest.distance - rod.radiusMm,
      point: { x: at('x'), y: at('y'), z: at('z') },
      triangle,
    },
    atVertices,
    pierced,
  };
}

/** Whether a triangle lies beyond one end, or its first corner farther off than its longest side can bring it. A pierced one never does. */
function cannotBeNearer(
  local: Float64Array,
  triangles: Uint32Array,
  t: number,
  nearest: number,
  half: number,
): boolean {
  const [a, b, c] = [3 * triangles[3 * t], 3 * triangles[3 * t + 1], 3 * triangles[3 * t + 2]];
  const [za, zb, zc] = [local[a + 2], local[b + 2], local[c + 2]];
  if ((za > half && zb > half && zc > half) || (za < -half && zb < -half && zc < -half)) return true;
  const [x, y] = [local[a], local[a + 1]];
  const reach = Math.max(Math.hypot(local[b] - x, local[b + 1] - y), Math.hypot(local[c] - x, local[c + 1] - y));
  return Math.hypot(x, y) - reach > nearest;
}

/** What of a convex polygon lies at `sign * z <= limit`. */
function cutOff(polygon: readonly Vec3[], limit: number, sign: 1 | -1): readonly Vec3[] {
  if (polygon.every((p) => sign * p.z <= limit)) return polygon;
  const kept: Vec3[] = [];
  polygon.forEach((p, i) => {
    const q = polygon[(i + 1) % polygon.length];
    const [a, b] = [sign * p.z - limit, sign * q.z - limit];
    if (a <= 0) kept.push(p);
    if (a <= 0 !== b <= 0) {
      const share = a / (a - b);
      kept.push({ x: p.x + share * (q.x - p.x), y: p.y + share * (q.y - p.y), z: sign * limit });
    }
  });
  return kept;
}

/** The place of a flat convex polygon nearest to the line x = y = 0. */
function nearestToAxis(polygon: readonly Vec3[]) {
  let best = { distance: Infinity, x: 0, y: 0, along: 0, isPierced: false };
  let turns = 0;
  polygon.forEach((p, i) => {
    const q = polygon[(i + 1) % polygon.length];
    const cross = p.x * q.y - p.y * q.x;
    turns += Math.sign(cross);
    const [dx, dy] = [q.x - p.x, q.y - p.y];
    const square = dx * dx + dy * dy;
    const share = square > 0 ? Math.min(1, Math.max(0, -(p.x * dx + p.y * dy) / square)) : 0;
    const [x, y] = [p.x + share * dx, p.y + share * dy];
    const distance = Math.hypot(x, y);
    if (distance < best.distance) best = { distance, x, y, along: p.z + share * (q.z - p.z), isPierced: false };
  });
  if (Math.abs(turns) < polygon.length) return best;
  // The axis goes through: where, its plane says.
  const normal = normalOf(polygon);
  const along = normal.z === 0 ? best.along : dot3(normal, polygon[0]) / normal.z;
  return { distance: 0, x: 0, y: 0, along, isPierced: true };
}

function normalOf(polygon: readonly Vec3[]): Vec3 {
  let sum: Vec3 = { x: 0, y: 0, z: 0 };
  for (let i = 1; i + 1 < polygon.length; i += 1) {
    const turn = cross3(sub3(polygon[i], polygon[0]), sub3(polygon[i + 1], polygon[0]));
    sum = { x: sum.x + turn.x, y: sum.y + turn.y, z: sum.z + turn.z };
  }
  return sum;
}
