import { boxOfPoints, type Ring } from '../../geom/ring.ts';
import type { SegmentGrid } from '../../geom/segment-grid.ts';
import { growTurnedBox, uprightBox, type TurnedBox } from '../../geom/turned-box.ts';
import type { Vec2 } from '../../geom/vec.ts';

/** Cells along the longer side of the picture, and the finest cell, mm. */
const MOST_CELLS = 220;
const FINEST_CELL_MM = 0.5;

/**
 * Free room inside a piece, as a picture of small square cells in turned axes. Each entry of the table sums all blocked cells to its lower
 * left (Crow, SIGGRAPH 1984), so that a rectangle is known to be free from four numbers.
 */
export class FreeRoom {
  readonly #angleRad: number;
  readonly #cellMm: number;
  readonly #minX: number;
  readonly #minY: number;
  readonly #columns: number;
  readonly #rows: number;
  readonly #sums: Int32Array;

  /**
   * @param rings        the area, outer ring and holes.
   * @param lines        what must stay clear of words.
   * @param taken        boxes that are taken.
   * @param angleRad     axes of the rectangles to be laid in, counter-clockwise.
   * @param clearanceMm  distance kept from lines and boxes.
   */
  constructor(
    rings: readonly Ring[],
    lines: SegmentGrid,
    taken: readonly TurnedBox[],
    angleRad: number,
    clearanceMm: number,
  ) {
    this.#angleRad = angleRad;
    const turned = rings.map((ring) => this.#turnAll(ring));
    const box = boxOfPoints(turned[0]);
    this.#cellMm = Math.max(FINEST_CELL_MM, Math.max(box.maxX - box.minX, box.maxY - box.minY) / MOST_CELLS);
    this.#minX = box.minX;
    this.#minY = box.minY;
    this.#columns = Math.max(1, Math.ceil((box.maxX - box.minX) / this.#cellMm));
    this.#rows = Math.max(1, Math.ceil((box.maxY - box.minY) / this.#cellMm));
    const blocked = new Uint8Array(this.#columns * this.#rows).fill(1);
    this.#openInside(turned, blocked);
    const reach = Math.ceil(clearanceMm / this.#cellMm);
    lines.forEach((ax, ay, bx, by) => this.#blockLine(this.#turn(ax, ay), this.#turn(bx, by), reach, blocked));
    for (const box of taken) this.#blockBox(growTurnedBox(box, clearanceMm + this.#cellMm), blocked);
    this.#sums = this.#sumUp(blocked);
  }

  /** Centre of the free rectangle of this size nearest to a point, or null. */
  find(width: number, height: number, near: Vec2): TurnedBox | null {
    const [nx, ny] = [Math.ceil(width / this.#cellMm), Math.ceil(height / this.#cellMm)];
    const goal = this.#turn(near.x, near.y);
    const stride = this.#columns + 1;
    let best: readonly [number, number] | null = null;
    let least = Infinity;
    const sums = this.#sums;
    for (let row = 0; row + ny <= this.#rows; row += 1) {
      const y = this.#minY + (row + ny / 2) * this.#cellMm - goal[1];
      if (y * y >= least) continue;
      const [low, high] = [row * stride, (row + ny) * stride];
      for (let column = 0; column + nx <= this.#columns; column += 1) {
        const x = this.#minX + (column + nx / 2) * this.#cellMm - goal[0];
        if (x * x + y * y >= least) continue;
        if (sums[high + column + nx] - sums[high + column] - sums[low + column + nx] + sums[low + column] > 0) continue;
        [least, best] = [x * x + y * y, [x + goal[0], y + goal[1]]];
      }
    }
    if (best === null) return null;
    const [c, s] = [Math.cos(this.#angleRad), Math.sin(this.#angleRad)];
    return {
      x: c * best[0] - s * best[1],
      y: s * best[0] + c * best[1],
      halfWidth: width / 2,
      halfHeight: height / 2,
      angleRad: this.#angleRad,
    };
  }

  /** Into the picture's axes. */
  #turn(x: number, y: number): readonly [number, number] {
    const [c, s] = [Math.cos(this.#angleRad), Math.sin(this.#angleRad)];
    return [c * x + s * y, c * y - s * x];
  }

  #turnAll(ring: Ring): Ring {
    const turned = new Float64Array(ring.length);
    for (let i = 0; i < ring.length; i += 2) turned.set(this.#turn(ring[i], ring[i + 1]), i);
    return turned;
  }

  /** Opens the cells whose middle lies inside; the border itself is blocked as a line. */
  #openInside(rings: readonly Ring[], blocked: Uint8Array): void {
    for (let row = 0; row < this.#rows; row += 1) {
      const y = this.#minY + (row + 0.5) * this.#cellMm;
      const crossings: number[] = [];
      for (const ring of rings) {
        for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
          const [y0, y1] = [ring[j + 1], ring[i + 1]];
          if (y0 > y !== y1 > y) crossings.push(ring[j] + ((y - y0) / (y1 - y0)) * (ring[i] - ring[j]));
        }
      }
      crossings.sort((a, b) => a - b);
      for (let k = 0; k + 1 < crossings.length; k += 2) {
        const from = Math.max(0, Math.ceil((crossings[k] - this.#minX) / this.#cellMm - 0.5));
        const to = Math.min(this.#columns - 1, Math.floor((crossings[k + 1] - this.#minX) / this.#cellMm - 0.5));
        for (let column = from; column <= to; column += 1) blocked[row * this.#columns + column] = 0;
      }
    }
  }

  #blockLine(a: readonly [number, number], b: readonly [number, number], reach: number, blocked: Uint8Array): void {
    const steps = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / this.#cellMm));
    for (let k = 0; k <= steps; k += 1) {
      const column = Math.floor((a[0] + ((b[0] - a[0]) * k) / steps - this.#minX) / this.#cellMm);
      const row = Math.floor((a[1] + ((b[1] - a[1]) * k) / steps - this.#minY) / this.#cellMm);
      for (let r = Math.max(0, row - reach); r <= Math.min(this.#rows - 1, row + reach); r += 1) {
        for (let c = Math.max(0, column - reach); c <= Math.min(this.#columns - 1, column + reach); c += 1)
          blocked[r * this.#columns + c] = 1;
      }
    }
  }

  #blockBox(box: TurnedBox, blocked: Uint8Array): void {
    const [x, y] = this.#turn(box.x, box.y);
    const own = { ...box, x, y, angleRad: box.angleRad - this.#angleRad };
    const round = uprightBox(own);
    const [c, s] = [Math.cos(own.angleRad), Math.sin(own.angleRad)];
    const clamp = (cell: number, most: number): number => Math.max(0, Math.min(most - 1, cell));
    const cell = (at: number, min: number): number => Math.floor((at - min) / this.#cellMm);
    for (
      let row = clamp(cell(round.minY, this.#minY), this.#rows);
      row <= clamp(cell(round.maxY, this.#minY), this.#rows);
      row += 1
    ) {
      for (
        let column = clamp(cell(round.minX, this.#minX), this.#columns);
        column <= clamp(cell(round.maxX, this.#minX), this.#columns);
        column += 1
      ) {
        const dx = this.#minX + (column + 0.5) * this.#cellMm - x;
        const dy = this.#minY + (row + 0.5) * this.#cellMm - y;
        if (Math.abs(c * dx + s * dy) <= own.halfWidth && Math.abs(c * dy - s * dx) <= own.halfHeight)
          blocked[row * this.#columns + column] = 1;
      }
    }
  }

  #sumUp(blocked: Uint8Array): Int32Array {
    const stride = this.#columns + 1;
    const sums = new Int32Array(stride * (this.#rows + 1));
    for (let row = 0; row < this.#rows; row += 1) {
      let line = 0;
      for (let column = 0; column < this.#columns; column += 1) {
        line += blocked[row * this.#columns + column];
        sums[(row + 1) * stride + column + 1] = sums[row * stride + column + 1] + line;
      }
    }
    return sums;
  }
}
