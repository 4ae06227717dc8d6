/**
 * The convolution of two rings: closed lines that run round every place of their sum as often as the first, moved over the second turned half round,
 * meets it in pieces. For rings without holes the sum is where they run round more than nought times (Guibas, Ramshaw, Stolfi 1983; Wein 2006). Far
 * fewer lines than all sums of convex parts.
 *
 * A side of one ring is moved along by a corner of the other when its direction lies within the corner's turn: forward where the corner turns left,
 * backward where it turns right. Of equal directions those of `a` come first.
 * @param a,b clean rings, counter-clockwise, packed x y.
 * @returns closed lines, packed x y, rounded to whole numbers.
 */
export function convolution(a: Float64Array, b: Float64Array): readonly Float64Array[] {
  const [an, bn] = [a.length / 2, b.length / 2];
  const ways = new Ways(an * bn);
  const [aDirections, bDirections] = [directions(a), directions(b)];
  for (let j = 0; j < bn; j += 1) {
    for (let i = 0; i < an; i += 1) {
      const way = sideAtCorner(aDirections, i, bDirections, j, true);
      const [from, to] = [i * bn + j, ((i + 1) % an) * bn + j];
      if (way > 0) ways.add(from, to);
      else if (way < 0) ways.add(to, from);
    }
  }
  for (let i = 0; i < an; i += 1) {
    for (let j = 0; j < bn; j += 1) {
      const way = sideAtCorner(bDirections, j, aDirections, i, false);
      const [from, to] = [i * bn + j, i * bn + ((j + 1) % bn)];
      if (way > 0) ways.add(from, to);
      else if (way < 0) ways.add(to, from);
    }
  }
  return ways.loops().map((nodes) => {
    const ring = new Float64Array(2 * nodes.length);
    for (const [k, node] of nodes.entries()) {
      const [i, j] = [Math.floor(node / bn), node % bn];
      ring[2 * k] = Math.round(a[2 * i] + b[2 * j]);
      ring[2 * k + 1] = Math.round(a[2 * i + 1] + b[2 * j + 1]);
    }
    return ring;
  });
}

/** Direction of the side that begins at each corner. */
function directions(ring: Float64Array): Float64Array {
  const out = new Float64Array(ring.length);
  for (let i = 0; i < ring.length; i += 2) {
    const j = (i + 2) % ring.length;
    out[i] = ring[j] - ring[i];
    out[i + 1] = ring[j + 1] - ring[i + 1];
  }
  return out;
}

/** 1 where a side is moved along by a corner that turns left, -1 by one that turns right, else 0. */
function sideAtCorner(
  sides: Float64Array,
  side: number,
  corners: Float64Array,
  corner: number,
  isFirst: boolean,
): number {
  const before = 2 * ((corner + corners.length / 2 - 1) % (corners.length / 2));
  const [ux, uy] = [corners[before], corners[before + 1]];
  const [vx, vy] = [corners[2 * corner], corners[2 * corner + 1]];
  const [dx, dy] = [sides[2 * side], sides[2 * side + 1]];
  const isLeft = ux * vy - uy * vx > 0;
  const isBetween = isLeft ? isInTurn(ux, uy, vx, vy, dx, dy, isFirst) : isInTurn(vx, vy, ux, uy, dx, dy, isFirst);
  return isBetween ? (isLeft ? 1 : -1) : 0;
}

/** True when d lies between u and v, left of u by less than half a turn. An equal direction counts at `v` where `isFirst`, else at `u`. */
function isInTurn(ux: number, uy: number, vx: number, vy: number, dx: number, dy: number, isFirst: boolean): boolean {
  const [fromU, toV] = [ux * dy - uy * dx, dx * vy - dy * vx];
  if (isFirst) return fromU > 0 && (toV > 0 || (toV === 0 && dx * vx + dy * vy > 0));
  return toV > 0 && (fromU > 0 || (fromU === 0 && ux * dx + uy * dy > 0));
}

/** Ways between numbered places, of which as many end as begin at each. */
class Ways {
  readonly #from: number[][];
  readonly #starts: number[] = [];

  constructor(places: number) {
    this.#from = Array.from({ length: places }, () => []);
  }

  add(from: number, to: number): void {
    this.#from[from].push(to);
    this.#starts.push(from);
  }

  /** All ways as closed walks. */
  loops(): readonly (readonly number[])[] {
    const loops: number[][] = [];
    for (const start of this.#starts) {
      let next = this.#from[start].pop();
      if (next === undefined) continue;
      const loop = [start];
      while (next !== start) {
        loop.push(next);
        const on = this.#from[next].pop();
        if (on === undefined) throw new Error('convolution: a way ends');
        next = on;
      }
      loops.push(loop);
    }
    return loops;
  }
}
