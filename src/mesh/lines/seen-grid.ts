import { inStretches, type Stepwise } from '../../base/stepwise.ts';
import type { Box2 } from '../../geom/ring.ts';
import type { Surface } from '../surface.ts';
import type { SeenSurface } from './view-projection.ts';

/** Triangles looked at in one stretch, a few milliseconds; cells along the longer side at most. */
const STRETCH_TRIANGLES = 1 << 12;
const MOST_CELLS = 512;

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

  private constructor(box: Box2, cell: number, triangleCount: number) {
    this.#cell = cell;
    [this.#minX, this.#minY] = [box.minX, box.minY];
    this.#columns = Math.floor((box.maxX - box.minX) / cell) + 1;
    this.#rows = Math.floor((box.maxY - box.minY) / cell) + 1;
    this.#cells = Array.from({ length: this.#columns * this.#rows }, () => []);
    this.#stamp = new Uint32Array(triangleCount);
  }

  /** Triangles with a corner behind the eye are left out: they are not seen whole. */
  static *steps({ triangles }: Surface, { x, y, range }: SeenSurface): Stepwise<SeenGrid> {
    const count = triangles.length / 3;
    const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
    let seen = 0;
    const isSeen = (t: number): boolean =>
      range[triangles[3 * t]] > 0 && range[triangles[3 * t + 1]] > 0 && range[triangles[3 * t + 2]] > 0;
    yield* inStretches(count, STRETCH_TRIANGLES, (from, to) => {
      for (let t = from; t < to; t += 1) {
        if (!isSeen(t)) continue;
        seen += 1;
        for (let h = 3 * t; h < 3 * t + 3; h += 1) {
          const v = triangles[h];
          [box.minX, box.maxX] = [Math.min(box.minX, x[v]), Math.max(box.maxX, x[v])];
          [box.minY, box.maxY] = [Math.min(box.minY, y[v]), Math.max(box.maxY, y[v])];
        }
      }
    });
    if (seen === 0) return new SeenGrid({ minX: 0, minY: 0, maxX: 1, maxY: 1 }, 1, count);
    const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
    const cell = Math.max(Math.sqrt((width * height) / (seen + 1)), Math.max(width, height, 1e-9) / MOST_CELLS);
    const grid = new SeenGrid(box, cell, count);
    yield* inStretches(count, STRETCH_TRIANGLES, (from, to) => {
      for (let t = from; t < to; t += 1) if (isSeen(t)) grid.#put(t, triangles, x, y);
    });
    return grid;
  }

  #put(t: number, triangles: Uint32Array, x: Float64Array, y: Float64Array): void {
    const [a, b, c] = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]];
    const [left, right] = [this.#column(Math.min(x[a], x[b], x[c])), this.#column(Math.max(x[a], x[b], x[c]))];
    const [low, high] = [this.#row(Math.min(y[a], y[b], y[c])), this.#row(Math.max(y[a], y[b], y[c]))];
    for (let row = low; row <= high; row += 1)
      for (let column = left; column <= right; column += 1) this.#cells[row * this.#columns + column].push(t);
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
