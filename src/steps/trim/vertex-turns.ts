import type { Surface } from '../../mesh/surface.ts';
import { sideShapesOf } from '../../mesh/lines/side-shapes.ts';

/** What the corners of a surface miss of lying flat, radians; and the normals there. */
export interface VertexTurns {
  /** A full turn less the angles round it; 0 at open edges. Summit > 0, saddle < 0. */
  readonly missing: Float64Array;
  /** At open edges what its half cell would miss, by the curvature of its neighbours inside; 0 elsewhere. */
  readonly atRim: Float64Array;
  /** 1 at open edges, else 0. */
  readonly isRim: Uint8Array;
  /** A third of the triangles round it, mm². */
  readonly cell: Float64Array;
  /** x y z per vertex, length 1: the mean of the triangles round it, weighted by their angle. */
  readonly normals: Float64Array;
}

/** Neighbours that miss more are corners of the sculpt and tell nothing of how round it is beside them, radians. */
const CORNER_RAD = 0.25;

const known = new WeakMap<Surface, VertexTurns>();

/** Found once for each surface. */
export function vertexTurns(surface: Surface): VertexTurns {
  const found = known.get(surface);
  if (found !== undefined) return found;
  const { positions, triangles, topology } = surface;
  const { angle, length, height } = sideShapesOf(surface);
  const count = positions.length / 3;
  const missing = new Float64Array(count).fill(2 * Math.PI);
  const area = new Float64Array(count);
  const normals = new Float64Array(3 * count);
  const isRim = new Uint8Array(count);
  for (let h = 0; h < triangles.length; h += 1) {
    const v = triangles[h];
    missing[v] -= angle[h];
    area[v] += (length[h] * height[h]) / 6;
    const own = normalOf(positions, triangles, h - (h % 3));
    for (let axis = 0; axis < 3; axis += 1) normals[3 * v + axis] += angle[h] * own[axis];
    if (topology.twin[h] < 0) isRim[v] = isRim[triangles[h % 3 === 2 ? h - 2 : h + 1]] = 1;
  }
  for (let v = 0; v < count; v += 1) {
    if (isRim[v] === 1) missing[v] = 0;
    const size = Math.hypot(normals[3 * v], normals[3 * v + 1], normals[3 * v + 2]);
    for (let axis = 0; axis < 3; axis += 1) normals[3 * v + axis] /= size > 0 ? size : 1;
  }
  const turns = { missing, atRim: atRims(surface, missing, area, isRim), isRim, cell: area, normals };
  known.set(surface, turns);
  return turns;
}

function atRims({ triangles }: Surface, missing: Float64Array, area: Float64Array, isRim: Uint8Array): Float64Array {
  const [own, cells] = [new Float64Array(missing.length), new Float64Array(missing.length)];
  for (let h = 0; h < triangles.length; h += 1) {
    const v = triangles[h];
    if (isRim[v] === 0) continue;
    for (let k = 0; k < 3; k += 1) {
      const w = triangles[h - (h % 3) + k];
      if (isRim[w] === 1 || Math.abs(missing[w]) > CORNER_RAD) continue;
      own[v] += missing[w];
      cells[v] += area[w];
    }
  }
  return own.map((sum, v) => (cells[v] > 0 ? (sum / cells[v]) * area[v] : 0));
}

/** Normal of the triangle whose first half-edge is `h`, length 1, or 0 where it is empty. */
function normalOf(positions: Float64Array, triangles: Uint32Array, h: number): readonly [number, number, number] {
  const [a, b, c] = [3 * triangles[h], 3 * triangles[h + 1], 3 * triangles[h + 2]];
  const [ux, uy, uz] = [0, 1, 2].map((axis) => positions[b + axis] - positions[a + axis]);
  const [vx, vy, vz] = [0, 1, 2].map((axis) => positions[c + axis] - positions[a + axis]);
  const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const size = Math.hypot(x, y, z);
  return size > 0 ? [x / size, y / size, z / size] : [0, 0, 0];
}
