import { distanceToSegment } from '../../geom/distance-to-segment.ts';
import { SegmentGrid } from '../../geom/segment-grid.ts';
import type { Vec2 } from '../../geom/vec.ts';

/** A line of straight parts, mm. */
export interface DrawnLine {
  readonly points: Float64Array;
  readonly closed: boolean;
}

/** Side of a cell in which parts of lines are looked up, mm. */
const CELL_MM = 4;

/** Farther apart than this lines have nothing to do with one another, mm. */
const FARTHEST_MM = 1000;

/**
 * How far two drawings of lines are apart: the greatest distance of a corner or a middle of a straight part of either from the nearest line of the
 * other, mm. Infinity where only one has lines.
 */
export function drawingsApart(a: readonly DrawnLine[], b: readonly DrawnLine[]): number {
  if (a.length === 0 || b.length === 0) return a.length === b.length ? 0 : Infinity;
  return Math.max(farthestFrom(a, b), farthestFrom(b, a));
}

function farthestFrom(lines: readonly DrawnLine[], others: readonly DrawnLine[]): number {
  const grid = new SegmentGrid(CELL_MM);
  for (const { points, closed } of others) grid.addLine(points, closed);
  let worst = 0;
  for (const { points, closed } of lines) {
    const count = points.length / 2;
    for (let i = 0; i < count; i += 1) {
      const j = (i + 1) % count;
      const p = { x: points[2 * i], y: points[2 * i + 1] };
      worst = Math.max(worst, distanceTo(grid, p, worst));
      if (j === 0 && !closed) continue;
      const middle = { x: (p.x + points[2 * j]) / 2, y: (p.y + points[2 * j + 1]) / 2 };
      worst = Math.max(worst, distanceTo(grid, middle, worst));
    }
  }
  return worst;
}

/** From a point to the nearest line, mm; any distance up to `enough` where that is near enough. */
function distanceTo(grid: SegmentGrid, { x, y }: Vec2, enough: number): number {
  for (let reach = Math.max(enough, CELL_MM / 4); ; reach *= 4) {
    let nearest = Infinity;
    const box = { minX: x - reach, minY: y - reach, maxX: x + reach, maxY: y + reach };
    grid.some(box, (ax, ay, bx, by) => {
      nearest = Math.min(nearest, distanceToSegment(x, y, ax, ay, bx, by));
      return nearest <= enough;
    });
    if (nearest <= reach || reach > FARTHEST_MM) return nearest;
  }
}
