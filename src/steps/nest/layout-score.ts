import { areaOfRoom, type FoamTask } from './foam-task.ts';
import type { LayoutCheck } from './layout-check.ts';
import type { RoomPlaces } from './quick-fit.ts';

/** What a layout comes to; the first figure that differs decides, less is better. */
export interface LayoutScore {
  /** Copies without a place. */
  readonly unlaid: number;
  readonly bought: number;
  readonly sheets: number;
  /** Foam of all sheets that are begun, mm². */
  readonly begunMm2: number;
  /** How far the last sheet is filled along its length, from its edge, mm. */
  readonly filledMm: number;
}

export function scoreOf(task: FoamTask, places: RoomPlaces, check: LayoutCheck): LayoutScore {
  const used = usedRooms(places);
  const last = used[used.length - 1];
  return {
    unlaid: places.filter((place) => place === null).length,
    bought: used.filter((room) => task.rooms[room].stock === null).length,
    sheets: used.length,
    begunMm2: used.reduce((sum, room) => sum + areaOfRoom(task.rooms[room]), 0),
    filledMm: places.reduce(
      (most, place, i) => (place !== null && place.room === last ? Math.max(most, check.endOf(i, place)) : most),
      0,
    ),
  };
}

/** Numbers of the rooms that anything lies in, ascending. */
export const usedRooms = (places: RoomPlaces): readonly number[] =>
  [...new Set(places.flatMap((place) => (place === null ? [] : [place.room])))].sort((a, b) => a - b);

/** Differences of lengths that are none, mm. */
const SAME_MM = 1e-6;

export function isBetter(a: LayoutScore, b: LayoutScore): boolean {
  if (a.unlaid !== b.unlaid) return a.unlaid < b.unlaid;
  if (a.bought !== b.bought) return a.bought < b.bought;
  if (a.sheets !== b.sheets) return a.sheets < b.sheets;
  if (Math.abs(a.begunMm2 - b.begunMm2) > SAME_MM) return a.begunMm2 < b.begunMm2;
  return a.filledMm < b.filledMm - SAME_MM;
}
