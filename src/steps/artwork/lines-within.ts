import { isInRings } from '../../geom/in-rings.ts';
import { boxOfPoints, type Ring } from '../../geom/ring.ts';
import { SegmentGrid } from '../../geom/segment-grid.ts';

/** Shorter bits of a line are left out, mm: what is left of rounding where it ends on an outline. */
const SHORTEST_MM = 1e-6;

/** Parts of a line inside an area, and how much of it lies outside, mm. */
export interface LinesWithin {
  readonly parts: readonly Float64Array[];
  readonly outsideMm: number;
}

/**
 * What of a line of straight parts lies inside an area.
 * @param points  packed x y, mm, open.
 * @param rings   outline and holes, any winding.
 */
export function lineWithin(points: ArrayLike<number>, rings: readonly Ring[]): LinesWithin {
  const box = boxOfPoints(rings[0]);
  const grid = new SegmentGrid(Math.max(1e-6, (box.maxX - box.minX + box.maxY - box.minY) / 64));
  for (const ring of rings) grid.addLine(ring, true);
  const parts: number[][] = [];
  let outsideMm = 0;
  let isOn = false;
  for (let i = 0; i + 3 < points.length; i += 2) {
    const [ax, ay, bx, by] = [points[i], points[i + 1], points[i + 2], points[i + 3]];
    const length = Math.hypot(bx - ax, by - ay);
    const stops = [0, ...crossingShares(grid, ax, ay, bx, by), 1];
    for (let k = 1; k < stops.length; k += 1) {
      const [s, t] = [stops[k - 1], stops[k]];
      if (t - s <= 0) continue;
      const middle = (s + t) / 2;
      if (!isInRings(rings, ax + middle * (bx - ax), ay + middle * (by - ay))) {
        outsideMm += (t - s) * length;
        isOn = false;
        continue;
      }
      if (!isOn) parts.push([ax + s * (bx - ax), ay + s * (by - ay)]);
      // The end of an edge is its own corner, to the last bit.
      parts[parts.length - 1].push(t === 1 ? bx : ax + t * (bx - ax), t === 1 ? by : ay + t * (by - ay));
      isOn = true;
    }
  }
  const kept = parts.map((part) => Float64Array.from(part)).filter((part) => spread(part) > SHORTEST_MM);
  return { parts: kept, outsideMm: outsideMm <= SHORTEST_MM ? 0 : outsideMm };
}

function crossingShares(grid: SegmentGrid, ax: number, ay: number, bx: number, by: number): number[] {
  const shares = new Set<number>();
  const box = { minX: Math.min(ax, bx), minY: Math.min(ay, by), maxX: Math.max(ax, bx), maxY: Math.max(ay, by) };
  grid.some(box, (cx, cy, dx, dy) => {
    const [ux, uy, vx, vy] = [bx - ax, by - ay, dx - cx, dy - cy];
    const cross = ux * vy - uy * vx;
    if (cross === 0) return false;
    const share = ((cx - ax) * vy - (cy - ay) * vx) / cross;
    const other = ((cx - ax) * uy - (cy - ay) * ux) / cross;
    if (share > 0 && share < 1 && other >= -1e-12 && other <= 1 + 1e-12) shares.add(share);
    return false;
  });
  return [...shares].sort((a, b) => a - b);
}

function spread(points: Float64Array): number {
  const { minX, minY, maxX, maxY } = boxOfPoints(points);
  return Math.hypot(maxX - minX, maxY - minY);
}
