import { inStretches, type Stepwise } from '../../base/stepwise.ts';
import { buildTree } from '../../geom/bvh.ts';
import { IN_PLACE } from '../../geom/matrix4.ts';
import { pointAt3, type Vec3 } from '../../geom/vec.ts';
import { boxOfPoints3 } from '../../mesh/measure.ts';
import { roundTriangle, signedSurface, type SignedSurface } from '../../mesh/signed-distance.ts';
import type { CoreStand, TightestPlace } from '../../model/clearance.ts';
import type { Surface } from '../../mesh/surface.ts';

export interface ModelClearance {
  readonly tightest: TightestPlace | null;
  /** Per vertex of the back, mm, negative within the core; a vertex of a triangle that a corner of the core passes through has that depth. */
  readonly atVertices: Float32Array;
  readonly stand: CoreStand;
  /** Triangles of the back that run into the core's surface. */
  readonly pierced: number;
}

/** Nearest places asked for in one stretch: a few milliseconds. */
const STRETCH = 128;

interface Nearest {
  readonly mm: number;
  readonly point: Vec3;
  readonly triangle: number;
}

const FARTHEST: Nearest = { mm: Infinity, point: { x: 0, y: 0, z: 0 }, triangle: -1 };

/**
 * How far the back of the foam keeps from a core of any form. Where the surfaces do not run into each other the distance is exact: every
 * triangle of the back that may be nearer than the nearest corners of both is held against all of the core. Where they do, the depth is
 * that of the deepest corner of either surface in the other, so between corners it may be deeper by what lies between them.
 * @param back  faces outward, away from the core; it may have open rims. What of a core lies past a rim is not in the foam.
 */
export function* modelClearanceSteps(back: Surface, core: SignedCore): Stepwise<ModelClearance> {
  const count = back.positions.length / 3;
  const atVertices = new Float32Array(count).fill(NaN);
  const used = new Set(back.triangles);
  if (used.size === 0 || core.positions.length === 0)
    return { tightest: null, atVertices, stand: 'inside', pierced: 0 };
  const skin = signedSurface(back.positions, back.triangles, back.topology);
  let nearest = FARTHEST;
  let deepest: Nearest = { ...FARTHEST, mm: 0 };
  let swallowed = 0;
  yield* inStretches(count, STRETCH, (from, to) => {
    for (let v = from; v < to; v += 1) {
      if (!used.has(v)) continue;
      const point = pointAt3(back.positions, v);
      const place = core.surface.nearest(point);
      if (place === null) continue;
      const mm = place.side * place.distance;
      atVertices[v] = mm;
      if (mm < 0) swallowed += 1;
      if (mm < deepest.mm) deepest = { mm, point, triangle: -1 - v };
      if (place.distance < nearest.mm) nearest = { mm: place.distance, point, triangle: -1 - v };
    }
  });
  const poking: Nearest[] = [];
  let isOutside = false;
  let least = Infinity;
  yield* inStretches(core.positions.length / 3, STRETCH, (from, to) => {
    for (let v = from; v < to; v += 1) {
      const place = skin.nearest(pointAt3(core.positions, v));
      if (place === null) continue;
      const { point, triangle, distance } = place;
      const isBeyond = place.side > 0 && !place.isOnRim && distance > 0;
      if (isBeyond) poking.push({ mm: -distance, point, triangle });
      if (distance < least) [least, isOutside] = [distance, isBeyond];
      if (distance < nearest.mm) nearest = { mm: distance, point, triangle };
    }
  });
  const close = yield* closestSteps(back, core.surface, nearest);
  nearest = close.nearest;
  const home = (place: Nearest): Nearest =>
    place.triangle >= 0 ? place : { ...place, triangle: Math.floor(back.triangles.indexOf(-1 - place.triangle) / 3) };
  if (close.pierced === 0) {
    const stand: CoreStand =
      swallowed === used.size
        ? 'swallows'
        : (isOutside || areApart(back.positions, core.positions)) && swallowed === 0
          ? 'outside'
          : 'inside';
    const { mm, ...place } = home(nearest);
    return {
      tightest: { ...place, clearanceMm: stand === 'swallows' ? -mm : mm },
      atVertices,
      stand,
      pierced: 0,
    };
  }
  for (const { mm, triangle } of poking) {
    for (let k = 0; k < 3; k += 1) {
      const v = back.triangles[3 * triangle + k];
      if (!(atVertices[v] <= mm)) atVertices[v] = mm;
    }
  }
  const worst = poking.reduce((a, b) => (b.mm < a.mm ? b : a), deepest);
  const { mm, ...place } = home(worst.mm < 0 ? worst : nearest);
  return {
    tightest: { ...place, clearanceMm: Math.min(0, worst.mm < 0 ? mm : 0) },
    atVertices,
    stand: 'crosses',
    pierced: close.pierced,
  };
}

/** Whether upright boxes round both do not touch: past the rim of an opening the nearest place alone does not tell outside from inside. */
function areApart(a: Float64Array, b: Float64Array): boolean {
  const [one, other] = [boxOfPoints3(a), boxOfPoints3(b)];
  return (['x', 'y', 'z'] as const).some((axis) => one.max[axis] < other.min[axis] || other.max[axis] < one.min[axis]);
}

/** A core in its place, mm. */
export interface SignedCore {
  readonly positions: Float64Array;
  readonly surface: SignedSurface;
}

/** The exact nearest place of all triangles, and how many of the back run into the core. */
function* closestSteps(
  { positions, triangles }: Surface,
  core: SignedSurface,
  start: Nearest,
): Stepwise<{ readonly nearest: Nearest; readonly pierced: number }> {
  let nearest = start;
  let pierced = 0;
  yield* inStretches(triangles.length / 3, STRETCH, (from, to) => {
    for (let t = from; t < to; t += 1) {
      const { centre, reach } = roundTriangle(positions, triangles, t);
      const middle = core.tree.nearest(centre);
      if (middle === null || middle.distance - reach > nearest.mm) continue;
      const corners = triangles.slice(3 * t, 3 * t + 3);
      const own = buildTree(
        Float64Array.from([...corners].flatMap((v) => [...positions.subarray(3 * v, 3 * v + 3)])),
        Uint32Array.of(0, 1, 2),
      );
      const met = core.tree.nearestTo(own, IN_PLACE, nearest.mm + CROSSING_MM);
      if (met === null) continue;
      if (met.distance === 0) pierced += 1;
      if (met.distance < nearest.mm)
        nearest = { mm: met.distance, point: own.nearest(met.point)?.point ?? met.point, triangle: t };
    }
  });
  return { nearest, pierced };
}

/** Looked this much farther than the nearest place, so that places where the surfaces touch are found once that is 0, mm. */
const CROSSING_MM = 1e-6;
