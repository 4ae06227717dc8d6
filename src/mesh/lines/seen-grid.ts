import type { Surface } from '../surface.ts';
import type { SeenSurface } from './view-projection.ts';

/** Triangles as they are seen on a drawing, in square cells, so that a stroke looks only at those along it. */
export class SeenGrid {
  readonly #cells: number[][];
  readonly #minX: number;
  readonly #minY: number;
  readonly #cell: number;
  readonly #columns: number;
  readonly #rows: number;
  readonly #stamp: Uint32Array;
  #search = 0;

  /** Triangles with a corner behind the eye are left out: they are not seen whole. */
  constructor({ triangles }: Surface, { x, y, range }: SeenSurface) {
    const count = triangles.length / 3;
    let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
    const seen: number[] = [];
    for (let t = 0; t < count; t += 1) {
      const corners = triangles.subarray(3 * t, 3 * t + 3);
      if (!corners.every((v) => range[v] > 0)) continue;
      seen.push(t);
      for (const v of corners) {
        [minX, maxX] = [Math.min(minX, x[v]), Math.max(maxX, x[v])];
        [minY, maxY] = [Math.min(minY, y[v]), Math.max(maxY, y[v])];
      }
    }
    const [width, height] = seen.length === 0 ? [1, 1] : [maxX - minX, maxY - minY];
    this.#cell = Math.max(Math.sqrt((width * height) / (seen.length + 1)), Math.max(width, height, 1e-9) / 512);
    this.#columns = Math.floor(width / this.#cell) + 1;
    this.#rows = Math.floor(height / this.#cell) + 1;
    [this.#minX, this.#minY] = seen.length === 0 ? [0, 0] : [minX, minY];
    this.#cells = Array.from({ length: this.#columns * this.#rows }, () => []);
    this.#stamp = new Uint32Array(count);
    for (const t of seen) {
      const [a, b, c] = triangles.subarray(3 * t, 3 * t + 3);
      const [left, right] = [Math.min(x[a], x[b], x[c]), Math.max(x[a], x[b], x[c])];
      const [low, high] = [Math.min(y[a], y[b], y[c]), Math.max(y[a], y[b], y[c])];
      for (let row = this.#row(low); row <= this.#row(high); row += 1)
        for (let column = this.#column(left); column <= this.#column(right); column += 1)
          this.#cells[row * this.#columns + column].push(t);
    }
  }

  /** Triangles that may lie under a straight piece, ascending, each once. */
  along(ax: number, ay: number, bx: number, by: number): number[] {
    this.#search += 1;
    const found: number[] = [];
    const [left, right] = [Math.min(ax, bx), Math.max(ax, bx)];
    // What lies outside the grid on one side has no triangle under it; rounding keeps one more cell on each side.
    for (let column = this.#column(left) - 1; column <= this.#column(right) + 1; column += 1) {
      if (column < 0 || column >= this.#columns) continue;
      const heightAt = (edge: number): number => {
        const at = Math.min(right, Math.max(left, this.#minX + edge * this.#cell));
        return bx === ax ? ay : ay + ((at - ax) / (bx - ax)) * (by - ay);
      };
      const ends = bx === ax ? [ay, by] : [heightAt(column - 1), heightAt(column + 2)];
      const [low, high] = [this.#row(Math.min(...ends)) - 1, this.#row(Math.max(...ends)) + 1];
      for (let row = Math.max(0, low); row <= Math.min(this.#rows - 1, high); row += 1)
        for (const t of this.#cells[row * this.#columns + column]) {
          if (this.#stamp[t] === this.#search) continue;
          this.#stamp[t] = this.#search;
          found.push(t);
        }
    }
    return found.sort((a, b) => a - b);
  }

  #column(x: number): number {
    return Math.min(this.#columns - 1, Math.max(0, Math.floor((x - this.#minX) / this.#cell)));
  }

  #row(y: number): number {
    return Math.min(this.#rows - 1, Math.max(0, Math.floor((y - this.#minY) / this.#cell)));
  }
}
