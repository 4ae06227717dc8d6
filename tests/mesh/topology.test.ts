import { describe, expect, it } from 'vitest';
import { foldBetween } from '../../src/mesh/measure.ts';
import { edgeFolds } from '../../src/mesh/edge-fold.ts';
import { nextHalfedge, originOf, topologyOf } from '../../src/mesh/topology.ts';
import { vec3 } from '../../src/geom/vec.ts';
import { boxMesh, meshOf, torusMesh } from '../support/meshes.ts';

describe('topologyOf', () => {
  it('pairs every half-edge of a closed surface with the one that runs against it', () => {
    const mesh = torusMesh(9, 7, 30, 10);
    const { twin, edgeCount } = topologyOf(mesh);
    expect(edgeCount).toBe((3 * mesh.triangles.length) / 3 / 2);
    twin.forEach((across, h) => {
      expect(twin[across]).toBe(h);
      expect(originOf(mesh.triangles, across)).toBe(originOf(mesh.triangles, nextHalfedge(h)));
    });
  });

  it('finds edges either way round and none that is not there', () => {
    const { edgeBetween, edgeVertices } = topologyOf(boxMesh(1));
    expect(edgeBetween(1, 0)).toBe(edgeBetween(0, 1));
    expect([...edgeVertices.subarray(2 * edgeBetween(5, 7), 2 * edgeBetween(5, 7) + 2)]).toEqual([5, 7]);
    expect([edgeBetween(0, 7), edgeBetween(0, 99), edgeBetween(-1, 0)]).toEqual([-1, -1, -1]);
  });

  it('leaves an edge of three faces, and one whose faces run the same way, open', () => {
    const three = meshOf(
      [
        [0, 0, 0],
        [1, 0, 0],
        [0, 1, 0],
        [0, -1, 0],
        [0, 0, 1],
      ],
      [
        [0, 1, 2],
        [1, 0, 3],
        [0, 1, 4],
      ],
    );
    const topology = topologyOf(three);
    expect(topology.usesOfEdge[topology.edgeBetween(0, 1)]).toBe(3);
    expect([...topology.twin]).toEqual(Array(9).fill(-1));
    const turned = topologyOf(
      meshOf(
        [
          [0, 0, 0],
          [1, 0, 0],
          [0, 1, 0],
          [0, -1, 0],
        ],
        [
          [0, 1, 2],
          [0, 1, 3],
        ],
      ),
    );
    expect([...turned.twin]).toEqual(Array(6).fill(-1));
  });
});

describe('foldBetween', () => {
  it('is positive over a ridge, negative in a valley', () => {
    expect(foldBetween(vec3(0, 0, 1), vec3(1, 0, 0), vec3(0, 5, 0))).toBeCloseTo(Math.PI / 2, 14);
    expect(foldBetween(vec3(0, 0, 1), vec3(-1, 0, 0), vec3(0, 5, 0))).toBeCloseTo(-Math.PI / 2, 14);
  });

  it('is a quarter turn at every edge of a box and none on its diagonals', () => {
    const folds = [...edgeFolds(boxMesh(10))].map((fold) => Math.round((fold * 180) / Math.PI));
    expect(folds.filter((fold) => fold === 90)).toHaveLength(12);
    expect(folds.filter((fold) => fold === 0)).toHaveLength(6);
  });
});
