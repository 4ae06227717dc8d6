import type { Box2 } from './ring.ts';
import type { Vec2 } from './vec.ts';

/** A rigid move of the plane: turn by `turnRad` about the origin (counter-clockwise), then move by `x`, `y`, mm. Never a mirror. */
export interface Move2 {
  readonly x: number;
  readonly y: number;
  readonly turnRad: number;
}

/** Packed points moved; a new array. */
export function movePoints(xy: ArrayLike<number>, move: Move2): Float64Array {
  const [c, s] = turnOf(move.turnRad);
  const moved = new Float64Array(xy.length);
  for (let i = 0; i + 1 < xy.length; i += 2) {
    moved[i] = move.x + c * xy[i] - s * xy[i + 1];
    moved[i + 1] = move.y + s * xy[i] + c * xy[i + 1];
  }
  return moved;
}

export function movePoint(p: Vec2, move: Move2): Vec2 {
  const [c, s] = turnOf(move.turnRad);
  return { x: move.x + c * p.x - s * p.y, y: move.y + s * p.x + c * p.y };
}

/** The move that lays a box, turned by a quarter turn or not at all, with its lower left corner at `left`, `bottom`. */
export function moveBoxTo(box: Box2, isTurned: boolean, left: number, bottom: number): Move2 {
  // A quarter turn takes (x, y) to (-y, x): the new lower left corner was the upper left one.
  return isTurned
    ? { x: left + box.maxY, y: bottom - box.minX, turnRad: Math.PI / 2 }
    : { x: left - box.minX, y: bottom - box.minY, turnRad: 0 };
}

/** Cosine and sine, exact for quarter turns, so that upright lines stay upright. */
function turnOf(angle: number): readonly [number, number] {
  const quarters = angle / (Math.PI / 2);
  if (Number.isInteger(quarters)) return QUARTERS[((quarters % 4) + 4) % 4];
  return [Math.cos(angle), Math.sin(angle)];
}

const QUARTERS = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
] as const;
