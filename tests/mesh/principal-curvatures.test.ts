import { describe, expect, it } from 'vitest';
import { edgeFolds } from '../../src/mesh/edge-fold.ts';
import { vertexCount, type Mesh } from '../../src/mesh/mesh.ts';
import { greatestCurvatures } from '../../src/mesh/principal-curvatures.ts';
import { topologyOf, triangleOfHalfedge } from '../../src/mesh/topology.ts';
import { ball } from '../reference/handbook/ball.ts';
import { meshOf, torusMesh, tubeMesh } from '../support/meshes.ts';

function curvaturesOf(mesh: Mesh, spreadMm = 0): Float64Array {
  const { twin, halfedgeOfEdge } = topologyOf(mesh);
  const folds = edgeFolds(mesh);
  const foldRad = new Float64Array(twin.length);
  halfedgeOfEdge.forEach((h, e) => {
    foldRad[h] = folds[e];
    if (twin[h] >= 0) foldRad[twin[h]] = folds[e];
  });
  const { positions, triangles } = mesh;
  const across = Int32Array.from(twin, (h) => (h < 0 ? -1 : triangleOfHalfedge(h)));
  return greatestCurvatures({ positions, triangles, vertexCount: vertexCount(mesh), across, foldRad }, spreadMm);
}

/** Greatest miss of 1 / R at any vertex, as a share. */
const worstShare = (found: Float64Array, radius: number): number =>
  found.reduce((worst, curvature) => Math.max(worst, Math.abs(curvature * radius - 1)), 0);

describe('curvature of a surface of triangles', () => {
  it.each([6, 12, 48, 300])('is turn over width of side on a tube of %i sides, with one row or several', (sides) => {
    const side = 2 * 50 * Math.sin(Math.PI / sides);
    for (const rings of [1, 5])
      expect(worstShare(curvaturesOf(tubeMesh(sides, 50, 80, rings)), side / ((2 * Math.PI) / sides))).toBeLessThan(
        1e-12,
      );
  });

  it('is negative where the surface is hollow', () => {
    const tube = tubeMesh(24, 50, 80);
    const inside = meshOf(
      Array.from({ length: 48 }, (_, v) => [...tube.positions.subarray(3 * v, 3 * v + 3)] as [number, number, number]),
      Array.from({ length: 48 }, (_, t) => [...tube.triangles.subarray(3 * t, 3 * t + 3)].reverse()),
    );
    expect(curvaturesOf(inside)[0]).toBeCloseTo(-1 / 50, 3);
  });

  it('comes to that of the small circle all over a ring as its facets shrink, with order 2', () => {
    const misses = [1, 2, 4].map((n) => worstShare(curvaturesOf(torusMesh(24 * n, 12 * n, 80, 20)), 20));
    expect(misses[0]).toBeLessThan(0.1);
    expect(misses[1]).toBeLessThan(misses[0] / 3);
    expect(misses[2]).toBeLessThan(misses[1] / 3);
  });

  it('of a ball misses 1 / R by a few per cent, away from its poles and its border', () => {
    const { corners, faces } = ball(100, 1, 48, 24);
    const mesh = meshOf(corners, faces);
    const found = curvaturesOf(mesh, 10).filter((_, v) => Math.abs(mesh.positions[3 * v + 2]) < 80);
    expect(worstShare(found, 100)).toBeLessThan(0.1);
  });

  it('spreads a single fold over the foam that must go round it', () => {
    // Two plates of 100 by 100 mm in squares of 2 mm, folded by 30 degrees: a line through a circle of radius r holds 2 r of its length.
    const n = 50;
    const lean = Math.PI / 6;
    const points: [number, number, number][] = [];
    for (let j = 0; j <= n; j += 1)
      for (let i = -n; i <= n; i += 1)
        points.push(i < 0 ? [2 * i, 2 * j, 0] : [2 * i * Math.cos(lean), 2 * j, -2 * i * Math.sin(lean)]);
    const row = 2 * n + 1;
    const faces: number[][] = [];
    for (let j = 0; j < n; j += 1)
      for (let i = 0; i < 2 * n; i += 1) {
        const at = j * row + i;
        faces.push([at, at + 1, at + row + 1, at + row]);
      }
    const most = (spread: number): number =>
      curvaturesOf(meshOf(points, faces), spread).reduce((a, b) => Math.max(a, b));
    expect(most(0)).toBeCloseTo(lean / 2, 9);
    expect(most(6) / ((2 * lean) / (Math.PI * 6))).toBeGreaterThan(0.8);
    expect(most(6) / ((2 * lean) / (Math.PI * 6))).toBeLessThan(1.3);
  });
});
