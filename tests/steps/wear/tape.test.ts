import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../src/geom/vec.ts';
import { topologyOf } from '../../../src/mesh/topology.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import type { Surface } from '../../../src/mesh/surface.ts';
import { planeSection } from '../../../src/steps/wear/plane-section.ts';
import { measureTape } from '../../../src/steps/wear/tape.ts';
import { forAll } from '../../support/for-all.ts';
import { boxMesh, meshOf, torusMesh, tubeMesh } from '../../support/meshes.ts';

const surfaceOf = (mesh: Mesh): Surface => ({
  positions: mesh.positions,
  triangles: mesh.triangles,
  topology: topologyOf(mesh),
});
const at = (x: number, y: number, z: number): Vec3 => ({ x, y, z });

/** An upright prism over a polygon, open at both ends. */
function prism(corners: readonly (readonly [number, number])[], height: number): Mesh {
  const n = corners.length;
  const points = [0, height].flatMap((z) => corners.map(([x, y]) => [x, y, z] as const));
  return meshOf(
    points,
    corners.map((_, i) => [i, (i + 1) % n, n + ((i + 1) % n), n + i]),
  );
}

function sphere(r: number, m: number, n: number): Mesh {
  const points: [number, number, number][] = [
    [0, 0, r],
    [0, 0, -r],
  ];
  for (let j = 1; j < n; j += 1)
    for (let i = 0; i < m; i += 1) {
      const [a, b] = [(Math.PI * j) / n, (2 * Math.PI * i) / m];
      points.push([r * Math.sin(a) * Math.cos(b), r * Math.sin(a) * Math.sin(b), r * Math.cos(a)]);
    }
  const id = (j: number, i: number): number => 2 + (j - 1) * m + (i % m);
  const faces: number[][] = [];
  for (let i = 0; i < m; i += 1) {
    faces.push([0, id(1, i), id(1, i + 1)], [1, id(n - 1, i + 1), id(n - 1, i)]);
    for (let j = 1; j < n - 1; j += 1) faces.push([id(j, i), id(j + 1, i), id(j + 1, i + 1), id(j, i + 1)]);
  }
  return meshOf(points, faces);
}

describe('a tape round a part', () => {
  it('has the length of the polygon round a many-sided tube, at any height, at vertices too', () => {
    const tube = surfaceOf(tubeMesh(24, 50, 100, 4));
    for (const z of [10, 25, 50, 99]) {
      const tape = measureTape(tube, { point: at(0, 0, z), normal: at(0, 0, 2) });
      expect(tape?.girthMm).toBeCloseTo(24 * 2 * 50 * Math.sin(Math.PI / 24), 10);
      expect(tape?.bridges).toEqual([]);
      expect(tape?.extentMm[0]).toBeCloseTo(100, 10);
    }
  });

  it('goes round an ellipse where a round tube is cut aslant', () => {
    const sides = 720;
    const tape = measureTape(surfaceOf(tubeMesh(sides, 50, 400)), { point: at(0, 0, 200), normal: at(1, 0, 1) });
    // Ellipse with half axes 50 and 50 sqrt 2: 4 a E(m), m = 1/2, E = 1.3506438810476755 (A&S 17.1.4).
    expect(tape?.girthMm).toBeCloseTo(4 * 50 * Math.SQRT2 * 1.3506438810476755, 2);
    expect(tape?.breadthMm).toBeCloseTo(100, 3);
    expect(tape?.lengthMm).toBeCloseTo(100 * Math.SQRT2, 2);
  });

  it('is a great circle and a small circle on a sphere', () => {
    const ball = surfaceOf(sphere(80, 180, 90));
    expect(measureTape(ball, { point: at(0, 0, 0), normal: at(0, 0, 1) })?.girthMm).toBeCloseTo(2 * Math.PI * 80, 1);
    expect(measureTape(ball, { point: at(0, 0, 40), normal: at(0, 0, 1) })?.girthMm).toBeCloseTo(
      2 * Math.PI * Math.sqrt(80 * 80 - 40 * 40),
      1,
    );
    const aslant = measureTape(ball, { point: at(0, 0, 0), normal: at(1, 2, 3) });
    expect(Math.abs((aslant?.girthMm ?? 0) - 2 * Math.PI * 80)).toBeLessThan(0.1);
  });

  it('shrinks along a cone as its radius does', () => {
    const n = 48;
    const ring = (r: number, z: number) =>
      Array.from({ length: n }, (_, i) => {
        const angle = (2 * Math.PI * i) / n;
        return [r * Math.cos(angle), r * Math.sin(angle), z] as const;
      });
    const cone = meshOf(
      [...ring(60, 0), ...ring(20, 100)],
      Array.from({ length: n }, (_, i) => [i, (i + 1) % n, n + ((i + 1) % n), n + i]),
    );
    for (const z of [0, 12.5, 50, 99, 100])
      expect(measureTape(surfaceOf(cone), { point: at(0, 0, z), normal: at(0, 0, 1) })?.girthMm).toBeCloseTo(
        2 * n * (60 - 0.4 * z) * Math.sin(Math.PI / n),
        9,
      );
  });

  it('takes the ring of a torus that the point lies in, and else the nearest', () => {
    const [big, small] = [100, 30];
    const torus = surfaceOf(torusMesh(96, 48, big, small));
    const polygon = (r: number, n: number): number => 2 * n * r * Math.sin(Math.PI / n);
    // Across the axis: an outer and an inner ring; both hold the middle, and the inner one comes nearer.
    expect(planeSection(torus, { point: at(0, 0, 0), normal: at(0, 0, 1) })).toHaveLength(2);
    expect(measureTape(torus, { point: at(0, 0, 0), normal: at(0, 0, 1) })?.girthMm).toBeCloseTo(polygon(70, 96), 9);
    expect(measureTape(torus, { point: at(129, 0, 0), normal: at(0, 0, 1) })?.girthMm).toBeCloseTo(polygon(130, 96), 9);
    // Along the axis: two rings of the tube.
    expect(measureTape(torus, { point: at(90, 0, 0), normal: at(0, 1, 0) })?.girthMm).toBeCloseTo(polygon(30, 48), 9);
    expect(measureTape(torus, { point: at(90, 0, 0), normal: at(0, 1, 0) })?.hull[0]).toBeGreaterThan(0);
  });

  it('goes round the point rather than round a post that stands nearer to it', () => {
    const hall = prism([[0, 0], [200, 0], [200, 200], [0, 200]], 30); // prettier-ignore
    const post = prism([[102, 100], [112, 100], [112, 110], [102, 110]], 30); // prettier-ignore
    const both = {
      ...hall,
      positions: Float64Array.from([...hall.positions, ...post.positions]),
      triangles: Uint32Array.from([...hall.triangles, ...post.triangles.map((v) => v + 8)]),
    };
    const girthAt = (x: number) =>
      measureTape(surfaceOf(both), { point: at(x, 105, 15), normal: at(0, 0, 1) })?.girthMm;
    expect(girthAt(100)).toBe(800);
    expect(girthAt(105)).toBe(40);
    expect(girthAt(250)).toBe(800);
  });

  it('bridges hollows: a star has the girth of its points, and keeps its own way', () => {
    const [outer, inner, n] = [50, 20, 5];
    const star = Array.from({ length: 2 * n }, (_, i) => {
      const [r, angle] = [i % 2 === 0 ? outer : inner, (Math.PI * i) / n];
      return [r * Math.cos(angle), r * Math.sin(angle)] as const;
    });
    const tape = measureTape(surfaceOf(prism(star, 30)), { point: at(0, 0, 15), normal: at(0, 0, 1) });
    expect(tape?.girthMm).toBeCloseTo(2 * n * outer * Math.sin(Math.PI / n), 10);
    const side = Math.hypot(outer - inner * Math.cos(Math.PI / n), inner * Math.sin(Math.PI / n));
    expect(tape?.pathMm).toBeCloseTo(2 * n * side, 10);
  });

  it('bridges the hollow of a U', () => {
    const u = [[0, 0], [60, 0], [60, 40], [40, 40], [40, 10], [20, 10], [20, 40], [0, 40]] as const; // prettier-ignore
    const tape = measureTape(surfaceOf(prism(u, 30)), { point: at(10, 20, 15), normal: at(0, 0, 1) });
    expect(tape?.girthMm).toBeCloseTo(200, 10);
    expect(tape?.pathMm).toBeCloseTo(260, 10);
    expect([tape?.breadthMm, tape?.lengthMm]).toEqual([40, 60]);
  });

  it('bridges an opening in the wall and says so', () => {
    const closed = prism([[0, 0], [60, 0], [60, 40], [0, 40]], 30); // prettier-ignore
    const open = { ...closed, triangles: closed.triangles.slice(6) };
    const tape = measureTape(surfaceOf(open), { point: at(30, 20, 15), normal: at(0, 0, 1) });
    expect(tape?.girthMm).toBeCloseTo(200, 10);
    expect(tape?.bridges).toHaveLength(1);
    expect(tape?.bridges[0].mm).toBeCloseTo(60, 10);
  });

  it('runs along the edge of a box that lies in the plane, and misses what lies beyond', () => {
    const box = surfaceOf(boxMesh(40, 30, 20));
    const tape = measureTape(box, { point: at(1, 1, 20), normal: at(0, 0, 1) });
    expect(tape?.girthMm).toBe(140);
    expect(measureTape(box, { point: at(1, 1, 20.001), normal: at(0, 0, 1) })).toBeNull();
    expect(measureTape(box, { point: at(1, 1, -1), normal: at(0, 0, 1) })).toBeNull();
  });

  it('makes closed lines that lie in the plane, whatever the plane, and the same when the part is renumbered', async () => {
    const mesh = torusMesh(12, 9, 100, 30);
    const turned = { ...mesh, triangles: mesh.triangles.slice().reverse() };
    const flipped = { ...turned, triangles: Uint32Array.from(turned.triangles) };
    await forAll(
      (rand) => ({
        point: at(260 * rand() - 130, 260 * rand() - 130, 60 * rand() - 30),
        normal: at(rand() - 0.5, rand() - 0.5, Math.round(2 * rand()) - 1),
      }),
      (plane) => {
        const length = Math.hypot(plane.normal.x, plane.normal.y, plane.normal.z);
        const loops = planeSection(surfaceOf(mesh), plane);
        for (const { points, bridges } of loops) {
          expect(bridges).toEqual([]);
          for (let i = 0; i < points.length; i += 3) {
            const [dx, dy, dz] = [
              points[i] - plane.point.x,
              points[i + 1] - plane.point.y,
              points[i + 2] - plane.point.z,
            ];
            const height = (dx * plane.normal.x + dy * plane.normal.y + dz * plane.normal.z) / length;
            expect(Math.abs(height)).toBeLessThan(1e-10);
          }
        }
        const again = measureTape(surfaceOf(flipped), plane)?.girthMm ?? 0;
        expect(Math.abs(again - (measureTape(surfaceOf(mesh), plane)?.girthMm ?? 0))).toBeLessThan(1e-9);
      },
    );
  });
});
