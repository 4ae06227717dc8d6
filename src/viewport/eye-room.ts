import type { Vector3 } from 'three';
import { eyeOf, held, pitched, type Orbit, type OrbitBounds } from './orbit.ts';

/** Where foam is. */
export interface EyeRoom {
  /** The eye keeps so far from foam, mm: more than half the thickness of any, so that it is never within it. */
  readonly clearMm: number;
  /** How far the nearest skin of foam is from a place of the scene, mm; `most` where it is farther than that. */
  at(place: Vector3, most: number): number;
}

export const ALL_ROOM: EyeRoom = { clearMm: 1, at: (_, most) => most };

/** The eye keeps no less from thin foam, and this much over the bench top, mm. */
const LEAST_CLEAR_MM = 12;
const OVER_BENCH_MM = 6;
/**
 * The middle of a picture of what lies on the bench may be under its top, by less than this share of the distance: as far as a picture reaches
 * from its middle.
 */
const LOWEST_SHARE = 0.3;
/** Beyond half the thickness, mm. */
const BESIDE_MM = 4;
/** Ways out are shorter than so many steps; each is at least this share of what is kept clear. */
const MOST_STEPS = 400;
const LEAST_STEP = 1 / 8;

/** How far the eye keeps from foam so thick, mm. */
export const clearOf = (thicknessMm: number): number => Math.max(LEAST_CLEAR_MM, thicknessMm / 2 + BESIDE_MM);

/** Whether the eye is under the bench top, at height 0. */
export const isUnder = (orbit: Orbit): boolean => eyeOf(orbit).y < 0;

/**
 * The view next to one that is asked for in which the eye is within its bounds, in no foam, and over the bench top.
 * @param mayBeUnder  from below was asked for, or the eye is there already.
 */
export function allowed(to: Orbit, bounds: OrbitBounds, room: EyeRoom, mayBeUnder: boolean): Orbit {
  const within = (orbit: Orbit): Orbit => (mayBeUnder ? orbit : overBench(orbit));
  const begin = within(held(to, bounds));
  const isClear = (orbit: Orbit): boolean => room.at(eyeOf(orbit), room.clearMm) >= room.clearMm * (1 - 1e-6);
  if (isClear(begin)) return begin;
  const [back, forth] = [1, -1].map((way) => {
    let orbit = begin;
    for (let i = 0; i < MOST_STEPS && !isClear(orbit); i += 1) {
      const lacks = room.clearMm - room.at(eyeOf(orbit), room.clearMm);
      const distance = orbit.distance + way * Math.max(lacks, LEAST_STEP * room.clearMm);
      if (distance < bounds.nearest) return null;
      orbit = within({ ...orbit, distance });
    }
    return orbit;
  });
  // The shorter way out: before a wall back from it, behind it on through.
  if (forth === null || back === null) return back ?? begin;
  return begin.distance - forth.distance < back.distance - begin.distance ? forth : back;
}

/** Turned up as far as it must be for the eye to stay over the bench top. */
function overBench(orbit: Orbit): Orbit {
  const { target, distance } = orbit;
  const lowest = -LOWEST_SHARE * distance;
  const raised = target.y < lowest ? { ...orbit, target: target.clone().setY(lowest) } : orbit;
  const least = Math.asin(Math.max(-1, (OVER_BENCH_MM - raised.target.y) / distance));
  return raised.pitch >= least ? raised : pitched(raised, least);
}
