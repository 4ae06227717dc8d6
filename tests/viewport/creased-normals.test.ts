import { expect, it } from 'vitest';
import { creasedNormals } from '../../src/viewport/creased-normals.ts';

/** Two squares of two triangles each that share an edge along z; the second leans by an angle from the first, which faces +y. */
function fold(angleDeg: number): Float32Array {
  const a = (angleDeg * Math.PI) / 180;
  const far = [-Math.cos(a), -Math.sin(a)];
  const quad = (p: number[], q: number[]): number[] => [...[...p, 0, ...p, 1, ...q, 1], ...[...p, 0, ...q, 1, ...q, 0]];
  return Float32Array.from([...quad([0, 0], [1, 0]), ...quad(far, [0, 0])]);
}

/** y of the normals at the corners of the first square, on the fold and away from it. */
const first = (angleDeg: number): number[] =>
  [...creasedNormals(fold(angleDeg)).subarray(0, 18)].filter((_, i) => i % 3 === 1);

it('evens out a gentle turn and leaves an edge where faces meet sharply', () => {
  // By hand: a square weighs twice where its diagonal ends, so that the normal there is that of 2 n + m.
  const turn = (20 * Math.PI) / 180;
  const most = turn - Math.atan2(Math.sin(turn), 2 + Math.cos(turn));
  const gentle = first(20);
  expect(Math.min(...gentle.map(Math.abs))).toBeCloseTo(Math.cos(most), 6);
  expect(Math.max(...gentle.map(Math.abs))).toBeCloseTo(1, 6);
  for (const y of first(70)) expect(Math.abs(y)).toBeCloseTo(1, 6);
});
