import type { SourceModel } from '../../../src/model/source-model.ts';

/** Volume a closed model encloses, unit³; positive when its faces look outward. */
export function signedVolume({ positions, triangles }: SourceModel): number {
  let sum = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => positions.subarray(3 * triangles[i + k], 3 * triangles[i + k] + 3));
    sum += a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0]);
  }
  return sum / 6;
}
