import { scale3 } from '../../geom/vec.ts';
import type { Plane, Surface } from '../../mesh/surface.ts';
import { rodClearance, type Rod } from './rod-clearance.ts';
import { crossing, sizeFor } from './size-search.ts';
import { measureTape } from './tape.ts';

/** The sculpt and the back of its foam: the same triangles, positions of both, mm, and how thick the foam is, mm. */
export interface BackOfShell {
  readonly back: Surface;
  readonly sculptPositions: Float64Array;
  readonly facePositions: Float64Array;
  readonly thicknessMm: number;
}

/**
 * The back of the foam when the sculpt is made larger by a factor and the foam stays as thick as it is: each vertex keeps its move from the
 * sculpt to the back, because the planes round it only move.
 */
export function backAtSize({ back, sculptPositions }: BackOfShell, factor: number): Float64Array {
  return back.positions.map((x, i) => x + (factor - 1) * sculptPositions[i]);
}

/**
 * The size, as a factor, at which the tape in a plane of the sculpt has a wanted length on the real shell; girth is not proportional to
 * size, because the foam's thickness stays.
 */
export function sizeForGirth(shell: BackOfShell, plane: Plane, wantedMm: number): number | null {
  return sizeFor((factor) => {
    const surface = { ...shell.back, positions: backAtSize(shell, factor) };
    return measureTape(surface, { ...plane, point: scale3(plane.point, factor) })?.girthMm ?? null;
  }, wantedMm);
}

/** The size, as a factor, at which a rod of its own diameter has a wanted room; its axis keeps its place in the sculpt, its length is in mm. */
export function sizeForRoom(shell: BackOfShell, rod: Rod, wantedMm: number): number | null {
  return sizeFor((factor) => {
    const placed = { ...rod, point: scale3(rod.point, factor) };
    return rodClearance(backAtSize(shell, factor), shell.back.triangles, placed).tightest?.clearanceMm ?? null;
  }, wantedMm);
}

/** Farthest move that is looked at, mm: beyond it the part is the wrong size. */
const FARTHEST_MOVE_MM = 60;
const MOVE_STEP_MM = 2;

/** The back of the foam moved outward all over, panels staying flat: each vertex goes on along its way from back to face. */
export const backMoved = ({ back, facePositions, thicknessMm }: BackOfShell, mm: number): Float64Array =>
  back.positions.map((x, i) => x + (mm / thicknessMm) * (facePositions[i] - x));

/**
 * How far all of the foam must be moved outward for the tape to have a wanted length, mm; inward negative.
 * @returns null where no move within {@link FARTHEST_MOVE_MM} gives it.
 */
export const moveForGirth = (shell: BackOfShell, plane: Plane, wantedMm: number): number | null =>
  moveFor((mm) => measureTape({ ...shell.back, positions: backMoved(shell, mm) }, plane)?.girthMm ?? null, wantedMm);

/** The same for the room round a rod. */
export const moveForRoom = (shell: BackOfShell, rod: Rod, wantedMm: number): number | null =>
  moveFor(
    (mm) => rodClearance(backMoved(shell, mm), shell.back.triangles, rod).tightest?.clearanceMm ?? null,
    wantedMm,
  );

/** The least move that brings a figure to what is wanted: outward where it is too small, else inward. */
function moveFor(figure: (mm: number) => number | null, wantedMm: number): number | null {
  const miss = (mm: number): number | null => {
    const value = figure(mm);
    return value === null ? null : value - wantedMm;
  };
  let before = miss(0);
  if (before === null || before === 0) return before;
  const way = before < 0 ? 1 : -1;
  for (let mm = MOVE_STEP_MM; mm <= FARTHEST_MOVE_MM; mm += MOVE_STEP_MM) {
    const now = miss(way * mm);
    const found = crossing(miss, way * (mm - MOVE_STEP_MM), before, way * mm, now);
    if (found !== null) return found;
    before = now;
  }
  return null;
}
