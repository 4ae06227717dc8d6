import { describe, expect, it } from 'vitest';
import { PLAIN_TRIM } from '../../../src/model/trim.ts';
import { makeTrim } from '../../../src/steps/trim/make-trim.ts';
import { capArea, trimSection, wrapFit } from '../../../src/steps/trim/profile.ts';
import { smoothSeries, smoothWeight } from '../../../src/steps/trim/smooth-series.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { bandSurface, cylinder, ringLine, spaced } from './round-grounds.ts';

describe('sections of trim', () => {
  it('takes half and quarter circles from sheet', () => {
    expect(capArea(20, 10)).toBeCloseTo((Math.PI * 100) / 2, 9);
    const half = trimSection({ kind: 'half-round', from: 'cut' }, 20, 10, 0.5);
    expect(half.sandMm2).toBeCloseTo(200 - 50 * Math.PI, 9);
    const quarter = trimSection({ kind: 'quarter-round', from: 'cut', square: 'left' }, 10, 10, 0.5);
    expect(quarter.sandMm2).toBeCloseTo(100 - 25 * Math.PI, 9);
    // The middle of what a quarter circle leaves of its square lies 10 r / (3 (12 - 3 pi)) from the corner at the circle's middle (from memory: r (10 - 3 pi) / (12 - 3 pi) from the far one).
    const far = (10 * (10 - 3 * Math.PI)) / (12 - 3 * Math.PI);
    expect(5 - quarter.sandAtMm).toBeCloseTo(10 - far, 9);
    expect(trimSection({ kind: 'half-round', from: 'bought' }, 20, 10, 0.5).sandMm2).toBe(0);
  });

  it('is as wide as what goes round a rim', () => {
    // A roll as thick as the rim is half a circle; a fat one misses only what the rim covers.
    expect(trimSection({ kind: 'edge-roll', rimMm: 10, radiusMm: 5, lapMm: 8 }, 0, 4, 0.5).flatMm).toBeCloseTo(
      Math.PI * 7 + 16,
      9,
    );
    expect(trimSection({ kind: 'edge-roll', rimMm: 10, radiusMm: 10, lapMm: 0 }, 0, 4, 0.5).flatMm).toBeCloseTo(
      (12 * 2 * Math.PI * 5) / 6,
      9,
    );
    expect(trimSection({ kind: 'u-binding', rimMm: 6, depthMm: 15, insideRadiusMm: 0 }, 0, 2, 0.5).flatMm).toBeCloseTo(
      30 + 6 + Math.PI,
      9,
    );
  });

  it('leans the edges of a bevelled strip about the surface that keeps its length', () => {
    const section = trimSection({ kind: 'bevelled', leanDeg: 45, sides: 'left' }, 20, 4, 0.5);
    expect([section.flatMm, section.leftBevelDeg, section.rightBevelDeg]).toEqual([18, -45, 0]);
  });

  it('curves a binding by as much as fits best', () => {
    // Thin foam, sharp folds: the best line through u inside the rim and T / 2 beyond is (1.5 T W² - 0.5 T³) / W³.
    const [T, depth] = [6, 12];
    const W = T + 2 * depth;
    const fit = wrapFit({ kind: 'u-binding', rimMm: T, depthMm: depth, insideRadiusMm: 0 }, 1e-9, 0.5);
    expect(fit.bendShare).toBeCloseTo((1.5 * T * W ** 2 - 0.5 * T ** 3) / W ** 3, 3);
  });

  it('binds the rim of a cylinder with what stays to be stretched', () => {
    const surface = bandSurface(cylinder(60), 96, spaced(0, 60, 10));
    const profile = { kind: 'u-binding', rimMm: 6, depthMm: 12, insideRadiusMm: 1 } as const;
    const { work, strips } = expectOk(
      makeTrim({ foot: surface, neutral: surface }, [{ name: 'rim', line: ringLine(96, 10) }], {
        ...PLAIN_TRIM,
        profile,
      }),
    );
    const fit = wrapFit(profile, PLAIN_TRIM.thicknessMm, PLAIN_TRIM.neutralFraction);
    expect(strips[0].leastFlatRadiusMm / (60 / Math.abs(fit.bendShare))).toBeCloseTo(1, 2);
    // Places of the section at radius 60 + up, against the flat 1 + u share / 60.
    const most = Math.max(
      ...fit.across.map(({ u, up }) => Math.abs(100 * ((1 + up / 60) / (1 + (u * fit.bendShare) / 60) - 1))),
    );
    expect(Math.abs(strips[0].greatestStretchPercent)).toBeCloseTo(most, 1);
    expect(work.steps[0].work).toBe('wrap');
  });
});

describe('smoothing a series', () => {
  it('keeps parabolas, halves the wave it is asked to and hardly touches one of twice the length', () => {
    const series = (f: (i: number) => number): Float64Array => Float64Array.from({ length: 1024 }, (_, i) => f(i));
    const parabola = series((i) => 3 + 0.2 * i - 0.001 * i * i);
    const [kept] = smoothSeries([parabola], smoothWeight(32));
    expect(kept.reduce((most, y, i) => Math.max(most, Math.abs(y - parabola[i])), 0)).toBeLessThan(1e-6);
    for (const [wave, share] of [
      [32, 0.5],
      [64, 0.985],
      [16, 0.016],
    ]) {
      const [smooth] = smoothSeries([series((i) => Math.cos((2 * Math.PI * i) / wave))], smoothWeight(32));
      expect(smooth[512]).toBeCloseTo(share, 2);
    }
  });
});
