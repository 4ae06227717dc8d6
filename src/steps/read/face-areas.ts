import type { Stepwise } from '../../base/stepwise.ts';
import { EMPTY_TRIANGLE_SHARE } from '../../base/tolerance.ts';
import type { SourceModel } from '../../model/source-model.ts';

/** One figure per polygon of a model, units of the file. */
export interface FaceAreas {
  /** Area of the polygon's own triangles. */
  readonly own: Float64Array;
  /** Area of the polygon fanned from its first corner: the same where the polygon is flat and hollow nowhere. */
  readonly fan: Float64Array;
  /** Square of the longest side. */
  readonly longestSquared: Float64Array;
}

export function* faceAreaSteps(model: SourceModel): Stepwise<FaceAreas> {
  const { positions, faceStarts, faceVertices, triangles, faceOfTriangle } = model;
  const faceCount = faceStarts.length - 1;
  const own = new Float64Array(faceCount);
  const fan = new Float64Array(faceCount);
  const longestSquared = new Float64Array(faceCount);
  for (let t = 0; t < faceOfTriangle.length; t += 1) {
    own[faceOfTriangle[t]] += areaOf(positions, triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]);
  }
  yield;
  for (let f = 0; f < faceCount; f += 1) {
    const [from, to] = [faceStarts[f], faceStarts[f + 1]];
    for (let i = from; i < to; i += 1) {
      const squared = squaredLength(positions, faceVertices[i], faceVertices[i + 1 < to ? i + 1 : from]);
      if (squared > longestSquared[f]) longestSquared[f] = squared;
    }
    if (to - from === 3) {
      fan[f] = own[f];
      continue;
    }
    for (let i = from + 1; i + 1 < to; i += 1)
      fan[f] += areaOf(positions, faceVertices[from], faceVertices[i], faceVertices[i + 1]);
  }
  return { own, fan, longestSquared };
}

/** Polygons without an area: under {@link EMPTY_TRIANGLE_SHARE} of their longest side squared. */
export function emptyFaces({ own, longestSquared }: FaceAreas): number[] {
  const empty: number[] = [];
  for (let f = 0; f < own.length; f += 1) if (own[f] <= EMPTY_TRIANGLE_SHARE * longestSquared[f]) empty.push(f);
  return empty;
}

function areaOf(positions: Float64Array, a: number, b: number, c: number): number {
  const [x, y, z] = [positions[3 * a], positions[3 * a + 1], positions[3 * a + 2]];
  const [ux, uy, uz] = [positions[3 * b] - x, positions[3 * b + 1] - y, positions[3 * b + 2] - z];
  const [vx, vy, vz] = [positions[3 * c] - x, positions[3 * c + 1] - y, positions[3 * c + 2] - z];
  const nx = uy * vz - uz * vy;
  const ny = uz * vx - ux * vz;
  const nz = ux * vy - uy * vx;
  return Math.sqrt(nx * nx + ny * ny + nz * nz) / 2;
}

function squaredLength(positions: Float64Array, a: number, b: number): number {
  const dx = positions[3 * b] - positions[3 * a];
  const dy = positions[3 * b + 1] - positions[3 * a + 1];
  const dz = positions[3 * b + 2] - positions[3 * a + 2];
  return dx * dx + dy * dy + dz * dz;
}
