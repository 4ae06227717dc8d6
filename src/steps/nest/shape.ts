import { convexParts } from './convex-parts.ts';

/** How a shape may lie: mirrored first (x turned to -x) where `isFlipped`, then turned by `turnRad` about its own nought. */
export interface Stance {
  readonly turnRad: number;
  readonly isFlipped: boolean;
}

/** A shape to be laid, in whole steps of the lattice. */
export interface Shape {
  /** Outer ring counter-clockwise, then holes clockwise, packed x y, whole numbers. */
  readonly rings: readonly Float64Array[];
  /** Convex parts that cover it. */
  readonly parts: readonly Float64Array[];
  /** Ways it may lie, at least one. */
  readonly stances: readonly Stance[];
}

/** @param rings clean, whole numbers: the outer ring counter-clockwise, then holes clockwise. */
export const shapeOf = (rings: readonly Float64Array[], stances: readonly Stance[]): Shape => ({
  rings,
  parts: convexParts(rings),
  stances,
});

/** Numbers a b c d of the map (x, y) -> (a x + b y, c x + d y). */
export type Turn = readonly [a: number, b: number, c: number, d: number];

/** The map of a stance; exact for quarter turns. */
export function turnOf({ turnRad, isFlipped }: Stance): Turn {
  const quarters = turnRad / (Math.PI / 2);
  const whole = Math.round(quarters);
  const isQuarter = Math.abs(quarters - whole) < 1e-9;
  const k = ((whole % 4) + 4) % 4;
  const cos = isQuarter ? [1, 0, -1, 0][k] : Math.cos(turnRad);
  const sin = isQuarter ? [0, 1, 0, -1][k] : Math.sin(turnRad);
  return isFlipped ? [-cos, -sin, -sin, cos] : [cos, -sin, sin, cos];
}

/** Points through a map, in the order that keeps a ring's way round where the map mirrors. */
export function turnRing(ring: Float64Array, [a, b, c, d]: Turn): Float64Array {
  const n = ring.length / 2;
  const mirrors = a * d - b * c < 0;
  const out = new Float64Array(ring.length);
  for (let i = 0; i < n; i += 1) {
    const to = mirrors ? n - 1 - i : i;
    out[2 * to] = a * ring[2 * i] + b * ring[2 * i + 1];
    out[2 * to + 1] = c * ring[2 * i] + d * ring[2 * i + 1];
  }
  return out;
}
