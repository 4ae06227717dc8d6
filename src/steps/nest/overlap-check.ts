import type { Layout, Rooms } from './layout.ts';
import type { PoseTable } from './pose-table.ts';

/**
 * Says for certain whether a layout can be cut, apart from how it was found: outlines are laid out corner by corner in whole numbers, and every side
 * is held against every other.
 * @returns the first pair of pieces that overlap or touch, a piece twice where it lies outside all rooms, or null.
 */
export function firstOverlap(table: PoseTable, layout: Layout, rooms: Rooms): readonly [number, number] | null {
  const laid = Array.from({ length: layout.count }, (_, i) =>
    table
      .ringsOf(layout.pose[i])
      .map((ring) => ring.map((value, k) => value + ((k & 1) === 0 ? layout.x[i] : layout.y[i]))),
  );
  const boxes = laid.map(([outer]) => {
    let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
    for (let k = 0; k < outer.length; k += 2) {
      x0 = Math.min(x0, outer[k]);
      x1 = Math.max(x1, outer[k]);
      y0 = Math.min(y0, outer[k + 1]);
      y1 = Math.max(y1, outer[k + 1]);
    }
    return [x0, y0, x1, y1] as const;
  });
  for (let i = 0; i < layout.movable; i += 1) {
    if (!isInRoom(boxes[i], rooms)) return [i, i];
    for (let j = i + 1; j < layout.count; j += 1) {
      const [a, b] = [boxes[i], boxes[j]];
      if (a[0] > b[2] || b[0] > a[2] || a[1] > b[3] || b[1] > a[3]) continue;
      if (doAreasMeet(laid[i], laid[j])) return [i, j];
    }
  }
  return null;
}

function isInRoom([x0, y0, x1, y1]: readonly [number, number, number, number], rooms: Rooms): boolean {
  for (let r = 0; r < rooms.length; r += 4) {
    if (x0 >= rooms[r] && y0 >= rooms[r + 1] && x1 <= rooms[r + 2] && y1 <= rooms[r + 3]) return true;
  }
  return false;
}

/**
 * True when two areas have a place in common, a single one included: sides cross or touch, or one area lies inside the other (and not in a hole of it).
 * Exact for whole numbers under 2^25.
 */
export function doAreasMeet(a: readonly Float64Array[], b: readonly Float64Array[]): boolean {
  for (const one of a) for (const other of b) if (doRingsMeet(one, other)) return true;
  return isInside(a, b[0][0], b[0][1]) || isInside(b, a[0][0], a[0][1]);
}

function doRingsMeet(a: Float64Array, b: Float64Array): boolean {
  const [an, bn] = [a.length, b.length];
  for (let i = 0, p = an - 2; i < an; p = i, i += 2) {
    const [px, py, qx, qy] = [a[p], a[p + 1], a[i], a[i + 1]];
    const [x0, x1, y0, y1] = [Math.min(px, qx), Math.max(px, qx), Math.min(py, qy), Math.max(py, qy)];
    for (let j = 0, r = bn - 2; j < bn; r = j, j += 2) {
      const [rx, ry, sx, sy] = [b[r], b[r + 1], b[j], b[j + 1]];
      if ((rx > x1 && sx > x1) || (rx < x0 && sx < x0) || (ry > y1 && sy > y1) || (ry < y0 && sy < y0)) continue;
      const r1 = (qx - px) * (ry - py) - (qy - py) * (rx - px);
      const s1 = (qx - px) * (sy - py) - (qy - py) * (sx - px);
      if ((r1 > 0 && s1 > 0) || (r1 < 0 && s1 < 0)) continue;
      const p1 = (sx - rx) * (py - ry) - (sy - ry) * (px - rx);
      const q1 = (sx - rx) * (qy - ry) - (sy - ry) * (qx - rx);
      if ((p1 > 0 && q1 > 0) || (p1 < 0 && q1 < 0)) continue;
      return true;
    }
  }
  return false;
}

/** True when a place that is on no side lies inside the area: sides to the right of it, counted. */
function isInside(rings: readonly Float64Array[], x: number, y: number): boolean {
  let inside = false;
  for (const ring of rings) {
    for (let i = 0, p = ring.length - 2; i < ring.length; p = i, i += 2) {
      const [ax, ay, bx, by] = [ring[p], ring[p + 1], ring[i], ring[i + 1]];
      if (ay > y === by > y) continue;
      const turn = (bx - ax) * (y - ay) - (by - ay) * (x - ax);
      if (by > ay ? turn > 0 : turn < 0) inside = !inside;
    }
  }
  return inside;
}
