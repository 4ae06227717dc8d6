import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/base/random.ts';
import { stepToFirstFlip } from '../../../src/steps/flatten/flips.ts';

describe('stepToFirstFlip', () => {
  const one = Uint32Array.from([0, 1, 2]);
  const flat = Float64Array.from([0, 0, 4, 0, 0, 3]);
  const along = (...direction: number[]): number => stepToFirstFlip(one, flat, Float64Array.from(direction));

  it('is where the area is gone: one corner moving, two moving, a turn that never collapses, growth', () => {
    expect(along(0, 0, 0, 0, 0, -1)).toBeCloseTo(3, 14);
    expect(along(0, 0, -2, 0, 0, -1)).toBeCloseTo(2, 14);
    expect(along(0, 0, -1, 0, 0, -3)).toBeCloseTo(1, 14);
    expect(along(0, 0, 0, 4, -3, 0)).toBe(Infinity);
    expect(along(0, 0, 1, 0, 0, 1)).toBe(Infinity);
    expect(along(5, 5, 5, 5, 5, 5)).toBe(Infinity);
  });

  it('finds the first of many to 1e-9 of the step, never beyond it', () => {
    const rand = seededRandom(17);
    for (let trial = 0; trial < 300; trial += 1) {
      const shape = Float64Array.from([rand(), rand(), 4 + rand(), rand(), rand(), 3 + rand()]);
      const direction = Float64Array.from(shape, () => 4 * (rand() - 0.5));
      const step = stepToFirstFlip(one, shape, direction);
      const areaAt = (share: number): number => {
        const [ax, ay, bx, by, cx, cy] = shape.map((x, i) => x + share * direction[i]);
        return (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
      };
      if (step === Infinity) {
        for (let k = 0; k <= 50; k += 1) expect(areaAt(k)).toBeGreaterThan(0);
        continue;
      }
      expect(Math.abs(areaAt(step))).toBeLessThan(1e-9 * (1 + step * step));
      for (let k = 0; k < 20; k += 1) expect(areaAt((k / 20) * step)).toBeGreaterThan(0);
    }
  });
});
