/**
 * A symmetric positive definite matrix with a fixed pattern, factored as L D Lᵀ and solved many times.
 *
 * The pattern is analysed once (elimination tree and column counts), numbers are filled in as often as wanted, and neither factoring nor
 * solving allocates. Up-looking method after Davis, "Algorithm 849: A concise sparse Cholesky factorization package", ACM TOMS 31(4),
 * 2005, written anew. Entries are named by their place in the list the pattern was given in.
 */
export class SparseLdl {
  readonly size: number;
  readonly #order: Int32Array;
  /** Upper triangle of the permuted matrix by columns: row numbers, and for each entry its place in the caller's list. */
  readonly #starts: Int32Array;
  readonly #rows: Int32Array;
  readonly #entryOf: Int32Array;
  readonly #parent: Int32Array;
  readonly #columnStarts: Int32Array;
  readonly #columnRows: Int32Array;
  readonly #lower: Float64Array;
  readonly #diagonal: Float64Array;
  readonly #filled: Int32Array;
  readonly #flag: Int32Array;
  readonly #path: Int32Array;
  readonly #sums: Float64Array;

  /**
   * @param size  number of unknowns.
   * @param rows, cols  one entry for each pair of unknowns that touch and for each unknown itself, each pair once, either way round.
   * @param order  all unknowns, the first to be eliminated first; see `dissectionOrder`.
   */
  constructor(size: number, rows: Int32Array, cols: Int32Array, order: Int32Array) {
    if (order.length !== size) throw new RangeError(`order of ${order.length} for ${size} unknowns`);
    this.size = size;
    this.#order = order;
    const placeOf = new Int32Array(size);
    order.forEach((unknown, place) => (placeOf[unknown] = place));
    const starts = new Int32Array(size + 1);
    for (let k = 0; k < rows.length; k += 1) starts[Math.max(placeOf[rows[k]], placeOf[cols[k]]) + 1] += 1;
    for (let i = 0; i < size; i += 1) starts[i + 1] += starts[i];
    const fill = starts.slice();
    this.#rows = new Int32Array(rows.length);
    this.#entryOf = new Int32Array(rows.length);
    for (let k = 0; k < rows.length; k += 1) {
      const [a, b] = [placeOf[rows[k]], placeOf[cols[k]]];
      const at = fill[Math.max(a, b)]++;
      this.#rows[at] = Math.min(a, b);
      this.#entryOf[at] = k;
    }
    this.#starts = starts;
    this.#parent = new Int32Array(size).fill(-1);
    this.#flag = new Int32Array(size);
    this.#filled = new Int32Array(size);
    this.#countColumns();
    this.#columnStarts = new Int32Array(size + 1);
    for (let i = 0; i < size; i += 1) this.#columnStarts[i + 1] = this.#columnStarts[i] + this.#filled[i];
    this.#columnRows = new Int32Array(this.#columnStarts[size]);
    this.#lower = new Float64Array(this.#columnStarts[size]);
    this.#diagonal = new Float64Array(size);
    this.#path = new Int32Array(size);
    this.#sums = new Float64Array(size);
  }

  /** Entries below the diagonal of L: what a solve has to walk through. */
  get fillIn(): number {
    return this.#lower.length;
  }

  /**
   * Fills in numbers and factors.
   * @param values  one per entry of the pattern, in the caller's order; symmetric entries count once for both halves.
   * @returns false when the matrix is not positive definite; the factor must then not be used.
   */
  factor(values: Float64Array): boolean {
    const { size } = this;
    const [starts, rows, entryOf, parent] = [this.#starts, this.#rows, this.#entryOf, this.#parent];
    const [columnStarts, columnRows, lower, diagonal] = [
      this.#columnStarts,
      this.#columnRows,
      this.#lower,
      this.#diagonal,
    ];
    const [filled, flag, path, sums] = [this.#filled, this.#flag, this.#path, this.#sums];
    filled.fill(0);
    flag.fill(-1);
    sums.fill(0);
    for (let k = 0; k < size; k += 1) {
      flag[k] = k;
      // Row k of L is non-zero along the tree paths from the entries of column k: gathered at the end of `path`, in the order to use.
      let top = size;
      for (let p = starts[k]; p < starts[k + 1]; p += 1) {
        let i = rows[p];
        sums[i] += values[entryOf[p]];
        let length = 0;
        for (; flag[i] !== k; i = parent[i]) {
          path[length++] = i;
          flag[i] = k;
        }
        while (length > 0) path[--top] = path[--length];
      }
      let pivot = sums[k];
      sums[k] = 0;
      for (; top < size; top += 1) {
        const i = path[top];
        const y = sums[i];
        sums[i] = 0;
        const end = columnStarts[i] + filled[i];
        for (let p = columnStarts[i]; p < end; p += 1) sums[columnRows[p]] -= lower[p] * y;
        const entry = y / diagonal[i];
        pivot -= entry * y;
        columnRows[end] = k;
        lower[end] = entry;
        filled[i] += 1;
      }
      if (!(pivot > 0)) return false;
      diagonal[k] = pivot;
    }
    return true;
  }

  /** Replaces the right-hand side by the solution, in place. */
  solve(rightSide: Float64Array): void {
    const { size } = this;
    const [order, columnStarts, columnRows, lower, diagonal, x] = [
      this.#order,
      this.#columnStarts,
      this.#columnRows,
      this.#lower,
      this.#diagonal,
      this.#sums,
    ];
    for (let i = 0; i < size; i += 1) x[i] = rightSide[order[i]];
    for (let j = 0; j < size; j += 1) {
      const xj = x[j];
      for (let p = columnStarts[j]; p < columnStarts[j + 1]; p += 1) x[columnRows[p]] -= lower[p] * xj;
    }
    for (let j = size - 1; j >= 0; j -= 1) {
      let xj = x[j] / diagonal[j];
      for (let p = columnStarts[j]; p < columnStarts[j + 1]; p += 1) xj -= lower[p] * x[columnRows[p]];
      x[j] = xj;
    }
    for (let i = 0; i < size; i += 1) rightSide[order[i]] = x[i];
  }

  /** Elimination tree and the number of entries in each column of L (Liu 1990). */
  #countColumns(): void {
    const [starts, rows, parent, flag, filled] = [this.#starts, this.#rows, this.#parent, this.#flag, this.#filled];
    for (let k = 0; k < this.size; k += 1) {
      flag[k] = k;
      for (let p = starts[k]; p < starts[k + 1]; p += 1) {
        for (let i = rows[p]; flag[i] !== k; i = parent[i]) {
          if (parent[i] < 0) parent[i] = k;
          filled[i] += 1;
          flag[i] = k;
        }
      }
    }
  }
}
