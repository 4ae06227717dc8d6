import type { Work } from '../base/work.ts';
import { CornerSurface } from './corner-surface.ts';
import type { SculptIndex } from './sculpt-index.ts';
import { shadingGroups, triangleNormals, type ShadingGroups } from './shading-groups.ts';

/** Shading of the whole sculpt, found once for each sculpt. */
export function sculptGroups(
  positions: Float32Array,
  triangles: Uint32Array,
  index: SculptIndex,
  work: Work,
): Promise<ShadingGroups> {
  return shadingGroups(positions, triangles, index.around, null, work);
}

/**
 * The sculpt as a surface to draw.
 * @param points packed xyz per vertex, mm of the scene.
 */
export async function buildForm(
  points: Float32Array,
  triangles: Uint32Array,
  groups: ShadingGroups,
  work: Work,
): Promise<CornerSurface> {
  const surface = new CornerSurface(triangles.length);
  const flat = await triangleNormals(points, triangles, work);
  const sums = new Float32Array(3 * groups.count);
  for (let c = 0; c < triangles.length; c += 1) {
    if (c % 12288 === 0) await work.pause(0);
    const t = c - (c % 3);
    const g = 3 * groups.groupOfCorner[c];
    for (let k = 0; k < 3; k += 1) sums[g + k] += flat[t + k];
  }
  for (let c = 0; c < triangles.length; c += 1) {
    if (c % 12288 === 0) await work.pause(0);
    const g = 3 * groups.groupOfCorner[c];
    const length = Math.hypot(sums[g], sums[g + 1], sums[g + 2]) || 1;
    for (let k = 0; k < 3; k += 1) {
      surface.positions[3 * c + k] = points[3 * triangles[c] + k];
      surface.normals[3 * c + k] = sums[g + k] / length;
    }
  }
  return surface;
}
