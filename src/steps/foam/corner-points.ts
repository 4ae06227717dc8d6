import type { Ring } from '../../geom/ring.ts';
import { dot3, scale3, sub3, type Vec2, type Vec3 } from '../../geom/vec.ts';
import type { PanelCorner } from './panel-corners.ts';

/** Corners of a skin that need no other place than where its edges meet are left to them, mm. */
const SAME_PLACE_MM = 1e-9;

/** Where a skin of a flat piece has its corners, in the order of the ring, by place on the ring. */
export type CornerPoints = ReadonlyMap<number, readonly Vec2[]>;

/**
 * Corners of a skin that lie elsewhere than where the two edges beside them meet: trimmed against a panel that is no neighbour.
 * @param neutral   rings of the piece, mm.
 * @param heightMm  of the skin over the sculpt.
 * @param neutralMm of the surface the piece keeps its length on.
 * @param isPlain   whether both edges at a place of a ring are cut on the planes that halve their folds; others meet by themselves.
 * @returns for each ring.
 */
export function cornerPoints(
  neutral: readonly Ring[],
  corners: readonly PanelCorner[],
  heightMm: number,
  neutralMm: number,
  isPlain: (loop: number, at: number) => boolean,
): readonly CornerPoints[] {
  return neutral.map((ring, loop) => {
    const points = new Map<number, readonly Vec2[]>();
    for (const corner of corners) {
      if (corner.loop !== loop || !isPlain(loop, corner.at)) continue;
      const { inner, outer, mitre } = corner.share;
      const ends = heightMm > 0 ? outer : inner;
      const met = scale3(mitre, heightMm);
      const reach = ends.map((end) => scale3(end, Math.abs(heightMm)));
      if (reach.every((end) => distance(end, met) < SAME_PLACE_MM)) continue;
      const from = scale3(mitre, neutralMm);
      // Round the corner of the sculpt panels follow each other against the way of the ring.
      points.set(
        corner.at,
        reach.toReversed().map((end) => onRing(ring, corner, sub3(end, from))),
      );
    }
    return points;
  });
}

const distance = (a: Vec3, b: Vec3): number => Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);

/** A place in the panel, seen from its corner, on the flat piece. */
function onRing(ring: Ring, { at, along, outward }: PanelCorner, way: Vec3): Vec2 {
  const next = (at + 1) % (ring.length / 2);
  const [x, y] = [ring[2 * at], ring[2 * at + 1]];
  const [dx, dy] = [ring[2 * next] - x, ring[2 * next + 1] - y];
  const length = Math.hypot(dx, dy);
  const [s, o] = [dot3(way, along) / length, dot3(way, outward) / length];
  return { x: x + s * dx + o * dy, y: y + s * dy - o * dx };
}
