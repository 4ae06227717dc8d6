import { denseKernel, type DenseKernel } from './dense-wasm.ts';
import { subtractProducts } from './dense-products.ts';

/** Bytes of a page of memory, and pages at most: addresses have 32 bits. */
const PAGE_BYTES = 65_536;
const MOST_PAGES = 65_536;
/** Four gigabytes. */
export const MOST_ROOM_BYTES = MOST_PAGES * PAGE_BYTES;
const NUMBER_BYTES = 8;
/** For fewer numbers than this a memory of their own costs more than the kernel saves. */
export const LEAST_NUMBERS = 30_000;
/** Products of fewer rows or columns than this are not worth the call. */
const LEAST_SIDE = 4;

/**
 * Room for the dense blocks of a sparse factor, in a memory on which the vector kernel can work where there is one. With the kernel or
 * without it the same numbers come out, to the last bit.
 */
export class DenseRoom {
  readonly numbers: Float64Array;
  /** Indices that the kernel reads. */
  readonly indices: Int32Array;
  /** Address of `indices`, in bytes. */
  readonly indicesAt: number;
  readonly kernel: DenseKernel | null;

  /**
   * @param numbers  how many; noughts at first.
   * @param indices  kept beside them.
   * @throws RangeError where the machine has no room for them.
   */
  constructor(numbers: number, indices: Int32Array) {
    this.indicesAt = NUMBER_BYTES * numbers;
    const pages = Math.ceil((this.indicesAt + indices.byteLength) / PAGE_BYTES);
    const memory = numbers >= LEAST_NUMBERS && pages <= MOST_PAGES ? memoryOf(pages) : null;
    this.kernel = memory === null ? null : denseKernel(memory);
    if (memory === null || this.kernel === null) {
      this.numbers = new Float64Array(numbers);
      this.indices = indices;
      return;
    }
    this.numbers = new Float64Array(memory.buffer, 0, numbers);
    this.indices = new Int32Array(memory.buffer, this.indicesAt, indices.length);
    this.indices.set(indices);
  }

  /** C -= A B^T inside `numbers`: see {@link subtractProducts}. */
  subtract(
    cAt: number,
    cStride: number,
    aAt: number,
    aStride: number,
    aRows: number,
    bAt: number,
    bStride: number,
    bRows: number,
    depth: number,
    lower: boolean,
  ): void {
    const { numbers, kernel } = this;
    if (kernel === null || aRows < LEAST_SIDE || bRows < LEAST_SIDE) {
      subtractProducts(numbers, cAt, cStride, numbers, aAt, aStride, aRows, numbers, bAt, bStride, bRows, depth, lower);
      return;
    }
    kernel.subtractTiles(
      NUMBER_BYTES * cAt,
      NUMBER_BYTES * cStride,
      NUMBER_BYTES * aAt,
      NUMBER_BYTES * aStride,
      aRows,
      NUMBER_BYTES * bAt,
      NUMBER_BYTES * bStride,
      bRows,
      depth,
      lower ? 1 : 0,
    );
    const rows = aRows - (aRows % 4);
    const columns = bRows - (bRows % 4);
    if (columns < bRows && !lower) {
      const [right, b] = [cAt + columns, bAt + columns * bStride];
      subtractProducts(
        numbers,
        right,
        cStride,
        numbers,
        aAt,
        aStride,
        rows,
        numbers,
        b,
        bStride,
        bRows - columns,
        depth,
        false,
      );
    }
    if (rows < aRows) {
      const [c, a] = [cAt + rows * cStride, aAt + rows * aStride];
      subtractProducts(
        numbers,
        c,
        cStride,
        numbers,
        a,
        aStride,
        aRows - rows,
        numbers,
        bAt,
        bStride,
        bRows,
        depth,
        false,
      );
    }
  }
}

function memoryOf(pages: number): WebAssembly.Memory | null {
  if (typeof WebAssembly === 'undefined') return null;
  try {
    return new WebAssembly.Memory({ initial: pages });
  } catch {
    // No room in one piece below its limit: plain arrays may still find some.
    return null;
  }
}
