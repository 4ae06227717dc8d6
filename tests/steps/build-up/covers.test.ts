import { describe, expect, it } from 'vitest';
import { rad } from '../../../src/geom/vec.ts';
import { checkPlainDraft } from '../../../src/model/plain-piece.ts';
import { makeBuildUp } from '../../../src/steps/build-up/make-build-up.ts';
import { readProfile } from '../../../src/steps/build-up/read-profile.ts';
import { makeSkin } from '../../../src/steps/build-up/skin.ts';
import { makeStaves, staveAngles } from '../../../src/steps/build-up/staves.ts';
import { seamBevelDeg, wrapParts } from '../../../src/steps/build-up/wrap-piece.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';
import { forAll } from '../../support/for-all.ts';
import { numbersOf } from '../../reference/handbook/cases.ts';
import { corners, wish } from './wishes.ts';

const profile = (pairs: readonly (readonly [number, number])[]) => expectOk(readProfile(corners(pairs), 1, 5000));

describe('staves', () => {
  it('have the compound angles of the planes they lie in', () =>
    forAll(
      (rand) => ({ count: 3 + Math.floor(20 * rand()), slope: -1 + 2 * rand() }),
      ({ count, slope }) => {
        const { tableTiltDeg, taperDeg } = staveAngles(count, slope);
        const normal = (turn: number) => [
          Math.cos(slope) * Math.cos(turn),
          Math.cos(slope) * Math.sin(turn),
          -Math.sin(slope),
        ];
        const [a, b] = [normal(0), normal((2 * Math.PI) / count)];
        const between = Math.acos(a[0] * b[0] + a[1] * b[1] + a[2] * b[2]);
        expect(2 * rad(tableTiltDeg)).toBeCloseTo(between, 9);
        // The edge where both planes meet, against the middle line of the first.
        const edge = [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
        const middle = [Math.sin(slope), 0, Math.cos(slope)];
        const cos = edge.reduce((sum, one, i) => sum + one * middle[i], 0) / Math.hypot(...edge);
        expect(Math.acos(Math.min(1, Math.abs(cos)))).toBeCloseTo(rad(taperDeg), 6);
      },
    ));

  it('of a straight tube lean by half of what neighbours turn: handbook bevels L1 and L2', () => {
    // An interior angle of 120 degrees is a hexagon's, one of 90 a square's.
    for (const [id, count] of [
      ['L1', 6],
      ['L2', 4],
    ] as const)
      expect(staveAngles(count, 0).tableTiltDeg).toBeCloseTo(numbersOf(id).expected.bevel_from_square_deg, 9);
  });

  it('leave what a polygon is more than its circle, and are sawn to their widths', () => {
    const made = expectOk(
      makeStaves(
        profile([
          [0, 40],
          [100, 50],
        ]),
        16,
        { fromMm: 0, toMm: 100, count: 8, sheetMm: 10 },
        'sand',
        1,
      ),
    );
    const squares = (100 / 3) * (40 * 40 + 40 * 50 + 50 * 50);
    expect(made.set.sandMm3).toBeCloseTo((8 * Math.tan(Math.PI / 8) - Math.PI) * squares, 6);
    expect(made.set.fillMm3).toBeCloseTo(0, 6);
    expect(made.set.widthMm[1]).toBeCloseTo(2 * 50 * Math.tan(Math.PI / 8), 9);
    const [lower, edge] = made.piece.outline;
    const taper = Math.atan((made.set.widthMm[1] - lower.lengthMm) / 2 / made.set.lengthMm);
    expect((taper * 180) / Math.PI).toBeCloseTo(made.set.taperDeg, 9);
    expect(edge.bevelDeg.middle).toBe(made.set.tableTiltDeg);
    const even = expectOk(
      makeStaves(
        profile([
          [0, 40],
          [100, 50],
        ]),
        16,
        { fromMm: 0, toMm: 100, count: 8, sheetMm: 10 },
        'middle',
        1,
      ),
    );
    expect(even.set.sandMm3).toBeCloseTo(even.set.fillMm3, 5);
    expect(even.set.sandMm3).toBeGreaterThan(1);
  });

  it('that do not fit are refused', () => {
    const on = profile([
      [0, 20],
      [100, 20],
      [200, 30],
    ]);
    for (const bad of [
      { fromMm: 50, toMm: 150, count: 8, sheetMm: 2 },
      { fromMm: 0, toMm: 100, count: 8, sheetMm: 6 },
      { fromMm: 0, toMm: 100, count: 2, sheetMm: 2 },
      { fromMm: 100, toMm: 100, count: 8, sheetMm: 2 },
    ])
      expectProblem(makeStaves(on, 16, bad, 'sand', 1), 'core/staves');
  });
});

describe('a skin', () => {
  it('is cut as the frustum of its neutral surface: handbook A3', () => {
    for (const id of ['A3']) {
      const { inputs, expected } = numbersOf(id);
      const { large_radius: large, small_radius: small, height } = inputs;
      // With k 1 the face keeps its length, so the case is the face itself.
      const made = expectOk(
        makeSkin(
          profile([
            [0, large],
            [height, small],
          ]),
          1,
          { sheetMm: 2, deviationMm: 0.5 },
          1,
        ),
      );
      const [{ sector }] = made.bands;
      expect(sector.outerMm).toBeCloseTo(expected.outer_radius, 3);
      expect(sector.innerMm).toBeCloseTo(expected.inner_radius, 3);
      expect(sector.angleDeg).toBeCloseTo(expected.sector_angle_deg, 5);
      const area = Math.PI * (large + small) * Math.hypot(height, large - small);
      expect(made.pieces[0].areaMm2 / area).toBeCloseTo(1, 9);
    }
  });

  it('has bands whose rims are alike where they meet, and takes half the turn in each', () => {
    const made = expectOk(
      makeSkin(
        profile([
          [0, 20],
          [100, 30],
          [180, 30],
          [250, 22],
        ]),
        16,
        { sheetMm: 2, deviationMm: 0.5 },
        0.4,
      ),
    );
    const rim = (i: number, name: string) => made.pieces[i].outline.find((edge) => edge.name === name);
    for (let i = 0; i < 2; i += 1) {
      expect(rim(i, 'end rim')?.lengthMm).toBeCloseTo(rim(i + 1, 'start rim')?.lengthMm ?? 0, 8);
      expect(rim(i, 'end rim')?.bevelDeg.middle).toBeCloseTo(rim(i + 1, 'start rim')?.bevelDeg.middle ?? 0, 9);
    }
    expect(rim(0, 'end rim')?.bevelDeg.middle).toBeCloseTo(((Math.atan(0.1) / 2) * 180) / Math.PI, 9);
    for (const piece of made.pieces) checkPlainDraft(piece);
    // What lies under it is 2 mm in, square to each part.
    const [first] = made.base;
    expect(first.c[0]).toBeCloseTo(20 - 2 / Math.cos(Math.atan(0.1)), 9);
  });

  it('lies on layers that come to its inside, and has no room where there is none', () => {
    const shape = corners([
      [0, 20],
      [300, 20],
      [350, 32],
      [400, 26],
    ]);
    const made = expectOk(makeBuildUp(wish({ profile: shape, skin: { sheetMm: 2, deviationMm: 0.5 } })));
    expect(made.skin).toHaveLength(3);
    expect(made.layers[0].insideRadiusMm + made.layers[0].thicknessMm).toBe(18);
    expectProblem(makeBuildUp(wish({ profile: shape, skin: { sheetMm: 6, deviationMm: 0.5 } })), 'core/skin');
    const smooth = corners(
      [
        [0, 20],
        [200, 32],
        [400, 22],
      ],
      'smooth',
    );
    const bands = expectOk(makeBuildUp(wish({ profile: smooth, skin: { sheetMm: 2, deviationMm: 0.5 } }))).skin;
    expect(bands.length).toBeGreaterThan(3);
    expect(bands.length).toBeLessThan(12);
  });
});

describe('a wrap', () => {
  it('has seam edges that lean only where the sheet is thick for its core', () => {
    expect(seamBevelDeg(16, { thicknessMm: 2, neutralFraction: 0.5 })).toBe(0);
    // 5 mm of a 10 mm sheet stay flat on a neutral radius of 21 mm.
    expect(seamBevelDeg(16, { thicknessMm: 10, neutralFraction: 0.5 })).toBeCloseTo(((5 / 21) * 180) / Math.PI, 9);
  });

  it('is parted into as few parts as fit', () => {
    expect(wrapParts(120, 900, [1000, 2000], false)).toEqual({ around: 1, along: [900] });
    expect(wrapParts(120, 900, [600, 900], true)).toEqual({ around: 1, along: [900] });
    expect(wrapParts(700, 900, [600, 500], false)).toEqual({ around: 2, along: [450, 450] });
    expect(wrapParts(100, 900, [300, 200], true)?.along).toEqual([150, 300, 300, 150]);
    expect(wrapParts(5000, 20000, [10, 10], false)).toBeNull();
  });
});
