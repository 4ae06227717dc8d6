import type { Patch } from '../../model/patch.ts';

/**
 * The triangles of a patch with their true size, each laid in a plane of its own, the longest side along x:
 *
 *            c2
 *           /  \   height        c0 = (0, 0)   c1 = (base, 0)   c2 = (foot, height)
 *         c0----c1
 *          base
 *
 * A triangle thinner than {@link LEAST_HEIGHT_SHARE} keeps its sides but stands that high here: an empty one has no side to be on, and
 * the flat piece must still give it one.
 */
export interface RestShapes {
  readonly vertexCount: number;
  readonly count: number;
  /** x y z per local vertex, mm. */
  readonly points: Float64Array;
  /** Local vertices c0 c1 c2 per triangle, counter-clockwise. */
  readonly corners: Uint32Array;
  readonly base: Float64Array;
  readonly foot: Float64Array;
  readonly height: Float64Array;
  /** True area of each triangle on the surface, mm², and of all together. */
  readonly area: Float64Array;
  readonly totalArea: number;
  /** Share of each triangle in the energy; the shares add up to about 1. */
  readonly weight: Float64Array;
  /** 1 for a triangle without area, or opened as above: it is kept from flipping but nothing is measured on it. */
  readonly empty: Uint8Array;
}

/** Least height of a triangle over its longest side, as a share of that side. */
export const LEAST_HEIGHT_SHARE = 1e-6;

/**
 * @param positions x y z of the whole mesh's vertices on the surface to be laid flat, mm.
 * @param own       x y z of the three corners of each triangle, where these and not the surface give its size.
 */
export function restShapes(patch: Patch, positions: Float64Array, own?: Float64Array): RestShapes {
  const vertexCount = patch.meshVertices.length;
  const points = new Float64Array(3 * vertexCount);
  for (let v = 0; v < vertexCount; v += 1) {
    const from = 3 * patch.meshVertices[v];
    points[3 * v] = positions[from];
    points[3 * v + 1] = positions[from + 1];
    points[3 * v + 2] = positions[from + 2];
  }
  const count = patch.triangles.length / 3;
  const corners = new Uint32Array(3 * count);
  const base = new Float64Array(count);
  const foot = new Float64Array(count);
  const height = new Float64Array(count);
  const area = new Float64Array(count);
  const empty = new Uint8Array(count);
  const sized = own ?? points;
  // Where each corner of the triangle in hand stands in them.
  const places: [number, number, number] = [0, 0, 0];
  let totalArea = 0;
  let longest = 0;
  for (let t = 0; t < count; t += 1) {
    if (own === undefined) for (let k = 0; k < 3; k += 1) places[k] = 3 * patch.triangles[3 * t + k];
    else for (let k = 0; k < 3; k += 1) places[k] = 9 * t + 3 * k;
    const first = longestSide(sized, places);
    const v = patch.triangles[3 * t + first];
    const w = patch.triangles[3 * t + ((first + 1) % 3)];
    const u = patch.triangles[3 * t + ((first + 2) % 3)];
    corners[3 * t] = v;
    corners[3 * t + 1] = w;
    corners[3 * t + 2] = u;
    const a = places[first];
    const b = places[(first + 1) % 3];
    const c = places[(first + 2) % 3];
    const px = sized[b] - sized[a];
    const py = sized[b + 1] - sized[a + 1];
    const pz = sized[b + 2] - sized[a + 2];
    const qx = sized[c] - sized[a];
    const qy = sized[c + 1] - sized[a + 1];
    const qz = sized[c + 2] - sized[a + 2];
    const side = Math.sqrt(px * px + py * py + pz * pz);
    const nx = py * qz - pz * qy;
    const ny = pz * qx - px * qz;
    const nz = px * qy - py * qx;
    const twice = Math.sqrt(nx * nx + ny * ny + nz * nz);
    base[t] = side;
    foot[t] = side > 0 ? (px * qx + py * qy + pz * qz) / side : 0;
    height[t] = side > 0 ? twice / side : 0;
    area[t] = twice / 2;
    empty[t] = twice <= LEAST_HEIGHT_SHARE * side * side ? 1 : 0;
    totalArea += area[t];
    longest = Math.max(longest, side);
  }
  const weight = new Float64Array(count);
  for (let t = 0; t < count; t += 1) {
    if (base[t] < LEAST_HEIGHT_SHARE * longest) {
      base[t] = LEAST_HEIGHT_SHARE * longest;
      foot[t] = base[t] / 2;
      empty[t] = 1;
    }
    height[t] = Math.max(height[t], LEAST_HEIGHT_SHARE * base[t]);
    weight[t] = (base[t] * height[t]) / 2 / totalArea;
  }
  return { vertexCount, count, points, corners, base, foot, height, area, totalArea, weight, empty };
}

/** Index of the corner from which the longest side runs; the first of equals. */
function longestSide(points: Float64Array, places: readonly [number, number, number]): number {
  let first = 0;
  let most = -1;
  for (let k = 0; k < 3; k += 1) {
    const a = places[k];
    const b = places[(k + 1) % 3];
    const x = points[b] - points[a];
    const y = points[b + 1] - points[a + 1];
    const z = points[b + 2] - points[a + 2];
    const square = x * x + y * y + z * z;
    if (square > most) {
      most = square;
      first = k;
    }
  }
  return first;
}
