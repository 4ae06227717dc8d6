import { Box3, Vector3 } from 'three';
import type { Area } from './bench-layout.ts';

/** So much of the sheets belongs in one picture with the sculpt: their depth and half their width, by its longest side. */
const DEPTH_SHARE = 0.75;
const REACH_SHARE = 0.8;

/**
 * What lies before the sculpt as far as it belongs in one picture with it: where its pieces are cut from.
 * @param sculpt  round what stands on the bench, scene, mm.
 * @param filled  where the first row of sheets is cut.
 * @returns empty where there are no sheets.
 */
export function settingBefore(sculpt: Box3, filled: Area | null): Box3 {
  if (filled === null || sculpt.isEmpty()) return new Box3();
  const { x, y, z } = sculpt.getSize(new Vector3());
  const side = Math.max(x, y, z);
  return new Box3(
    new Vector3(Math.max(filled.minX, -REACH_SHARE * side), 0, filled.minZ),
    new Vector3(Math.min(filled.maxX, REACH_SHARE * side), 0, Math.min(filled.maxZ, filled.minZ + DEPTH_SHARE * side)),
  );
}
