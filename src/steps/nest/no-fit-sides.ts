/** Numbers kept for a side: start x y, direction x y, length, +1 / -1 at its two ends. */
export const STRIDE = 7;

/**
 * Sides of all rings. Where the nearest point of the border is a corner, the place lies outside when the border turns left there, else inside: the
 * last two numbers of a side say so for its ends.
 */
export function sidesOf(rings: readonly Float64Array[]): Float64Array {
  const count = rings.reduce((sum, ring) => sum + ring.length / 2, 0);
  const sides = new Float64Array(count * STRIDE);
  let at = 0;
  for (const ring of rings) {
    const n = ring.length / 2;
    for (let i = 0; i < n; i += 1) {
      const j = (i + 1) % n;
      const [dx, dy] = [ring[2 * j] - ring[2 * i], ring[2 * j + 1] - ring[2 * i + 1]];
      const length = Math.sqrt(dx * dx + dy * dy);
      sides[at] = ring[2 * i];
      sides[at + 1] = ring[2 * i + 1];
      sides[at + 2] = dx / length;
      sides[at + 3] = dy / length;
      sides[at + 4] = length;
      sides[at + 5] = cornerSign(ring, (i + n - 1) % n, i, j);
      sides[at + 6] = cornerSign(ring, i, j, (j + 1) % n);
      at += STRIDE;
    }
  }
  return sides;
}

function cornerSign(ring: Float64Array, a: number, b: number, c: number): number {
  const turn =
    (ring[2 * b] - ring[2 * a]) * (ring[2 * c + 1] - ring[2 * b + 1]) -
    (ring[2 * b + 1] - ring[2 * a + 1]) * (ring[2 * c] - ring[2 * b]);
  return turn >= 0 ? -1 : 1;
}

/** Distances from one place to many sides. */
export class SideScan {
  /** Squared distance to each side, in the order they were named. */
  #away = new Float64Array(64);
  /** To the nearest side, and on which side of the border the place lies: 1 inside, -1 outside. */
  distance = 0;
  sign = -1;

  /** Looks from a place at some of the sides. */
  look(s: Float64Array, x: number, y: number, among: Uint16Array): void {
    if (this.#away.length < among.length) this.#away = new Float64Array(2 * among.length);
    const away = this.#away;
    let least = Infinity;
    let sign = -1;
    for (let k = 0; k < among.length; k += 1) {
      const e = among[k] * STRIDE;
      const px = x - s[e];
      const py = y - s[e + 1];
      const ux = s[e + 2];
      const uy = s[e + 3];
      const t = px * ux + py * uy;
      const across = ux * py - uy * px;
      let square = across * across;
      let side = across > 0 ? 1 : -1;
      if (t < 0) {
        square = px * px + py * py;
        side = s[e + 5];
      } else if (t > s[e + 4]) {
        square = (px - ux * s[e + 4]) ** 2 + (py - uy * s[e + 4]) ** 2;
        side = s[e + 6];
      }
      away[k] = square;
      if (square < least) {
        least = square;
        sign = side;
      }
    }
    this.sign = sign;
    this.distance = Math.sqrt(least);
  }

  /** Writes those of the sides last looked at that are no farther than `most`. @returns how many. */
  within(among: Uint16Array, most: number, out: Uint16Array, at: number): number {
    const square = most * most;
    let count = 0;
    for (let k = 0; k < among.length; k += 1) {
      if (this.#away[k] > square) continue;
      out[at + count] = among[k];
      count += 1;
    }
    return count;
  }

  /** Writes the two nearest of them, or the one that is no farther than `most`. @returns how many. */
  nearestTwo(among: Uint16Array, most: number, out: Uint16Array, at: number): number {
    const away = this.#away;
    let [first, second] = [-1, -1];
    for (let k = 0; k < among.length; k += 1) {
      if (first < 0 || away[k] < away[first]) {
        second = first;
        first = k;
      } else if (second < 0 || away[k] < away[second]) second = k;
    }
    out[at] = among[first];
    if (second < 0 || away[second] > most * most) return 1;
    out[at + 1] = among[second];
    return 2;
  }
}
