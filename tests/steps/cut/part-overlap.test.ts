import { describe, expect, it } from 'vitest';
import { overlapPlaces } from '../../../src/geom/overlap-places.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { topologyOf } from '../../../src/mesh/topology.ts';
import { cutPatches } from '../../../src/steps/cut/cut-patches.ts';
import { cutPatchAgain } from '../../../src/steps/cut/patch-as-mesh.ts';
import { cutsForOverlap } from '../../../src/steps/cut/part-overlap.ts';
import { coneHookMesh, rampMesh, wideRampMesh } from '../../support/curled-meshes.ts';
import { boxMesh } from '../../support/meshes.ts';
import { flatten, onePatch } from '../flatten/flatten-support.ts';

async function cutsOf(mesh: Mesh) {
  const patch = onePatch(mesh);
  const { uv } = await flatten(mesh);
  const places = overlapPlaces(uv, patch.triangles);
  return { patch, place: places[0], places, cuts: cutsForOverlap(patch, mesh.positions, places[0]) };
}

describe('cutsForOverlap', () => {
  it('parts a ramp of more than a turn along one rung, in the middle between what lies on each other', async () => {
    const { cuts, places } = await cutsOf(rampMesh(1.3, 52));
    expect(places).toHaveLength(1);
    expect(cuts).toHaveLength(1); // without an inner vertex there is nowhere to slit
    expect(cuts[0]).toMatchObject({ kind: 'across', edges: [[52, 53]] });
    expect(cuts[0].lengthMm).toBeCloseTo(20, 9);
  });

  it('parts a wide ramp along a whole rung', async () => {
    const { cuts } = await cutsOf(wideRampMesh(1.3, 60, 4));
    expect(cuts[0].edges).toHaveLength(4);
    expect(cuts[0].lengthMm).toBeCloseTo(20, 9);
  });

  it('parts a whole turn off where the ramp winds over itself more than once', async () => {
    const { cuts } = await cutsOf(rampMesh(2.6, 104));
    expect(cuts[0].lengthMm).toBeCloseTo(20, 9);
    const rung = Math.floor(cuts[0].edges[0][0] / 2);
    expect(Math.max(rung, 104 - rung)).toBeGreaterThan(60); // of 40 rungs a turn, about one turn is parted off
  });

  it('leaves no pair of the place in one piece', async () => {
    const { patch, place, cuts } = await cutsOf(coneHookMesh(0.6, 0.15));
    const parts = cutPatchAgain(patch, cuts[0].edges, coneHookMesh(0.6, 0.15).positions);
    const partOf = new Map(parts.flatMap((part, i) => Array.from(part.patch.meshTriangles, (t) => [t, i] as const)));
    for (const [s, t] of place.pairs) {
      expect(partOf.get(patch.meshTriangles[s])).not.toBe(partOf.get(patch.meshTriangles[t]));
    }
  });

  it('offers slits that leave one piece, run from the border inwards, are shorter than the cut across and come in order', async () => {
    const mesh = coneHookMesh(0.6, 0.15);
    const { patch, cuts } = await cutsOf(mesh);
    const slits = cuts.slice(1);
    expect(slits.length).toBeGreaterThan(5);
    expect(slits.every(({ lengthMm }) => lengthMm <= cuts[0].lengthMm)).toBe(true);
    expect(slits.map(({ lengthMm }) => lengthMm)).toEqual(slits.map(({ lengthMm }) => lengthMm).sort((a, b) => a - b));
    for (const { kind, edges } of slits) {
      expect(kind).toBe('slit');
      const parts = cutPatchAgain(patch, edges, mesh.positions);
      expect(parts).toHaveLength(1);
      expect(parts[0].patch.kind).toBe('disc');
      expect(parts[0].patch.loops[0]).toHaveLength(patch.loops[0].length + 2 * edges.length);
    }
    // One leads to the tip of the cone, which is vertex 0.
    expect(slits.some(({ edges }) => edges.flat().includes(0))).toBe(true);
  });
});

describe('cutPatchAgain', () => {
  it('gives what cutting the whole sculpt along the same edges gives', () => {
    const box = boxMesh(10, 20, 30);
    const topology = topologyOf(box);
    const cut = (edges: readonly (readonly [number, number])[]) => {
      const isSeam = new Uint8Array(topology.edgeCount);
      for (const [v, w] of edges) isSeam[topology.edgeBetween(v, w)] = 1;
      return cutPatches(box, { isSeam, count: edges.length }, box.positions).patches;
    };
    const first = [[0, 2], [0, 1], [1, 5]] as const; // prettier-ignore
    const more = [[2, 6], [5, 7], [6, 7]] as const; // prettier-ignore
    const [patch] = cut(first);
    const localPairs = more.map(([v, w]) => [patch.meshVertices.indexOf(v), patch.meshVertices.indexOf(w)] as const);
    const again = cutPatchAgain(patch, localPairs, box.positions);
    expect(again.map((part) => part.patch)).toEqual(cut([...first, ...more]));
    for (const part of again) {
      expect([...part.localOf].map((v) => patch.meshVertices[v])).toEqual([...part.patch.meshVertices]);
    }
  });

  it('keeps a slit of one edge that was there before', () => {
    const mesh = wideRampMesh(0.2, 6, 4);
    const patch = onePatch(mesh, [[6, 7]]);
    expect(patch.kind).toBe('windowed');
    const [again, ...others] = cutPatchAgain(patch, [[10, 11]], mesh.positions);
    expect(others).toEqual([]);
    expect(again.patch.loops).toHaveLength(2);
    expect(again.patch.loops[1]).toHaveLength(2);
  });
});
