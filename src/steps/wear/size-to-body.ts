import { scale3 } from '../../geom/vec.ts';
import type { Plane, Surface } from './plane-section.ts';
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

/** Thickest padding that is looked at, mm: beyond it the part is the wrong size. */
const THICKEST_PADDING_MM = 60;
const PADDING_STEP_MM = 2;

/** Thickness of padding all over the inside that brings a tape to a wanted length, mm; null where it is no shorter, or no padding does it. */
export function paddingForGirth(shell: BackOfShell, plane: Plane, wantedMm: number): number | null {
  const { back, facePositions, thicknessMm } = shell;
  const miss = (padding: number): number | null => {
    const share = padding / thicknessMm;
    const positions = back.positions.map((x, i) => x + share * (x - facePositions[i]));
    const tape = measureTape({ ...back, positions }, plane);
    return tape === null ? null : tape.girthMm - wantedMm;
  };
  let before = miss(0);
  if (before === null || before <= 0) return null;
  for (let padding = PADDING_STEP_MM; padding <= THICKEST_PADDING_MM; padding += PADDING_STEP_MM) {
    const now = miss(padding);
    const found = crossing(miss, padding - PADDING_STEP_MM, before, padding, now);
    if (found !== null) return found;
    before = now;
  }
  return null;
}
