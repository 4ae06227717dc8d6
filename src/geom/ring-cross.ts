/**
 * True when two edges of a ring cross properly, each passing from one side of the other to the other side. Touching is no crossing, so
 * that a ring which runs to a hole and back along the same line passes. Signs are those of plain double arithmetic: this decides which
 * way to cut a polygon is worth trying, not what is true of it.
 *
 * A sweep along x over edges sorted by their left ends; quadratic only where many edges lie over one another in x.
 * @param ring packed x y, without a repeated last point.
 */
export function doesRingCross(ring: ArrayLike<number>): boolean {
  const count = ring.length / 2;
  const left = new Float64Array(count);
  const right = new Float64Array(count);
  for (let e = 0; e < count; e += 1) {
    const next = (2 * e + 2) % ring.length;
    left[e] = Math.min(ring[2 * e], ring[next]);
    right[e] = Math.max(ring[2 * e], ring[next]);
  }
  const order = Uint32Array.from({ length: count }, (_, e) => e).sort((e, f) => left[e] - left[f] || e - f);
  let open: number[] = [];
  for (const e of order) {
    const still: number[] = [];
    for (const f of open) {
      if (right[f] < left[e]) continue;
      if (doEdgesCross(ring, e, f)) return true;
      still.push(f);
    }
    still.push(e);
    open = still;
  }
  return false;
}

function doEdgesCross(ring: ArrayLike<number>, e: number, f: number): boolean {
  const [a, b] = [2 * e, (2 * e + 2) % ring.length];
  const [c, d] = [2 * f, (2 * f + 2) % ring.length];
  const low = Math.min(ring[a + 1], ring[b + 1]);
  const high = Math.max(ring[a + 1], ring[b + 1]);
  if (Math.max(ring[c + 1], ring[d + 1]) < low || Math.min(ring[c + 1], ring[d + 1]) > high) return false;
  return side(ring, a, b, c) * side(ring, a, b, d) < 0 && side(ring, c, d, a) * side(ring, c, d, b) < 0;
}

/** Sign of the side of the line through points at `a` and `b` on which the point at `p` lies. */
function side(ring: ArrayLike<number>, a: number, b: number, p: number): number {
  const twice = (ring[b] - ring[a]) * (ring[p + 1] - ring[a + 1]) - (ring[b + 1] - ring[a + 1]) * (ring[p] - ring[a]);
  return Math.sign(twice);
}
