import { describe, expect, it } from 'vitest';
import { layRingOn } from '../../src/geom/lay-ring-on.ts';
import { movePoints } from '../../src/geom/turn-and-move.ts';
import { forAll } from '../support/for-all.ts';

/** A shape with no mirror and no turn of its own, mm. */
const SOLE = Float64Array.of(0, 0, 80, 0, 90, 40, 70, 120, 60, 200, 20, 210, -5, 150, 10, 70);
const square = (half: number): Float64Array => Float64Array.of(-half, -half, half, -half, half, half, -half, half);

describe('a ring laid on another', () => {
  it('comes to lie on itself wherever it lay', () =>
    forAll(
      (rand) => ({ x: 400 * rand() - 200, y: 400 * rand() - 200, turnRad: 6 * rand() - 3 }),
      (move) => {
        const { apartMm } = layRingOn(SOLE, movePoints(SOLE, move));
        expect(apartMm).toBeLessThan(0.02);
      },
      { runs: 15 },
    ));

  it('is as far off as the corners of a larger square: 10 mm each way, so 10 times the root of 2', () => {
    const { apartMm, move } = layRingOn(square(50), square(60));
    expect(apartMm).toBeCloseTo(10 * Math.SQRT2, 6);
    expect(move.turnRad).toBeCloseTo(0, 9);
  });

  it('stays as it lies where a turned one is no better', () => {
    const { move } = layRingOn(square(50), square(50));
    expect([move.x, move.y, move.turnRad].map((value) => Math.abs(value) < 1e-9)).toEqual([true, true, true]);
  });

  it('is never mirrored', () => {
    const mirrored = new Float64Array(SOLE.length);
    for (let i = 0; i < SOLE.length; i += 2) {
      mirrored[SOLE.length - 2 - i] = -SOLE[i];
      mirrored[SOLE.length - 1 - i] = SOLE[i + 1];
    }
    expect(layRingOn(SOLE, mirrored).apartMm).toBeGreaterThan(5);
  });
});
