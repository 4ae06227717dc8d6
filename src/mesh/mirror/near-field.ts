import type { Vec3 } from '../../geom/vec.ts';

/** Cells along the longest side of the box. */
const CELLS = 40;

/** Cells of room round the box: mirror images stick out of it. */
const ROOM = 8;

/**
 * How far places lie from a cloud of points, roughly, in cells of a coarse lattice: good to about one cell and looked up at once. Two sweeps
 * carry distances from cell to cell (Borgefors 1986, weights 3, 4, 5).
 */
export class NearField {
  readonly #cell: number;
  readonly #low: Vec3;
  readonly #size: readonly [number, number, number];
  readonly #far: Uint16Array;

  /** @param points not empty, not all on one spot. */
  constructor(points: readonly Vec3[], min: Vec3, max: Vec3) {
    const cell = Math.max(max.x - min.x, max.y - min.y, max.z - min.z) / CELLS;
    this.#cell = cell;
    this.#low = { x: min.x - ROOM * cell, y: min.y - ROOM * cell, z: min.z - ROOM * cell };
    const count = (from: number, to: number): number => Math.floor((to - from) / cell) + 1 + 2 * ROOM;
    this.#size = [count(min.x, max.x), count(min.y, max.y), count(min.z, max.z)];
    const [a, b, c] = this.#size;
    this.#far = new Uint16Array(a * b * c).fill(FAR);
    for (const p of points) this.#far[this.#at(p)] = 0;
    this.#sweep(false);
    this.#sweep(true);
  }

  /** Distance of a place from the nearest point, in the unit of the points; past the lattice's rim that of the rim. */
  distance(p: Vec3): number {
    return (this.#far[this.#at(p)] * this.#cell) / 3;
  }

  #at({ x, y, z }: Vec3): number {
    const [a, b, c] = this.#size;
    const held = (value: number, low: number, count: number): number =>
      Math.min(count - 2, Math.max(1, Math.floor((value - low) / this.#cell)));
    const { x: lx, y: ly, z: lz } = this.#low;
    return held(x, lx, a) + a * (held(y, ly, b) + b * held(z, lz, c));
  }

  #sweep(isBackward: boolean): void {
    const [a, b, c] = this.#size;
    const far = this.#far;
    const sign = isBackward ? -1 : 1;
    const steps = BEFORE.map(([dx, dy, dz, step]) => ({ away: sign * (dx + a * (dy + b * dz)), step }));
    const total = a * b * c;
    // A rim of one cell is left out, so that no neighbour lies outside; nobody asks so far off.
    for (let n = 0; n < total; n += 1) {
      const at = isBackward ? total - 1 - n : n;
      const x = at % a;
      const y = Math.floor(at / a) % b;
      const z = Math.floor(at / (a * b));
      if (x === 0 || y === 0 || z === 0 || x === a - 1 || y === b - 1 || z === c - 1) continue;
      let least = far[at];
      for (const { away, step } of steps) least = Math.min(least, far[at + away] + step);
      far[at] = least;
    }
  }
}

const FAR = 30_000;

/** The thirteen neighbours that come before a cell, each with three times its distance, rounded. */
const BEFORE: readonly (readonly [number, number, number, number])[] = [-1, 0, 1].flatMap((dz) =>
  [-1, 0, 1].flatMap((dy) =>
    [-1, 0, 1]
      .filter((dx) => dx + 3 * dy + 9 * dz < 0)
      .map((dx) => [dx, dy, dz, 2 + Math.abs(dx) + Math.abs(dy) + Math.abs(dz)] as const),
  ),
);
