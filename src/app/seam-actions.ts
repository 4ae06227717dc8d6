import { formatLength } from '../base/format-length.ts';
import { addSeamEdges, clearSeams, removeSeamEdges } from '../project/commands.ts';
import { chainIndex } from './bench-state.ts';
import { onBoth } from './both-sides.ts';
import { edgeFacts, edgesOfChain, isParted } from './edge-facts.ts';
import { edgeIndexOf, filePairs } from './edge-index.ts';
import { NOTHING } from './view-state.ts';
import type { Workbench } from './workbench.ts';
import { WORDS } from './words.ts';

/** Parts the sculpt along edges. Open edges are edges of the foam anyway and are left out. */
export function partEdges(bench: Workbench, edges: readonly number[], mergeKey?: string): void {
  const { sculpt } = bench.bench;
  if (sculpt === null) return;
  const closed = edges.filter((edge) => sculpt.edgeIsOpen[edge] === 0);
  if (closed.length === 0) return bench.say(WORDS.spoken.openAlready);
  bench.run(addSeamEdges(onBoth(bench, filePairs(sculpt, closed)), mergeKey));
  bench.say(WORDS.spoken.parted(lengthOf(bench, closed)));
}

export function joinEdges(bench: Workbench, edges: readonly number[], mergeKey?: string): void {
  const { sculpt } = bench.bench;
  if (sculpt === null || edges.length === 0) return;
  bench.run(removeSeamEdges(onBoth(bench, filePairs(sculpt, edges)), mergeKey));
  bench.say(WORDS.spoken.joined(lengthOf(bench, edges)));
}

/** How long some edges are together, on the side they were marked on. */
function lengthOf({ bench, project }: Workbench, edges: readonly number[]): string {
  const mm = edges.reduce((sum, edge) => sum + (edgeFacts(bench, edge)?.length ?? 0), 0);
  return formatLength(mm, project?.lengthUnit ?? 'mm');
}

/** A click with the knife: parts an edge, or joins it where it was parted. */
export function turnEdge(bench: Workbench, edge: number): void {
  if (isParted(bench.bench, edge)) joinEdges(bench, [edge]);
  else partEdges(bench, [edge]);
}

/** Joins the whole chosen seam. */
export function joinChosen(bench: Workbench): void {
  const { choice } = bench.view;
  if (choice.kind !== 'seam') return;
  const edges = edgesOfChain(bench.bench, chainIndex(bench.bench, choice.seam));
  bench.setView({ choice: NOTHING });
  joinEdges(bench, edges);
}

export function joinEverything(bench: Workbench): void {
  bench.run(clearSeams());
  bench.say(WORDS.spoken.allJoined);
}

/** Edges of the shortest way between two corners; null where there is none. */
export async function pathEdges(bench: Workbench, from: number, to: number): Promise<number[] | null> {
  const path = await bench.workshop.edgePath(from, to);
  const { sculpt } = bench.bench;
  if (!path.ok || sculpt === null) return null;
  return edgeIndexOf(sculpt).along(path.value);
}

/** Parts every edge sharper than an angle, degrees. */
export async function partSharp(bench: Workbench, angleDeg: number): Promise<void> {
  const pairs = await bench.workshop.sharpEdges(angleDeg);
  const { sculpt } = bench.bench;
  if (sculpt === null) return;
  const index = edgeIndexOf(sculpt);
  partEdges(
    bench,
    pairs.map(([a, b]) => index.between(a, b)).filter((edge) => edge >= 0),
  );
}
