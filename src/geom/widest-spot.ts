import { MinHeap } from '../base/min-heap.ts';
import { boxOfPoints, type Ring } from './ring.ts';

/** The largest circle that fits inside an area. */
export interface WidestSpot {
  readonly x: number;
  readonly y: number;
  readonly radiusMm: number;
}

/**
 * The point of an area farthest from its rings, by halving squares and dropping those that cannot hold a better one.
 * @param rings       outer ring and holes, any winding; inside is where an odd number of rings lies round a point.
 * @param precisionMm the radius found is at most this much too small, mm, > 0.
 */
export function widestSpot(rings: readonly Ring[], precisionMm: number): WidestSpot {
  const box = boxOfPoints(rings[0] ?? []);
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  const size = Math.min(width, height);
  let best: WidestSpot = { x: box.minX, y: box.minY, radiusMm: 0 };
  if (!(size > 0)) return best;
  const cells: { x: number; y: number; half: number }[] = [];
  const heap = new MinHeap();
  const consider = (x: number, y: number, half: number): void => {
    const radiusMm = depthInside(rings, x, y);
    if (radiusMm > best.radiusMm) best = { x, y, radiusMm };
    const most = radiusMm + half * Math.SQRT2;
    if (most <= best.radiusMm + precisionMm) return;
    cells.push({ x, y, half });
    heap.push(-most, cells.length - 1);
  };
  const half = size / 2;
  for (let y = box.minY + half; y < box.maxY + half; y += size) {
    for (let x = box.minX + half; x < box.maxX + half; x += size) consider(x, y, half);
  }
  while (heap.size > 0) {
    const { key, item } = heap.pop();
    if (-key <= best.radiusMm + precisionMm) break;
    const { x, y, half: own } = cells[item];
    const quarter = own / 2;
    for (const dy of [-quarter, quarter]) for (const dx of [-quarter, quarter]) consider(x + dx, y + dy, quarter);
  }
  return best;
}

/** Distance from a point to the nearest ring, mm; negative outside. */
export function depthInside(rings: readonly Ring[], x: number, y: number): number {
  let square = Infinity;
  let isInside = false;
  for (const ring of rings) {
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const [ax, ay, bx, by] = [ring[j], ring[j + 1], ring[i], ring[i + 1]];
      if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) isInside = !isInside;
      const [dx, dy] = [bx - ax, by - ay];
      const length = dx * dx + dy * dy;
      const f = length > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / length)) : 0;
      const [px, py] = [ax + f * dx - x, ay + f * dy - y];
      square = Math.min(square, px * px + py * py);
    }
  }
  return isInside ? Math.sqrt(square) : -Math.sqrt(square);
}
