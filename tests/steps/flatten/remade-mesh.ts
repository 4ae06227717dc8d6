import type { Mesh } from '../../../src/mesh/mesh.ts';
import type { Patch } from '../../../src/model/patch.ts';
import { meshOf } from '../../support/meshes.ts';

/** A mesh made again otherwise, and the number each vertex of the first has in it. */
export interface Remade {
  readonly mesh: Mesh;
  readonly numberNow: Uint32Array;
}

type Point = readonly [number, number, number];

/** A patch as a mesh of its own: a vertex that a dart parts has become two. */
export function meshOfPatch({ meshVertices, triangles }: Patch, positions: Float64Array): Mesh {
  return meshOf(
    Array.from(meshVertices, (v): Point => [positions[3 * v], positions[3 * v + 1], positions[3 * v + 2]]),
    facesOf(triangles),
  );
}

/** The mesh about `factor` times as large. */
export const scaled = (mesh: Mesh, factor: number): Remade =>
  changed(mesh, ([x, y, z]) => [factor * x, factor * y, factor * z]);

/** The mesh turned about the axis (1, 2, 3) by `angle` radians, then moved. */
export function movedAndTurned(mesh: Mesh, angle: number, [dx, dy, dz]: Point): Remade {
  const [ux, uy, uz] = [1, 2, 3].map((part) => part / Math.sqrt(14));
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  // Rodrigues: x cos + (u × x) sin + u (u · x)(1 - cos).
  return changed(mesh, ([x, y, z]) => {
    const along = (ux * x + uy * y + uz * z) * (1 - cos);
    return [
      x * cos + (uy * z - uz * y) * sin + ux * along + dx,
      y * cos + (uz * x - ux * z) * sin + uy * along + dy,
      z * cos + (ux * y - uy * x) * sin + uz * along + dz,
    ];
  });
}

/** The mirror image, x to -x, its triangles turned so that they look outward again. */
export function mirrored(mesh: Mesh): Remade {
  const { mesh: inside, numberNow } = changed(mesh, ([x, y, z]) => [-x, y, z]);
  const faces = facesOf(inside.triangles).map(([a, b, c]) => [a, c, b]);
  return { mesh: meshOf(pointsOf(inside), faces), numberNow };
}

/** The same surface with its vertices numbered at random, its triangles in random order, each begun at a random corner. */
export function renumbered(mesh: Mesh, rand: () => number): Remade {
  const points = pointsOf(mesh);
  const order = shuffled(
    points.map((_, v) => v),
    rand,
  );
  const numberNow = new Uint32Array(points.length);
  order.forEach((before, now) => (numberNow[before] = now));
  const faces = shuffled(facesOf(mesh.triangles), rand).map((corners) => {
    const first = Math.floor(3 * rand());
    return [0, 1, 2].map((k) => numberNow[corners[(first + k) % 3]]);
  });
  const placed = order.map((v) => points[v]);
  return { mesh: meshOf(placed, faces), numberNow };
}

function changed(mesh: Mesh, change: (point: Point) => Point): Remade {
  const points = pointsOf(mesh);
  return { mesh: meshOf(points.map(change), facesOf(mesh.triangles)), numberNow: Uint32Array.from(points.keys()) };
}

function pointsOf({ positions }: Mesh): Point[] {
  return Array.from({ length: positions.length / 3 }, (_, v) => [
    positions[3 * v],
    positions[3 * v + 1],
    positions[3 * v + 2],
  ]);
}

function facesOf(triangles: Uint32Array): number[][] {
  return Array.from({ length: triangles.length / 3 }, (_, t) => [...triangles.subarray(3 * t, 3 * t + 3)]);
}

/** Every order is as likely (Fisher and Yates 1938). */
function shuffled<T>(items: readonly T[], rand: () => number): T[] {
  const list = [...items];
  for (let i = list.length - 1; i > 0; i -= 1) {
    const j = Math.floor(rand() * (i + 1));
    [list[i], list[j]] = [list[j], list[i]];
  }
  return list;
}
