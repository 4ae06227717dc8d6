import { QUIET_WORK } from '../../../src/base/work.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { topologyOf } from '../../../src/mesh/topology.ts';
import { propose } from '../../../src/pipeline/propose/propose.ts';
import { REFERENCE_LIMITS, type Proposal, type ProposalWish } from '../../../src/pipeline/propose/proposal.ts';
import { readTestObj } from '../../support/read-test-obj.ts';

/** One of the eight shapes made for seams, numbers as in its file. */
export const shape = (name: string): Mesh =>
  readTestObj(new URL(`../../reference/seam-shapes/${name}.obj`, import.meta.url));

export type Given = Partial<ProposalWish> & Pick<ProposalWish, 'mesh'>;

export const wishFor = (given: Given): ProposalWish => ({
  positions: given.mesh.positions,
  limits: REFERENCE_LIMITS,
  dial: 'few',
  seed: 1,
  ...given,
});

/** The search, stopped when it has asked so many times. */
export async function seek(given: Given, moves: number): Promise<{ last: Proposal; all: Proposal[] }> {
  const all: Proposal[] = [];
  let asked = 0;
  const last = await propose(
    wishFor(given),
    QUIET_WORK,
    (better) => all.push(better),
    () => (asked += 1) > moves,
  );
  return { last, all };
}

/** 1 per edge that is named by its two vertices. */
export function edgesOf(mesh: Mesh, pairs: readonly (readonly [number, number])[]): Uint8Array {
  const topology = topologyOf(mesh);
  const edges = new Uint8Array(topology.edgeCount);
  for (const [v, w] of pairs) {
    const e = topology.edgeBetween(v, w);
    if (e < 0) throw new Error(`no edge ${v} ${w}`);
    edges[e] = 1;
  }
  return edges;
}
