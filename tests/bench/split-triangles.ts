import type { Mesh } from '../../src/mesh/mesh.ts';
import { nextHalfedge, topologyOf } from '../../src/mesh/topology.ts';

/**
 * Every triangle parted into `parts` squared alike ones; the surface stays where it is, so each old triangle stays flat.
 *
 *            c
 *           / \          parts 3: two new points on each side,
 *          .---.         one inside
 *         / \ / \
 *        .---.---.
 *       / \ / \ / \
 *      a---.---.---b
 *
 * @param parts  whole number, >= 1.
 */
export function splitTriangles(mesh: Mesh, parts: number): Mesh {
  const { edgeCount, edgeVertices, edgeOfHalfedge } = topologyOf(mesh);
  const { positions: old, triangles } = mesh;
  const [oldCount, triangleCount] = [old.length / 3, triangles.length / 3];
  const [perEdge, perTriangle] = [parts - 1, ((parts - 1) * (parts - 2)) / 2];
  const firstInside = oldCount + perEdge * edgeCount;
  const positions = new Float64Array(3 * (firstInside + perTriangle * triangleCount));
  positions.set(old);
  const blend = (point: number, corners: readonly (readonly [vertex: number, share: number])[]): void => {
    for (let axis = 0; axis < 3; axis += 1) {
      positions[3 * point + axis] = corners.reduce((sum, [v, share]) => sum + share * old[3 * v + axis], 0) / parts;
    }
  };
  for (let e = 0; e < edgeCount; e += 1) {
    const [v, w] = [edgeVertices[2 * e], edgeVertices[2 * e + 1]];
    for (let i = 1; i < parts; i += 1) {
      blend(oldCount + perEdge * e + i - 1, [
        [v, parts - i],
        [w, i],
      ]);
    }
  }
  /** Point at `i` steps from the corner the half-edge leaves. */
  const onSide = (h: number, i: number): number => {
    if (i === 0) return triangles[h];
    if (i === parts) return triangles[nextHalfedge(h)];
    const e = edgeOfHalfedge[h];
    return oldCount + perEdge * e + (edgeVertices[2 * e] === triangles[h] ? i : parts - i) - 1;
  };
  const split = new Uint32Array(3 * parts * parts * triangleCount);
  let next = 0;
  for (let t = 0; t < triangleCount; t += 1) {
    let inside = firstInside + perTriangle * t;
    const grid = new Map<number, number>();
    const key = (i: number, j: number): number => i * (parts + 1) + j;
    for (let j = 0; j <= parts; j += 1) {
      for (let i = 0; i + j <= parts; i += 1) {
        if (j === 0) grid.set(key(i, j), onSide(3 * t, i));
        else if (i === 0) grid.set(key(i, j), onSide(3 * t + 2, parts - j));
        else if (i + j === parts) grid.set(key(i, j), onSide(3 * t + 1, j));
        else {
          blend(inside, [
            [triangles[3 * t], parts - i - j],
            [triangles[3 * t + 1], i],
            [triangles[3 * t + 2], j],
          ]);
          grid.set(key(i, j), inside);
          inside += 1;
        }
      }
    }
    const at = (i: number, j: number): number => grid.get(key(i, j)) ?? 0;
    for (let j = 0; j < parts; j += 1) {
      for (let i = 0; i + j < parts; i += 1) {
        split.set([at(i, j), at(i + 1, j), at(i, j + 1)], next);
        next += 3;
        if (i + j + 1 === parts) continue;
        split.set([at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)], next);
        next += 3;
      }
    }
  }
  return plainMesh(positions, split);
}

/** Every vertex moved straight out or in to a sphere round the origin: a split hemisphere gets its curve back. */
export function ontoSphere(mesh: Mesh, radius: number): Mesh {
  const positions = mesh.positions.slice();
  for (let i = 0; i < positions.length; i += 3) {
    const factor = radius / Math.hypot(positions[i], positions[i + 1], positions[i + 2]);
    for (let axis = 0; axis < 3; axis += 1) positions[i + axis] *= factor;
  }
  return plainMesh(positions, mesh.triangles);
}

function plainMesh(positions: Float64Array, triangles: Uint32Array): Mesh {
  const fileVertex = Uint32Array.from({ length: positions.length / 3 }, (_, v) => v);
  const faceCount = triangles.length / 3;
  return {
    positions,
    triangles,
    faceOfTriangle: Uint32Array.from({ length: faceCount }, (_, f) => f),
    faceCount,
    fileVertex,
    vertexOfFile: Int32Array.from(fileVertex),
    groupNames: [],
    groupOfFace: new Int32Array(faceCount).fill(-1),
  };
}
