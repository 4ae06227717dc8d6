import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';
import { topologyOf } from '../../src/mesh/topology.ts';
import { easeOverlap, type LayTrial } from '../../src/pipeline/ease-overlap.ts';
import { cutPatches } from '../../src/steps/cut/cut-patches.ts';
import { flattenPatch } from '../../src/steps/flatten/flatten-patch.ts';
import { coneHookMesh, rampMesh } from '../support/curled-meshes.ts';
import { flatten, onePatch } from '../steps/flatten/flatten-support.ts';

const layFlatOn =
  (mesh: Mesh): LayTrial =>
  async (patch, look, work) => {
    const result = await flattenPatch(patch, mesh.positions, look, work);
    return result.ok ? result.value : null;
  };

/** The offer for a mesh that is one patch, and how the pieces lie once it is accepted. */
async function eased(mesh: Mesh) {
  const flat = await flatten(mesh);
  const offer = await easeOverlap(0, onePatch(mesh), flat, mesh.positions, layFlatOn(mesh), QUIET_WORK);
  if (offer === null) return { flat, offer, pieces: [] };
  const topology = topologyOf(mesh);
  const isSeam = new Uint8Array(topology.edgeCount);
  for (const [v, w] of offer.edges) isSeam[topology.edgeBetween(v, w)] = 1;
  const { patches } = cutPatches(mesh, { isSeam, count: offer.edges.length }, mesh.positions);
  const pieces = await Promise.all(patches.map((patch) => layFlatOn(mesh)(patch, { quality: 'full' }, QUIET_WORK)));
  return { flat, offer, pieces };
}

describe('easeOverlap', () => {
  it('offers nothing where nothing lies double', async () => {
    expect((await eased(rampMesh(0.8, 32))).offer).toBeNull();
  });

  it('parts a ramp of a turn and a third across one rung', async () => {
    const { flat, offer, pieces } = await eased(rampMesh(1.3, 52));
    expect(flat.energy).toBeCloseTo(4, 9);
    expect(flat.overlaps.length).toBeGreaterThan(0);
    expect(offer).toMatchObject({ patch: 0, edges: [[52, 53]] });
    expect(offer?.lengthMm).toBeCloseTo(20, 9);
    expect(pieces.map((piece) => piece?.overlaps)).toEqual([[], []]);
  });

  it('takes as few cuts as a ramp of two turns and a half needs', async () => {
    const { offer, pieces } = await eased(rampMesh(2.6, 104));
    expect(offer?.edges).toHaveLength(2);
    expect(pieces).toHaveLength(3);
    expect(pieces.every((piece) => piece?.overlaps.length === 0)).toBe(true);
  });

  it('slits a hook on a cone instead of parting it: shorter, and one piece', async () => {
    const { flat, offer, pieces } = await eased(coneHookMesh(1, 0.15));
    expect(flat.overlaps.length).toBeGreaterThan(0);
    expect(offer?.lengthMm).toBeLessThan(12.5); // the band is 20 mm wide
    expect(pieces.map((piece) => piece?.overlaps)).toEqual([[]]);
  });

  it('stops when the work is called off', async () => {
    const mesh = rampMesh(1.3, 52);
    const patch = onePatch(mesh);
    const flat = await flatten(mesh);
    const calledOff = {
      pause: () => {
        throw new Error('called off');
      },
    };
    await expect(easeOverlap(0, patch, flat, mesh.positions, layFlatOn(mesh), calledOff)).rejects.toThrow('called off');
  });
});
