import { isInRings } from './in-rings.ts';
import { ringArea, type Ring } from './ring.ts';
import { eachPlateTriangle, PLATE_SKIN, type Plate, type PlateSkin } from './plate.ts';
import { triangulateRings } from './triangulate.ts';
import { cross3, dot3, type Vec3 } from './vec.ts';

/** A plane with two axes of its own, each of length 1 and square to each other: `u`, `v`, and the direction square to both is u x v. */
export interface SectionPlane {
  readonly origin: Vec3;
  readonly u: Vec3;
  readonly v: Vec3;
}

/** One closed line where a plate is cut, in the plane's own x y, mm: foam on its left, seen with the normal towards the eye. */
export interface SectionRing {
  readonly points: Ring;
  /** For each side of the ring, from its point to the next, the skin of the plate it runs through. */
  readonly skins: readonly PlateSkin[];
}

/** The cut face of one plate: an outer ring with its holes, and its triangles over all their points in that order. */
export interface CutArea {
  readonly outer: SectionRing;
  readonly holes: readonly SectionRing[];
  readonly triangles: readonly number[];
}

/**
 * Cuts a plate by a plane. A corner in the plane counts as above it, so that each triangle is cut in exactly one line and every line closes.
 * @param shift  how far the whole plate is moved from where its corners are, mm.
 * @returns none where the plane misses it.
 */
export function cutPlate(plate: Plate, plane: SectionPlane, shift: Vec3 = ORIGIN): readonly CutArea[] {
  return areasOf(ringsOf(plate, plane, shift));
}

const ORIGIN: Vec3 = { x: 0, y: 0, z: 0 };

function ringsOf(plate: Plate, { origin, u, v }: SectionPlane, shift: Vec3): SectionRing[] {
  const { face, back } = plate;
  const n = face.length / 3;
  const normal = cross3(u, v);
  const from = { x: origin.x - shift.x, y: origin.y - shift.y, z: origin.z - shift.z };
  const base = dot3(normal, from);
  const heights = new Float64Array(2 * n);
  const at = (c: number, k: number): number => (c < n ? face[3 * c + k] : back[3 * (c - n) + k]);
  for (let c = 0; c < 2 * n; c += 1)
    heights[c] = normal.x * at(c, 0) + normal.y * at(c, 1) + normal.z * at(c, 2) - base;
  // From the side that runs down through the plane to the one that runs up: a side is the key of both its triangles.
  const next = new Map<number, { readonly to: number; readonly skin: PlateSkin }>();
  const key = (a: number, b: number): number => Math.min(a, b) * 2 * n + Math.max(a, b);
  eachPlateTriangle(plate, (a, b, c, skin) => {
    const [ua, ub, uc] = [heights[a] >= 0, heights[b] >= 0, heights[c] >= 0];
    if (ua === ub && ub === uc) return;
    const down = ua && !ub ? key(a, b) : ub && !uc ? key(b, c) : key(c, a);
    const up = !ua && ub ? key(a, b) : !ub && uc ? key(b, c) : key(c, a);
    next.set(down, { to: up, skin });
  });
  const point = (side: number): [number, number] => {
    const [low, high] = [Math.floor(side / (2 * n)), side % (2 * n)];
    const share = heights[low] / (heights[low] - heights[high]);
    const [x, y, z] = [0, 1, 2].map((k) => at(low, k) + share * (at(high, k) - at(low, k)));
    const way = { x: x - from.x, y: y - from.y, z: z - from.z };
    return [dot3(way, u), dot3(way, v)];
  };
  const rings: SectionRing[] = [];
  while (next.size > 0) {
    const points: number[] = [];
    const skins: PlateSkin[] = [];
    const [start] = next.keys();
    for (let side = start; ;) {
      const step = next.get(side);
      if (step === undefined) break;
      next.delete(side);
      points.push(...point(side));
      skins.push(step.skin);
      side = step.to;
    }
    rings.push({ points: Float64Array.from(points), skins });
  }
  return rings;
}

/** Outer rings run counter-clockwise; each hole belongs to the least outer ring round it. */
function areasOf(rings: readonly SectionRing[]): readonly CutArea[] {
  const outers: { ring: SectionRing; area: number; holes: SectionRing[] }[] = [];
  const holes: SectionRing[] = [];
  for (const ring of rings) {
    const area = ringArea(ring.points);
    if (area > 0) outers.push({ ring, area, holes: [] });
    else if (area < 0) holes.push(ring);
  }
  outers.sort((a, b) => a.area - b.area);
  for (const hole of holes)
    outers.find(({ ring }) => isInRings([ring.points], hole.points[0], hole.points[1]))?.holes.push(hole);
  return outers.map(({ ring, holes: inside }) => ({
    outer: ring,
    holes: inside,
    triangles: triangulateRings(
      ring.points,
      inside.map(({ points }) => points),
    ),
  }));
}

/** True where a place of the plane lies in foam. */
export const isInArea = ({ outer, holes }: CutArea, x: number, y: number): boolean =>
  isInRings([outer.points], x, y) && !holes.some(({ points }) => isInRings([points], x, y));

/**
 * How thick the foam is in the plane at a place, mm: from the nearest point of its face over that place to the nearest point of its back. Where
 * the plane cuts the foam at a slant this is more than the foam's own thickness.
 * @returns null where the cut shows no face or no back.
 */
export function thicknessAt({ outer, holes }: CutArea, x: number, y: number): number | null {
  const nearest = { [PLATE_SKIN.face]: Infinity, [PLATE_SKIN.back]: Infinity, [PLATE_SKIN.cut]: Infinity };
  for (const { points, skins } of [outer, ...holes]) {
    skins.forEach((skin, i) => {
      const j = (i + 1) % skins.length;
      const [ax, ay] = [points[2 * i], points[2 * i + 1]];
      const [dx, dy] = [points[2 * j] - ax, points[2 * j + 1] - ay];
      const square = dx * dx + dy * dy;
      const share = square === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / square));
      nearest[skin] = Math.min(nearest[skin], Math.hypot(ax + share * dx - x, ay + share * dy - y));
    });
  }
  const sum = nearest[PLATE_SKIN.face] + nearest[PLATE_SKIN.back];
  return Number.isFinite(sum) ? sum : null;
}
