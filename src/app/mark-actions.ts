import { edgeIndexOf } from './edge-index.ts';
import { isParted } from './edge-facts.ts';
import { pieceIndex } from './bench-state.ts';
import { MARK_WORDS } from './mark-words.ts';
import { partAcross, pickSpot, previewAcross, unpickSpot } from './across-actions.ts';
import { joinEdges, partEdges } from './seam-actions.ts';
import { NO_PATH, type PathWithin, type Reach } from './view-state.ts';
import type { Spot } from '../worker/drawing-api.ts';
import type { BorderOf, WithinPiece } from '../worker/marking-api.ts';
import type { Workbench } from './workbench.ts';

/** Edges that a click on one means: itself, the line all the way round, or its ridge. */
export async function edgesInReach(bench: Workbench, edge: number, reach: Reach): Promise<readonly number[]> {
  switch (reach) {
    case 'edge':
      return [edge];
    case 'round':
      return await bench.workshop.followLine(edge, { by: 'round' });
    case 'ridge':
      return await bench.workshop.followLine(edge, { by: 'ridge', leastDeg: bench.view.ridgeDeg });
  }
}

/** Parts along all that an edge means, or joins it where all of it is parted already. */
export async function turnInReach(bench: Workbench, edge: number, reach: Reach): Promise<void> {
  const { sculpt } = bench.bench;
  const edges = await edgesInReach(bench, edge, reach);
  if (bench.bench.sculpt !== sculpt || sculpt === null) return;
  if (edges.length === 0) return bench.say(MARK_WORDS.spoken.noRidge);
  const closed = edges.filter((e) => sculpt.edgeIsOpen[e] === 0);
  if (closed.length > 0 && closed.every((e) => isParted(bench.bench, e))) joinEdges(bench, closed);
  else partEdges(bench, edges);
}

/** Parts along the border of an area or a group of the file. */
export async function partRound(bench: Workbench, of: BorderOf): Promise<void> {
  const { sculpt } = bench.bench;
  const edges = await bench.workshop.border(of);
  if (bench.bench.sculpt !== sculpt) return;
  if (edges.length === 0) return bench.say(MARK_WORDS.spoken.nothingRound);
  partEdges(bench, edges);
}

/** A corner is picked for the path. The last one again ends it, and so does the first: then the line is closed. */
export async function pickForPath(bench: Workbench, corner: number, spot: Spot = { corner }): Promise<void> {
  if (bench.view.lay !== 'edges' && bench.view.within === null) return await pickSpot(bench, spot);
  const { through } = bench.view;
  if (through.length > 1 && through.at(-1) === corner) return await partAlongPath(bench);
  if (through.at(-1) === corner) return;
  const stretch = through.length === 0 ? [] : await edgesThrough(bench, [through[through.length - 1], corner], true);
  const { view } = bench;
  // Another click, or another sculpt, came first.
  if (stretch === null || view.through !== through) return;
  const isClosed = through.length > 2 && through[0] === corner;
  bench.setView({
    through: [...through, corner],
    stretches: through.length === 0 ? [] : [...view.stretches, stretch],
  });
  bench.setView({ preview: bench.view.stretches.flat() });
  bench.say(MARK_WORDS.spoken.picked(through.length + 1));
  if (isClosed) await partAlongPath(bench);
}

/** Takes the corner picked last back. @returns false when none was picked. */
export function unpickForPath(bench: Workbench): boolean {
  if (unpickSpot(bench)) return true;
  const { through, stretches } = bench.view;
  if (through.length === 0) return false;
  const kept = stretches.slice(0, -1);
  bench.setView({ through: through.slice(0, -1), stretches: kept, preview: kept.flat() });
  bench.say(MARK_WORDS.spoken.backOne);
  return true;
}

/** Shows where the path would run if it went on to a corner. */
export async function previewPath(bench: Workbench, corner: number, spot: Spot = { corner }): Promise<void> {
  if (bench.view.spots.length > 0) return await previewAcross(bench, spot);
  const { through, within } = bench.view;
  const last = through.at(-1);
  if (last === undefined) return;
  const isWhole = within?.isAcross === true;
  const edges = last === corner ? [] : await edgesThrough(bench, isWhole ? [...through, corner] : [last, corner]);
  const { view } = bench;
  if (edges === null || view.through !== through) return;
  bench.setView({ preview: isWhole ? edges : [...view.stretches.flat(), ...edges] });
}

/** Parts along the corners picked so far. */
export async function partAlongPath(bench: Workbench): Promise<void> {
  if (bench.view.spots.length > 1) return await partAcross(bench);
  const { through, stretches, within, tool } = bench.view;
  if (through.length < 2) return;
  const edges = within === null ? stretches.flat() : await edgesThrough(bench, through, true);
  if (edges === null || bench.view.through !== through) return;
  bench.setView({ ...NO_PATH, ...(within === null || tool !== 'path' ? {} : { tool: 'choose' }) });
  partEdges(bench, edges);
}

/** Edges of a line through corners; null where there is none or the sculpt is another by now. */
export async function edgesThrough(
  bench: Workbench,
  corners: readonly number[],
  tell = false,
): Promise<number[] | null> {
  const { sculpt } = bench.bench;
  const line = await bench.workshop.handLine(corners, bounds(bench, bench.view.within));
  if (sculpt === null || bench.bench.sculpt !== sculpt) return null;
  if (!line.ok) {
    if (tell) bench.showProblem(line.problem);
    return null;
  }
  return edgeIndexOf(sculpt).along(line.value);
}

function bounds({ bench }: Workbench, within: PathWithin | null): WithinPiece | null {
  const piece = within === null ? undefined : bench.pieces?.pieces[pieceIndex(bench, within.piece)];
  return within === null || piece === undefined ? null : { patch: piece.patch, isAcross: within.isAcross };
}
