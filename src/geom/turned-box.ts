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

export const growTurnedBox = (box: TurnedBox, by: number): TurnedBox => ({
  ...box,
  halfWidth: box.halfWidth + by,
  halfHeight: box.halfHeight + by,
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
  const [c, s] = [Math.cos(box.angleRad), Math.sin(box.angleRad)];
  const [px, py] = [c * (ax - box.x) + s * (ay - box.y), c * (ay - box.y) - s * (ax - box.x)];
  const [dx, dy] = [c * (bx - ax) + s * (by - ay), c * (by - ay) - s * (bx - ax)];
  let [from, to] = [0, 1];
  for (const [p, d, half] of [
    [px, dx, box.halfWidth],
    [py, dy, box.halfHeight],
  ]) {
    if (d === 0) {
      if (Math.abs(p) > half) return false;
      continue;
    }
    const [near, far] = [(-half - p) / d, (half - p) / d];
    from = Math.max(from, Math.min(near, far));
    to = Math.min(to, Math.max(near, far));
  }
  return from <= to;
}

/** True when two turned boxes share more than a border: no side of either separates them. */
export function doTurnedBoxesMeet(a: TurnedBox, b: TurnedBox): boolean {
  return !isSeparated(a, b) && !isSeparated(b, a);
}

function isSeparated(a: TurnedBox, b: TurnedBox): boolean {
  const [c, s] = [Math.cos(a.angleRad), Math.sin(a.angleRad)];
  const xs: number[] = [];
  const ys: number[] = [];
  for (const p of cornersOf(b)) {
    xs.push(c * (p.x - a.x) + s * (p.y - a.y));
    ys.push(c * (p.y - a.y) - s * (p.x - a.x));
  }
  return (
    Math.min(...xs) >= a.halfWidth ||
    Math.max(...xs) <= -a.halfWidth ||
    Math.min(...ys) >= a.halfHeight ||
    Math.max(...ys) <= -a.halfHeight
  );
}
