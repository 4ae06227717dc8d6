import { describe, expect, it } from 'vitest';
import { chooseSheets } from '../../../src/steps/stack/choose-sheets.ts';
import { orderSheets } from '../../../src/steps/stack/order-sheets.ts';
import { turnedMesh } from '../../../src/mesh/turned-mesh.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';
import { forAll } from '../../support/for-all.ts';

describe('the choice of sheets', () => {
  it.each([
    [120, [10, 6], 'larger', [...Array<number>(12).fill(10)]],
    [32, [10, 6], 'larger', [10, 10, 6, 6]],
    [31.6, [10, 6], 'larger', [10, 10, 6, 6]],
    [33, [10, 6], 'larger', [10, 6, 6, 6, 6]],
    [33, [10, 6], 'middle', [10, 10, 6, 6]],
    [33, [10, 6], 'smaller', [10, 10, 6, 6]],
    [25, [12.7, 9.5, 3.2], 'middle', [12.7, 12.7]],
    [4, [10, 6], 'larger', [6]],
  ] as const)('makes %d mm of %j, %s', (height, sheets, rule, want) => {
    expect(expectOk(chooseSheets(height, sheets, rule))).toEqual(want);
  });

  it('leaves no better sum of two thicknesses out', () =>
    forAll(
      (rand) => ({
        height: 8 + 200 * rand(),
        a: Math.round(20 + 100 * rand()) / 10,
        b: Math.round(10 + 60 * rand()) / 10,
      }),
      ({ height, a, b }) => {
        const chosen = expectOk(chooseSheets(height, [a, b], 'middle'));
        const off = Math.abs(chosen.reduce((sum, one) => sum + one, 0) - height);
        let [fewest, nearest] = [Infinity, Infinity];
        for (let i = 0; i * a < height + a; i += 1) {
          for (let j = 0; j * b < height + b; j += 1) {
            const own = Math.abs(i * a + j * b - height);
            nearest = Math.min(nearest, own);
            if (own <= 0.499) fewest = Math.min(fewest, i + j);
          }
        }
        expect(chosen.length).toBeLessThanOrEqual(fewest);
        expect(off).toBeLessThan(Math.max(0.501, nearest + 1e-6));
      },
      { runs: 12 },
    ));
});

describe('the order of sheets', () => {
  it('lays thin ones where the solid tapers', () => {
    // 16 mm straight, then 16 mm of taper.
    const areas = Array.from({ length: 33 }, (_, z) => (z <= 16 ? 100 : (100 * (32 - z)) / 16));
    expect(orderSheets([10, 10, 6, 6], 0, 32, areas)).toEqual([10, 10, 6, 6]);
    expect(orderSheets([10, 10, 6, 6], 0, 32, areas.slice().reverse())).toEqual([6, 6, 10, 10]);
  });
});

describe('a turned profile', () => {
  it('is refused in a sentence where it cannot be turned', () => {
    const corner = (lengthMm: number, radiusMm: number) => ({ lengthMm, radiusMm });
    for (const profile of [
      [corner(0, 10)],
      [corner(0, 10), corner(0, 12)],
      [corner(5, 10), corner(0, 12)],
      [corner(0, 10), corner(5, 0), corner(9, 10)],
      [corner(0, 10), corner(5, -1)],
      [corner(0, 10), corner(0, 10), corner(4, 3)],
    ])
      expectProblem(turnedMesh(profile), 'turned/profile');
  });
});
