import type { Surface } from '../surface.ts';
import { cornersOf } from './mesh-point.ts';
import { sideShapesOf } from './side-shapes.ts';

/** By how much the angles round a corner must be over a full turn for it not to count as flat, radians: a bend of less costs its square. */
const FLAT_ROOM = 1e-9;

const known = new WeakMap<Surface, Uint8Array>();

/** Whether shortest ways may bend at a vertex: it lies on an open edge, or the angles round it come to more than a full turn. */
export function isTurningVertex(surface: Surface, v: number): boolean {
  let turning = known.get(surface);
  if (turning === undefined) {
    turning = findTurning(surface);
    known.set(surface, turning);
  }
  return turning[v] === 1;
}

function findTurning(surface: Surface): Uint8Array {
  const { topology, triangles, positions } = surface;
  const { starts, corners } = cornersOf(surface);
  const { angle } = sideShapesOf(surface);
  const turning = new Uint8Array(positions.length / 3);
  for (let v = 0; v < turning.length; v += 1) {
    let sum = 0;
    for (let i = starts[v]; i < starts[v + 1]; i += 1) sum += angle[corners[i]];
    if (sum > 2 * Math.PI + FLAT_ROOM) turning[v] = 1;
  }
  for (let h = 0; h < triangles.length; h += 1)
    if (topology.twin[h] < 0) turning[triangles[h]] = turning[triangles[h % 3 === 2 ? h - 2 : h + 1]] = 1;
  return turning;
}
