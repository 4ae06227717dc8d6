import { describe, expect, it } from 'vitest';
import { filledHeights, fitsBin, packShelves, type Packed, type Size2 } from '../../src/geom/shelf-pack.ts';
import { forAll } from '../support/for-all.ts';

const BIN = { width: 190, height: 265 };

interface Placed extends Size2 {
  readonly bin: number;
  readonly x: number;
  readonly y: number;
}

function placed(sizes: readonly Size2[], packed: readonly Packed[]): readonly Placed[] {
  return packed.map(({ bin, x, y, turned }, i) => {
    const { width, height } = sizes[i];
    return turned ? { bin, x, y, width: height, height: width } : { bin, x, y, width, height };
  });
}

/** True when two rectangles of one bin are nearer than the gap along both directions. */
const areTooNear = (a: Placed, b: Placed, gap: number): boolean =>
  a.bin === b.bin &&
  a.x < b.x + b.width + gap - 1e-6 &&
  b.x < a.x + a.width + gap - 1e-6 &&
  a.y < b.y + b.height + gap - 1e-6 &&
  b.y < a.y + a.height + gap - 1e-6;

describe('packShelves', () => {
  it('fills a shelf, then the next: three of 90 × 100 with a gap of 10 take two shelves of one bin', () => {
    const packed = packShelves(new Array<Size2>(3).fill({ width: 90, height: 100 }), BIN, 10);
    expect(packed.map(({ bin, x, y }) => [bin, x, y])).toEqual([
      [0, 0, 0],
      [0, 100, 0],
      [0, 0, 110],
    ]);
  });

  it('turns a rectangle that fits no other way, and one that is saved a bin by it', () => {
    expect(packShelves([{ width: 250, height: 100 }], BIN, 5)).toMatchObject([{ turned: true, x: 0, y: 0 }]);
    // Three of 60 × 180: upright side by side in one bin; lying two would still fit, so one bin it is.
    const packed = packShelves(new Array<Size2>(3).fill({ width: 180, height: 60 }), { width: 190, height: 130 }, 5);
    expect(Math.max(...packed.map(({ bin }) => bin))).toBe(1);
    const tall = packShelves(new Array<Size2>(3).fill({ width: 180, height: 60 }), { width: 190, height: 185 }, 2.5);
    expect(Math.max(...tall.map(({ bin }) => bin))).toBe(0);
  });

  it('holds what is exactly as large as the bin, and refuses what is larger', () => {
    expect(packShelves([{ ...BIN }], BIN, 5)).toMatchObject([{ bin: 0, x: 0, y: 0, turned: false }]);
    expect(fitsBin({ width: 190.001, height: 265 }, BIN)).toBe(false);
    expect(() => packShelves([{ width: 300, height: 300 }], BIN, 5)).toThrow(RangeError);
    expect(packShelves([], BIN, 5)).toEqual([]);
  });

  it('keeps everything inside and apart, whatever the sizes', () =>
    forAll(
      (rand) => ({
        gap: 8 * rand(),
        sizes: Array.from({ length: 1 + Math.floor(25 * rand()) }, () => ({
          width: 2 + 185 * rand(),
          height: 2 + 185 * rand(),
        })),
      }),
      ({ sizes, gap }) => {
        const packed = packShelves(sizes, BIN, gap);
        const all = placed(sizes, packed);
        expect(all.length).toBe(sizes.length);
        for (const { x, y, width, height } of all) {
          expect(Math.min(x, y)).toBeGreaterThanOrEqual(0);
          expect(x + width).toBeLessThan(BIN.width + 1e-6);
          expect(y + height).toBeLessThan(BIN.height + 1e-6);
        }
        for (const [i, a] of all.entries()) for (const b of all.slice(i + 1)) expect(areTooNear(a, b, gap)).toBe(false);
        for (const [bin, height] of filledHeights(sizes, packed).entries()) {
          const tops = all.filter((one) => one.bin === bin).map(({ y, height: h }) => y + h);
          expect(height).toBe(Math.max(...tops));
        }
      },
    ));
});
