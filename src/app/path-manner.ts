import type { Spot } from '../worker/drawing-api.ts';
import { showSpots } from './across-actions.ts';
import { MARK_WORDS } from './mark-words.ts';
import { edgesThrough } from './mark-actions.ts';
import { NO_PATH, type Lay } from './view-state.ts';
import type { Workbench } from './workbench.ts';

/**
 * Another manner for the path on its way. What was picked stays: a corner is a place as well, and of a place on a face the nearest corner is
 * taken where the path is to run along edges; both are told. Where no way leads along edges the manner stays as it was.
 */
export async function layAgain(bench: Workbench, lay: Lay): Promise<void> {
  const { view } = bench;
  if (lay === view.lay) return;
  const { through, spots } = view;
  const count = through.length + spots.length;
  if (count === 0) return bench.setView({ lay });
  if (lay === 'edges') return await alongEdges(bench, spots);
  const kept: readonly Spot[] = spots.length > 0 ? spots : through.map((corner) => ({ corner }));
  bench.setView({ ...NO_PATH, spots: kept, lay });
  bench.say(MARK_WORDS.spoken.kept(count));
  await showSpots(bench, kept);
}

async function alongEdges(bench: Workbench, spots: readonly Spot[]): Promise<void> {
  const corners = spots
    .map((spot) => cornerAt(bench, spot))
    .filter((corner, i, all) => corner !== null && corner !== all[i - 1]) as number[];
  const stretches: (readonly number[])[] = [];
  for (let i = 1; i < corners.length; i += 1) {
    const edges = await edgesThrough(bench, [corners[i - 1], corners[i]], true);
    if (edges === null || bench.view.spots !== spots) return;
    stretches.push(edges);
  }
  bench.setView({ ...NO_PATH, lay: 'edges', through: corners, stretches, preview: stretches.flat() });
  const isMoved = spots.some((spot) => !('corner' in spot));
  bench.say(isMoved ? MARK_WORDS.spoken.toCorners(corners.length) : MARK_WORDS.spoken.kept(corners.length));
}

/** The corner of its triangle that lies nearest; null before there is a sculpt. */
function cornerAt({ bench }: Workbench, spot: Spot): number | null {
  if ('corner' in spot) return spot.corner;
  const { sculpt } = bench;
  if (sculpt === null) return null;
  const { triangles, positions } = sculpt;
  const distance = (corner: number): number => Math.hypot(...spot.point.map((x, k) => positions[3 * corner + k] - x));
  const corners = [...triangles.subarray(3 * spot.triangle, 3 * spot.triangle + 3)];
  return corners.reduce((best, corner) => (distance(corner) < distance(best) ? corner : best));
}
