import { scale3 } from '../../geom/vec.ts';
import type { Plane, Surface } from '../../mesh/surface.ts';
import { crossing } from './size-search.ts';
import { measureTape } from './tape.ts';

/** A sculpt that has no size yet, and where the inside of its foam will lie. */
export interface UnsizedShell {
  /** In units of the file. */
  readonly sculpt: Surface;
  /** x y z per vertex: how far it moves when its planes move outward by 1; the same at every size. */
  readonly directions: Float64Array;
  /** Where the back of the wall lies, counted outward from the sculpt, mm; inward negative. */
  readonly backMm: number;
}

/** The inside of the foam, mm, of a sculpt of so many mm to a unit: the sculpt grows, the foam stays as thick as it is. */
export const backAtScale = ({ sculpt, directions, backMm }: UnsizedShell, mmPerUnit: number): Float64Array =>
  sculpt.positions.map((x, i) => mmPerUnit * x + backMm * directions[i]);

/** Steps outward from the first guess, and how far they go: beyond is no size that a wall of this thickness has. */
const STEP = 1.05;
const MOST_STEPS = 60;

/**
 * How many mm a unit of the file must be for a tape in a plane to have a wanted length inside the foam. Of a round convex section of girth G in the
 * file that is closed,
 *
 *     s G + 2 π back = wanted        (a parallel curve at a distance d is longer by 2 π d: Steiner)
 *
 * and elsewhere the first guess: sizes round it are tried in turn until two have the wanted length between them, then halving and the secant find it.
 * @param plane     in units of the file.
 * @param wantedMm  > 0.
 * @returns null where the plane misses the sculpt, or no size gives it.
 */
export function scaleForGirth(shell: UnsizedShell, plane: Plane, wantedMm: number): number | null {
  const own = measureTape(shell.sculpt, plane)?.girthMm ?? 0;
  if (!(own > 0)) return null;
  const first = (wantedMm - 2 * Math.PI * shell.backMm) / own;
  if (!(first > 0 && Number.isFinite(first))) return null;
  const miss = (scale: number): number | null => {
    const back = { ...shell.sculpt, positions: backAtScale(shell, scale) };
    const girth = measureTape(back, { ...plane, point: scale3(plane.point, scale) })?.girthMm;
    return girth === undefined ? null : girth - wantedMm;
  };
  const start = miss(first);
  if (start !== null && Math.abs(start) <= NEAR_ENOUGH_MM) return first;
  let [upper, above, lower, below] = [first, start, first, start];
  for (let i = 0; i < MOST_STEPS; i += 1) {
    const [up, down] = [upper * STEP, lower / STEP];
    const atUp = miss(up);
    const foundUp = crossing(miss, upper, above, up, atUp);
    if (foundUp !== null) return foundUp;
    const atDown = miss(down);
    const foundDown = crossing(miss, down, atDown, lower, below);
    if (foundDown !== null) return foundDown;
    [upper, above, lower, below] = [up, atUp, down, atDown];
  }
  return null;
}

/** The wanted length is met to this without a search, mm. */
const NEAR_ENOUGH_MM = 1e-9;
