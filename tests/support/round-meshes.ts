import type { Mesh } from '../../src/mesh/mesh.ts';
import { meshOf } from './meshes.ts';

type Point = [number, number, number];

/** A ball of 20 * 4^level triangles: an icosahedron whose triangles are parted in four, corners on radius `r`. */
export function ballMesh(level: number, r = 1): Mesh {
  const g = (1 + Math.sqrt(5)) / 2;
  const points: Point[] = [];
  for (const a of [-1, 1]) for (const b of [-g, g]) points.push([0, a, b], [a, b, 0], [b, 0, a]);
  const near = (p: Point, q: Point): boolean => Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]) < 2.1;
  let faces: number[][] = [];
  for (let i = 0; i < 12; i += 1)
    for (let j = i + 1; j < 12; j += 1)
      for (let k = j + 1; k < 12; k += 1) {
        const [p, q, s] = [points[i], points[j], points[k]];
        if (!(near(p, q) && near(q, s) && near(s, p))) continue;
        const out =
          p[0] * (q[1] * s[2] - q[2] * s[1]) + p[1] * (q[2] * s[0] - q[0] * s[2]) + p[2] * (q[0] * s[1] - q[1] * s[0]);
        faces.push(out > 0 ? [i, j, k] : [i, k, j]);
      }
  for (let step = 0; step < level; step += 1) {
    const middles = new Map<string, number>();
    const middle = (i: number, j: number): number => {
      const key = i < j ? `${i} ${j}` : `${j} ${i}`;
      let found = middles.get(key);
      if (found === undefined) {
        found = points.length;
        points.push([0, 1, 2].map((axis) => (points[i][axis] + points[j][axis]) / 2) as Point);
        middles.set(key, found);
      }
      return found;
    };
    faces = faces.flatMap(([i, j, k]) => {
      const [a, b, c] = [middle(i, j), middle(j, k), middle(k, i)];
      return [
        [i, a, c],
        [a, j, b],
        [c, b, k],
        [a, b, c],
      ];
    });
    for (const p of points) {
      const size = Math.hypot(...p);
      for (let axis = 0; axis < 3; axis += 1) p[axis] *= 1 / size;
    }
  }
  const size = Math.hypot(...points[0]);
  return meshOf(
    points.map((p) => p.map((x) => (x * r) / size) as Point),
    faces,
  );
}

/** A cone without its floor, tip up at the origin: `sides` flat sides, `rings` rows down to radius `r` at depth `depth`. */
export function coneMesh(sides: number, rings: number, r: number, depth: number): Mesh {
  const points: Point[] = [[0, 0, 0]];
  const faces: number[][] = [];
  for (let j = 1; j <= rings; j += 1)
    for (let i = 0; i < sides; i += 1) {
      const angle = (2 * Math.PI * i) / sides;
      points.push([(r * j * Math.cos(angle)) / rings, (r * j * Math.sin(angle)) / rings, (-depth * j) / rings]);
    }
  const at = (j: number, i: number): number => 1 + (j - 1) * sides + (i % sides);
  for (let i = 0; i < sides; i += 1) {
    faces.push([0, at(1, i), at(1, i + 1)]);
    for (let j = 1; j < rings; j += 1) faces.push([at(j, i), at(j + 1, i), at(j + 1, i + 1), at(j, i + 1)]);
  }
  return meshOf(points, faces);
}

/** A bumpy sheet of `m` x `n` quads over a rectangle of `width` x `depth` mm; `height(x, y)` mm. Its corners are moved about a little, by `rand`, mm. */
export function sheetMesh(
  m: number,
  n: number,
  width: number,
  depth: number,
  height: (x: number, y: number) => number = () => 0,
  shake: () => number = () => 0,
): Mesh {
  const points: Point[] = [];
  for (let j = 0; j <= n; j += 1)
    for (let i = 0; i <= m; i += 1) {
      const isRim = i === 0 || i === m || j === 0 || j === n;
      const [x, y] = [(width * i) / m + (isRim ? 0 : shake()), (depth * j) / n + (isRim ? 0 : shake())];
      points.push([x, y, height(x, y)]);
    }
  const faces: number[][] = [];
  const at = (i: number, j: number): number => j * (m + 1) + i;
  for (let j = 0; j < n; j += 1)
    for (let i = 0; i < m; i += 1)
      faces.push([at(i, j), at(i + 1, j), at(i + 1, j + 1)], [at(i, j), at(i + 1, j + 1), at(i, j + 1)]);
  return meshOf(points, faces);
}
