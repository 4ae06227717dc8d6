import { nextHalfedge } from '../../mesh/topology.ts';
import type { RestShape } from './rest-shape.ts';

/** Edge lengths that agree to this share of the patch's size are exact to rounding over a long strip. */
const EXACT_SHARE = 1e-9;

/**
 * Rolls the patch out triangle by triangle. Where the surface is developable (a strip without inner vertices always is) every edge keeps
 * its length and this is the answer to rounding; elsewhere the mismatch shows at once.
 * @param twin  half-edge across inside the patch, or -1.
 * @returns flat coordinates and whether every edge kept its length; null where a triangle is empty.
 */
export function unfold(shape: RestShape, twin: Int32Array): { flat: Float64Array; exact: boolean } | null {
  const { triangles, points, areas, vertexCount } = shape;
  if (areas.some((area) => area === 0)) return null;
  const flat = new Float64Array(2 * vertexCount);
  const placed = new Uint8Array(vertexCount);
  const seen = new Uint8Array(areas.length);
  placeFirst(triangles, points, flat, placed);
  seen[0] = 1;
  // Breadth first, so that rounding runs along the shortest way from the first triangle.
  const queue = [0, 1, 2];
  for (let at = 0; at < queue.length; at += 1) {
    const across = twin[queue[at]];
    if (across < 0) continue;
    const t = Math.floor(across / 3);
    if (seen[t] === 1) continue;
    seen[t] = 1;
    const apex = triangles[nextHalfedge(nextHalfedge(across))];
    if (placed[apex] === 0) {
      placeOver(points, flat, triangles[across], triangles[nextHalfedge(across)], apex);
      placed[apex] = 1;
    }
    queue.push(3 * t, 3 * t + 1, 3 * t + 2);
  }
  return { flat, exact: keepsLengths(shape, flat) };
}

function placeFirst(triangles: Uint32Array, points: Float64Array, flat: Float64Array, placed: Uint8Array): void {
  const [a, b, c] = triangles;
  flat[2 * b] = length3(points, a, b);
  placeOver(points, flat, a, b, c);
  for (const v of [a, b, c]) placed[v] = 1;
}

/** Lays vertex `k` to the left of the flat edge from `i` to `j`, at its distances in space. */
function placeOver(points: Float64Array, flat: Float64Array, i: number, j: number, k: number): void {
  const e = [0, 1, 2].map((axis) => points[3 * j + axis] - points[3 * i + axis]);
  const d = [0, 1, 2].map((axis) => points[3 * k + axis] - points[3 * i + axis]);
  const base = Math.hypot(e[0], e[1], e[2]);
  const along = (e[0] * d[0] + e[1] * d[1] + e[2] * d[2]) / base;
  const height = Math.hypot(e[1] * d[2] - e[2] * d[1], e[2] * d[0] - e[0] * d[2], e[0] * d[1] - e[1] * d[0]) / base;
  const fx = flat[2 * j] - flat[2 * i];
  const fy = flat[2 * j + 1] - flat[2 * i + 1];
  const length = Math.hypot(fx, fy);
  flat[2 * k] = flat[2 * i] + (along * fx - height * fy) / length;
  flat[2 * k + 1] = flat[2 * i + 1] + (along * fy + height * fx) / length;
}

function keepsLengths({ triangles, points }: RestShape, flat: Float64Array): boolean {
  let size = 0;
  for (let h = 0; h < triangles.length; h += 1)
    size = Math.max(size, Math.abs(flat[2 * triangles[h]]), Math.abs(flat[2 * triangles[h] + 1]));
  for (let h = 0; h < triangles.length; h += 1) {
    const [v, w] = [triangles[h], triangles[nextHalfedge(h)]];
    const flatLength = Math.hypot(flat[2 * w] - flat[2 * v], flat[2 * w + 1] - flat[2 * v + 1]);
    if (!(Math.abs(flatLength - length3(points, v, w)) <= EXACT_SHARE * size)) return false;
  }
  return true;
}

function length3(points: Float64Array, v: number, w: number): number {
  return Math.hypot(
    points[3 * w] - points[3 * v],
    points[3 * w + 1] - points[3 * v + 1],
    points[3 * w + 2] - points[3 * v + 2],
  );
}
