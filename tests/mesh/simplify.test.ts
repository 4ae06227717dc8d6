import { describe, expect, it } from 'vitest';
import { cross3, dot3, length3, pointAt3, sub3 } from '../../src/geom/vec.ts';
import { surfaceArea } from '../../src/mesh/measure.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';
import { findMirror } from '../../src/mesh/mirror/mirror.ts';
import { simplify } from '../../src/mesh/simplify/simplify.ts';
import { surfaceDeviation } from '../../src/mesh/surface-deviation.ts';
import { surfaceTreeOf } from '../../src/mesh/surface-tree.ts';
import { topologyOf } from '../../src/mesh/topology.ts';
import { bumpyMesh } from '../support/bumpy-mesh.ts';
import { forAll } from '../support/for-all.ts';
import { meshOf, torusMesh, tubeMesh } from '../support/meshes.ts';

const none = (mesh: Mesh): Uint8Array => new Uint8Array(mesh.positions.length / 3);

function simpler(mesh: Mesh, triangles: number, wish: Partial<Parameters<typeof simplify>[1]> = {}): Mesh {
  const { kept, corners } = simplify(mesh, {
    triangles,
    offMm: Infinity,
    isKept: none(mesh),
    partner: null,
    ...wish,
  });
  return { ...mesh, triangles: corners, faceOfTriangle: kept.map((t) => mesh.faceOfTriangle[t]) };
}

/** A box of 30 mm whose sides are cut into `n` x `n` squares. */
function fineBox(n: number): Mesh {
  const points: (readonly [number, number, number])[] = [];
  const numbers = new Map<string, number>();
  const at = (...p: [number, number, number]): number => {
    const key = p.join(' ');
    const known = numbers.get(key);
    if (known !== undefined) return known;
    points.push(p.map((x) => (30 * x) / n) as [number, number, number]);
    numbers.set(key, points.length - 1);
    return points.length - 1;
  };
  const faces: number[][] = [];
  for (const axis of [0, 1, 2])
    for (const side of [0, n])
      for (let i = 0; i < n; i += 1)
        for (let j = 0; j < n; j += 1) {
          const corner = (u: number, v: number): number => {
            const p: [number, number, number] = [side, side, side];
            p[(axis + 1) % 3] = u;
            p[(axis + 2) % 3] = v;
            return at(...p);
          };
          const ring = [corner(i, j), corner(i + 1, j), corner(i + 1, j + 1), corner(i, j + 1)];
          faces.push(side === 0 ? ring.reverse() : ring);
        }
  return meshOf(points, faces);
}

/** Every half-edge has one across, or belongs to an edge that was open before; V - E + F. */
function eulerOf({ triangles }: Mesh, edges: number): number {
  return new Set(triangles).size - edges + triangles.length / 3;
}

describe('a simpler surface', () => {
  it('of a box whose sides are cut finely is the box, twelve triangles', () => {
    const box = fineBox(5);
    const small = simpler(box, 0);
    expect(small.triangles.length / 3).toBe(12);
    expect(surfaceArea(small.positions, small.triangles)).toBeCloseTo(6 * 30 * 30, 9);
    expect(surfaceDeviation(box, small).atMost).toBeLessThan(1e-5);
    expect(surfaceDeviation(small, box).atMost).toBeLessThan(1e-5);
  });

  it('keeps handles, holes and manifold edges, however far it is driven', () =>
    forAll(
      (rand) => [torusMesh(14, 9, 60, 20 + 10 * rand()), tubeMesh(12, 40, 90, 6), bumpyMesh(rand)],
      (meshes) => {
        for (const mesh of meshes) {
          const small = simpler(mesh, 0);
          const [before, after] = [topologyOf(mesh), topologyOf(small)];
          expect(small.triangles.length).toBeLessThan(mesh.triangles.length / 2);
          expect(eulerOf(small, after.edgeCount)).toBe(eulerOf(mesh, before.edgeCount));
          expect(Math.max(...after.usesOfEdge)).toBe(2);
          const open = after.twin.filter((h) => h < 0).length;
          expect(open > 0).toBe(before.twin.includes(-1));
        }
      },
      { runs: 2 },
    ));

  // Ends of a tube are circles of corners without a crease: they lose corners along themselves only, and stay in their planes.
  it('loses open edges along themselves', () => {
    const tube = tubeMesh(24, 40, 90, 8);
    const small = simpler(tube, 60);
    const { edgeVertices, halfedgeOfEdge, twin, edgeCount } = topologyOf(small);
    for (let e = 0; e < edgeCount; e += 1) {
      if (twin[halfedgeOfEdge[e]] >= 0) continue;
      const heights = [0, 1].map((k) => small.positions[3 * edgeVertices[2 * e + k] + 2]);
      expect(heights[0] === heights[1] && (heights[0] === 0 || heights[0] === 90)).toBe(true);
    }
  });

  it('leaves what is to be kept where it is, edge by edge', () => {
    const mesh = bumpyMesh(() => 0.4);
    const isKept = none(mesh);
    const ring = [...Array(16).keys()].map((j) => 1 + 4 * 16 + j);
    for (const v of ring) isKept[v] = 1;
    const small = simpler(mesh, 0, { isKept });
    const topology = topologyOf(small);
    ring.forEach((v, j) => expect(topology.edgeBetween(v, ring[(j + 1) % 16])).toBeGreaterThanOrEqual(0));
    const free = topologyOf(simpler(mesh, 0));
    expect(ring.every((v, j) => free.edgeBetween(v, ring[(j + 1) % 16]) >= 0)).toBe(false);
  });

  it('is as much mirrored as the surface was', () =>
    forAll(
      (rand) => bumpyMesh(rand, 0, 12, 20),
      (mesh) => {
        const partner = findMirror(mesh)?.partners.ofVertex ?? null;
        const small = simpler(mesh, 150, { partner });
        expect(small.triangles.length / 3).toBeLessThanOrEqual(150);
        expect(small.triangles.length / 3).toBeGreaterThan(100);
        const corners = (list: readonly number[]): string => [...list].sort((a, b) => a - b).join(' ');
        const all = new Set<string>();
        for (let t = 0; t < small.triangles.length; t += 3) all.add(corners([...small.triangles.subarray(t, t + 3)]));
        for (let t = 0; t < small.triangles.length; t += 3) {
          const opposite = [...small.triangles.subarray(t, t + 3)].map((v) => partner?.[v] ?? -1);
          expect(all.has(corners(opposite))).toBe(true);
        }
      },
      { runs: 2 },
    ));

  // Seen from its middle every triangle of the lump turns the same way, and so it has to stay.
  it('turns no triangle over and moves no corner', () =>
    forAll(
      (rand) => bumpyMesh(rand, 0, 14, 24),
      (mesh) => {
        const sides = ({ triangles, positions }: Mesh): Set<number> =>
          new Set(
            Array.from({ length: triangles.length / 3 }, (_, t) => {
              const [a, b, c] = [0, 1, 2].map((k) => pointAt3(positions, triangles[3 * t + k]));
              return Math.sign(dot3(a, cross3(b, c)));
            }),
          );
        const small = simpler(mesh, 250);
        expect(small.positions).toBe(mesh.positions);
        expect(sides(mesh).size).toBe(1);
        expect(sides(small)).toEqual(sides(mesh));
      },
      { runs: 3 },
    ));

  // A cap of a ball between chords of length h lies h^2 / 8 R over them, so half as many triangles lie twice as far off: order 1 in their number.
  it('of a ball lies farther off as it has fewer triangles, in proportion', () => {
    const ball = (() => {
      const rings = 24;
      const points: [number, number, number][] = [[0, 0, 100]];
      for (let i = 1; i < rings; i += 1)
        for (let j = 0; j < 36; j += 1) {
          const [u, v] = [(Math.PI * i) / rings, (2 * Math.PI * (j + (i % 2) / 2)) / 36];
          points.push([100 * Math.sin(u) * Math.cos(v), 100 * Math.sin(u) * Math.sin(v), 100 * Math.cos(u)]);
        }
      points.push([0, 0, -100]);
      const at = (i: number, j: number): number => 1 + (i - 1) * 36 + (j % 36);
      const faces: number[][] = [];
      for (let j = 0; j < 36; j += 1) {
        faces.push([0, at(1, j), at(1, j + 1)], [points.length - 1, at(rings - 1, j + 1), at(rings - 1, j)]);
        for (let i = 1; i + 1 < rings; i += 1) faces.push([at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)]);
      }
      return meshOf(points, faces);
    })();
    const off = [400, 100].map((count) => surfaceDeviation(ball, simpler(ball, count)).atLeast);
    const order = Math.log2(off[1] / off[0]) / 2;
    expect(order).toBeGreaterThan(0.6);
    expect(order).toBeLessThan(1.4);
  });
});

describe('how far two surfaces lie apart', () => {
  it('is the closed form for two parallel squares, one larger', () => {
    const square = (size: number, z: number): Mesh =>
      meshOf(
        [
          [-size, -size, z],
          [size, -size, z],
          [size, size, z],
          [-size, size, z],
        ],
        [[0, 1, 2, 3]],
      );
    const inward = surfaceDeviation(square(10, 0), square(13, 4));
    expect(inward.atLeast).toBeCloseTo(4, 12);
    expect(inward.atMost).toBeLessThan(4 * 1.06);
    const outward = surfaceDeviation(square(13, 4), square(10, 0));
    expect(outward.atLeast).toBeCloseTo(Math.hypot(3, 3, 4), 12);
    expect(outward.atMost).toBeGreaterThanOrEqual(outward.atLeast);
  });

  it('is bounded as points by brute force say', () =>
    forAll(
      (rand) => ({ mesh: bumpyMesh(rand), rand }),
      ({ mesh, rand }) => {
        const small = simpler(mesh, 80);
        for (const [from, to] of [
          [mesh, small],
          [small, mesh],
        ]) {
          const { atLeast, atMost, place } = surfaceDeviation(from, to);
          const tree = surfaceTreeOf(to);
          expect(tree.nearest(place)?.distance).toBeCloseTo(atLeast, 9);
          expect(surfaceTreeOf(from).nearest(place)?.distance).toBeLessThan(1e-9);
          let worst = 0;
          for (let i = 0; i < 4000; i += 1) {
            const t = Math.floor((rand() * from.triangles.length) / 3);
            let [u, v] = [rand(), rand()];
            if (u + v > 1) [u, v] = [1 - u, 1 - v];
            const [a, b, c] = [0, 1, 2].map((k) => pointAt3(from.positions, from.triangles[3 * t + k]));
            const [ab, ac] = [sub3(b, a), sub3(c, a)];
            const p = { x: a.x + u * ab.x + v * ac.x, y: a.y + u * ab.y + v * ac.y, z: a.z + u * ab.z + v * ac.z };
            worst = Math.max(worst, length3(sub3(tree.nearest(p)?.point ?? p, p)));
          }
          expect(worst).toBeLessThanOrEqual(atMost);
          expect(worst).toBeGreaterThan(0.8 * atLeast);
          expect(atMost).toBeLessThan(1.1 * atLeast);
        }
      },
      { runs: 2 },
    ));
});
