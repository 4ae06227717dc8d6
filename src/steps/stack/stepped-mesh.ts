import { terraced } from '../../mesh/extruded.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { plainMesh } from '../../mesh/plain-mesh.ts';
import type { Stack } from '../../model/stack.ts';

/**
 * The stack as it stands before it is sanded, in the frame of the model: every piece a closed slab of its own that touches its neighbours, so that
 * volumes add up; round holes are left out.
 * @returns null where no piece is left.
 */
export function steppedMesh({ frame: { x, y, z }, layers }: Stack): Mesh | null {
  const positions: number[] = [];
  const triangles: number[] = [];
  for (const { pieces, fromMm, toMm } of layers) {
    for (const { outer, openings } of pieces) {
      const slab = terraced([{ regions: [{ outer, holes: openings }], bottom: fromMm, top: toMm }]);
      if (slab === null) continue;
      const first = positions.length / 3;
      for (let v = 0; v < slab.positions.length; v += 3) {
        const [a, b, c] = [slab.positions[v], slab.positions[v + 1], slab.positions[v + 2]];
        positions.push(a * x.x + b * y.x + c * z.x, a * x.y + b * y.y + c * z.y, a * x.z + b * y.z + c * z.z);
      }
      for (const v of slab.triangles) triangles.push(first + v);
    }
  }
  return triangles.length === 0 ? null : plainMesh(Float64Array.from(positions), Uint32Array.from(triangles));
}
