import { MinHeap } from '../../base/min-heap.ts';
import { IN_PLACE } from '../../geom/matrix4.ts';
import { add3, length3, pointAt3, scale3, sub3, type Vec3 } from '../../geom/vec.ts';
import { boxOfPoints3, type Box3 } from '../../mesh/measure.ts';
import { signedSurface, type SignedSurface } from '../../mesh/signed-distance.ts';
import { meetingCurves, type MeetingCurves, type StandingSurface } from './meeting-curves.ts';

/** How two parts stand to each other. `touch`: no deeper in each other than rounding. */
export type PartStand = 'apart' | 'touch' | 'cross' | 'first-within' | 'second-within';

export interface PartMeeting extends MeetingCurves {
  readonly stand: PartStand;
  /** Least distance between both surfaces, mm, 0 where they meet, and where; null where one of them is empty. */
  readonly gap: { readonly mm: number; readonly onFirst: Vec3; readonly onSecond: Vec3 } | null;
  /** Of parts that run through each other, else null. */
  readonly depth: MeetingDepth | null;
  /** One of them has open edges: past these there is neither inside nor outside, and depth is told only from what lies under its faces. */
  readonly isOpen: boolean;
}

/** How deep two parts are in each other: the farthest a place of the surface of one lies under the surface of the other. */
export interface MeetingDepth {
  readonly mm: number;
  /** No place lies deeper than this, mm; {@link DEPTH_SHARE} more where the search came to its end. */
  readonly atMostMm: number;
  /** The deepest place, and whose surface it is on: 0 the first's, 1 the second's. */
  readonly point: Vec3;
  readonly of: 0 | 1;
}

/** The search for the deepest place ends where none can be deeper by more than this share, or this many mm: a shaving. */
const DEPTH_SHARE = 0.01;
const DEPTH_MM = 0.05;

/** Places looked at in the search beyond the middles of all triangles: about a tenth of a second. */
const MOST_PLACES = 4000;

/** Depth up to this share of the size of both is rounding. */
const TOUCH_SHARE = 1e-9;

/** Whether two parts touch, run through each other or are apart, how deep or how far, and the lines in which they meet. */
export function meetParts(first: StandingSurface, second: StandingSurface): PartMeeting {
  const met = meetingCurves(first, second);
  const isOpen = [first, second].some(({ surface }) => surface.topology.twin.some((h) => h < 0));
  if (first.surface.triangles.length === 0 || second.surface.triangles.length === 0)
    return { ...met, stand: 'apart', gap: null, depth: null, isOpen };
  const [boxA, boxB] = [first, second].map(({ surface }) => boxOfPoints3(surface.positions));
  const size = length3(sub3(boxA.max, boxA.min)) + length3(sub3(boxB.max, boxB.min));
  const depth = areApart(boxA, boxB) ? null : deepest(first, second);
  const isDeep = depth !== null && depth.mm > TOUCH_SHARE * size;
  if (met.curves.length > 0) {
    const { places } = met.curves[0].onFirst;
    const point = pointAt3(places, 0);
    const gap = { mm: 0, onFirst: point, onSecond: point };
    return isDeep
      ? { ...met, stand: 'cross', gap, depth, isOpen }
      : { ...met, stand: 'touch', gap, depth: null, isOpen };
  }
  const gap = gapBetween(first, second);
  const isTouching = met.flatPairs.length > 0 || (gap !== null && gap.mm <= TOUCH_SHARE * size);
  if (isTouching) return { ...met, stand: 'touch', gap: gap && { ...gap, mm: 0 }, depth: null, isOpen };
  // Nothing meets: what is deep at all lies within wholly.
  const stand = !isDeep ? 'apart' : depth.of === 0 ? 'first-within' : 'second-within';
  return { ...met, stand, gap, depth: null, isOpen };
}

const areApart = (a: Box3, b: Box3): boolean =>
  (['x', 'y', 'z'] as const).some((axis) => a.max[axis] < b.min[axis] || b.max[axis] < a.min[axis]);

/**
 * The two nearest places. The corners of the one with fewer triangles are asked first: where both are about as far from each other all over, what
 * they leave to look at is far less.
 */
function gapBetween(first: StandingSurface, second: StandingSurface): PartMeeting['gap'] {
  const [few, many] =
    first.surface.triangles.length < second.surface.triangles.length ? [first, second] : [second, first];
  let least = Infinity;
  let best: { few: Vec3; many: Vec3 } | null = null;
  for (const [own, other] of [
    [few, many],
    [many, few],
  ]) {
    const seen = new Uint8Array(own.surface.positions.length / 3);
    for (const v of own.surface.triangles) {
      if (seen[v] === 1) continue;
      seen[v] = 1;
      const p = pointAt3(own.surface.positions, v);
      const hit = other.tree.nearest(p, least);
      if (hit === null || hit.distance >= least) continue;
      least = hit.distance;
      best = own === few ? { few: p, many: hit.point } : { few: hit.point, many: p };
    }
  }
  // Between edges it may be nearer still.
  const hit = many.tree.nearestTo(few.tree, IN_PLACE, least);
  if (hit !== null && hit.distance < least) {
    const across = few.tree.nearest(hit.point);
    if (across !== null && across.distance < least)
      [least, best] = [across.distance, { few: across.point, many: hit.point }];
  }
  if (best === null) return null;
  return { mm: least, onFirst: few === first ? best.few : best.many, onSecond: few === first ? best.many : best.few };
}

/** A triangle still to be looked into: its corners, and whose it is. */
interface Spot {
  readonly corners: readonly [Vec3, Vec3, Vec3];
  readonly of: 0 | 1;
}

/**
 * The deepest place by parting triangles: a place is no deeper than the middle of its triangle and the way from there. Null where nothing of one lies
 * within the other.
 */
function deepest(first: StandingSurface, second: StandingSurface): MeetingDepth | null {
  const all = [first, second] as const;
  const signed = all.map(({ surface }) => signedSurface(surface.positions, surface.triangles, surface.topology));
  let [mm, of]: [number, 0 | 1] = [0, 0];
  let point: Vec3 | null = null;
  const spots: Spot[] = [];
  const heap = new MinHeap();
  const boxes = all.map(({ surface }) => boxOfPoints3(surface.positions));
  const look = (spot: Spot): void => {
    const [a, b, c] = spot.corners;
    if (isBeside(spot.corners, boxes[1 - spot.of])) return;
    const middle = scale3(add3(add3(a, b), c), 1 / 3);
    const depth = depthIn(signed[1 - spot.of], middle);
    if (depth > mm) [mm, point, of] = [depth, middle, spot.of];
    // Above its surface a place is as far from any that lies under it.
    const most = depth + Math.max(length3(sub3(a, middle)), length3(sub3(b, middle)), length3(sub3(c, middle)));
    if (most > mm + Math.max(DEPTH_MM, DEPTH_SHARE * mm)) heap.push(-most, spots.push(spot) - 1);
  };
  for (const s of [0, 1] as const) {
    const { positions, triangles } = all[s].surface;
    const seen = new Uint8Array(positions.length / 3);
    for (let t = 0; t < triangles.length; t += 3) {
      const corners = [0, 1, 2].map((k) => pointAt3(positions, triangles[t + k])) as unknown as [Vec3, Vec3, Vec3];
      if (isBeside(corners, boxes[1 - s])) continue;
      for (let k = 0; k < 3; k += 1) {
        const v = triangles[t + k];
        if (seen[v] === 1) continue;
        seen[v] = 1;
        const depth = depthIn(signed[1 - s], corners[k]);
        if (depth > mm) [mm, point, of] = [depth, corners[k], s];
      }
      look({ corners, of: s });
    }
  }
  let atMostMm = mm;
  for (let looked = 0; heap.size > 0; looked += 2) {
    const { key, item } = heap.pop();
    atMostMm = Math.max(mm, -key);
    if (looked >= MOST_PLACES || -key <= mm + Math.max(DEPTH_MM, DEPTH_SHARE * mm)) break;
    const { corners, of: own } = spots[item];
    for (const half of halves(corners)) look({ corners: half, of: own });
  }
  return point === null ? null : { mm, atMostMm, point, of };
}

/** A triangle parted across its longest side, so that slivers become shorter first. */
function halves([a, b, c]: Spot['corners']): readonly Spot['corners'][] {
  const sides = [length3(sub3(b, a)), length3(sub3(c, b)), length3(sub3(a, c))];
  const longest = sides.indexOf(Math.max(...sides));
  const [p, q, r] = longest === 0 ? [a, b, c] : longest === 1 ? [b, c, a] : [c, a, b];
  const middle = scale3(add3(p, q), 0.5);
  return [
    [p, middle, r],
    [middle, q, r],
  ];
}

const isBeside = (corners: Spot['corners'], { min, max }: Box3): boolean =>
  (['x', 'y', 'z'] as const).some(
    (axis) => corners.every((p) => p[axis] < min[axis]) || corners.every((p) => p[axis] > max[axis]),
  );

/** How deep a point lies under a surface, mm; above it negative. */
function depthIn(surface: SignedSurface, p: Vec3): number {
  const place = surface.nearest(p);
  if (place === null) return -Infinity;
  return place.side < 0 && !place.isOnRim ? place.distance : -place.distance;
}
