import { describe, expect, it } from 'vitest';
import type { FlatPiece } from '../../src/model/flat-piece.ts';
import type { Patch } from '../../src/model/patch.ts';
import { PatchStore } from '../../src/pipeline/patch-store.ts';
import { meshOf } from '../support/meshes.ts';

/** Two triangles; the store looks at numbers only. */
const MESH = meshOf(
  [
    [0, 0, 0],
    [1, 0, 0],
    [1, 1, 0],
    [0, 1, 0],
  ],
  [[0, 1, 2, 3]],
);

const patchOf = (loops: readonly (readonly number[])[]): Patch => ({
  meshTriangles: Uint32Array.from([0, 1]),
  triangles: Uint32Array.from([0, 1, 2, 0, 2, 3]),
  meshVertices: Uint32Array.from([0, 1, 2, 3]),
  loops: loops.map((loop) => Uint32Array.from(loop)),
  euler: 1,
  kind: 'disc',
  findings: [],
});

describe('patches that were seen before', () => {
  it('come back as the same object', () => {
    const store = new PatchStore();
    const [first] = store.settle(MESH, [patchOf([[0, 1, 2, 3]])]);
    const [again] = store.settle(MESH, [patchOf([[0, 1, 2, 3]])]);
    expect(again).toBe(first);
  });

  it('do not hide a slit of one edge, which changes no number', () => {
    const store = new PatchStore();
    const [whole] = store.settle(MESH, [patchOf([[0, 1, 2, 3]])]);
    const [slit] = store.settle(MESH, [
      patchOf([
        [0, 1, 2, 3],
        [0, 2],
      ]),
    ]);
    expect(slit).not.toBe(whole);
    expect(slit.loops).toHaveLength(2);
    expect(store.settle(MESH, [patchOf([[0, 1, 2, 3]])])[0]).toBe(whole);
  });
});

describe('flat results', () => {
  const surface = Float64Array.from([0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 1, 0]);
  const flat = { uv: Float64Array.from([0, 0, 1, 0, 1, 1, 0, 1]) } as FlatPiece;

  it('stand for the surface and the wishes they were made by, and are a start for any other', () => {
    const store = new PatchStore();
    const [patch] = store.settle(MESH, [patchOf([[0, 1, 2, 3]])]);
    store.keep(patch, surface, 'plain', flat);
    expect(store.flatOf(patch, surface, 'plain')).toBe(flat);
    expect(store.flatOf(patch, surface, 'even')).toBeUndefined();
    expect(store.flatOf(patch, surface.slice(), 'plain')).toBeUndefined();
    expect(store.startFor(patch)).toBe(flat.uv);
  });
});
