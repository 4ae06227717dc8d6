import { isInRings } from '../../geom/in-rings.ts';
import type { Region } from '../../geom/polygon-boolean.ts';
import { ringArea, type Ring } from '../../geom/ring.ts';
import type { Vec2 } from '../../geom/vec.ts';
import type { DowelWish } from '../../model/stack.ts';
import { farthestCorners } from './farthest.ts';
import { inside, meeting, ringsOf, without, type FineGrid } from './regions.ts';

/** A dowel's place and the layers it goes through, counted from 0. */
export interface DowelPlace {
  readonly at: Vec2;
  readonly first: number;
  readonly last: number;
}

/** Sides of the polygon that keeps two holes apart. */
const KEEP_SIDES = 24;

/** Places smaller than this are no choice, mm²: a point is enough, but rounding makes none. */
const LEAST_ROOM_MM2 = 1e-4;

/**
 * Places dowels so that two hold every pair of neighbours where there is room: as many layers in a row as have two places in common get two that
 * go through all of them, in each part that they have in common, as far apart as they can stand; the next row begins with the last layer of the
 * one before, beside its holes. Joints left over, as where a head joins a body, get two of their own.
 * @param sound  for each layer what of it lies wholly in the solid and is not cut away.
 */
export function placeDowels(
  sound: readonly (readonly Region[])[],
  wish: DowelWish,
  grid: FineGrid,
): readonly DowelPlace[] {
  const radius = (wish.diameterMm + wish.clearanceMm) / 2;
  const apart = 2 * radius + wish.marginMm;
  const places: DowelPlace[] = [];
  const freeOf = (layer: number): readonly Region[] =>
    withoutDiscs(
      roomIn(sound[layer], radius + wish.marginMm),
      places.filter(({ first, last }) => first <= layer && layer <= last).map(({ at }) => at),
      apart,
      grid,
    );
  for (let first = 0; first + 1 < sound.length;) {
    let room = freeOf(first);
    let parts = sound[first];
    let pairs: readonly (readonly [Vec2, Vec2])[] = [];
    let last = first;
    while (last + 1 < sound.length) {
      room = meeting(room, freeOf(last + 1), grid);
      parts = meeting(parts, sound[last + 1], grid);
      const own = parts.map((part) => pairIn(part, room, apart)).filter((pair) => pair !== null);
      if (own.length === 0) break;
      pairs = own;
      last += 1;
    }
    for (const pair of pairs) for (const at of pair) places.push({ at, first, last });
    first = Math.max(last, first + 1);
  }
  for (let layer = 0; layer + 1 < sound.length; layer += 1) {
    for (const joint of meeting(sound[layer], sound[layer + 1], grid)) {
      if (dowelsThrough(joint, layer, places) >= 2) continue;
      const room = meeting(freeOf(layer), freeOf(layer + 1), grid);
      for (const at of pairIn(joint, room, apart) ?? []) places.push({ at, first: layer, last: layer + 1 });
    }
  }
  return places;
}

/** How many dowels go through a joint of two layers, in each part in which they touch. */
export function dowelsInJoints(
  sound: readonly (readonly Region[])[],
  places: readonly DowelPlace[],
  layer: number,
  grid: FineGrid,
): readonly number[] {
  return meeting(sound[layer], sound[layer + 1], grid).map((joint) => dowelsThrough(joint, layer, places));
}

function dowelsThrough(joint: Region, layer: number, places: readonly DowelPlace[]): number {
  const rings = ringsOf([joint]);
  return places.filter(({ at, first, last }) => first <= layer && last > layer && isInRings(rings, at.x, at.y)).length;
}

const roomIn = (regions: readonly Region[], margin: number): readonly Region[] =>
  inside(regions, margin).filter(({ outer }) => Math.abs(ringArea(outer)) > LEAST_ROOM_MM2);

function withoutDiscs(
  regions: readonly Region[],
  at: readonly Vec2[],
  radius: number,
  grid: FineGrid,
): readonly Region[] {
  if (at.length === 0 || regions.length === 0) return regions;
  const discs = at.map((centre) => ({ outer: disc(centre, radius / Math.cos(Math.PI / KEEP_SIDES)), holes: [] }));
  return discs.reduce<readonly Region[]>((rest, one) => without(rest, [one], grid), regions);
}

/** A polygon round a circle's centre; its corners lie on the radius. */
export function disc({ x, y }: Vec2, radius: number, sides = KEEP_SIDES): Ring {
  const ring = new Float64Array(2 * sides);
  for (let i = 0; i < sides; i += 1) {
    ring[2 * i] = x + radius * Math.cos((2 * Math.PI * i) / sides);
    ring[2 * i + 1] = y + radius * Math.sin((2 * Math.PI * i) / sides);
  }
  return ring;
}

/** The two places of the room within one part that stand farthest apart, if far enough. */
function pairIn(part: Region, room: readonly Region[], apart: number): readonly [Vec2, Vec2] | null {
  const within = room.filter(({ outer }) => isInRings(ringsOf([part]), outer[0], outer[1]));
  if (within.length === 0) return null;
  const [p, q] = farthestCorners(within.map(({ outer }) => outer));
  return Math.hypot(p.x - q.x, p.y - q.y) >= apart ? [p, q] : null;
}
