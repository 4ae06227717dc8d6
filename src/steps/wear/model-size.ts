import type { Stepwise } from '../../base/stepwise.ts';
import { scale3 } from '../../geom/vec.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { modelClearanceSteps } from './model-clearance.ts';
import { placeCoreSteps, type CorePlace } from './place-core.ts';
import { backAtSize, backMoved, type BackOfShell } from './size-to-body.ts';

/** The room wanted is met to this, mm: under what foam keeps to. */
const NEAR_ENOUGH_MM = 0.01;
const MOST_ROUNDS = 12;
/** Farthest that is looked at: a move in mm, and a size as a factor either way. */
const FARTHEST_MM = 60;
const FARTHEST_FACTOR = 4;

/** How far all of the foam must be moved outward for a core of any form to have the room wanted, mm; null where no move near by gives it. */
export function* moveForModel(
  shell: BackOfShell,
  core: Mesh,
  place: CorePlace,
  now: number,
  wantedMm: number,
): Stepwise<number | null> {
  const placed = yield* placeCoreSteps(core, place);
  return yield* secantSteps(
    { x: 0, miss: now - wantedMm },
    wantedMm - now,
    [-FARTHEST_MM, FARTHEST_MM],
    function* (mm) {
      const back = { ...shell.back, positions: backMoved(shell, mm) };
      return ((yield* modelClearanceSteps(back, placed.core)).tightest?.clearanceMm ?? NaN) - wantedMm;
    },
  );
}

/** The size, as a factor, at which a core of its own size has the room wanted; the zero of its file keeps its place in the sculpt. */
export function* sizeForModel(
  shell: BackOfShell,
  core: Mesh,
  place: CorePlace,
  now: number,
  wantedMm: number,
): Stepwise<number | null> {
  const reach = shell.back.positions.reduce((most, x) => Math.max(most, Math.abs(x)), 1);
  const first = 1 + (wantedMm - now) / reach;
  const limits = [1 / FARTHEST_FACTOR, FARTHEST_FACTOR] as const;
  return yield* secantSteps({ x: 1, miss: now - wantedMm }, first, limits, function* (factor) {
    const { core: moved } = yield* placeCoreSteps(core, { ...place, point: scale3(place.point, factor) });
    const back = { ...shell.back, positions: backAtSize(shell, factor) };
    return ((yield* modelClearanceSteps(back, moved)).tightest?.clearanceMm ?? NaN) - wantedMm;
  });
}

/** Each look costs as much as the whole measurement: a few secant steps, held between limits, and none where they do not come nearer. */
function* secantSteps(
  start: { readonly x: number; readonly miss: number },
  first: number,
  [least, most]: readonly [number, number],
  missAt: (x: number) => Stepwise<number>,
): Stepwise<number | null> {
  if (Math.abs(start.miss) <= NEAR_ENOUGH_MM) return start.x;
  let before = start;
  let x = Math.min(most, Math.max(least, first));
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const miss = yield* missAt(x);
    if (Math.abs(miss) <= NEAR_ENOUGH_MM) return x;
    const next = x - (miss * (x - before.x)) / (miss - before.miss);
    if (!Number.isFinite(next)) return null;
    before = { x, miss };
    x = Math.min(most, Math.max(least, next));
    if (x === before.x) return null;
  }
  return null;
}
