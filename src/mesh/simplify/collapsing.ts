import { cross3, dot3, length3, pointAt3, sub3, type Vec3 } from '../../geom/vec.ts';

/** Cosine of the most a triangle may turn when one of its corners is moved: 60 degrees, well short of lying on its back. */
const MOST_TURN = 0.5;

/** Height of a triangle over its longest side under which it is a needle, and no triangle is made one. */
const NEEDLE = 0.02;

/** What one collapse changed, to be taken back. */
export interface Collapse {
  readonly from: number;
  readonly to: number;
  readonly moved: readonly number[];
  readonly gone: readonly number[];
}

/** Triangles whose vertices are brought onto one another, one at a time: vertices keep their places and only become fewer. */
export class Collapsing {
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
  /** 0 for a triangle that is gone. */
  readonly isThere: Uint8Array;
  /** Triangles at each vertex. */
  readonly #at: number[][];
  #count: number;

  constructor(positions: Float64Array, triangles: Uint32Array) {
    this.positions = positions;
    this.triangles = triangles.slice();
    this.#count = triangles.length / 3;
    this.isThere = new Uint8Array(this.#count).fill(1);
    this.#at = Array.from({ length: positions.length / 3 }, () => []);
    this.triangles.forEach((v, h) => this.#at[v].push(Math.floor(h / 3)));
  }

  /** Triangles left. */
  get count(): number {
    return this.#count;
  }

  trianglesAt(v: number): readonly number[] {
    return this.#at[v];
  }

  neighbours(v: number): Set<number> {
    const found = new Set<number>();
    for (const t of this.#at[v]) for (let k = 0; k < 3; k += 1) found.add(this.triangles[3 * t + k]);
    found.delete(v);
    return found;
  }

  /**
   * Whether vertex `u` can be brought onto its neighbour `v`: handles, holes and edges of two triangles stay (the link condition; Dey, Edelsbrunner,
   * Guha and Nekhayev 1999), no triangle turns over or becomes a needle.
   */
  can(u: number, v: number): boolean {
    const common = new Set<number>();
    const ring = this.neighbours(v);
    for (const w of this.neighbours(u)) if (ring.has(w)) common.add(w);
    const between = this.#at[u].filter((t) => this.#has(t, v));
    if (between.length === 0 || between.length > 2 || common.size !== between.length) return false;
    const tips = between.map((t) => this.#third(t, u, v));
    if (tips.length === 2) {
      // A shell of four triangles would fold flat; so would any with both these triangles on the two tips.
      const [a, b] = tips;
      if (
        this.#at[u].some((t) => this.#has(t, a) && this.#has(t, b)) &&
        this.#at[v].some((t) => this.#has(t, a) && this.#has(t, b))
      )
        return false;
    }
    // Nothing of the piece would be left.
    if (this.#at[u].length + this.#at[v].length - 2 * between.length === 0) return false;
    return this.#at[u].every((t) => this.#has(t, v) || this.#staysFair(t, u, v));
  }

  /** Brings `u` onto `v`; {@link can} was asked. */
  collapse(u: number, v: number): Collapse {
    const moved: number[] = [];
    const gone: number[] = [];
    for (const t of this.#at[u]) (this.#has(t, v) ? gone : moved).push(t);
    for (const t of gone) {
      this.isThere[t] = 0;
      for (let k = 0; k < 3; k += 1) {
        const w = this.triangles[3 * t + k];
        if (w !== u) this.#at[w] = this.#at[w].filter((other) => other !== t);
      }
    }
    for (const t of moved) {
      this.#replace(t, u, v);
      this.#at[v].push(t);
    }
    this.#at[u] = [];
    this.#count -= gone.length;
    return { from: u, to: v, moved, gone };
  }

  /** Takes back the last collapse that was not taken back. */
  undo({ from: u, to: v, moved, gone }: Collapse): void {
    const own = new Set(moved);
    this.#at[v] = this.#at[v].filter((t) => !own.has(t));
    for (const t of moved) this.#replace(t, v, u);
    for (const t of gone) {
      this.isThere[t] = 1;
      for (let k = 0; k < 3; k += 1) {
        const w = this.triangles[3 * t + k];
        if (w !== u) this.#at[w].push(t);
      }
    }
    this.#at[u] = [...moved, ...gone];
    this.#count += gone.length;
  }

  #has(t: number, v: number): boolean {
    const { triangles } = this;
    return triangles[3 * t] === v || triangles[3 * t + 1] === v || triangles[3 * t + 2] === v;
  }

  #third(t: number, u: number, v: number): number {
    const { triangles } = this;
    const a = triangles[3 * t];
    if (a !== u && a !== v) return a;
    const b = triangles[3 * t + 1];
    return b !== u && b !== v ? b : triangles[3 * t + 2];
  }

  #replace(t: number, old: number, next: number): void {
    for (let h = 3 * t; h < 3 * t + 3; h += 1) if (this.triangles[h] === old) this.triangles[h] = next;
  }

  #staysFair(t: number, u: number, v: number): boolean {
    const corners = [0, 1, 2].map((k) => this.triangles[3 * t + k]);
    const before = corners.map((w) => pointAt3(this.positions, w));
    const after = corners.map((w, k) => (w === u ? pointAt3(this.positions, v) : before[k]));
    const [n, m] = [normalOf(before), normalOf(after)];
    const [old, now] = [length3(n), length3(m)];
    if (!(now > 0)) return false;
    if (old > 0 && dot3(n, m) < MOST_TURN * old * now) return false;
    const slim = fairness(after, now);
    return slim >= NEEDLE || slim >= fairness(before, old);
  }
}

const normalOf = ([a, b, c]: readonly Vec3[]): Vec3 => cross3(sub3(b, a), sub3(c, a));

/** Height over the longest side: 0.87 at best, 0 for a needle. @param twice the area, doubled. */
function fairness([a, b, c]: readonly Vec3[], twice: number): number {
  const longest = Math.max(length3(sub3(b, a)), length3(sub3(c, b)), length3(sub3(a, c)));
  return longest > 0 ? twice / (longest * longest) : 0;
}
