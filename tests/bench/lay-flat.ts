import { QUIET_WORK } from '../../src/base/work.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';
import { topologyOf } from '../../src/mesh/topology.ts';
import type { FlatPiece } from '../../src/model/flat-piece.ts';
import type { Patch } from '../../src/model/patch.ts';
import { cutPatches } from '../../src/steps/cut/cut-patches.ts';
import type { FlattenOptions } from '../../src/steps/flatten/flatten-options.ts';
import { flattenPatch } from '../../src/steps/flatten/flatten-patch.ts';
import { areaOf, checksumOf, joinFlats, type FlatFigures } from './flat-figures.ts';

/** Patches as they come from the cut: new objects each time, so that nothing is remembered of an earlier run. */
export function freshPatches(mesh: Mesh, seams: readonly (readonly [number, number])[]): readonly Patch[] {
  const topology = topologyOf(mesh);
  const isSeam = new Uint8Array(topology.edgeCount);
  for (const [v, w] of seams) isSeam[topology.edgeBetween(v, w)] = 1;
  return cutPatches(mesh, { isSeam, count: seams.length }, mesh.positions).patches;
}

/** One run of our own: from patches to flat pieces measured and searched for overlaps. */
export interface OurRun {
  readonly ms: number;
  readonly figures: FlatFigures;
  readonly checksum: string;
}

/**
 * Lays all patches of a surface flat.
 * @throws Error when one cannot be laid flat
 */
export async function layFlat(
  mesh: Mesh,
  seams: readonly (readonly [number, number])[],
  options: FlattenOptions = {},
): Promise<OurRun> {
  const patches = freshPatches(mesh, seams);
  const flats: FlatPiece[] = [];
  const began = performance.now();
  for (const patch of patches) {
    const result = await flattenPatch(patch, mesh.positions, options, QUIET_WORK);
    if (!result.ok) throw new Error(result.problem.text);
    flats.push(result.value);
  }
  const ms = performance.now() - began;
  const areas = patches.map(({ meshTriangles }) => areaOf(mesh.positions, mesh.triangles, meshTriangles));
  return { ms, figures: joinFlats(flats, areas), checksum: checksumOf(flats) };
}
