import { QUIET_WORK } from '../../../src/base/work.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { topologyOf } from '../../../src/mesh/topology.ts';
import type { FlatPiece } from '../../../src/model/flat-piece.ts';
import type { Patch } from '../../../src/model/patch.ts';
import { cutPatches } from '../../../src/steps/cut/cut-patches.ts';
import { flattenPatch } from '../../../src/steps/flatten/flatten-patch.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { readTestObj } from '../../support/read-test-obj.ts';

/** The mesh as one patch, cut along the given pairs of vertices. */
export function onePatch(mesh: Mesh, seams: readonly (readonly [number, number])[] = []): Patch {
  const topology = topologyOf(mesh);
  const isSeam = new Uint8Array(topology.edgeCount);
  for (const [v, w] of seams) isSeam[topology.edgeBetween(v, w)] = 1;
  const { patches } = cutPatches(mesh, { isSeam, count: seams.length }, mesh.positions);
  if (patches.length !== 1) throw new Error(`${patches.length} patches`);
  return patches[0];
}

export async function flatten(mesh: Mesh, seams: readonly (readonly [number, number])[] = []): Promise<FlatPiece> {
  return expectOk(await flattenPatch(onePatch(mesh, seams), mesh.positions, {}, QUIET_WORK));
}

export const referencePatch = (name: string): Mesh =>
  readTestObj(new URL(`../../reference/flatten/${name}.obj`, import.meta.url));

/** Sorted distances of all corners from the middle of the area: the same for a shape however it lies and is numbered. */
export function fingerprint(uv: Float64Array): number[] {
  return Array.from({ length: uv.length / 2 }, (_, i) => Math.hypot(uv[2 * i], uv[2 * i + 1])).sort((a, b) => a - b);
}

/** All border edges of a patch as pairs of local vertices. */
export const rimEdges = (patch: Patch): Uint32Array =>
  Uint32Array.from(patch.loops.flatMap((loop) => Array.from(loop).flatMap((v, i) => [v, loop[(i + 1) % loop.length]])));
