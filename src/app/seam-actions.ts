import { addSeamEdges, clearSeams, removeSeamEdges, setSeamKind } from '../project/commands.ts';
import { chainIndex } from './bench-state.ts';
import { edgesOfChain, isParted } from './edge-facts.ts';
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
  bench.run(addSeamEdges(filePairs(sculpt, closed), mergeKey));
  bench.say(WORDS.spoken.parted(closed.length));
}

export function joinEdges(bench: Workbench, edges: readonly number[], mergeKey?: string): void {
  const { sculpt } = bench.bench;
  if (sculpt === null || edges.length === 0) return;
  bench.run(removeSeamEdges(filePairs(sculpt, edges), mergeKey));
  bench.say(WORDS.spoken.joined(edges.length));
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

/** Parts along the shortest way between two corners. @returns false when there is none. */
export async function partPath(bench: Workbench, from: number, to: number): Promise<boolean> {
  const edges = await pathEdges(bench, from, to, true);
  if (edges === null) return false;
  partEdges(bench, edges);
  return true;
}

/** Edges of the shortest way between two corners. @param tell whether a problem is shown or only hovered over. */
export async function pathEdges(bench: Workbench, from: number, to: number, tell = false): Promise<number[] | null> {
  const path = await bench.workshop.edgePath(from, to);
  const { sculpt } = bench.bench;
  if (!path.ok || sculpt === null) {
    if (!path.ok && tell) bench.showProblem(path.problem);
    return null;
  }
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

/**
 * Makes the chosen seam butt or lap.
 * @param lapSide side of the seam that carries the lap, 0 or 1.
 */
export function setChosenSeam(bench: Workbench, kind: 'butt' | 'lap', allowanceMm: number, lapSide: 0 | 1 = 0): void {
  const { choice } = bench.view;
  const { sculpt, seams } = bench.bench;
  if (choice.kind !== 'seam' || sculpt === null || seams === null) return;
  const chain = chainIndex(bench.bench, choice.seam);
  const [edge] = edgesOfChain(bench.bench, chain);
  if (edge === undefined) return;
  const [pair] = filePairs(sculpt, [edge]);
  bench.run(setSeamKind(pair, kind, allowanceMm, kind === 'lap' ? faceOnSide(bench, chain, lapSide) : undefined));
}

/** A polygon of the sculpt in the piece on one side of a seam. */
function faceOnSide(bench: Workbench, chain: number, side: 0 | 1): number | undefined {
  const { sculpt, seams, pieces } = bench.bench;
  const patch = seams?.chains[chain].sides[side]?.patch;
  const triangle = patch === undefined ? undefined : pieces?.patches[patch]?.meshTriangles[0];
  return triangle === undefined ? undefined : sculpt?.faceOfTriangle[triangle];
}
