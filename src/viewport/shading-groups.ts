import type { Work } from '../base/work.ts';
import { cornerAfter, cornerBefore, type CornersAtVertices } from '../mesh/corners-at-vertices.ts';

/** Folds sharper than this are drawn as ridges, radians: 25 degrees shows panels as panels and round things of 16 sides as round. */
export const RIDGE_RAD = (25 * Math.PI) / 180;

/** Vertices with more corners than this (tips of fans) are shaded triangle by triangle. */
const MOST_CORNERS = 64;

/** Corners with one normal: round places share it, ridges and borders of pieces do not. */
export interface ShadingGroups {
  readonly groupOfCorner: Uint32Array;
  readonly count: number;
}

/**
 * Gathers the corners at each vertex into groups that are shaded as one round surface: neighbours over an edge whose fold is less
 * than {@link RIDGE_RAD}, within one patch.
 * @param positions       packed xyz per vertex.
 * @param patchOfTriangle patch of each triangle, or null where all is one.
 */
export async function shadingGroups(
  positions: Float32Array,
  triangles: Uint32Array,
  around: CornersAtVertices,
  patchOfTriangle: Int32Array | null,
  work: Work,
): Promise<ShadingGroups> {
  const normals = await triangleNormals(positions, triangles, work);
  const groupOfCorner = new Uint32Array(triangles.length);
  const leastCos = Math.cos(RIDGE_RAD);
  const lead = new Int32Array(MOST_CORNERS);
  let count = 0;
  for (let v = 0; v + 1 < around.starts.length; v += 1) {
    if (v % 4096 === 0) await work.pause(0);
    const start = around.starts[v];
    const size = around.starts[v + 1] - start;
    if (size > MOST_CORNERS) {
      for (let i = 0; i < size; i += 1) groupOfCorner[around.corners[start + i]] = count++;
      continue;
    }
    for (let i = 0; i < size; i += 1) lead[i] = i;
    for (let i = 1; i < size; i += 1) {
      const c = around.corners[start + i];
      for (let j = 0; j < i; j += 1) {
        const d = around.corners[start + j];
        if (!areRound(triangles, normals, patchOfTriangle, c, d, leastCos)) continue;
        const [a, b] = [leaderOf(lead, i), leaderOf(lead, j)];
        lead[Math.max(a, b)] = Math.min(a, b);
      }
    }
    for (let i = 0; i < size; i += 1) {
      const leader = leaderOf(lead, i);
      groupOfCorner[around.corners[start + i]] = leader === i ? count++ : groupOfCorner[around.corners[start + leader]];
    }
  }
  return { groupOfCorner, count };
}

/** Two corners of one vertex whose triangles share an edge there and bend gently across it. */
function areRound(
  triangles: Uint32Array,
  normals: Float32Array,
  patchOfTriangle: Int32Array | null,
  c: number,
  d: number,
  leastCos: number,
): boolean {
  const touches =
    triangles[cornerAfter(c)] === triangles[cornerBefore(d)] ||
    triangles[cornerBefore(c)] === triangles[cornerAfter(d)];
  if (!touches) return false;
  const [s, t] = [Math.floor(c / 3), Math.floor(d / 3)];
  if (patchOfTriangle !== null && patchOfTriangle[s] !== patchOfTriangle[t]) return false;
  const dot =
    normals[3 * s] * normals[3 * t] + normals[3 * s + 1] * normals[3 * t + 1] + normals[3 * s + 2] * normals[3 * t + 2];
  return dot > leastCos;
}

function leaderOf(lead: Int32Array, item: number): number {
  while (lead[item] !== item) item = lead[item];
  return item;
}

/** Unit normals, packed; zero for an empty triangle. */
export async function triangleNormals(
  positions: Float32Array,
  triangles: Uint32Array,
  work: Work,
): Promise<Float32Array> {
  const normals = new Float32Array(triangles.length);
  for (let i = 0; i < triangles.length; i += 3) {
    if (i % 12288 === 0) await work.pause(0);
    const [a, b, c] = [3 * triangles[i], 3 * triangles[i + 1], 3 * triangles[i + 2]];
    const ux = positions[b] - positions[a];
    const uy = positions[b + 1] - positions[a + 1];
    const uz = positions[b + 2] - positions[a + 2];
    const vx = positions[c] - positions[a];
    const vy = positions[c + 1] - positions[a + 1];
    const vz = positions[c + 2] - positions[a + 2];
    const x = uy * vz - uz * vy;
    const y = uz * vx - ux * vz;
    const z = ux * vy - uy * vx;
    const length = Math.sqrt(x * x + y * y + z * z) || 1;
    normals[i] = x / length;
    normals[i + 1] = y / length;
    normals[i + 2] = z / length;
  }
  return normals;
}
