import { describe, expect, it } from 'vitest';
import { arc } from '../../../src/geom/outline.ts';
import { integrate, runningIntegral } from '../../../src/steps/shapes/integrate.ts';
import { edge, piece, side } from '../../../src/steps/shapes/pieces.ts';

const at = (x: number, y: number) => ({ x, y });

describe('a piece', () => {
  const [a, b, c] = [at(0, 0), at(40, 0), at(0, 30)];
  it('has the area of its outline less its holes', () => {
    const hole = [edge('hole', arc(at(10, 10), 5, 0, -2 * Math.PI))];
    const made = piece('triangle', [side('a', a, b), side('b', b, c), side('c', c, a)], { holes: [hole] });
    expect(made.areaMm2).toBeCloseTo(600 - 25 * Math.PI, 9);
    expect(made.outline.map(({ lengthMm }) => lengthMm)).toEqual([40, 50, 30]);
  });
  it('must close and run counter-clockwise', () => {
    expect(() => piece('open', [side('a', a, b), side('b', b, c), side('c', c, at(1, 0))])).toThrow('open');
    expect(() => piece('turned', [side('a', b, a), side('c', a, c), side('b', c, b)])).toThrow('area');
  });
});

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
