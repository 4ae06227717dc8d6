import { distanceToSegment } from '../../geom/distance-to-segment.ts';
import { SegmentGrid } from '../../geom/segment-grid.ts';
import type { Vec2 } from '../../geom/vec.ts';
import type { ArtPath } from '../../model/artwork.ts';
import { flatPath } from './segments.ts';

/** A corner of a traced line and how far round it the picture's own rounding is replaced, mm. */
export interface CornerZone {
  readonly at: Vec2;
  readonly radiusMm: number;
}

/** How far a fitted line and the picture's are from each other at most, mm, both ways: along sides, and at corners. */
export interface TraceDistance {
  readonly deviationMm: number;
  readonly cornerMm: number;
}

/** Straight parts follow their curves so many times closer than the limit. */
const FINER = 50;

/**
 * Measures a fitted line against the closed line of places it was fitted to: from every place to the fitted line, and from places all along this to the
 * other, no farther apart than half the mean distance of places.
 * @param limitMm  about what is expected; anything > 0 gives the same figures.
 */
export function traceDistance(
  places: Float64Array,
  path: ArtPath,
  corners: readonly CornerZone[],
  limitMm: number,
): TraceDistance {
  const flat = flatPath(path, limitMm / FINER);
  let [deviationMm, cornerMm] = [0, 0];
  const note = (x: number, y: number, distance: number): void => {
    if (distance <= deviationMm && distance <= cornerMm) return;
    const isAtCorner = corners.some(({ at, radiusMm }) => Math.hypot(x - at.x, y - at.y) <= radiusMm);
    if (isAtCorner) cornerMm = Math.max(cornerMm, distance);
    else deviationMm = Math.max(deviationMm, distance);
  };
  const step = meanStep(places);
  const toFlat = nearestOn(flat, step, limitMm);
  for (let i = 0; i < places.length; i += 2) note(places[i], places[i + 1], toFlat(places[i], places[i + 1]));
  const toPlaces = nearestOn(places, step, limitMm);
  for (let i = 0; i < flat.length; i += 2) {
    const j = (i + 2) % flat.length;
    const [dx, dy] = [flat[j] - flat[i], flat[j + 1] - flat[i + 1]];
    const count = Math.max(1, Math.ceil((2 * Math.hypot(dx, dy)) / step));
    for (let k = 0; k < count; k += 1) {
      const [x, y] = [flat[i] + (dx * k) / count, flat[i + 1] + (dy * k) / count];
      note(x, y, toPlaces(x, y));
    }
  }
  return { deviationMm, cornerMm };
}

function meanStep(places: Float64Array): number {
  let sum = 0;
  const n = places.length / 2;
  for (let i = 0; i < n; i += 1) {
    const j = (i + 1) % n;
    sum += Math.hypot(places[2 * j] - places[2 * i], places[2 * j + 1] - places[2 * i + 1]);
  }
  return sum / n;
}

/** The distance to a closed line. Looked for near first, then ever farther. */
function nearestOn(line: Float64Array, step: number, limitMm: number): (x: number, y: number) => number {
  const grid = new SegmentGrid(4 * step);
  grid.addLine(line, true);
  return (x, y) => {
    for (let reach = Math.max(limitMm, step); ; reach *= 4) {
      let best = Infinity;
      grid.some({ minX: x - reach, minY: y - reach, maxX: x + reach, maxY: y + reach }, (ax, ay, bx, by) => {
        best = Math.min(best, distanceToSegment(x, y, ax, ay, bx, by));
        return best === 0;
      });
      if (best <= reach || reach > 1e4 * step) return best;
    }
  };
}
