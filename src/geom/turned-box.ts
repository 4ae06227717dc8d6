import type { Box2 } from './ring.ts';
import type { Vec2 } from './vec.ts';

/** A rectangle turned by an angle, mm. */
export interface TurnedBox {
  readonly x: number;
  readonly y: number;
  /** Half the length along the turned x and y. */
  readonly halfWidth: number;
  readonly halfHeight: number;
  /** Counter-clockwise, radians. */
  readonly angleRad: number;
}

export const growTurnedBox = ({ x, y, halfWidth, halfHeight, angleRad }: TurnedBox, by: number): TurnedBox => ({
  x,
  y,
  halfWidth: halfWidth + by,
  halfHeight: halfHeight + by,
  angleRad,
});

/** Corners counter-clockwise from the lower left one in the box's own axes. */
export function cornersOf({ x, y, halfWidth, halfHeight, angleRad }: TurnedBox): readonly [Vec2, Vec2, Vec2, Vec2] {
  const [c, s] = [Math.cos(angleRad), Math.sin(angleRad)];
  const corner = (sx: number, sy: number): Vec2 => ({
    x: x + c * sx * halfWidth - s * sy * halfHeight,
    y: y + s * sx * halfWidth + c * sy * halfHeight,
  });
  return [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
}

/** The upright box round a turned one. */
export function uprightBox(box: TurnedBox): Box2 {
  const [c, s] = [Math.abs(Math.cos(box.angleRad)), Math.abs(Math.sin(box.angleRad))];
  const [w, h] = [c * box.halfWidth + s * box.halfHeight, s * box.halfWidth + c * box.halfHeight];
  return { minX: box.x - w, minY: box.y - h, maxX: box.x + w, maxY: box.y + h };
}

/** True when a segment has a point inside the box or on its border (Liang and Barsky's clipping, ACM TOG 3(1), 1984, in the box's axes). */
export function doesSegmentMeetBox(ax: number, ay: number, bx: number, by: number, box: TurnedBox): boolean {
  // Asked many times over while words are placed: nothing here makes a list.
  const c = Math.cos(box.angleRad);
  const s = Math.sin(box.angleRad);
  const px = c * (ax - box.x) + s * (ay - box.y);
  const py = c * (ay - box.y) - s * (ax - box.x);
  const dx = c * (bx - ax) + s * (by - ay);
  const dy = c * (by - ay) - s * (bx - ax);
  const from = Math.max(0, entering(px, dx, box.halfWidth), entering(py, dy, box.halfHeight));
  const to = Math.min(1, leaving(px, dx, box.halfWidth), leaving(py, dy, box.halfHeight));
  return from <= to;
}

/** Share of a way by `d` from `p` at which it comes into the strip from -half to half; Infinity where it runs beside it. */
function entering(p: number, d: number, half: number): number {
  if (d === 0) return Math.abs(p) > half ? Infinity : -Infinity;
  return Math.min((-half - p) / d, (half - p) / d);
}

/** The share at which it is out of the strip again. */
const leaving = (p: number, d: number, half: number): number =>
  d === 0 ? Infinity : Math.max((-half - p) / d, (half - p) / d);

/** True when two turned boxes share more than a border: no side of either separates them. */
export function doTurnedBoxesMeet(a: TurnedBox, b: TurnedBox): boolean {
  return !isSeparated(a, b) && !isSeparated(b, a);
}

function isSeparated(a: TurnedBox, b: TurnedBox): boolean {
  const c = Math.cos(a.angleRad);
  const s = Math.sin(a.angleRad);
  const cb = Math.cos(b.angleRad);
  const sb = Math.sin(b.angleRad);
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (let sx = -1; sx <= 1; sx += 2) {
    for (let sy = -1; sy <= 1; sy += 2) {
      const px = b.x + cb * sx * b.halfWidth - sb * sy * b.halfHeight - a.x;
      const py = b.y + sb * sx * b.halfWidth + cb * sy * b.halfHeight - a.y;
      const x = c * px + s * py;
      const y = c * py - s * px;
      if (x < minX) minX = x;
      if (x > maxX) maxX = x;
      if (y < minY) minY = y;
      if (y > maxY) maxY = y;
    }
  }
  return minX >= a.halfWidth || maxX <= -a.halfWidth || minY >= a.halfHeight || maxY <= -a.halfHeight;
}
