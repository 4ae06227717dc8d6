import type { Stepwise } from '../../base/stepwise.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { roomSteps } from './fold-over.ts';
import { vertexOffsetSteps, type VertexOffsets } from '../../mesh/vertex-offset.ts';

/** Way a surface moves from the sculpt: +1 outward, towards the face; -1 inward, towards the back. */
export type Outward = 1 | -1;

interface Known {
  readonly offsets: VertexOffsets;
  readonly rooms: Map<Outward, Float64Array>;
}

/** By sculpt: another thickness or surface asks for the same. */
const KNOWN = new WeakMap<Mesh, Known>();

function* knownOf(mesh: Mesh): Stepwise<Known> {
  let known = KNOWN.get(mesh);
  if (known === undefined) {
    known = { offsets: yield* vertexOffsetSteps(mesh.positions, mesh.triangles), rooms: new Map() };
    KNOWN.set(mesh, known);
  }
  return known;
}

/** Moves of the vertices for a distance of 1. */
export function* offsetsOf(mesh: Mesh): Stepwise<VertexOffsets> {
  return (yield* knownOf(mesh)).offsets;
}

/** Per triangle how far it can move before it folds over ({@link roomSteps}), mm. */
export function* roomsOf(mesh: Mesh, outward: Outward): Stepwise<Float64Array> {
  const { offsets, rooms } = yield* knownOf(mesh);
  let room = rooms.get(outward);
  if (room === undefined) {
    room = yield* roomSteps(mesh.positions, mesh.triangles, offsets.directions, outward);
    rooms.set(outward, room);
  }
  return room;
}
