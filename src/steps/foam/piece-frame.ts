import { tightBox } from '../../geom/convex-hull.ts';
import type { Vec2 } from '../../geom/vec.ts';
import type { Patch } from '../../model/patch.ts';

/** The flat coordinates turned so that they read well on the bench. */
export interface PieceFrame {
  /** x y per local vertex, mm. */
  readonly uv: Float64Array;
  /** The sculpt's up: straight up the page, or null where the piece lies level. */
  readonly up: Vec2 | null;
}

/** A piece whose surface rises by less than this, mm per mm on the whole, lies level: about 9 degrees [J]. */
const LEVEL_RISE = 0.15;

/**
 * Turns a flat piece so that the sculpt's up runs up the page; a level piece, so that the long side of the tightest rectangle round it
 * runs along x. A pure turn about the origin.
 *
 * Up is the direction in which the surface rises on the whole: the height over the flat piece has one slope on each triangle, and the mean
 * of the slopes by area is taken. So a tube that stands upright has an up, a dome or a ring lying level has none.
 * @param uv        x y per local vertex, mm, seen from the face side.
 * @param positions x y z per vertex of the mesh: the surface that was laid flat, mm.
 */
export function turnUpright(
  patch: Patch,
  uv: Float64Array,
  positions: Float64Array,
  upAxis: 'x' | 'y' | 'z',
): PieceFrame {
  const rise = meanRise(patch, uv, positions, { x: 0, y: 1, z: 2 }[upAxis]);
  const steep = Math.hypot(rise.x, rise.y);
  if (steep >= LEVEL_RISE) {
    // The turn that takes (ux, uy) to (0, 1).
    const [ux, uy] = [rise.x / steep, rise.y / steep];
    return { uv: turned(uv, uy, -ux), up: { x: 0, y: 1 } };
  }
  const border = Array.from(patch.loops[0] ?? [], (v) => [uv[2 * v], uv[2 * v + 1]]).flat();
  const box = tightBox(border);
  return { uv: turned(uv, box.x, box.y), up: null };
}

/** Coordinates in axes whose x runs along (cx, cy). */
function turned(uv: Float64Array, cx: number, cy: number): Float64Array {
  return uv.map((_, i) => (i % 2 === 0 ? cx * uv[i] + cy * uv[i + 1] : cx * uv[i] - cy * uv[i - 1]));
}

function meanRise(patch: Patch, uv: Float64Array, positions: Float64Array, axis: number): Vec2 {
  let [sumX, sumY, area] = [0, 0, 0];
  for (let t = 0; t < patch.triangles.length; t += 3) {
    const [a, b, c] = patch.triangles.subarray(t, t + 3);
    const [x1, y1] = [uv[2 * b] - uv[2 * a], uv[2 * b + 1] - uv[2 * a + 1]];
    const [x2, y2] = [uv[2 * c] - uv[2 * a], uv[2 * c + 1] - uv[2 * a + 1]];
    const height = (v: number): number => positions[3 * patch.meshVertices[v] + axis];
    const [h1, h2] = [height(b) - height(a), height(c) - height(a)];
    // Twice the area times the slope: no division, so slivers do no harm.
    sumX += (h1 * y2 - h2 * y1) / 2;
    sumY += (h2 * x1 - h1 * x2) / 2;
    area += (x1 * y2 - x2 * y1) / 2;
  }
  return area > 0 ? { x: sumX / area, y: sumY / area } : { x: 0, y: 0 };
}
