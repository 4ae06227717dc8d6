import { describe, expect, it } from 'vitest';
import { topologyOf } from '../../../src/mesh/topology.ts';
import { cutPatches, cutTriangles } from '../../../src/steps/cut/cut-patches.ts';
import { forAll } from '../../support/for-all.ts';
import { readTestObj } from '../../support/read-test-obj.ts';

describe('cutting some pieces anew', () => {
  it('gives the pieces that cutting the whole gives', () => {
    const mesh = readTestObj(new URL('../../reference/seam-shapes/helmet_low.obj', import.meta.url));
    const { edgeCount, twin, halfedgeOfEdge } = topologyOf(mesh);
    return forAll(
      (random) => Array.from({ length: edgeCount }, () => random()),
      (dice) => {
        const isSeam = Uint8Array.from(dice, (value, e) => (twin[halfedgeOfEdge[e]] >= 0 && value < 0.6 ? 1 : 0));
        const whole = cutPatches(mesh, { isSeam, count: 0 }, mesh.positions).patches;
        const every = Uint32Array.from({ length: mesh.triangles.length / 3 }, (_, t) => t);
        expect(cutTriangles(mesh, { isSeam }, mesh.positions, every)).toEqual(whole);
        const some = whole.filter((_, i) => dice[i] < 0.4);
        const triangles = Uint32Array.from(some.flatMap(({ meshTriangles }) => Array.from(meshTriangles))).sort();
        expect(cutTriangles(mesh, { isSeam }, mesh.positions, triangles)).toEqual(some);
      },
    );
  });
});
