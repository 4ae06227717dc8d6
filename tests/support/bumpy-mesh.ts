import type { Mesh } from '../../src/mesh/mesh.ts';
import { meshOf } from './meshes.ts';

/**
 * A closed lump with bumps, mirrored in x = 0 where `odd` is 0: radius 100 and some waves by direction.
 * @param rand chooses the waves.
 * @param odd  how high the waves stand that are of one side alone, mm.
 */
export function bumpyMesh(rand: () => number, odd = 0, rings = 10, around = 16): Mesh {
  const waves = Array.from({ length: 5 }, () => ({
    turn: 1 + Math.floor(3 * rand()),
    rise: 1 + Math.floor(3 * rand()),
    height: 4 + 8 * rand(),
    at: 6 * rand(),
  }));
  const points: [number, number, number][] = [];
  const add = (theta: number, phi: number): void => {
    // phi is counted from the +y side of the mirror, so that phi and -phi are each other's images.
    let r = 100 + odd * Math.sin(theta) * Math.sin(phi + 0.4 * Math.sin(3 * phi));
    for (const { turn, rise, height, at } of waves)
      r += height * Math.cos(turn * phi) * Math.sin(theta) * Math.cos(rise * theta + at);
    points.push([
      r * Math.sin(theta) * Math.sin(phi),
      1.3 * r * Math.sin(theta) * Math.cos(phi),
      0.8 * r * Math.cos(theta),
    ]);
  };
  add(0, 0);
  for (let i = 1; i < rings; i += 1)
    for (let j = 0; j < around; j += 1)
      add((Math.PI * i) / rings, (2 * Math.PI * (j < around / 2 ? j : j - around)) / around);
  add(Math.PI, 0);
  const at = (i: number, j: number): number => 1 + (i - 1) * around + (j % around);
  const faces: number[][] = [];
  for (let j = 0; j < around; j += 1) {
    faces.push([0, at(1, j + 1), at(1, j)]);
    for (let i = 1; i + 1 < rings; i += 1) {
      const quad = [at(i, j), at(i, j + 1), at(i + 1, j + 1), at(i + 1, j)];
      // Diagonals mirror each other too.
      const [a, b, c, d] = quad;
      faces.push(
        ...(j < around / 2
          ? [
              [a, b, c],
              [a, c, d],
            ]
          : [
              [a, b, d],
              [b, c, d],
            ]),
      );
    }
    faces.push([points.length - 1, at(rings - 1, j), at(rings - 1, j + 1)]);
  }
  return meshOf(points, faces);
}

/** The same with other numbers, moved by what is told of each place. */
export function renumbered(mesh: Mesh, rand: () => number, move: (p: readonly number[]) => readonly number[]): Mesh {
  const count = mesh.positions.length / 3;
  const order = Array.from({ length: count }, (_, v) => ({ v, key: rand() })).sort((a, b) => a.key - b.key);
  const points = order.map(({ v }) => {
    const [x, y, z] = move([...mesh.positions.subarray(3 * v, 3 * v + 3)]);
    return [x, y, z] as const;
  });
  const newOf = new Map(order.map(({ v }, i) => [v, i]));
  const faces = Array.from({ length: mesh.triangles.length / 3 }, (_, t) => {
    const own = [...mesh.triangles.subarray(3 * t, 3 * t + 3)].map((v) => newOf.get(v) ?? -1);
    const first = Math.floor(3 * rand());
    return { key: rand(), face: [own[first], own[(first + 1) % 3], own[(first + 2) % 3]] };
  }).sort((a, b) => a.key - b.key);
  return meshOf(
    points,
    faces.map(({ face }) => face),
  );
}

/** A turn, a scale and a move by chance. */
export function randomMove(rand: () => number): {
  readonly point: (p: readonly number[]) => readonly [number, number, number];
  readonly direction: (p: readonly number[]) => readonly [number, number, number];
} {
  const [a, b, c] = [6.28 * rand(), 6.28 * rand(), 6.28 * rand()];
  const scale = 0.01 + 10 * rand();
  const shift = [500 * (rand() - 0.5), 500 * (rand() - 0.5), 500 * (rand() - 0.5)];
  const direction = ([x0, y0, z0]: readonly number[]): readonly [number, number, number] => {
    const [x1, y1] = [x0 * Math.cos(a) - y0 * Math.sin(a), x0 * Math.sin(a) + y0 * Math.cos(a)];
    const [y2, z2] = [y1 * Math.cos(b) - z0 * Math.sin(b), y1 * Math.sin(b) + z0 * Math.cos(b)];
    const [z3, x3] = [z2 * Math.cos(c) - x1 * Math.sin(c), z2 * Math.sin(c) + x1 * Math.cos(c)];
    return [x3, y2, z3];
  };
  return {
    direction,
    point: (p) => {
      const [x, y, z] = direction(p);
      return [scale * (x + shift[0]), scale * (y + shift[1]), scale * (z + shift[2])];
    },
  };
}
