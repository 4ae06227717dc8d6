import { describe, expect, it } from 'vitest';
import { diagonalEdges } from '../../../src/mesh/edge-fold.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { topologyOf } from '../../../src/mesh/topology.ts';
import { areaBorder, facesOfGroup, fileGroups } from '../../../src/steps/seams/area-border.ts';
import { edgePath, handPath, type HandWish } from '../../../src/steps/seams/edge-path.ts';
import { clearEdges } from '../../../src/steps/seams/edge-weights.ts';
import { followRidge, followRound } from '../../../src/steps/seams/follow-line.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { forAll } from '../../support/for-all.ts';
import { boxMesh, meshOf, torusMesh, tubeMesh } from '../../support/meshes.ts';

const edge = (mesh: Mesh, v: number, w: number): number => topologyOf(mesh).edgeBetween(v, w);
const vertices = (mesh: Mesh, edges: readonly number[]): Set<number> =>
  new Set(edges.flatMap((e) => [...topologyOf(mesh).edgeVertices.subarray(2 * e, 2 * e + 2)]));

/** A square grid of quads, n by n, over a height. */
function gridMesh(n: number, height: (x: number, y: number) => number = () => 0): Mesh {
  const points = Array.from({ length: (n + 1) ** 2 }, (_, i): [number, number, number] => {
    const [x, y] = [i % (n + 1), Math.floor(i / (n + 1))];
    return [x, y, height(x, y)];
  });
  const faces = Array.from({ length: n * n }, (_, i) => {
    const at = Math.floor(i / n) * (n + 1) + (i % n);
    return [at, at + 1, at + n + 2, at + n + 1];
  });
  return meshOf(points, faces);
}

describe('followRound', () => {
  it('goes round a torus both ways and closes', () => {
    const mesh = torusMesh(12, 7, 30, 10);
    const lengths = new Set<number>();
    const { edgeCount } = topologyOf(mesh);
    const isDiagonal = diagonalEdges(mesh);
    for (let e = 0; e < edgeCount; e += 1) {
      if (isDiagonal[e] === 1) continue;
      const line = followRound(mesh, e);
      expect(new Set(line).size).toBe(line.length);
      expect(vertices(mesh, line).size).toBe(line.length);
      lengths.add(line.length);
    }
    expect([...lengths].sort((a, b) => a - b)).toEqual([7, 12]);
  });

  it('runs from rim to rim across a grid, and is the same from each of its edges', async () => {
    const mesh = gridMesh(6);
    const line = followRound(mesh, edge(mesh, 7 * 3, 7 * 3 + 1));
    expect(vertices(mesh, line)).toEqual(new Set([21, 22, 23, 24, 25, 26, 27]));
    await forAll(
      (rand) => line[Math.floor(rand() * line.length)],
      (e) => expect(new Set(followRound(mesh, e))).toEqual(new Set(line)),
    );
  });

  it('stops at the corner of a box, where nothing goes straight on', () => {
    const mesh = boxMesh(10);
    expect(followRound(mesh, edge(mesh, 0, 1))).toHaveLength(1);
  });
});

describe('followRidge', () => {
  // A roof whose ridge is folded by 90 degrees up to x = 4 and gets blunter from there, to 77 degrees at x = 8.
  const roof = gridMesh(8, (x, y) => (4 - Math.abs(y - 4)) * Math.min(1, 1.2 - 0.05 * x));
  const ridge = edge(roof, 9 * 4 + 1, 9 * 4 + 2);

  it('goes as far as it stays sharper than the angle', () => {
    expect(vertices(roof, followRidge(roof, ridge, (85 * Math.PI) / 180))).toEqual(new Set([36, 37, 38, 39, 40, 41]));
    expect(followRidge(roof, ridge, (70 * Math.PI) / 180)).toHaveLength(8);
  });

  it('is nothing where the edge itself is not so sharp', () => {
    expect(followRidge(roof, ridge, (100 * Math.PI) / 180)).toEqual([]);
    expect(followRidge(roof, edge(roof, 10, 11), 0.3)).toEqual([]);
  });

  it('stops at the corner of a box', () => {
    const mesh = boxMesh(10);
    expect(followRidge(mesh, edge(mesh, 0, 1), 0.5)).toHaveLength(1);
  });
});

describe('handPath', () => {
  it('keeps to a valley beside the straight way', () => {
    // A trough along y = 3; between corners on y = 5 the way is shorter straight, and cheaper through the trough.
    const mesh = gridMesh(24, (_, y) => (y === 3 ? -0.4 : 0));
    const inTrough = (path: readonly number[]): number => path.filter((v) => Math.floor(v / 25) === 3).length;
    expect(inTrough(expectOk(handPath(mesh, 125, 149)))).toBeGreaterThan(20);
    expect(inTrough(expectOk(edgePath(mesh, 125, 149)))).toBe(0);
  });

  it('turns once on flat ground instead of going up steps', () => {
    const path = expectOk(handPath(gridMesh(8), 0, 80));
    const turns = path.filter((v, i) => i > 0 && i + 1 < path.length && path[i + 1] - v !== v - path[i - 1]);
    expect(path).toHaveLength(17);
    expect(turns).toHaveLength(1);
  });

  it('never costs more edges than corners there are, ends where it should and takes edges only', async () => {
    const mesh = torusMesh(14, 9, 30, 10);
    const count = mesh.positions.length / 3;
    await forAll(
      (rand) => [Math.floor(rand() * count), Math.floor(rand() * count)] as const,
      ([from, to]) => {
        const path = expectOk(handPath(mesh, from, to));
        expect([path[0], path.at(-1)]).toEqual([from, to]);
        expect(new Set(path).size).toBe(path.length);
        path.slice(1).forEach((v, i) => expect(edge(mesh, path[i], v)).toBeGreaterThanOrEqual(0));
      },
    );
  });

  it('goes where the hand came by, of ways that cost the same', () => {
    const mesh = gridMesh(4);
    for (const trail of [
      [5, 10, 15, 20, 21, 22, 23],
      [1, 2, 3, 4, 9, 14, 19],
    ])
      expect(new Set(expectOk(handPath(mesh, 0, 24, { trail: new Set(trail) })))).toEqual(new Set([0, ...trail, 24]));
  });

  it('goes round an area that is kept clear where it can, and through it only where it begins or ends there', () => {
    const mesh = gridMesh(8);
    // The middle block of 4 by 4 squares; its border may be a seam.
    const faces = [...mesh.faceOfTriangle.keys()]
      .filter((t) =>
        [0, 1, 2].every((k) => {
          const v = mesh.triangles[3 * t + k];
          return [v % 9, Math.floor(v / 9)].every((at) => at >= 2 && at <= 6);
        }),
      )
      .map((t) => mesh.faceOfTriangle[t]);
    const clear = clearEdges(mesh, [{ faces, seams: 'clear' }]);
    const isInside = (v: number): boolean => [v % 9, Math.floor(v / 9)].every((at) => at > 2 && at < 6);
    const across = (wish: HandWish): number => expectOk(handPath(mesh, 36, 44, wish)).filter(isInside).length;
    expect(across({})).toBe(3);
    expect(across({ clear })).toBe(0);
    expect(expectOk(handPath(mesh, 40, 44, { clear })).filter(isInside)).toEqual([40, 41]);
  });

  it('stays off closed edges, and says so where no way is left', () => {
    const mesh = gridMesh(4);
    const closed = edge(mesh, 11, 12);
    const path = expectOk(handPath(mesh, 10, 14, { isOpenTo: (e) => e !== closed }));
    expect(path).not.toEqual([10, 11, 12, 13, 14]);
    const result = handPath(mesh, 10, 14, { isOpenTo: () => false });
    expect(!result.ok && result.problem.code).toBe('seams/no-path');
  });
});

describe('borders', () => {
  it('of one side of a box is its four edges', () => {
    const mesh = boxMesh(10);
    const border = areaBorder(mesh, [2]);
    expect(border).toHaveLength(4);
    expect(vertices(mesh, border).size).toBe(4);
    expect(new Set(areaBorder(mesh, [0, 1, 3, 4, 5]))).toEqual(new Set(border));
  });

  it('of all there is, is none; open edges are none', () => {
    expect(
      areaBorder(
        tubeMesh(8, 10, 20),
        Array.from({ length: 8 }, (_, i) => i),
      ),
    ).toEqual([]);
  });

  it('groups are offered that have something beside them', () => {
    const mesh = { ...boxMesh(10), groupNames: ['lid', 'rest', 'empty'], groupOfFace: Int32Array.of(0, 1, 1, 1, 1, 1) };
    expect(fileGroups(mesh).map(({ name }) => name)).toEqual(['lid', 'rest']);
    expect(facesOfGroup(mesh, 0)).toEqual([0]);
    expect(fileGroups(boxMesh(10))).toEqual([]);
  });
});
