import type { Solid } from '../reference/handbook/polygon-solids.ts';

/** Cells of one half across and up, and their size, mm. */
const ACROSS = 3;
const UP = 5;
const CELL_MM = 45;

/** Numbers 0 to n - 1 in a random order. */
function shuffled(count: number, rand: () => number): readonly number[] {
  return Array.from({ length: count }, (_, i) => ({ i, key: rand() }))
    .sort((a, b) => a.key - b.key)
    .map(({ i }) => i);
}

/**
 * A bumpy sheet that is the same left and right of x = 0 to the last bit, in triangles, with random bumps, random seams in one half and their mirror
 * images in the other, numbered anyhow: mirrored seams run from whichever end their numbers say. In some the halves hang together.
 */
export function mirroredSculpt(rand: () => number): Solid {
  const half = Array.from({ length: (ACROSS + 1) * (UP + 1) }, (_, k) => {
    const [i, j] = [k % (ACROSS + 1), Math.floor(k / (ACROSS + 1))];
    const round = -0.004 * (CELL_MM * i) ** 2;
    return { x: i * CELL_MM * (1 - 0.1 * rand()), y: j * CELL_MM + 12 * rand(), z: round + 6 * rand() };
  });
  const wide = 2 * ACROSS + 1;
  const names = shuffled(wide * (UP + 1), rand);
  const at = (i: number, j: number): number => names[j * wide + ACROSS + i];
  const corners: [number, number, number][] = names.map(() => [0, 0, 0]);
  for (let j = 0; j <= UP; j += 1) {
    for (let i = -ACROSS; i <= ACROSS; i += 1) {
      const { x, y, z } = half[j * (ACROSS + 1) + Math.abs(i)];
      corners[at(i, j)] = [Math.sign(i) * x, y, z];
    }
  }
  const faces: number[][] = [];
  for (let j = 0; j < UP; j += 1) {
    for (let i = 0; i < ACROSS; i += 1) {
      faces.push([at(i, j), at(i + 1, j), at(i + 1, j + 1)], [at(i, j), at(i + 1, j + 1), at(i, j + 1)]);
      faces.push([at(-i - 1, j), at(-i, j), at(-i - 1, j + 1)], [at(-i, j), at(-i, j + 1), at(-i - 1, j + 1)]);
    }
  }
  const order = shuffled(faces.length, rand);
  const row = 1 + Math.floor(rand() * (UP - 1));
  const column = 1 + Math.floor(rand() * (ACROSS - 1));
  const isWhole = rand() < 0.3;
  const seams: [number, number][] = [];
  for (let i = 0; i < ACROSS; i += 1)
    for (const sign of [-1, 1]) seams.push([at(sign * i, row), at(sign * (i + 1), row)]);
  for (let j = 0; j < row; j += 1) {
    for (const sign of [-1, 1]) seams.push([at(sign * column, j), at(sign * column, j + 1)]);
  }
  if (!isWhole) for (let j = 0; j < UP; j += 1) seams.push([at(0, j), at(0, j + 1)]);
  return { corners, faces: order.map((f) => faces[f]), seams };
}
