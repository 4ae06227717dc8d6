import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import { factorColumns, PANEL_STEP } from '../../src/geom/dense-panel.ts';
import { subtractProducts } from '../../src/geom/dense-products.ts';
import { DenseRoom, LEAST_NUMBERS } from '../../src/geom/dense-room.ts';

describe('subtractProducts', () => {
  it('is C - A B^T for every shape of tile and rest, on the whole or on the lower half', () => {
    const rand = seededRandom(3);
    for (let rows = 0; rows <= 9; rows += 1) {
      for (let columns = 0; columns <= 9; columns += 1) {
        for (const depth of [0, 1, 3, 6]) {
          for (const lower of [false, true]) {
            if (lower && rows !== columns) continue;
            const a = Float64Array.from({ length: 200 }, () => rand() - 0.5);
            const b = Float64Array.from({ length: 200 }, () => rand() - 0.5);
            const c = Float64Array.from({ length: 200 }, () => rand() - 0.5);
            const before = c.slice();
            subtractProducts(c, 5, 11, a, 2, 7, rows, b, 3, 8, columns, depth, lower);
            for (let i = 0; i < rows; i += 1) {
              for (let j = 0; j < (lower ? i + 1 : columns); j += 1) {
                let sum = before[5 + 11 * i + j];
                for (let p = 0; p < depth; p += 1) sum -= a[2 + 7 * i + p] * b[3 + 8 * j + p];
                expect(c[5 + 11 * i + j]).toBeCloseTo(sum, 13);
              }
            }
            // Nothing beside the block is touched.
            for (let k = 0; k < 5; k += 1) expect(c[k]).toBe(before[k]);
            if (!lower)
              for (let i = 0; i < rows; i += 1) expect(c[5 + 11 * i + columns]).toBe(before[5 + 11 * i + columns]);
          }
        }
      }
    }
  });
});

describe('a room', () => {
  it('has the vector kernel here, and gets from it the numbers of the plain loops to the last bit', () => {
    const rand = seededRandom(5);
    const room = new DenseRoom(LEAST_NUMBERS, new Int32Array(0));
    expect(room.kernel).not.toBeNull();
    for (let rows = 0; rows <= 14; rows += 1) {
      for (const columns of [0, 1, 2, 4, 6, 8, 13, 14]) {
        for (const depth of [1, 2, 7, 8]) {
          for (const lower of [false, true]) {
            if (lower && rows !== columns) continue;
            for (let i = 0; i < 700; i += 1) room.numbers[i] = rand() - 0.5;
            const plain = room.numbers.slice(0, 700);
            room.subtract(5, 17, 300, 9, rows, 500, 9, columns, depth, lower);
            subtractProducts(plain, 5, 17, plain, 300, 9, rows, plain, 500, 9, columns, depth, lower);
            for (let i = 0; i < rows; i += 1) {
              for (let j = 0; j < (lower ? i + 1 : columns); j += 1)
                expect(room.numbers[5 + 17 * i + j]).toBe(plain[5 + 17 * i + j]);
            }
            if (!lower) expect([...room.numbers.subarray(0, 700)]).toEqual([...plain]);
          }
        }
      }
    }
  });
});

describe('factorColumns', () => {
  it.each([
    [1, 1],
    [3, 1],
    [8, 8],
    [9, 9],
    [17, 10],
    [40, 23],
  ])('of %i rows and %i columns gives back what was factored', (rows, columns) => {
    const rand = seededRandom(rows);
    const root = Array.from({ length: rows }, () => Array.from({ length: columns }, () => rand() - 0.5));
    for (let i = 0; i < columns; i += 1) root[i][i] += 3;
    const product = (i: number, j: number): number => root[i].reduce((sum, value, p) => sum + value * root[j][p], 0);
    const room = new DenseRoom(rows * columns + 4, new Int32Array(0));
    const panel = room.numbers;
    for (let i = 0; i < rows; i += 1) for (let j = 0; j < columns; j += 1) panel[4 + i * columns + j] = product(i, j);
    for (let from = 0; from < columns; from += PANEL_STEP) {
      expect(factorColumns(room, 4, rows, columns, from)).toBe(true);
    }
    const l = (i: number, j: number): number =>
      j > i ? 0 : j === i ? 1 / panel[4 + i * columns + j] : panel[4 + i * columns + j];
    for (let i = 0; i < rows; i += 1) {
      for (let j = 0; j <= Math.min(i, columns - 1); j += 1) {
        let sum = 0;
        for (let p = 0; p <= j; p += 1) sum += l(i, p) * l(j, p);
        expect(sum).toBeCloseTo(product(i, j), 11);
      }
    }
  });

  it('says where a pivot is not positive', () => {
    const isPositive = (panel: readonly number[], side: number): boolean => {
      const room = new DenseRoom(panel.length, new Int32Array(0));
      room.numbers.set(panel);
      return factorColumns(room, 0, side, side, 0);
    };
    expect(isPositive([1, 0, 2, 1], 2)).toBe(false);
    for (const pivot of [-1, NaN, 0]) expect(isPositive([pivot], 1)).toBe(false);
    expect(isPositive([4], 1)).toBe(true);
  });
});
