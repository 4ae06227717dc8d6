import type { Patch } from '../../model/patch.ts';

const known = new WeakMap<Patch, ReadonlyMap<number, number>>();

/** The third corner of the triangle inside each border edge of a patch, remembered. Ask by {@link borderKey}. */
export function borderTips(patch: Patch): ReadonlyMap<number, number> {
  let tips = known.get(patch);
  if (tips === undefined) known.set(patch, (tips = findTips(patch)));
  return tips;
}

/** The border edge from local vertex `v` to `w`, the patch on its left. */
export const borderKey = (patch: Patch, v: number, w: number): number => v * patch.meshVertices.length + w;

function findTips(patch: Patch): ReadonlyMap<number, number> {
  const { triangles, loops } = patch;
  const tips = new Map<number, number>();
  for (const loop of loops) loop.forEach((v, i) => tips.set(borderKey(patch, v, loop[(i + 1) % loop.length]), -1));
  for (let h = 0; h < triangles.length; h += 1) {
    const first = h - (h % 3);
    const key = borderKey(patch, triangles[h], triangles[first + ((h + 1) % 3)]);
    if (tips.has(key)) tips.set(key, triangles[first + ((h + 2) % 3)]);
  }
  return tips;
}
