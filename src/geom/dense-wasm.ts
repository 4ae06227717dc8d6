import {
  add,
  and,
  choose,
  constant,
  get,
  isAbove,
  isEqual,
  lane,
  load,
  loadIndex,
  loadTwice,
  loadTwo,
  minus,
  minusTwo,
  moduleOf,
  multiply,
  noughts,
  pairOf,
  plus,
  plusTwo,
  set,
  shiftLeft,
  store,
  storeTwo,
  subtract,
  times,
  timesTwo,
  twice,
  until,
  when,
  type Code,
  type WasmFunction,
} from './wasm-code.ts';

/**
 * The inner loops of a sparse factor on vectors of two numbers, for a matrix that lies in a WebAssembly memory. Every number comes out of
 * the same operations in the same order as in `dense-products.ts` and `sparse-factor.ts`, so both ways agree to the last bit.
 * Addresses are in bytes, strides too; counts are counts.
 */
export interface DenseKernel {
  /**
   * C -= A B^T in tiles of 4 x 4; what is left over at the end of rows and columns is not touched.
   * @param lower  1 where only tiles that reach to or over the diagonal from below are wanted.
   */
  readonly subtractTiles: (
    c: number,
    cStride: number,
    a: number,
    aStride: number,
    aRows: number,
    b: number,
    bStride: number,
    bRows: number,
    depth: number,
    lower: number,
  ) => void;
  /** One block's part of solving downwards: its own unknowns at `own`, then its pairs of rows below, each at `all + 16 rows[r]`. */
  readonly forward: SolveHalf;
  /** One block's part of solving upwards. */
  readonly back: SolveHalf;
}

export type SolveHalf = (panel: number, columns: number, own: number, rows: number, below: number, all: number) => void;

const range = (count: number): number[] => Array.from({ length: count }, (_, i) => i);
const increase = (local: number, by: Code): Code => set(local, add(get(local), by));

function subtractTiles(): WasmFunction {
  const [c, cStride, a, aStride, aRows, b, bStride, bRows, depth, lower] = range(10);
  const [i, j, columns, tileB, tileC, end, at] = range(7).map((k) => 10 + k);
  const rowA = range(4).map((k) => 17 + k);
  const rowB = range(4).map((k) => 21 + k);
  const sums = range(8).map((k) => 25 + k);
  const [b01, b23, low, high] = range(4).map((k) => 33 + k);
  /** Row r of A times the four columns of B, of which two vectors hold two each. */
  const addRow = (r: number, offset: number): Code => [
    set(low, loadTwice(get(rowA[r]), offset)),
    set(sums[2 * r], plusTwo(get(sums[2 * r]), timesTwo(get(low), get(b01)))),
    set(sums[2 * r + 1], plusTwo(get(sums[2 * r + 1]), timesTwo(get(low), get(b23)))),
  ];
  const pairs = (which: 0 | 1, loads: readonly Code[]): Code => [
    set(b01, pairOf(loads[0], loads[1], which)),
    set(b23, pairOf(loads[2], loads[3], which)),
  ];
  const tile: Code = [
    ...rowA.map((row, k) => set(row, add(get(a), multiply(constant(k), get(aStride))))),
    ...rowB.map((row, k) => set(row, add(get(tileB), multiply(constant(k), get(bStride))))),
    ...sums.map((sum) => set(sum, noughts)),
    set(end, add(get(a), shiftLeft(and(get(depth), constant(-2)), constant(3)))),
    until(
      isEqual(get(rowA[0]), get(end)),
      set(low, loadTwo(get(rowB[0]))),
      set(high, loadTwo(get(rowB[1]))),
      set(b01, pairOf(get(low), get(high), 0)),
      set(high, pairOf(get(low), get(high), 1)),
      set(low, loadTwo(get(rowB[2]))),
      set(b23, pairOf(get(low), loadTwo(get(rowB[3])), 0)),
      range(4).map((r) => addRow(r, 0)),
      set(b01, get(high)),
      set(b23, pairOf(loadTwo(get(rowB[2])), loadTwo(get(rowB[3])), 1)),
      range(4).map((r) => addRow(r, 8)),
      [...rowA, ...rowB].map((row) => increase(row, constant(16))),
    ),
    when(
      and(get(depth), constant(1)),
      pairs(
        0,
        rowB.map((row) => loadTwice(get(row))),
      ),
      range(4).map((r) => addRow(r, 0)),
    ),
    set(at, get(tileC)),
    range(4).map((r) => [
      storeTwo(get(at), minusTwo(loadTwo(get(at)), get(sums[2 * r]))),
      storeTwo(get(at), minusTwo(loadTwo(get(at), 16), get(sums[2 * r + 1])), 16),
      increase(at, get(cStride)),
    ]),
  ];
  const body: Code = [
    set(i, constant(4)),
    until(
      isAbove(get(i), get(aRows)),
      set(columns, choose(get(bRows), get(i), isAbove(get(i), get(bRows)))),
      set(columns, choose(get(columns), get(bRows), get(lower))),
      set(j, constant(4)),
      set(tileB, get(b)),
      set(tileC, get(c)),
      until(
        isAbove(get(j), get(columns)),
        tile,
        increase(j, constant(4)),
        increase(tileB, shiftLeft(get(bStride), constant(2))),
        increase(tileC, constant(32)),
      ),
      increase(i, constant(4)),
      increase(a, shiftLeft(get(aStride), constant(2))),
      increase(c, shiftLeft(get(cStride), constant(2))),
    ),
  ];
  return { name: 'subtractTiles', parameters: 10, integers: 15, numbers: 0, vectors: 12, body };
}

const SOLVE_PARAMETERS = range(6);
const SOLVE_INTEGERS = range(7).map((k) => 6 + k);

function forward(): WasmFunction {
  const [panel, columns, own, rows, below, all] = SOLVE_PARAMETERS;
  const [i, width, row, second, x, end, at] = SOLVE_INTEGERS;
  const sum = 13;
  const [first, other] = [14, 15];
  const body: Code = [
    set(width, shiftLeft(get(columns), constant(3))),
    set(row, get(panel)),
    set(i, get(own)),
    set(end, add(get(own), get(width))),
    until(
      isEqual(get(i), get(end)),
      set(sum, load(get(i))),
      set(x, get(own)),
      set(at, get(row)),
      until(
        isEqual(get(x), get(i)),
        set(sum, minus(get(sum), times(load(get(at)), load(get(x))))),
        increase(x, constant(8)),
        increase(at, constant(8)),
      ),
      store(get(i), times(get(sum), load(get(at)))),
      increase(i, constant(8)),
      increase(row, get(width)),
    ),
    set(end, add(get(rows), shiftLeft(get(below), constant(2)))),
    until(
      isEqual(get(rows), get(end)),
      set(first, noughts),
      set(other, noughts),
      set(x, get(own)),
      set(second, add(get(row), get(width))),
      set(i, get(second)),
      until(
        isEqual(get(row), get(i)),
        set(first, plusTwo(get(first), timesTwo(loadTwo(get(row)), loadTwo(get(x))))),
        set(other, plusTwo(get(other), timesTwo(loadTwo(get(second)), loadTwo(get(x))))),
        increase(row, constant(16)),
        increase(second, constant(16)),
        increase(x, constant(16)),
      ),
      set(row, get(second)),
      set(at, add(get(all), shiftLeft(loadIndex(get(rows)), constant(4)))),
      store(get(at), minus(load(get(at)), plus(lane(get(first), 0), lane(get(first), 1)))),
      store(get(at), minus(load(get(at), 8), plus(lane(get(other), 0), lane(get(other), 1))), 8),
      increase(rows, constant(4)),
    ),
  ];
  return { name: 'forward', parameters: 6, integers: 7, numbers: 1, vectors: 2, body };
}

function back(): WasmFunction {
  const [panel, columns, own, rows, below, all] = SOLVE_PARAMETERS;
  const [i, width, row, second, x, end, at] = SOLVE_INTEGERS;
  const value = 13;
  const [first, other] = [14, 15];
  const body: Code = [
    set(width, shiftLeft(get(columns), constant(3))),
    set(row, add(get(panel), multiply(get(columns), get(width)))),
    set(end, add(get(rows), shiftLeft(get(below), constant(2)))),
    until(
      isEqual(get(rows), get(end)),
      set(at, add(get(all), shiftLeft(loadIndex(get(rows)), constant(4)))),
      set(first, loadTwice(get(at))),
      set(other, loadTwice(get(at), 8)),
      set(x, get(own)),
      set(second, add(get(row), get(width))),
      set(i, get(second)),
      until(
        isEqual(get(row), get(i)),
        storeTwo(
          get(x),
          minusTwo(
            loadTwo(get(x)),
            plusTwo(timesTwo(loadTwo(get(row)), get(first)), timesTwo(loadTwo(get(second)), get(other))),
          ),
        ),
        increase(row, constant(16)),
        increase(second, constant(16)),
        increase(x, constant(16)),
      ),
      set(row, get(second)),
      increase(rows, constant(4)),
    ),
    set(i, add(get(own), get(width))),
    set(row, add(get(panel), multiply(get(columns), get(width)))),
    until(
      isEqual(get(i), get(own)),
      set(i, subtract(get(i), constant(8))),
      set(row, subtract(get(row), get(width))),
      set(value, times(load(get(i)), load(add(get(row), subtract(get(i), get(own)))))),
      store(get(i), get(value)),
      set(first, twice(get(value))),
      set(x, get(own)),
      set(at, get(row)),
      set(end, subtract(get(i), and(subtract(get(i), get(own)), constant(8)))),
      until(
        isEqual(get(x), get(end)),
        storeTwo(get(x), minusTwo(loadTwo(get(x)), timesTwo(loadTwo(get(at)), get(first)))),
        increase(x, constant(16)),
        increase(at, constant(16)),
      ),
      when(subtract(get(i), get(end)), store(get(x), minus(load(get(x)), times(load(get(at)), get(value))))),
    ),
  ];
  return { name: 'back', parameters: 6, integers: 7, numbers: 1, vectors: 2, body };
}

/** `undefined` until it is asked for, null where it cannot run. */
let module: WebAssembly.Module | null | undefined;

/** The kernel on this memory; null where the platform has no WebAssembly with vectors, or is not allowed to use it. */
export function denseKernel(memory: WebAssembly.Memory): DenseKernel | null {
  module ??= compiled();
  if (module === null) return null;
  return new WebAssembly.Instance(module, { room: { memory } }).exports as unknown as DenseKernel;
}

function compiled(): WebAssembly.Module | null {
  try {
    return new WebAssembly.Module(moduleOf([subtractTiles(), forward(), back()]));
  } catch {
    // A page's content policy may forbid it, and old platforms have no vectors: the plain loops give the same numbers.
    return null;
  }
}
