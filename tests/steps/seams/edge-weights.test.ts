import { describe, expect, it } from 'vitest';
import { vec3 } from '../../../src/geom/vec.ts';
import { edgeDistances, pathTo } from '../../../src/mesh/edge-distance.ts';
import { edgeLengths } from '../../../src/mesh/edge-fold.ts';
import { findMirror } from '../../../src/mesh/mirror/mirror.ts';
import { topologyOf } from '../../../src/mesh/topology.ts';
import {
  CREASE_WEIGHT,
  DIAGONAL_WEIGHT,
  edgeWeights,
  HIDDEN_WEIGHT,
  MIRROR_LINE_WEIGHT,
  PREFER_WEIGHT,
} from '../../../src/steps/seams/edge-weights.ts';
import { boxMesh, meshOf } from '../../support/meshes.ts';

/** A flat sheet of `n` x `n` squares of 10 mm; face i + n j, corner i + (n + 1) j. */
function sheet(n: number) {
  const points = Array.from(
    { length: (n + 1) ** 2 },
    (_, v) => [10 * (v % (n + 1)), 10 * Math.floor(v / (n + 1)), 0] as const,
  );
  const faces = Array.from({ length: n * n }, (_, f) => {
    const v = (f % n) + (n + 1) * Math.floor(f / n);
    return [v, v + 1, v + n + 2, v + n + 1];
  });
  return meshOf(points, faces);
}

describe('what a seam costs', () => {
  it('is 1 on flat foam, and more across a face of the file', () => {
    const mesh = sheet(3);
    const { edgeBetween } = { edgeBetween: (v: number, w: number) => topologyOf(mesh).edgeBetween(v, w) };
    const weights = edgeWeights(mesh);
    expect(weights[edgeBetween(5, 6)]).toBe(1);
    expect(weights[edgeBetween(5, 10)]).toBe(DIAGONAL_WEIGHT);
    expect(weights[edgeBetween(0, 1)]).toBe(1);
  });

  it('falls with the fold, either way', () => {
    const mesh = boxMesh(10);
    const weights = edgeWeights(mesh);
    const edge = (v: number, w: number): number => weights[topologyOf(mesh).edgeBetween(v, w)];
    expect(edge(0, 1)).toBeCloseTo(CREASE_WEIGHT, 12);
    const roof = meshOf(
      [
        [0, 0, 0],
        [10, 0, 0],
        [0, 10, 0],
        [0, -10, 10 * Math.tan(Math.PI / 4)],
      ],
      [
        [0, 1, 2],
        [1, 0, 3],
      ],
    );
    expect(edgeWeights(roof)[topologyOf(roof).edgeBetween(0, 1)]).toBeCloseTo(1 - CREASE_WEIGHT / 2, 12);
  });

  it('is endless inside of an area kept clear, so that a way goes round it, along its border at nearest', () => {
    const mesh = sheet(5);
    const clear = { faces: [6, 7, 8, 11, 12, 13, 16, 17, 18], seams: 'clear' as const };
    const weights = edgeWeights(mesh, { regions: [clear] });
    const length = edgeLengths(mesh).map((mm, e) => mm * weights[e]);
    const along = (w: Float64Array): number[] => pathTo(mesh, edgeDistances(mesh, [12], w, 17), 17);
    expect(along(edgeLengths(mesh))).toEqual([12, 13, 14, 15, 16, 17]);
    const way = along(length);
    // Corners inside the area are 14, 15, 20, 21.
    expect(way.filter((v) => [14, 15, 20, 21].includes(v))).toEqual([]);
    expect(length[topologyOf(mesh).edgeBetween(7, 13)]).toBe(10);
    expect(length[topologyOf(mesh).edgeBetween(13, 14)]).toBe(Infinity);
  });

  it('is a share in a preferred area and on its border; where two areas meet the later word holds', () => {
    const mesh = sheet(3);
    const edge = (v: number, w: number): number => topologyOf(mesh).edgeBetween(v, w);
    const prefer = { faces: [4], seams: 'prefer' as const };
    const weights = edgeWeights(mesh, { regions: [prefer] });
    expect(weights[edge(5, 6)]).toBeCloseTo(PREFER_WEIGHT, 12);
    expect(weights[edge(5, 10)]).toBeCloseTo(DIAGONAL_WEIGHT * PREFER_WEIGHT, 12);
    expect(weights[edge(4, 5)]).toBe(1);
    const clear = { faces: [3, 4], seams: 'clear' as const };
    expect(edgeWeights(mesh, { regions: [prefer, clear] })[edge(5, 9)]).toBe(Infinity);
    expect(edgeWeights(mesh, { regions: [clear, prefer] })[edge(5, 9)]).toBeCloseTo(PREFER_WEIGHT, 12);
    expect(edgeWeights(mesh, { regions: [clear, { faces: [4] }] })[edge(5, 9)]).toBe(1);
  });

  it('is less on the hidden side and on the mirror line', () => {
    const mesh = sheet(2);
    const edge = (v: number, w: number): number => topologyOf(mesh).edgeBetween(v, w);
    expect(edgeWeights(mesh, { hidden: vec3(0, 0, 1) })[edge(1, 4)]).toBeCloseTo(HIDDEN_WEIGHT, 12);
    expect(edgeWeights(mesh, { hidden: vec3(0, 0, -1) })[edge(1, 4)]).toBe(1);
    const mirror = findMirror(mesh)?.partners.ofEdge;
    if (mirror === undefined) throw new Error('no mirror');
    const weights = edgeWeights(mesh, { mirror });
    expect(weights[edge(1, 4)]).toBeCloseTo(MIRROR_LINE_WEIGHT, 12);
    expect(weights[edge(3, 4)]).toBe(1);
  });
});
