import type { BodyFit } from '../model/body-fit.ts';
import type { RoomField } from '../model/room-field.ts';

/** Least length of half the scale, mm: foam that stands farther off than this is not what one looks for. */
const LEAST_LIMIT_MM = 10;

/** Of several cores the one that is nearest counts at each place. Null where there is no core. */
export function roomField(fit: BodyFit | null): RoomField | null {
  if (fit === null || fit.cores.length === 0) return null;
  const [first, ...rest] = fit.cores;
  const atVertices = first.atVertices.slice();
  for (const { atVertices: other } of rest) {
    for (let v = 0; v < other.length; v += 1) if (!(atVertices[v] <= other[v])) atVertices[v] = other[v];
  }
  const wantedMm = Math.max(...fit.cores.map(({ core }) => core.roomMm ?? 0));
  return { atVertices, limitMm: Math.max(LEAST_LIMIT_MM, 2 * wantedMm), wantedMm };
}

/** The least room of a triangle's corners, mm; NaN where no core is beside any of them. */
export function roomOfTriangle(atVertices: Float32Array, triangles: Uint32Array, triangle: number): number {
  let least = NaN;
  for (let k = 0; k < 3; k += 1) {
    const mm = atVertices[triangles[3 * triangle + k]];
    if (!(least <= mm)) least = Number.isNaN(mm) ? least : mm;
  }
  return least;
}
