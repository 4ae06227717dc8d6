/** Seams of layers that lie on one another stand at least so far apart, degrees: under it both seams are bridged by the same glue. */
export const LEAST_SEAM_TURN_DEG = 60;

/** Candidates round the core when the usual turn comes too near, degrees apart. */
const STEP_DEG = 5;

/** 0 to under 360. */
export const wholeTurn = (deg: number): number => ((deg % 360) + 360) % 360;

/** Between two places round the core, degrees, 0 to 180. */
export function apartDeg(a: number, b: number): number {
  const turn = wholeTurn(a - b);
  return Math.min(turn, 360 - turn);
}

/** Least distance from any seam to any of those beneath, degrees; 180 where there are none. */
export const leastApart = (seams: readonly number[], beneath: readonly number[]): number =>
  seams.reduce((least, one) => beneath.reduce((inner, other) => Math.min(inner, apartDeg(one, other)), least), 180);

/**
 * Where the seams of a layer stand.
 * @param first    where the first would stand by the maker's choice.
 * @param count    seams of the layer, evenly round it, 1 or more.
 * @param beneath  seams of all that it lies on.
 * @returns degrees, the first choice where it is far enough from all beneath; else the best of all places, 5 degrees apart.
 */
export function seamPlaces(first: number, count: number, beneath: readonly number[]): readonly number[] {
  const at = (start: number): readonly number[] =>
    Array.from({ length: count }, (_, i) => wholeTurn(start + (360 * i) / count));
  const wished = at(first);
  if (leastApart(wished, beneath) >= LEAST_SEAM_TURN_DEG) return wished;
  let best = wished;
  for (let turn = STEP_DEG; turn < 360; turn += STEP_DEG) {
    const other = at(first + turn);
    if (leastApart(other, beneath) > leastApart(best, beneath) + 1e-9) best = other;
  }
  return best;
}
