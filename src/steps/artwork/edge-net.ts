import type { Box2 } from '../../geom/ring.ts';

/** A line as straight parts. */
export interface FlatLine {
  /** Packed x y, mm; a closed one repeats none. */
  readonly points: Float64Array;
  readonly isClosed: boolean;
}

/** All straight parts of many lines on a square grid, so that only near ones are compared. */
export class EdgeNet {
  readonly count: number;
  /** ax ay bx by of each edge. */
  readonly ends: Float64Array;
  /** The line of each edge, and its place among the edges of that. */
  readonly lineOf: Uint32Array;
  readonly placeOf: Uint32Array;
  /** Length of the line before each edge, mm. */
  readonly before: Float64Array;
  /** Length and number of edges of each line. */
  readonly lengths: Float64Array;
  readonly edgeCounts: Uint32Array;
  readonly #cells = new Map<number, number[]>();
  readonly #cellMm: number;
  readonly #minX: number;
  readonly #minY: number;

  constructor(lines: readonly FlatLine[]) {
    this.edgeCounts = Uint32Array.from(lines, ({ points, isClosed }) =>
      Math.max(0, points.length / 2 - (isClosed ? 0 : 1)),
    );
    this.count = this.edgeCounts.reduce((sum, one) => sum + one, 0);
    this.ends = new Float64Array(4 * this.count);
    this.lineOf = new Uint32Array(this.count);
    this.placeOf = new Uint32Array(this.count);
    this.before = new Float64Array(this.count);
    this.lengths = new Float64Array(lines.length);
    let e = 0;
    let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
    for (const [line, { points }] of lines.entries()) {
      for (let i = 0; i < this.edgeCounts[line]; i += 1, e += 1) {
        const j = (2 * i + 2) % points.length;
        const [ax, ay, bx, by] = [points[2 * i], points[2 * i + 1], points[j], points[j + 1]];
        this.ends.set([ax, ay, bx, by], 4 * e);
        [this.lineOf[e], this.placeOf[e], this.before[e]] = [line, i, this.lengths[line]];
        this.lengths[line] += Math.hypot(bx - ax, by - ay);
        [minX, maxX] = [Math.min(minX, ax, bx), Math.max(maxX, ax, bx)];
        [minY, maxY] = [Math.min(minY, ay, by), Math.max(maxY, ay, by)];
      }
    }
    [this.#minX, this.#minY] = [minX, minY];
    const mean = this.lengths.reduce((sum, one) => sum + one, 0) / Math.max(1, this.count);
    this.#cellMm = Math.max(1.5 * mean, Math.max(maxX - minX, maxY - minY) / 2000, 1e-6);
    for (let i = 0; i < this.count; i += 1) this.#enter(i);
  }

  /** Edges that may lie in a box; one may be offered more than once. */
  near({ minX, minY, maxX, maxY }: Box2, use: (edge: number) => void): void {
    for (let row = this.#row(minY); row <= this.#row(maxY); row += 1) {
      for (let column = this.#column(minX); column <= this.#column(maxX); column += 1)
        for (const edge of this.#cells.get(row * 4096 + column) ?? []) use(edge);
    }
  }

  boxOf(edge: number, by = 0): Box2 {
    const [ax, ay, bx, byEnd] = this.ends.subarray(4 * edge, 4 * edge + 4);
    return {
      minX: Math.min(ax, bx) - by,
      minY: Math.min(ay, byEnd) - by,
      maxX: Math.max(ax, bx) + by,
      maxY: Math.max(ay, byEnd) + by,
    };
  }

  #enter(edge: number): void {
    const [ax, ay, bx, by] = this.ends.subarray(4 * edge, 4 * edge + 4);
    // A long edge enters the cells of short parts of it, not of its whole box.
    const parts = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / this.#cellMm));
    for (let k = 0; k < parts; k += 1) {
      const [x0, y0] = [ax + ((bx - ax) * k) / parts, ay + ((by - ay) * k) / parts];
      const [x1, y1] = [ax + ((bx - ax) * (k + 1)) / parts, ay + ((by - ay) * (k + 1)) / parts];
      for (let row = this.#row(Math.min(y0, y1)); row <= this.#row(Math.max(y0, y1)); row += 1) {
        for (let column = this.#column(Math.min(x0, x1)); column <= this.#column(Math.max(x0, x1)); column += 1) {
          const key = row * 4096 + column;
          const list = this.#cells.get(key);
          if (list === undefined) this.#cells.set(key, [edge]);
          else if (list[list.length - 1] !== edge) list.push(edge);
        }
      }
    }
  }

  // At most 2000 cells each way; what lies outside belongs to the outermost.
  #column(x: number): number {
    return Math.min(2001, Math.max(0, Math.floor((x - this.#minX) / this.#cellMm)));
  }

  #row(y: number): number {
    return Math.min(2001, Math.max(0, Math.floor((y - this.#minY) / this.#cellMm)));
  }
}
