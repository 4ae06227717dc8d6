import type { Vec2 } from './vec.ts';

/** A scaling of the plane about the origin, by one factor along a direction and by another across it: the matrix `xx xy; xy yy`. */
export interface ScaleAlong {
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/**
 * @param angleRad  the direction, counter-clockwise from +x; it and its opposite are one.
 * @param along     factor along it, > 0.
 * @param across    factor across it, > 0.
 */
export function scaleAlong(angleRad: number, along: number, across: number): ScaleAlong {
  if (!(along > 0 && across > 0)) throw new RangeError(`scale ${along} along, ${across} across`);
  // Equal factors scale alike in every direction: exactly, whatever the angle.
  if (along === across) return { xx: along, xy: 0, yy: along };
  const [c, s] = [Math.cos(angleRad), Math.sin(angleRad)];
  return {
    xx: along * c * c + across * s * s,
    xy: (along - across) * c * s,
    yy: along * s * s + across * c * c,
  };
}

export const scaledPoint = ({ x, y }: Vec2, { xx, xy, yy }: ScaleAlong): Vec2 => ({
  x: xx * x + xy * y,
  y: xy * x + yy * y,
});

/** Packed points scaled; a new array. */
export function scaledPoints(points: ArrayLike<number>, { xx, xy, yy }: ScaleAlong): Float64Array {
  const scaled = new Float64Array(points.length);
  for (let i = 0; i + 1 < points.length; i += 2) {
    scaled[i] = xx * points[i] + xy * points[i + 1];
    scaled[i + 1] = xy * points[i] + yy * points[i + 1];
  }
  return scaled;
}

/** The way a line with this direction runs after the scaling, length 1. */
export const scaledDirection = (way: Vec2, scale: ScaleAlong): Vec2 => unit(scaledPoint(way, scale));

/** The way straight off a line that had this one, length 1: lines turn when they are scaled, and what stands square on them turns against them. */
export const scaledNormal = ({ x, y }: Vec2, { xx, xy, yy }: ScaleAlong): Vec2 =>
  unit({ x: yy * x - xy * y, y: xx * y - xy * x });

function unit({ x, y }: Vec2): Vec2 {
  const length = Math.hypot(x, y);
  return length > 0 ? { x: x / length, y: y / length } : { x, y };
}
