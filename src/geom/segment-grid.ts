import type { Box2 } from './ring.ts';

/** Segments on a square grid, so that only those near a place are looked at. Packed ax ay bx by, mm. */
export class SegmentGrid {
  readonly #cellMm: number;
  readonly #segments: number[] = [];
  readonly #cells = new Map<number, number[]>();

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
    const [top, right] = [this.#cell(box.maxY), this.#cell(box.maxX)];
    for (let row = this.#cell(box.minY); row <= top; row += 1) {
      for (let column = this.#cell(box.minX); column <= right; column += 1) {
        const list = this.#cells.get(cellKey(column, row));
        if (list === undefined) continue;
        for (const i of list) if (test(s[i], s[i + 1], s[i + 2], s[i + 3])) return true;
      }
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
    for (let k = 0; k < parts; k += 1) {
      const [x0, y0] = [ax + ((bx - ax) * k) / parts, ay + ((by - ay) * k) / parts];
      const [x1, y1] = [ax + ((bx - ax) * (k + 1)) / parts, ay + ((by - ay) * (k + 1)) / parts];
      for (let row = this.#cell(Math.min(y0, y1)); row <= this.#cell(Math.max(y0, y1)); row += 1) {
        for (let column = this.#cell(Math.min(x0, x1)); column <= this.#cell(Math.max(x0, x1)); column += 1)
          this.#enter(cellKey(column, row), index);
      }
    }
  }

  #enter(key: number, index: number): void {
    const list = this.#cells.get(key);
    if (list === undefined) this.#cells.set(key, [index]);
    else if (list[list.length - 1] !== index) list.push(index);
  }

  #cell(x: number): number {
    return Math.floor(x / this.#cellMm);
  }
}

/** One number for a cell: rows and columns within half a million of the origin never share one. */
const cellKey = (column: number, row: number): number => (row + 2 ** 19) * 2 ** 20 + (column + 2 ** 19);
