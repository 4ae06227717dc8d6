import { edgeFacts } from './edge-facts.ts';
import { edgeIndexOf } from './edge-index.ts';
import { ARROWS, stepTowards } from './edge-walk.ts';
import { previewPath } from './mark-actions.ts';
import { partEdges } from './seam-actions.ts';
import { NO_PATH, NOTHING } from './view-state.ts';
import type { Workbench } from './workbench.ts';
import { WORDS } from './words.ts';

/** Where a corner of the sculpt stands on the screen, px, y down; null when it cannot be seen at all. */
export type ScreenOf = (corner: number) => { readonly x: number; readonly y: number; readonly hidden: boolean } | null;

/** Begins a walk at the corner in sight nearest to the middle of the picture. */
export function beginWalk(bench: Workbench, screenOf: ScreenOf, middle: { x: number; y: number }): void {
  const { sculpt } = bench.bench;
  if (sculpt === null) return;
  const { within } = bench.view;
  bench.setView({
    tool: 'walk',
    cursor: nearestCorner(sculpt, screenOf, middle),
    walked: null,
    choice: NOTHING,
    ...NO_PATH,
    // A piece that was to be split is split on foot.
    within,
  });
  bench.say(WORDS.spoken.walkBegins);
}

/**
 * Walks one edge.
 * @param isParting true parts the edge on the way.
 * @returns false when the key is no arrow or no edge leads that way.
 */
export function walk(bench: Workbench, key: string, isParting: boolean, screenOf: ScreenOf): boolean {
  const { sculpt } = bench.bench;
  const { cursor } = bench.view;
  if (sculpt === null || cursor === null || !(key in ARROWS)) return false;
  const from = screenOf(cursor);
  if (from === null) return false;
  const index = edgeIndexOf(sculpt);
  const steps = index.edgesAt(cursor).map((edge) => ({ edge, to: index.across(edge, cursor) }));
  const step = stepTowards(from, ARROWS[key], steps, screenOf);
  if (step === null) {
    bench.say(WORDS.spoken.noWay);
    return false;
  }
  bench.setView({ cursor: step.to, walked: step.edge });
  if (bench.view.through.length + bench.view.spots.length > 0 && !isParting) void previewPath(bench, step.to);
  if (isParting) partEdges(bench, [step.edge], `walk`);
  bench.say(placeOf(bench, step.edge, isParting));
  return true;
}

/** What is said of the edge just walked. */
function placeOf(bench: Workbench, edge: number, isParting: boolean): string {
  const facts = edgeFacts(bench.bench, edge);
  if (facts === null) return '';
  return WORDS.spoken.walked(facts, bench.project?.lengthUnit ?? 'mm', isParting);
}

/** How many corners are looked at for a start: enough to land near the middle, few enough that the window does not stall on a million. */
const MOST_LOOKED_AT = 400;

function nearestCorner(
  sculpt: { positions: Float32Array },
  screenOf: ScreenOf,
  middle: { x: number; y: number },
): number {
  const count = sculpt.positions.length / 3;
  const stride = Math.max(1, Math.floor(count / MOST_LOOKED_AT));
  let best = 0;
  let least = Infinity;
  for (let corner = 0; corner < count; corner += stride) {
    const at = screenOf(corner);
    if (at === null || at.hidden) continue;
    const distance = Math.hypot(at.x - middle.x, at.y - middle.y);
    if (distance < least) {
      least = distance;
      best = corner;
    }
  }
  return best;
}
