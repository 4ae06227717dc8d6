import { describe, expect, it } from 'vitest';
import { integrate, runningIntegral } from '../../../src/steps/shapes/integrate.ts';
import { edge, piece, side } from '../../../src/steps/shapes/pieces.ts';
import {
  arc,
  curve,
  CURVE_DEVIATION_MM,
  line,
  segmentLength,
  segmentPoints,
  segmentSweep,
} from '../../../src/steps/shapes/segments.ts';

const at = (x: number, y: number) => ({ x, y });

describe('segments', () => {
  it('sweep the area of a disc and of a half disc off the origin', () => {
    expect(segmentSweep(arc(at(30, -20), 10, 1, 2 * Math.PI))).toBeCloseTo(100 * Math.PI, 9);
    const half = arc(at(30, -20), 10, 0, Math.PI);
    expect(segmentSweep(half) + segmentSweep(line(half.to, half.from))).toBeCloseTo(50 * Math.PI, 9);
  });

  it('of a curve have the length and the area of the curve, not of its chords', () => {
    // An ellipse with half axes 50 and 30: area pi a b; length 4 a E(0.8) = 255.1, tabled to 1e-9 (Abramowitz and Stegun, table 17.6: E at k² 0.64 is 1.2763499431699).
    const ellipse = curve((t) => at(50 * Math.cos(t), 30 * Math.sin(t)), 0, 2 * Math.PI);
    expect(ellipse.sweptMm2).toBeCloseTo(1500 * Math.PI, 7);
    expect(ellipse.lengthMm).toBeCloseTo(4 * 50 * 1.2763499431699, 7);
  });

  it('of a curve are sampled within their deviation, and not much finer', () => {
    const round = curve((t) => at(100 * Math.cos(t), 100 * Math.sin(t)), 0, Math.PI);
    round.points.slice(1).forEach((q, i) => {
      const p = round.points[i];
      const sagitta = 100 - Math.hypot((p.x + q.x) / 2, (p.y + q.y) / 2);
      expect(sagitta).toBeLessThanOrEqual(CURVE_DEVIATION_MM);
      expect(sagitta).toBeGreaterThan(CURVE_DEVIATION_MM / 20);
    });
  });

  it('of a curve keep its corners', () => {
    const roof = curve((t) => at(t, Math.abs(t - 1 / 3)), 0, 1, [1 / 3]);
    expect(roof.points).toContainEqual(at(1 / 3, 0));
    expect(roof.lengthMm).toBeCloseTo(Math.SQRT2, 12);
  });

  it('of an arc are points within a deviation', () => {
    const points = segmentPoints(arc(at(0, 0), 1000, 0, 1), 0.1);
    expect(points.length).toBe(Math.ceil(1 / (2 * Math.acos(1 - 0.1 / 1000))));
    expect(segmentLength(arc(at(0, 0), 1000, 0, -1))).toBe(1000);
  });
});

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
