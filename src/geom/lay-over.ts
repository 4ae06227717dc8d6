import type { Vec2 } from './vec.ts';
import { movePoint, movePoints, type Move2 } from './turn-and-move.ts';

/** How a drawing is laid: turned over first where `isFlipped` (x to -x), then turned about its nought, then moved, mm. */
export interface Lay2 extends Move2 {
  /** Missing: false. */
  readonly isFlipped?: boolean;
}

export const layPoint = (p: Vec2, lay: Lay2): Vec2 => movePoint(lay.isFlipped === true ? { x: -p.x, y: p.y } : p, lay);

/** Packed points laid; a new array, in the same order. */
export const layPoints = (xy: ArrayLike<number>, lay: Lay2): Float64Array =>
  movePoints(lay.isFlipped === true ? Float64Array.from(xy, (value, k) => ((k & 1) === 0 ? -value : value)) : xy, lay);

/** A ring laid; it runs the same way round as before. */
export function layRing(ring: ArrayLike<number>, lay: Lay2): Float64Array {
  const laid = layPoints(ring, lay);
  if (lay.isFlipped !== true) return laid;
  return laid.map((_, k) => laid[laid.length - 2 - 2 * (k >> 1) + (k & 1)]);
}

/** A line of words as it lies on a drawing. */
interface LineOfWords {
  readonly at: Vec2;
  readonly angleRad: number;
  readonly align: 'left' | 'centre' | 'right';
}

/** Words laid: on a drawing that is turned over they take the same room, and are read as ever. */
export function layWords<T extends LineOfWords>(words: T, lay: Lay2): T {
  const at = layPoint(words.at, lay);
  if (lay.isFlipped !== true) return { ...words, at, angleRad: words.angleRad + lay.turnRad };
  return { ...words, at, angleRad: lay.turnRad - words.angleRad, align: OTHER_END[words.align] };
}

const OTHER_END = { left: 'right', centre: 'centre', right: 'left' } as const;
