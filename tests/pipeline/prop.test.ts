import { describe, expect, it } from 'vitest';
import { runAtOnce } from '../../src/base/stepwise.ts';
import { plateVolume } from '../../src/geom/plate.ts';
import type { PropPlate, PropView } from '../../src/model/bench-view.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { propSteps } from '../../src/pipeline/prop.ts';
import { block, inSheets, outcomeOf } from '../support/run-solid.ts';

const SIDE = 80;

function propOf(outcome: Pick<Outcome, 'layers' | 'raised' | 'project'>): PropView {
  const prop = runAtOnce(propSteps(outcome));
  if (prop === null) throw new Error('no pieces');
  return prop;
}

/** Half-edges that no triangle runs against. */
function bordersOf(triangles: Uint32Array): Uint32Array {
  const key = (h: number): string => `${triangles[h]} ${triangles[h % 3 === 2 ? h - 2 : h + 1]}`;
  const back = (h: number): string => `${triangles[h % 3 === 2 ? h - 2 : h + 1]} ${triangles[h]}`;
  const all = [...triangles.keys()];
  const known = new Set(all.map(key));
  return Uint32Array.from(all.filter((h) => !known.has(back(h))));
}

const volumeOf = (plate: PropPlate): number => plateVolume({ ...plate, borders: bordersOf(plate.triangles) });

describe('the finished prop', () => {
  it('of a box in bevelled panels holds the foam between two boxes', async () => {
    for (const thicknessMm of [6, 10, 15]) {
      const { plates } = propOf(
        await outcomeOf(block([0, 0, 0], [SIDE, SIDE, SIDE]), (part) => inSheets(part, thicknessMm)),
      );
      expect(plates).toHaveLength(6);
      const inside = SIDE - 2 * thicknessMm;
      const volume = plates.reduce((sum, plate) => sum + volumeOf(plate), 0);
      // Points are in single precision: 80 mm to 4e-6.
      expect(Math.abs(volume - (SIDE ** 3 - inside ** 3))).toBeLessThan(0.5);
      for (const plate of plates) expect(Math.abs(volumeOf(plate) - volume / 6)).toBeLessThan(0.1);
    }
  });

  it('of a wall of two sheets has the plates of both, inner ones put together first', async () => {
    const { plates } = propOf(await outcomeOf(block([0, 0, 0], [SIDE, SIDE, SIDE]), (part) => inSheets(part, 4, 6)));
    expect(plates.map(({ piece }) => piece).toSorted((a, b) => a - b)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
    expect(plates.map(({ order }) => order).toSorted((a, b) => a - b)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
    for (const { order, sheet } of plates) expect(sheet).toBe(order < 6 ? 2 : 1);
    const sheetVolume = (sheet: number): number =>
      plates.filter((plate) => plate.sheet === sheet).reduce((sum, plate) => sum + volumeOf(plate), 0);
    expect(Math.abs(sheetVolume(1) - (80 ** 3 - 68 ** 3))).toBeLessThan(0.5);
    expect(Math.abs(sheetVolume(2) - (68 ** 3 - 60 ** 3))).toBeLessThan(0.5);
  });

  it('ends where it is cut: panels cut 2 mm narrower stand 2 mm off their neighbours', async () => {
    const outcome = await outcomeOf(block([0, 0, 0], [SIDE, SIDE, SIDE]), (part) => inSheets(part, 10));
    const [layer] = outcome.layers;
    const narrower = (ring: Float64Array): Float64Array => {
      const middle = (k: number): number =>
        ring.filter((_, i) => i % 2 === k).reduce((a, b) => a + b, 0) / (ring.length / 2);
      const [cx, cy] = [middle(0), middle(1)];
      return ring.map((x, i) => x - 2 * Math.sign(x - (i % 2 === 0 ? cx : cy)));
    };
    const pieces = layer.pieces!.map((piece, i) =>
      i === 0 ? { ...piece, outline: narrower(piece.outline), otherOutline: narrower(piece.otherOutline) } : piece,
    );
    const before = propOf(outcome).plates.find(({ piece }) => piece === 0)!;
    const after = propOf({ ...outcome, layers: [{ ...layer, pieces }] }).plates.find(({ piece }) => piece === 0)!;
    for (const skin of ['face', 'back'] as const) {
      for (let v = 0; v < 4; v += 1) {
        const moved = [0, 1, 2].map((k) => Math.abs(after[skin][3 * v + k] - before[skin][3 * v + k]));
        expect(moved.toSorted((a, b) => a - b).map((mm) => Math.round(1e4 * mm) / 1e4)).toEqual([0, 2, 2]);
      }
    }
  });
});
