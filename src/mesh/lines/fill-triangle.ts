import { orient2d } from '../../geom/predicates.ts';

/** What a triangle is to be filled with. */
export interface TriangleNet {
  /** x y of each point in the triangle's plane, any unit; its corners are the points 0, 1, 2, counter-clockwise. */
  readonly xy: readonly number[];
  /** Sides each point lies on, as bits: 1 for the one from corner 0 to 1, 2 for that from 1 to 2, 4 for that from 2 to 0. */
  readonly sides: readonly number[];
  /** Lines that become sides of the filling: pairs of points. They meet in points only and pass through none. */
  readonly links: readonly (readonly [number, number])[];
}

/** Sides each corner lies on. */
export const SIDES_OF_CORNER: readonly number[] = [1 | 4, 1 | 2, 2 | 4];

/** Sine of the angle by which two opposite angles together are more than a straight one before a side is turned: over rounding. */
const TURN_SINE = 1e-9;

/**
 * Fills a triangle with smaller ones that have the given points as corners and the given lines as sides, and are as far from needles as those
 * allow (constrained Delaunay triangulation; lines are put in by flips, Sloan 1993). Points on a side of the triangle are taken to lie on
 * it exactly, whatever their rounded coordinates say, so that no empty triangle stands at a side.
 * @returns three points per triangle, each counter-clockwise; every point is used.
 */
export function fillTriangle(net: TriangleNet): number[] {
  const filling = new Filling(net);
  filling.putOnSides();
  for (let p = 3; p < net.sides.length; p += 1) if (net.sides[p] === 0) filling.putInside(p);
  for (const [a, b] of net.links) filling.link(a, b);
  filling.roundOut();
  return filling.triangles();
}

/** Triangles by their directed sides: the corner to the left of each. */
class Filling {
  readonly #net: TriangleNet;
  readonly #count: number;
  readonly #apex = new Map<number, number>();
  readonly #fixed = new Set<number>();

  constructor(net: TriangleNet) {
    this.#net = net;
    this.#count = net.sides.length;
    this.#add(0, 1, 2);
  }

  triangles(): number[] {
    const list: number[] = [];
    for (const [key, c] of this.#apex) {
      const [a, b] = this.#ends(key);
      if (a < b && a < c) list.push(a, b, c);
    }
    return list;
  }

  putOnSides(): void {
    const { sides } = this.#net;
    for (let k = 0; k < 3; k += 1) {
      const end = (k + 1) % 3;
      const own = [...sides.keys()].filter((p) => p > 2 && (sides[p] & (1 << k)) !== 0);
      own.sort((p, q) => this.#distance2(k, p) - this.#distance2(k, q));
      let before = k;
      for (const p of own) {
        this.#split(before, end, p);
        before = p;
      }
    }
  }

  putInside(p: number): void {
    for (const [key, c] of this.#apex) {
      const [a, b] = this.#ends(key);
      if (!(a < b && a < c)) continue;
      const turns = [this.#turn(a, b, p), this.#turn(b, c, p), this.#turn(c, a, p)];
      if (turns.some((turn) => turn < 0)) continue;
      const corners = [a, b, c];
      const on = turns.findIndex((turn) => turn === 0);
      if (on >= 0) {
        const [u, v] = [corners[on], corners[(on + 1) % 3]];
        this.#split(u, v, p);
        if (this.#apex.has(this.#key(v, u))) this.#split(v, u, p);
        return;
      }
      this.#remove(a, b, c);
      this.#add(a, b, p);
      this.#add(b, c, p);
      this.#add(c, a, p);
      return;
    }
    throw new Error(`fillTriangle: point ${p} lies in no triangle`);
  }

  /** Makes a line between two points a side, by flips of the sides that cross it. */
  link(a: number, b: number): void {
    if (a === b) return;
    const crossed = this.#crossed(a, b);
    if (typeof crossed === 'number') {
      // The line runs through a point after all: to its coordinates, which are rounded.
      this.link(a, crossed);
      this.link(crossed, b);
      return;
    }
    let patience = 64 * (crossed.length + 1) ** 2;
    while (crossed.length > 0) {
      if (patience-- === 0) throw new Error('fillTriangle: a line finds no way');
      const [u, v] = crossed.shift() ?? [0, 0];
      const [p, q] = [this.#apexOf(u, v), this.#apexOf(v, u)];
      if (!this.#isConvex(u, v, p, q)) {
        crossed.push([u, v]);
        continue;
      }
      this.#flip(u, v, p, q);
      const isAcross = p !== a && p !== b && q !== a && q !== b && this.#turn(a, b, p) * this.#turn(a, b, q) < 0;
      if (isAcross) crossed.push([q, p]);
    }
    this.#fixed.add(this.#key(Math.min(a, b), Math.max(a, b)));
  }

  /** Flips sides that are no lines until each circle round a triangle is empty of its neighbours (Lawson 1977). */
  roundOut(): void {
    const open = [...this.#apex.keys()].map((key) => this.#ends(key)).filter(([a, b]) => a < b);
    let patience = 16 * (this.#count + 4) ** 2;
    while (open.length > 0 && patience-- > 0) {
      const [u, v] = open.pop() ?? [0, 0];
      if (this.#fixed.has(this.#key(Math.min(u, v), Math.max(u, v)))) continue;
      const [p, q] = [this.#apex.get(this.#key(u, v)), this.#apex.get(this.#key(v, u))];
      if (p === undefined || q === undefined || !this.#isFarFromRound(u, v, p, q)) continue;
      if (!this.#isConvex(u, v, p, q)) continue;
      this.#flip(u, v, p, q);
      open.push([u, q], [q, v], [v, p], [p, u]);
    }
  }

  /** Sides that a line between two points crosses, from its first end on; a point, where it runs through one; none where it is a side. */
  #crossed(a: number, b: number): (readonly [number, number])[] | number {
    if (this.#apex.has(this.#key(a, b)) || this.#apex.has(this.#key(b, a))) return [];
    for (let right = 0; right < this.#count; right += 1) {
      const left = right === a ? undefined : this.#apex.get(this.#key(a, right));
      if (left === undefined) continue;
      const [r, l] = [this.#turn(a, b, right), this.#turn(a, b, left)];
      if (r === 0 && this.#isAhead(a, b, right)) return right;
      if (l === 0 && this.#isAhead(a, b, left)) return left;
      if (r < 0 && l > 0) return this.#crossedFrom(a, b, right, left);
    }
    throw new Error(`fillTriangle: no way from point ${a} to ${b}`);
  }

  #crossedFrom(a: number, b: number, right: number, left: number): (readonly [number, number])[] | number {
    const found: (readonly [number, number])[] = [];
    let [u, v] = [right, left];
    for (;;) {
      found.push([u, v]);
      const next = this.#apexOf(v, u);
      if (next === b) return found;
      const turn = this.#turn(a, b, next);
      if (turn === 0) return next;
      if (turn > 0) v = next;
      else u = next;
    }
  }

  #isAhead(a: number, b: number, p: number): boolean {
    const { xy } = this.#net;
    const [x, y] = [xy[2 * b] - xy[2 * a], xy[2 * b + 1] - xy[2 * a + 1]];
    return x * (xy[2 * p] - xy[2 * a]) + y * (xy[2 * p + 1] - xy[2 * a + 1]) > 0;
  }

  /** Whether the four-sided figure round a side has its corners outward, so that the side can be turned to its other diagonal. */
  #isConvex(u: number, v: number, p: number, q: number): boolean {
    return this.#turn(u, q, p) > 0 && this.#turn(q, v, p) > 0;
  }

  #isFarFromRound(u: number, v: number, p: number, q: number): boolean {
    const [cosP, sinP] = this.#angle(p, u, v);
    const [cosQ, sinQ] = this.#angle(q, v, u);
    return sinP * cosQ + cosP * sinQ < -TURN_SINE;
  }

  /** Cosine and sine of the angle at `p` from `u` to `v`. */
  #angle(p: number, u: number, v: number): [number, number] {
    const { xy } = this.#net;
    const [ux, uy] = [xy[2 * u] - xy[2 * p], xy[2 * u + 1] - xy[2 * p + 1]];
    const [vx, vy] = [xy[2 * v] - xy[2 * p], xy[2 * v + 1] - xy[2 * p + 1]];
    const scale = Math.hypot(ux, uy) * Math.hypot(vx, vy);
    return scale === 0 ? [1, 0] : [(ux * vx + uy * vy) / scale, (ux * vy - uy * vx) / scale];
  }

  /** Positive where `c` lies to the left of the line from a to b; 0 too where all three lie on one side of the triangle. */
  #turn(a: number, b: number, c: number): number {
    const { xy, sides } = this.#net;
    if ((sides[a] & sides[b] & sides[c]) !== 0) return 0;
    return orient2d(xy[2 * a], xy[2 * a + 1], xy[2 * b], xy[2 * b + 1], xy[2 * c], xy[2 * c + 1]);
  }

  #distance2(p: number, q: number): number {
    const { xy } = this.#net;
    return (xy[2 * p] - xy[2 * q]) ** 2 + (xy[2 * p + 1] - xy[2 * q + 1]) ** 2;
  }

  #split(u: number, v: number, p: number): void {
    const c = this.#apexOf(u, v);
    this.#remove(u, v, c);
    this.#add(u, p, c);
    this.#add(p, v, c);
  }

  #flip(u: number, v: number, p: number, q: number): void {
    this.#remove(u, v, p);
    this.#remove(v, u, q);
    this.#add(u, q, p);
    this.#add(q, v, p);
  }

  #apexOf(a: number, b: number): number {
    const apex = this.#apex.get(this.#key(a, b));
    if (apex === undefined) throw new Error(`fillTriangle: no triangle at ${a} ${b}`);
    return apex;
  }

  #add(a: number, b: number, c: number): void {
    this.#apex.set(this.#key(a, b), c);
    this.#apex.set(this.#key(b, c), a);
    this.#apex.set(this.#key(c, a), b);
  }

  #remove(a: number, b: number, c: number): void {
    for (const key of [this.#key(a, b), this.#key(b, c), this.#key(c, a)]) this.#apex.delete(key);
  }

  #key(a: number, b: number): number {
    return a * this.#count + b;
  }

  #ends(key: number): [number, number] {
    return [Math.floor(key / this.#count), key % this.#count];
  }
}
