import { runWithPauses } from '../base/stepwise.ts';
import type { Work } from '../base/work.ts';
import { topologyOf, triangleOfHalfedge } from '../mesh/topology.ts';
import type { SeamCost } from '../model/seam-cost.ts';
import type { SeamChain, SeamSet } from '../model/seams.ts';
import { cutSteps } from '../steps/cut/cut-patches.ts';
import type { FoamGround } from './foam-ground.ts';
import type { CutSculpt } from './outcome.ts';
import { Judge } from './propose/judge.ts';

/** What seams are weighed on. */
export interface CostGround extends FoamGround {
  /** 1 per edge of the mesh whose seam is held: nothing is asked of it. */
  readonly held: Uint8Array;
}

/**
 * Joins each seam that is not held by itself and lays the piece that comes of it flat, in full, as pieces are: one that is folded along grooves on
 * its hinges.
 * @param ground of the sheet that was parted, on its mesh.
 * @param onCost called with each seam's cost as it is known, in the order of the seams.
 * @throws Cancelled when the work was called off.
 */
export async function seamCosts(
  { mesh, chains }: Pick<CutSculpt, 'mesh' | 'chains'>,
  { positions, limits, surfaceOf, held }: CostGround,
  work: Work,
  onCost: (cost: SeamCost) => void,
): Promise<void> {
  const topology = topologyOf(mesh);
  const judge = new Judge({ mesh, positions, limits, surfaceOf }, work);
  const parted = chains.filter(({ kind }) => kind !== 'open');
  const edgesOf = ({ vertices }: SeamChain): number[] =>
    Array.from(vertices.subarray(1), (v, i) => topology.edgeBetween(vertices[i], v)).filter((e) => e >= 0);
  const isSeam = new Uint8Array(topology.edgeCount);
  for (const chain of parted) for (const e of edgesOf(chain)) isSeam[e] = 1;
  for (const [i, chain] of parted.entries()) {
    await work.pause(i / parted.length);
    const own = edgesOf(chain);
    if (own.some((e) => held[e] === 1)) continue;
    const joined = isSeam.slice();
    for (const e of own) joined[e] = 0;
    const seams: SeamSet = { isSeam: joined, count: joined.reduce((sum, value) => sum + value, 0) };
    const cut = await runWithPauses(cutSteps(mesh, seams, positions), () => work.pause(i / parted.length));
    const patch = cut.patches[cut.patchOfTriangle[triangleOfHalfedge(topology.halfedgeOfEdge[own[0]])]];
    const key = `without ${chain.id}`;
    const verdict = await judge.confirm(key, await judge.judge(key, patch, [], Infinity));
    const [left, right] = [chain.sides[0].patch, (chain.sides[1] ?? chain.sides[0]).patch];
    onCost({
      seam: chain.id,
      patches: [left, right],
      lengthMm: lengthOf(positions, chain.vertices),
      stretchPct: verdict.uv === null ? null : verdict.stretch99,
      squashPct: verdict.uv === null ? null : verdict.squash99,
      overlaps: verdict.overlaps,
      sheetShare: verdict.sheetShare,
      isFeasible: verdict.badness === 0,
      badness: verdict.badness,
    });
  }
}

function lengthOf(positions: Float64Array, vertices: Uint32Array): number {
  let length = 0;
  for (let i = 1; i < vertices.length; i += 1) {
    const [a, b] = [3 * vertices[i - 1], 3 * vertices[i]];
    length += Math.hypot(
      positions[b] - positions[a],
      positions[b + 1] - positions[a + 1],
      positions[b + 2] - positions[a + 2],
    );
  }
  return length;
}
