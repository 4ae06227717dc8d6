import type { Solid } from './solid.ts';

/** A binary STL is 80 bytes of words, a count, and for each triangle a normal, three corners (single precision) and two bytes nobody uses. */
const HEADER_BYTES = 84;
const TRIANGLE_BYTES = 50;

/** Bodies as one binary STL, mm, in their order. STL has neither units nor names. */
export function writeStl(solids: readonly Solid[]): Uint8Array {
  const count = solids.reduce((sum, { triangles }) => sum + triangles.length / 3, 0);
  const bytes = new Uint8Array(HEADER_BYTES + count * TRIANGLE_BYTES);
  // Never `solid` first: that is how the other kind of STL, in words, begins.
  bytes.set(new TextEncoder().encode('Foamloft, lengths in mm'));
  const view = new DataView(bytes.buffer);
  view.setUint32(80, count, true);
  let at = HEADER_BYTES;
  for (const { points, triangles } of solids) {
    for (let i = 0; i < triangles.length; i += 3) {
      const corners = [0, 1, 2].map((k) => points.subarray(3 * triangles[i + k], 3 * triangles[i + k] + 3));
      const numbers = [...normalOf(corners), ...corners.flatMap((corner) => [...corner])];
      numbers.forEach((value, k) => view.setFloat32(at + 4 * k, value, true));
      at += TRIANGLE_BYTES;
    }
  }
  return bytes;
}

/** Outward, length 1; zero for a triangle without area, as the format has it. */
function normalOf([a, b, c]: readonly Float64Array[]): readonly [number, number, number] {
  const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const [vx, vy, vz] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
  const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const length = Math.hypot(x, y, z);
  return length > 0 ? [x / length, y / length, z / length] : [0, 0, 0];
}
