import type { Box2 } from './ring.ts';

/** Segments on a square grid, so that only those near a place are looked at. Packed ax ay bx by, mm. */
export class SegmentGrid {
  readonly #cellMm: number;
  readonly #segments: number[] = [];
  readonly #cells = new Map<string, number[]>();

  /** @param cellMm side of a cell, mm, > 0: about the size of what is asked for. */
  constructor(cellMm: number) {
    this.#cellMm = cellMm;
  }

  /** Adds a line of straight parts. @param points packed x y. */
  addLine(points: ArrayLike<number>, closed: boolean): void {
    const count = points.length / 2;
    for (let i = 0; i < (closed ? count : count - 1); i += 1) {
      const j = (i + 1) % count;
      this.#add(points[2 * i], points[2 * i + 1], points[2 * j], points[2 * j + 1]);
    }
  }

  /** True when `test` holds for a segment that may lie in the box; segments are offered once or more. */
  some(box: Box2, test: (ax: number, ay: number, bx: number, by: number) => boolean): boolean {
    const s = this.#segments;
    for (const key of this.#keys(box.minX, box.minY, box.maxX, box.maxY)) {
      for (const i of this.#cells.get(key) ?? []) if (test(s[i], s[i + 1], s[i + 2], s[i + 3])) return true;
    }
    return false;
  }

  /** All segments, each once. */
  forEach(use: (ax: number, ay: number, bx: number, by: number) => void): void {
    const s = this.#segments;
    for (let i = 0; i < s.length; i += 4) use(s[i], s[i + 1], s[i + 2], s[i + 3]);
  }

  #add(ax: number, ay: number, bx: number, by: number): void {
    const index = this.#segments.length;
    this.#segments.push(ax, ay, bx, by);
    // A long segment enters the cells of short parts of it, not of its whole box.
    const parts = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / this.#cellMm));
    const seen = new Set<string>();
    for (let k = 0; k < parts; k += 1) {
      const [x0, y0] = [ax + ((bx - ax) * k) / parts, ay + ((by - ay) * k) / parts];
      const [x1, y1] = [ax + ((bx - ax) * (k + 1)) / parts, ay + ((by - ay) * (k + 1)) / parts];
      for (const key of this.#keys(Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1))) {
        if (seen.has(key)) continue;
        seen.add(key);
        const list = this.#cells.get(key);
        if (list === undefined) this.#cells.set(key, [index]);
        else list.push(index);
      }
    }
  }

  *#keys(minX: number, minY: number, maxX: number, maxY: number): Generator<string> {
    const cell = (x: number): number => Math.floor(x / this.#cellMm);
    for (let row = cell(minY); row <= cell(maxY); row += 1) {
      for (let column = cell(minX); column <= cell(maxX); column += 1) yield `${column} ${row}`;
    }
  }
}
