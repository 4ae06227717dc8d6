import type { Patch } from '../../model/patch.ts';
import { carryOver } from '../../steps/flatten/carry-over.ts';
import { hasFlip } from '../../steps/flatten/flips.ts';

interface Earlier {
  readonly patch: Patch;
  readonly uv: Float64Array | null;
}

/**
 * A shape without a flip to begin from, out of pieces that shared triangles with this one: each vertex between its old places. What closes
 * or joins may be turned over by that, and is then carried over with care.
 * @returns null where nothing serves: begin from nothing.
 */
export function shapeFromEarlier(
  patch: Patch,
  positions: Float64Array,
  earlier: readonly Earlier[],
): Float64Array | null {
  const lying = earlier.flatMap(({ patch: old, uv }) => (uv === null ? [] : [{ patch: old, uv }]));
  const whole = lying.find((old) => holdsAll(old.patch.meshTriangles, patch.meshTriangles));
  if (whole !== undefined) {
    const between = placesBetween(patch, whole.patch, whole.uv);
    if (!hasFlip(patch.triangles, between)) return between;
  }
  const near = lying.filter((old) => sharesOne(old.patch.meshTriangles, patch.meshTriangles));
  return near.length === 0 ? null : carryOver(patch, positions, near);
}

/** Both lists ascend. */
function holdsAll(old: Uint32Array, mine: Uint32Array): boolean {
  if (old.length < mine.length) return false;
  let i = 0;
  for (const t of mine) {
    while (i < old.length && old[i] < t) i += 1;
    if (i === old.length || old[i] !== t) return false;
  }
  return true;
}

function sharesOne(old: Uint32Array, mine: Uint32Array): boolean {
  for (let i = 0, j = 0; i < old.length && j < mine.length;) {
    if (old[i] === mine[j]) return true;
    if (old[i] < mine[j]) i += 1;
    else j += 1;
  }
  return false;
}

function placesBetween(patch: Patch, old: Patch, uv: Float64Array): Float64Array {
  const flat = new Float64Array(2 * patch.meshVertices.length);
  const times = new Uint32Array(patch.meshVertices.length);
  let i = 0;
  patch.meshTriangles.forEach((t, own) => {
    while (old.meshTriangles[i] < t) i += 1;
    for (let k = 0; k < 3; k += 1) {
      const to = patch.triangles[3 * own + k];
      const from = old.triangles[3 * i + k];
      flat[2 * to] += uv[2 * from];
      flat[2 * to + 1] += uv[2 * from + 1];
      times[to] += 1;
    }
  });
  for (let v = 0; v < times.length; v += 1) {
    flat[2 * v] /= times[v];
    flat[2 * v + 1] /= times[v];
  }
  return flat;
}
