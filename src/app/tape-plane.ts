import type { GirthTape, TapeMeasures, Triple } from '../model/girth.ts';
import { NO_TAPES, type BenchPlane, type BenchTapes } from '../viewport/bench-contract.ts';
import type { Bench } from './bench-state.ts';
import type { PlaneInHand, ViewState } from './view-state.ts';

/** The plane a tape lies in. @param mmPerUnit  of the model file. */
export function benchPlaneOf({ pointInFile: [x, y, z], normal: [u, v, w] }: GirthTape, mmPerUnit: number): BenchPlane {
  const length = Math.hypot(u, v, w);
  return { point: [x * mmPerUnit, y * mmPerUnit, z * mmPerUnit], normal: [u / length, v / length, w / length] };
}

/** A tape as it is taken in hand. */
export const tapeInHand = (tape: GirthTape, mmPerUnit: number): PlaneInHand => ({
  of: 'tape',
  id: tape.id,
  plane: benchPlaneOf(tape, mmPerUnit),
});

/**
 * The tape laid in another plane. Its point goes square onto it: a plane has no middle, and of several loops the tape lies round the one
 * nearest to its point.
 */
export function tapeAtPlane(tape: GirthTape, { point, normal }: BenchPlane, mmPerUnit: number): GirthTape {
  const at = tape.pointInFile.map((x) => x * mmPerUnit);
  const off = at.reduce((sum, x, i) => sum + (point[i] - x) * normal[i], 0);
  const [x, y, z] = at.map((x, i) => (x + off * normal[i]) / mmPerUnit);
  const pointInFile: Triple = [x, y, z];
  return { ...tape, pointInFile, normal };
}

/** Lengths of the tape in hand: where it is dragged to, or as it lies. */
export function measuresInHand(
  { bodyFit }: Bench,
  { plane, tried }: Pick<ViewState, 'plane' | 'tried'>,
): TapeMeasures | null {
  if (plane?.of !== 'tape') return null;
  return tried ?? bodyFit?.tapes.find(({ tape }) => tape.id === plane.id) ?? null;
}

/** All cores and tapes as they are drawn; tapes along the back of the foam, the one in hand along its face as well. */
export function tapesOnBench(bench: Bench, view: Pick<ViewState, 'plane' | 'tried'>): BenchTapes {
  const { bodyFit } = bench;
  if (bodyFit === null || bodyFit.tapes.length + bodyFit.cores.length === 0) return NO_TAPES;
  const inHand = measuresInHand(bench, view);
  const others =
    view.plane?.of === 'tape' ? bodyFit.tapes.filter(({ tape }) => tape.id !== view.plane?.id) : bodyFit.tapes;
  return {
    chosen: [inHand?.back, inHand?.face].flatMap((measure) => (measure == null ? [] : [measure.hull])),
    cores: bodyFit.cores.flatMap(({ outline }) => outline),
    rest: others.flatMap(({ back }) => (back === null ? [] : [back.hull])),
  };
}
