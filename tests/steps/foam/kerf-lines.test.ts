import { describe, expect, it } from 'vitest';
import { kerfLines } from '../../../src/steps/foam/kerf-lines.ts';

const CASE = {
  outsideRadiusMm: 41,
  thicknessMm: 10,
  hingeMm: 2,
  kerfMm: 3,
  turnRad: Math.PI / 2,
  leastHingeMm: 1,
};

describe('kerf lines', () => {
  it('by hand: arm 9, a kerf shuts at 1/3 radian, five make a quarter turn', () => {
    const lines = kerfLines(CASE);
    expect(lines.count).toBe(5);
    expect(lines.depthMm).toBe(8);
    expect(lines.spacingMm).toBeCloseTo((Math.PI / 10) * 40, 12);
    expect(lines.mouthMm).toBeCloseTo(3 - (9 * Math.PI) / 10, 12);
    expect(lines.hingePct).toBeCloseTo((100 * (Math.PI / 10)) / 3, 12);
    expect(lines.fault).toBe('none');
  });

  it('shut together they leave the inside as long as its arc: webs alone', () => {
    const turnRad = 6 * (3 / 9);
    const { count, webMm, mouthMm } = kerfLines({ ...CASE, turnRad });
    expect(count).toBe(6);
    expect(mouthMm).toBeCloseTo(0, 12);
    expect(count * webMm).toBeCloseTo(turnRad * (41 - 10), 9);
  });

  it('leaves the mouth open as far as the walls stand apart when they are turned round the hinge', () => {
    const [w, h, t] = [3, 2, 10];
    const { turnEachRad: a, mouthMm } = kerfLines({ ...CASE, turnRad: 1.5 });
    // The end of the hinge after an even bend, then down its wall to the mouth.
    const rho = w / a;
    const end = { x: rho * Math.sin(a / 2), y: rho * Math.cos(a / 2) - rho };
    const mouth = end.x - (t - h / 2) * Math.sin(a / 2);
    // Half of what is left open, its arc drawn straight.
    expect(mouth).toBeCloseTo((mouthMm / a) * Math.sin(a / 2), 12);
    expect(mouthMm).toBeGreaterThan(0);
  });

  it('tells hinges that tear and kerfs that run into each other', () => {
    expect(kerfLines({ ...CASE, hingeMm: 0.5 }).fault).toBe('too deep');
    expect(kerfLines({ ...CASE, outsideRadiusMm: 15 }).fault).toBe('too close');
    expect(() => kerfLines({ ...CASE, hingeMm: 10 })).toThrow(RangeError);
  });
});
