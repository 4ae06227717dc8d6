import { Matrix4, PerspectiveCamera, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import { nearestEdge, Projection } from '../../src/viewport/edge-finder.ts';
import { hitCorners } from '../../src/viewport/ray.ts';
import { edgeBetween, halfedgeFrom, indexSculpt } from '../../src/viewport/sculpt-index.ts';
import { boxMesh } from '../support/meshes.ts';
import { sculptView } from './sculpt-views.ts';

const sculpt = sculptView(boxMesh(100));
const index = await indexSculpt(sculpt, QUIET_WORK);
const corners = Float32Array.from(
  [...sculpt.triangles].flatMap((v) => [...sculpt.positions.subarray(3 * v, 3 * v + 3)]),
);

const camera = new PerspectiveCamera(30, 1, 1, 2000);
camera.position.set(50, 50, 600);
camera.lookAt(50, 50, 0);
camera.updateMatrixWorld();
const projection = new Projection(
  new Matrix4().multiplyMatrices(camera.projectionMatrix, camera.matrixWorldInverse),
  400,
  400,
);

describe('the index of a sculpt', () => {
  it('knows every edge from both sides', () => {
    for (let e = 0; e < sculpt.edgeIsOpen.length; e += 1) {
      const [v, w] = [sculpt.edgeVertices[2 * e], sculpt.edgeVertices[2 * e + 1]];
      expect(edgeBetween(index, sculpt.edgeVertices, w, v)).toBe(e);
      const [g, h] = [halfedgeFrom(index, sculpt.triangles, e, v), halfedgeFrom(index, sculpt.triangles, e, w)];
      expect(sculpt.triangles[g]).toBe(v);
      expect(sculpt.triangles[h]).toBe(w);
      expect(index.edgeOfHalfedge[g]).toBe(e);
      expect(index.edgeOfHalfedge[h]).toBe(e);
    }
  });
});

describe('the edge under the pointer', () => {
  // The front face (z 100) is seen from (0, 0) at lower left to (100, 100) at upper right.
  const front = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11].filter((t) =>
    [0, 1, 2].every((k) => sculpt.positions[3 * sculpt.triangles[3 * t + k] + 2] === 100),
  );
  const screen = (x: number, y: number) => projection.at([x, y, 100], 0) ?? { x: NaN, y: NaN };
  const under = (x: number, y: number): number =>
    hitCorners(new Vector3(x, y, 500), new Vector3(0, 0, -1), corners, null, 0, Infinity)?.triangle ?? -1;
  const find = (x: number, y: number, isAllowed = (e: number) => sculpt.edgeIsDiagonal[e] === 0) =>
    nearestEdge(screen(x, y), under(x, y), corners, sculpt.triangles, index, projection, 12, isAllowed, () => true);

  it('is found all round a face', () => {
    // Corner numbers are x + 2 y + 4 z.
    for (const [x, y, v, w] of [
      [50, 2, 4, 5],
      [98, 50, 5, 7],
      [50, 98, 6, 7],
      [2, 50, 4, 6],
    ]) {
      expect(find(x, y)?.edge).toBe(edgeBetween(index, sculpt.edgeVertices, v, w));
    }
  });

  it('is none far from all edges, and never a diagonal', () => {
    expect(find(50, 50)).toBeNull();
    expect(find(50, 50, () => true)?.edge).toBe(edgeBetween(index, sculpt.edgeVertices, 4, 7));
  });

  it('is not sought over triangles that may not be walked', () => {
    const alone = nearestEdge(
      screen(98, 50),
      front[0],
      corners,
      sculpt.triangles,
      index,
      projection,
      12,
      (e) => sculpt.edgeIsDiagonal[e] === 0,
      (t) => t === front[0],
    );
    const other = nearestEdge(
      screen(98, 50),
      front[1],
      corners,
      sculpt.triangles,
      index,
      projection,
      12,
      (e) => sculpt.edgeIsDiagonal[e] === 0,
      (t) => t === front[1],
    );
    expect([alone, other].filter((found) => found !== null)).toHaveLength(1);
  });
});

describe('a ray', () => {
  it('meets the nearest triangle', () => {
    const hit = hitCorners(new Vector3(30, 20, 500), new Vector3(0, 0, -1), corners, null, 0, Infinity);
    expect(hit?.distance).toBeCloseTo(400, 6);
    const from = hitCorners(new Vector3(30, 20, 50), new Vector3(0, 0, -1), corners, null, 0, Infinity);
    expect(from?.distance).toBeCloseTo(50, 6);
  });

  it('passes by, and heeds the list and the limit', () => {
    const [origin, way] = [new Vector3(30, 20, 500), new Vector3(0, 0, -1)];
    expect(hitCorners(new Vector3(130, 20, 500), way, corners, null, 0, Infinity)).toBeNull();
    expect(hitCorners(origin, way, corners, null, 0, 399)).toBeNull();
    const front = hitCorners(origin, way, corners, null, 0, Infinity)?.triangle ?? -1;
    const others = Uint32Array.from({ length: 12 }, (_, t) => t).filter((t) => t !== front);
    expect(hitCorners(origin, way, corners, others, 0, Infinity)?.distance).toBeCloseTo(500, 6);
  });
});
