import { describe, expect, it } from 'vitest';
import { bendAllowance, bendDeduction, outsideSetback } from '../../src/geom/bend-allowance.ts';

describe('bends of sheet', () => {
  // The worked case of the sheet-metal handbooks, inches: 90 degrees, inside radius and thickness 0.125, k 0.44.
  const published = { angle: Math.PI / 2, insideRadius: 0.125, thickness: 0.125, neutralFraction: 0.44 };

  it('take the length of the neutral arc', () => {
    expect(bendAllowance(published)).toBeCloseTo(0.2827, 4);
    expect(bendAllowance({ angle: 2, insideRadius: 30, thickness: 10, neutralFraction: 0.5 })).toBe(70);
  });

  it('begin the setback away from the corner of both legs, and shorten the sheet by the deduction', () => {
    expect(outsideSetback(published)).toBeCloseTo(0.25, 12);
    expect(bendDeduction(published)).toBeCloseTo(0.5 - 0.2827, 4);
    // 60 degrees: (30 + 10) / sqrt(3).
    const slight = { angle: Math.PI / 3, insideRadius: 30, thickness: 10, neutralFraction: 0.5 };
    expect(outsideSetback(slight)).toBeCloseTo(40 / Math.sqrt(3), 12);
    expect(bendDeduction(slight)).toBeCloseTo(80 / Math.sqrt(3) - (35 * Math.PI) / 3, 12);
  });

  it('that do not turn change nothing', () => {
    expect(bendDeduction({ angle: 0, insideRadius: 5, thickness: 3, neutralFraction: 0.4 })).toBe(0);
  });
});
