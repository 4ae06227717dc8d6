import { describe, expect, it } from 'vitest';
import { integrate, runningIntegral } from '../../src/geom/integrate.ts';

describe('integrals', () => {
  it('are good to 1e-12', () => {
    expect(integrate(Math.exp, 0, 1)).toBeCloseTo(Math.E - 1, 13);
    expect(integrate((t) => Math.sqrt(t), 0, 1)).toBeCloseTo(2 / 3, 11);
    expect(integrate((t) => 1 / (1e-3 + t * t), -1, 1)).toBeCloseTo(
      (2 / Math.sqrt(1e-3)) * Math.atan(1 / Math.sqrt(1e-3)),
      9,
    );
  });
  it('run on from their start', () => {
    const sine = runningIntegral(Math.cos, 0, 7, 64);
    for (const t of [0, 0.001, 1.23, 5, 6.9999, 7]) expect(sine(t)).toBeCloseTo(Math.sin(t), 13);
  });
});
