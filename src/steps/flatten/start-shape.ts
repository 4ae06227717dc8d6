import { shareOfWork, type Work } from '../../base/work.ts';
import type { Patch } from '../../model/patch.ts';
import { circleStart } from './circle-start.ts';
import { energyOf } from './dirichlet-energy.ts';
import type { FlatSystem } from './flat-system.ts';
import { hasFlip } from './flips.ts';
import { isClearOfItself } from './keep-apart.ts';
import { LocalGlobal } from './local-global.ts';
import { planeStart } from './plane-start.ts';

/** Rounds of local-global before the energy with the flip barrier takes over. */
const LOCAL_GLOBAL_ROUNDS = 4;

/** Mean energy (4 = true size) up to which an earlier shape is worth beginning from: crushed ones are not. */
const MOST_EARLIER_ENERGY = 1e4;
/** Mean energy (4 = true size) up to which the look along the mean normal is a better start than the net on a circle. */
const MOST_PLANE_ENERGY = 6;

/** A shape whose borders are clear of each other: the first of the given ones that is so, else the net on a circle. */
export async function startApart(
  patch: Patch,
  system: FlatSystem,
  shapes: readonly (Float64Array | undefined)[],
  work: Work,
): Promise<Float64Array | null> {
  const clear = shapes.find(
    (shape) => shape !== undefined && isUsable(patch, system, shape) && isClearOfItself(patch, system, shape),
  );
  return clear ?? (await circleStart(patch, system, work));
}

function isUsable(patch: Patch, { rest }: FlatSystem, earlier: Float64Array): boolean {
  return (
    earlier.length === 2 * rest.vertexCount &&
    !hasFlip(patch.triangles, earlier) &&
    energyOf(rest, earlier) < MOST_EARLIER_ENERGY
  );
}

/**
 * A shape without a flip from which to go down: the earlier one, else the best after rounds of local-global from unfolding, from the look
 * along the mean normal, or from the net.
 */
export async function startNear(
  patch: Patch,
  system: FlatSystem,
  { earlier, rolled }: { readonly earlier: Float64Array | undefined; readonly rolled: Float64Array | undefined },
  work: Work,
): Promise<Float64Array | null> {
  if (earlier !== undefined && isUsable(patch, system, earlier)) return earlier;
  const start = rolled ?? seenFromAbove(patch, system) ?? (await circleStart(patch, system, shareOfWork(work, 0, 0.5)));
  return start === null ? null : bestLocalGlobal(patch, system, start, shareOfWork(work, 0.5, 1));
}

/** Of all shapes on the way of local-global that have no flip, the one of least energy. */
async function bestLocalGlobal(
  patch: Patch,
  system: FlatSystem,
  start: Float64Array,
  work: Work,
): Promise<Float64Array> {
  const rounds = await LocalGlobal.of(system, work);
  let best = start;
  let least = energyOf(system.rest, start);
  let now = start;
  for (let round = 0; round < LOCAL_GLOBAL_ROUNDS; round += 1) {
    await work.pause(0.5 + round / LOCAL_GLOBAL_ROUNDS / 2);
    const next = new Float64Array(start.length);
    rounds.round(now, next);
    const energy = energyOf(system.rest, next);
    if (energy < least && !hasFlip(patch.triangles, next)) [best, least] = [next, energy];
    now = next;
  }
  return best;
}

/** The look along the mean normal where no triangle turns over in it and none is crushed. */
function seenFromAbove(patch: Patch, { rest }: FlatSystem): Float64Array | undefined {
  const flat = planeStart(rest);
  if (flat === null || hasFlip(patch.triangles, flat) || energyOf(rest, flat) > MOST_PLANE_ENERGY) return undefined;
  return flat;
}
