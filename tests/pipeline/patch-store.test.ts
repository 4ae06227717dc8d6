import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { FlatPiece } from '../../src/model/flat-piece.ts';
import type { Patch } from '../../src/model/patch.ts';
import { PatchStore } from '../../src/pipeline/patch-store.ts';
import { flattenPatch } from '../../src/steps/flatten/flatten-patch.ts';
import { countFlips } from '../../src/steps/flatten/flips.ts';
import { expectOk } from '../support/expect-ok.ts';
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

describe('patches of one sculpt on another mesh', () => {
  // The same square, its corners numbered from 4 on behind some of another line.
  const other = meshOf(
    [...[0, 1, 2, 3].map((x): [number, number, number] => [9, 9, x]), [0, 0, 0], [1, 0, 0], [1, 1, 0], [0, 1, 0]],
    [
      [0, 1, 2],
      [4, 5, 6, 7],
    ],
  );
  const moved: Patch = {
    ...patchOf([[0, 1, 2, 3]]),
    meshTriangles: Uint32Array.from([1, 2]),
    meshVertices: Uint32Array.from([4, 5, 6, 7]),
  };
  const flat = { uv: Float64Array.from([0, 0, 1, 0, 1, 1, 0, 1]) } as FlatPiece;

  it('are other objects with the same flat results where they lie in the same places', () => {
    const store = new PatchStore();
    const [first] = store.settle(MESH, [patchOf([[0, 1, 2, 3]])], MESH);
    store.keep(first, MESH.positions, 'plain', flat);
    const [again] = store.settle(other, [moved], MESH);
    expect(again).toBe(moved);
    expect(store.flatOf(again, other.positions, 'plain')).toBe(flat);
    expect(store.flatOf(again, other.positions, 'even')).toBeUndefined();
  });

  it('know nothing where a corner lies elsewhere, or the sculpt is another', () => {
    const store = new PatchStore();
    const [first] = store.settle(MESH, [patchOf([[0, 1, 2, 3]])], MESH);
    store.keep(first, MESH.positions, 'plain', flat);
    const bent = { ...other, positions: other.positions.map((x, i) => (i === 23 ? 0.5 : x)) };
    const [elsewhere] = store.settle(bent, [moved], MESH);
    expect(store.flatOf(elsewhere, bent.positions, 'plain')).toBeUndefined();
    const [foreign] = store.settle(other, [moved], other);
    expect(store.flatOf(foreign, other.positions, 'plain')).toBeUndefined();
  });

  it('are a start for each other by the triangles that both have', () => {
    const store = new PatchStore();
    const [first] = store.settle(MESH, [patchOf([[0, 1, 2, 3]])], MESH);
    store.keep(first, MESH.positions, 'plain', flat);
    // A mesh of which the second triangle alone was cut: its number is that of another triangle now.
    const cut = meshOf(
      [
        [0, 0, 0],
        [1, 0, 0],
        [1, 1, 0],
        [0, 1, 0],
        [0.5, 1, 0],
      ],
      [
        [0, 1, 2],
        [0, 2, 4],
        [0, 4, 3],
      ],
    );
    const whole: Patch = {
      ...patchOf([[0, 1, 2, 4, 3]]),
      meshTriangles: Uint32Array.from([0, 1, 2]),
      triangles: Uint32Array.from([0, 1, 2, 0, 2, 4, 0, 4, 3]),
      meshVertices: Uint32Array.from([0, 1, 2, 3, 4]),
    };
    const [settled] = store.settle(cut, [whole], MESH);
    const start = store.startFor(settled, cut.positions) ?? new Float64Array(0);
    expect(Array.from(start, (x) => Number(x.toFixed(6)))).toEqual([0, 0, 1, 0, 1, 1, 0, 1, 0.5, 1]);
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
    expect(store.flatOf(patch, surface.slice(), 'plain')).toBe(flat);
    expect(store.flatOf(patch, surface.slice(), 'plain', false)).toBeUndefined();
    expect(
      store.flatOf(
        patch,
        surface.map((x) => 2 * x),
        'plain',
      ),
    ).toBeUndefined();
    expect(store.startFor(patch, surface)).toBe(flat.uv);
  });
});

describe('where to start from', () => {
  const part = (patch: Patch, t: number): Patch => ({
    ...patch,
    meshTriangles: patch.meshTriangles.slice(t, t + 1),
    triangles: Uint32Array.from([0, 1, 2]),
    meshVertices: patch.triangles.slice(3 * t, 3 * t + 3),
    loops: [Uint32Array.from([0, 1, 2])],
  });

  it('is the last flat shape of a patch, else that of the patch of which it was a part, and nothing on another mesh', async () => {
    const store = new PatchStore();
    const [whole] = store.settle(MESH, [patchOf([[0, 1, 2, 3]])]);
    expect(store.startFor(whole, MESH.positions)).toBeUndefined();
    const flat = expectOk(await flattenPatch(whole, MESH.positions, {}, QUIET_WORK));
    store.keep(whole, MESH.positions, '', flat);
    expect(store.startFor(whole, MESH.positions)).toBe(flat.uv);
    const [half] = store.settle(MESH, [part(whole, 1)]);
    expect(Array.from(store.startFor(half, MESH.positions) ?? [], (x) => x.toFixed(9))).toEqual(
      Array.from(half.meshVertices).flatMap((v) => [flat.uv[2 * v].toFixed(9), flat.uv[2 * v + 1].toFixed(9)]),
    );
    const other = { ...MESH };
    const [unknown] = store.settle(other, [part(whole, 1)]);
    expect(store.startFor(unknown, other.positions)).toBeUndefined();
  });

  it('joins what two patches gave', async () => {
    const store = new PatchStore();
    const whole = patchOf([[0, 1, 2, 3]]);
    for (const half of store.settle(MESH, [part(whole, 0), part(whole, 1)])) {
      store.keep(half, MESH.positions, '', expectOk(await flattenPatch(half, MESH.positions, {}, QUIET_WORK)));
    }
    const [joined] = store.settle(MESH, [whole]);
    const start = store.startFor(joined, MESH.positions);
    expect(start).toHaveLength(8);
    if (start !== undefined) expect(countFlips(whole.triangles, start)).toBe(0);
  });
});
