import { GRID_PER_MM } from './polygon-grid.ts';
import { ringArea, type Ring } from './ring.ts';

/**
 * True when the rings bound one clean area: no two edges cross or touch (neighbours in their common corner only), no corner turns back
 * on itself, the first ring runs counter-clockwise and all others clockwise.
 *
 * Judged on the grid of 0.1 µm the polygon library works on, where the side of a point is exact in plain arithmetic. What is called
 * simple here needs no cleaning; where edges merely touch the answer is false.
 * @param rings packed x y, mm, the outer one first. Whether holes lie inside the outer ring is not asked: if they did not, they would cross it or be apart.
 */
export function isSimpleArea(rings: readonly Ring[]): boolean {
  if (rings.length === 0 || rings.some((ring) => ring.length < 6)) return false;
  if (!(ringArea(rings[0]) > 0) || rings.slice(1).some((ring) => !(ringArea(ring) < 0))) return false;
  const edges = gridEdges(rings);
  const cells = new EdgeCells(edges);
  for (let e = 0; e < edges.count; e += 1) {
    if (cells.some(e, (other) => doEdgesMeet(edges, e, other))) return false;
  }
  return true;
}

/** Edges as whole numbers: x0 y0 x1 y1 each, and the number of the edge that follows on the same ring. */
interface GridEdges {
  readonly count: number;
  readonly ends: Float64Array;
  readonly next: Int32Array;
}

function gridEdges(rings: readonly Ring[]): GridEdges {
  const count = rings.reduce((sum, ring) => sum + ring.length / 2, 0);
  const ends = new Float64Array(4 * count);
  const next = new Int32Array(count);
  let e = 0;
  for (const ring of rings) {
    const first = e;
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      ends[4 * e] = Math.round(ring[i] * GRID_PER_MM);
      ends[4 * e + 1] = Math.round(ring[i + 1] * GRID_PER_MM);
      ends[4 * e + 2] = Math.round(ring[j] * GRID_PER_MM);
      ends[4 * e + 3] = Math.round(ring[j + 1] * GRID_PER_MM);
      next[e] = j === 0 ? first : e + 1;
      e += 1;
    }
  }
  return { count, ends, next };
}

function doEdgesMeet({ ends, next }: GridEdges, e: number, f: number): boolean {
  const [a, b] = [4 * e, 4 * f];
  if (next[e] === f) return turnsBack(ends, a, b);
  if (next[f] === e) return turnsBack(ends, b, a);
  const ab0 = side(ends, a, ends[b], ends[b + 1]);
  const ab1 = side(ends, a, ends[b + 2], ends[b + 3]);
  const ba0 = side(ends, b, ends[a], ends[a + 1]);
  const ba1 = side(ends, b, ends[a + 2], ends[a + 3]);
  if (ab0 === 0 && ab1 === 0) return doBoxesMeet(ends, a, b);
  return ab0 * ab1 <= 0 && ba0 * ba1 <= 0;
}

/** Edge `b` begins where `a` ends: they meet in more than that point when `b` runs straight back, or when one of them has no length. */
function turnsBack(ends: Float64Array, a: number, b: number): boolean {
  const [ax, ay] = [ends[a + 2] - ends[a], ends[a + 3] - ends[a + 1]];
  const [bx, by] = [ends[b + 2] - ends[b], ends[b + 3] - ends[b + 1]];
  return ax * by - ay * bx === 0 && ax * bx + ay * by <= 0;
}

/** Sign of the side of edge `a` on which a point lies: 1 left, -1 right, 0 on its line. */
function side(ends: Float64Array, a: number, x: number, y: number): number {
  return Math.sign((ends[a + 2] - ends[a]) * (y - ends[a + 1]) - (ends[a + 3] - ends[a + 1]) * (x - ends[a]));
}

function doBoxesMeet(ends: Float64Array, a: number, b: number): boolean {
  for (let axis = 0; axis < 2; axis += 1) {
    const [a0, a1, b0, b1] = [ends[a + axis], ends[a + 2 + axis], ends[b + axis], ends[b + 2 + axis]];
    if (Math.max(a0, a1) < Math.min(b0, b1) || Math.max(b0, b1) < Math.min(a0, a1)) return false;
  }
  return true;
}

/** A square grid over all edges, about one cell per edge, so that only near ones are compared. */
class EdgeCells {
  readonly #cells: number[][] = [];
  readonly #edges: GridEdges;
  readonly #columns: number;
  readonly #rows: number;
  readonly #size: number;
  readonly #minX: number;
  readonly #minY: number;

  constructor(edges: GridEdges) {
    this.#edges = edges;
    let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
    for (let i = 0; i < edges.ends.length; i += 2) {
      minX = Math.min(minX, edges.ends[i]);
      maxX = Math.max(maxX, edges.ends[i]);
      minY = Math.min(minY, edges.ends[i + 1]);
      maxY = Math.max(maxY, edges.ends[i + 1]);
    }
    this.#minX = minX;
    this.#minY = minY;
    this.#size = Math.max(1, Math.max(maxX - minX, maxY - minY) / Math.max(1, Math.ceil(Math.sqrt(edges.count))));
    this.#columns = Math.floor((maxX - minX) / this.#size) + 1;
    this.#rows = Math.floor((maxY - minY) / this.#size) + 1;
    for (let i = 0; i < this.#columns * this.#rows; i += 1) this.#cells.push([]);
    for (let e = 0; e < edges.count; e += 1) this.#visit(e, (cell) => void cell.push(e));
  }

  /** True when `test` holds for an edge after `e` in a cell that `e`'s box touches. */
  some(e: number, test: (other: number) => boolean): boolean {
    let found = false;
    this.#visit(e, (cell) => {
      found ||= cell.some((other) => other > e && test(other));
    });
    return found;
  }

  #visit(e: number, use: (cell: number[]) => void): void {
    const { ends } = this.#edges;
    const column = (x: number): number => Math.floor((x - this.#minX) / this.#size);
    const row = (y: number): number => Math.floor((y - this.#minY) / this.#size);
    const [x0, y0, x1, y1] = ends.subarray(4 * e, 4 * e + 4);
    for (let r = row(Math.min(y0, y1)); r <= row(Math.max(y0, y1)); r += 1) {
      for (let c = column(Math.min(x0, x1)); c <= column(Math.max(x0, x1)); c += 1)
        use(this.#cells[r * this.#columns + c]);
    }
  }
}
