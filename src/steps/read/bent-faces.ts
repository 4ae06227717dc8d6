import { BENT_FACE_SHARE } from '../../base/tolerance.ts';
import type { SourceModel } from '../../model/source-model.ts';

/** Polygons of more than three corners with a corner farther off their plane than {@link BENT_FACE_SHARE} of their longest side. */
export function bentFaces(model: SourceModel, longestSquared: Float64Array): number[] {
  const bent: number[] = [];
  for (let f = 0; f < longestSquared.length; f += 1) {
    if (model.faceStarts[f + 1] - model.faceStarts[f] === 3) continue;
    if (standingOff(model, f) > BENT_FACE_SHARE * Math.sqrt(longestSquared[f])) bent.push(f);
  }
  return bent;
}

/** Farthest distance of a corner from the plane through the middle of the corners, square to the sum of the area vectors. */
function standingOff({ positions, faceStarts, faceVertices }: SourceModel, f: number): number {
  const [from, to] = [faceStarts[f], faceStarts[f + 1]];
  const origin = 3 * faceVertices[from];
  const at = (i: number, axis: number): number => positions[3 * faceVertices[i] + axis] - positions[origin + axis];
  const middle = [0, 0, 0];
  const normal = [0, 0, 0];
  for (let i = from; i < to; i += 1) {
    const j = i + 1 < to ? i + 1 : from;
    for (let axis = 0; axis < 3; axis += 1) {
      const [p, q] = [(axis + 1) % 3, (axis + 2) % 3];
      middle[axis] += at(i, axis) / (to - from);
      normal[axis] += at(i, p) * at(j, q) - at(i, q) * at(j, p);
    }
  }
  const length = Math.hypot(normal[0], normal[1], normal[2]);
  if (!(length > 0)) return 0;
  let farthest = 0;
  for (let i = from; i < to; i += 1) {
    let distance = 0;
    for (let axis = 0; axis < 3; axis += 1) distance += (normal[axis] / length) * (at(i, axis) - middle[axis]);
    farthest = Math.max(farthest, Math.abs(distance));
  }
  return farthest;
}
