import { describe, expect, it } from 'vitest';
import { checkMesh } from '../../../src/mesh/check-mesh.ts';
import type { BuildUpWish, ProfileCorner } from '../../../src/model/build-up.ts';
import { checkPlainDraft } from '../../../src/model/plain-piece.ts';
import { makeBuildUp } from '../../../src/steps/build-up/make-build-up.ts';
import { planLayers } from '../../../src/steps/build-up/plan-layers.ts';
import { radiusAt, stretchesOver, volumeBetween, wholeOf, type Profile } from '../../../src/steps/build-up/profile.ts';
import { readProfile } from '../../../src/steps/build-up/read-profile.ts';
import { apartDeg } from '../../../src/steps/build-up/seam-angles.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';
import { forAll } from '../../support/for-all.ts';
import { corners, winding, wish } from './wishes.ts';

const frustum = (a: number, b: number, h: number): number => (Math.PI * h * (a * a + a * b + b * b)) / 3;

const profileOf = (all: readonly ProfileCorner[]): Profile => expectOk(readProfile(all, 10, 2000));

describe('a profile', () => {
  it('holds the volume of its frustums', () => {
    const made = profileOf(
      corners([
        [0, 20],
        [100, 30],
        [100, 40],
        [180, 25],
      ]),
    );
    expect(volumeBetween(made, wholeOf(made), 0, Infinity)).toBeCloseTo(frustum(20, 30, 100) + frustum(40, 25, 80), 6);
    // Between 22 and 28 mm the first frustum rises from 20 to 80 mm.
    const band = frustum(22, 28, 60) - Math.PI * 22 ** 2 * 60 + Math.PI * (28 ** 2 - 22 ** 2) * 20;
    expect(volumeBetween(made, { from: 0, to: 100 }, 22, 28)).toBeCloseTo(band, 6);
  });

  it('runs smoothly through its corners, never past them', () =>
    forAll(
      (rand) => Array.from({ length: 6 }, (_, i) => [i * 50 + 20 * rand(), 15 + 25 * rand()] as const),
      (pairs) => {
        const made = profileOf(corners(pairs, 'smooth'));
        made.forEach((span, i) => {
          const [low, high] = [pairs[i][1], pairs[i + 1][1]].sort((a, b) => a - b);
          for (let k = 0; k <= 20; k += 1) {
            const r = radiusAt(span, span.from + ((span.to - span.from) * k) / 20);
            expect(r).toBeGreaterThan(low - 1e-9);
            expect(r).toBeLessThan(high + 1e-9);
          }
        });
        // By Simpson's rule, which is no part of the product, over many steps.
        const [whole, level] = [wholeOf(made), 25];
        let sum = 0;
        for (const span of made)
          for (let k = 0; k < 4000; k += 1) {
            const [a, h] = [span.from + ((span.to - span.from) * k) / 4000, (span.to - span.from) / 4000];
            const f = (x: number): number => Math.max(0, radiusAt(span, x) ** 2 - level ** 2);
            sum += (h / 6) * (f(a) + 4 * f(a + h / 2) + f(a + h));
          }
        expect(volumeBetween(made, whole, level, Infinity)).toBeCloseTo(Math.PI * sum, 0);
      },
      { runs: 8 },
    ));

  it('tells stretches that stand over a level, joined over corners', () => {
    const made = profileOf(
      corners([
        [0, 20],
        [100, 30],
        [200, 20],
        [300, 30],
        [300, 20],
        [400, 20],
      ]),
    );
    expect(stretchesOver(made, 25, wholeOf(made))).toEqual([
      { from: 50, to: 150 },
      { from: 250, to: 300 },
    ]);
  });
});

const CONE = corners([
  [0, 20],
  [120, 34],
]);
const DUMBBELL = corners([
  [0, 24],
  [60, 24],
  [100, 18],
  [160, 18],
  [200, 30],
  [240, 30],
]);

/** Cost of the best nest of layers by trying every one, sand alone, for a profile that rises all the way; by frustums. */
function bestByTrying(
  from: number,
  to: number,
  long: number,
  core: number,
  sheets: readonly number[],
  wrap: number,
): number {
  const cost = (r: number): number => {
    if (r >= to - 1e-9) return 0;
    return Math.min(
      ...sheets.map((t) => {
        const begins = r <= from ? 0 : (long * (r - from)) / (to - from);
        const at = (level: number): number => Math.min(long, Math.max(begins, (long * (level - from)) / (to - from)));
        const [top, stretch] = [at(r + t), long - begins];
        const [r0, r1] = [Math.max(r, from), Math.min(r + t, to)];
        const solid = (r0 < r1 ? frustum(r0, r1, top - begins) : 0) + Math.PI * (r + t) ** 2 * (long - top);
        const whole = r + t <= from ? Math.PI * (r + t) ** 2 * stretch : solid;
        return (Math.PI * (r + t) ** 2 * stretch - whole) / 1000 + wrap + cost(r + t);
      }),
    );
  };
  return cost(core);
}

describe('layers', () => {
  it('are the best of all choices of sheets', () => {
    for (const [sheets, wrap] of [
      [[10, 6, 2], 10],
      [[6, 4], 1],
      [[5, 3], 100],
      [[10], 0],
    ] as const) {
      const hand = sheets.map((thicknessMm) => ({ thicknessMm, neutralFraction: 0.5 }));
      const plan = expectOk(planLayers(profileOf(CONE), 16, hand, 'sand', { sandCm3: 1, fillCm3: 1, wrap }));
      expect(plan.cost).toBeCloseTo(bestByTrying(20, 34, 120, 16, sheets, wrap), 6);
      expect(plan.fillMm3).toBe(0);
    }
  });

  it('hold solid and sanding, less filling: nothing is counted twice', () => {
    for (const rule of ['sand', 'middle', 'fill'] as const)
      for (const profile of [
        CONE,
        DUMBBELL,
        corners(
          [
            [10, 20],
            [80, 31],
            [150, 22],
            [300, 26],
          ],
          'smooth',
        ),
      ]) {
        const made = expectOk(makeBuildUp(wish({ profile, rule })));
        const foam = made.layers.reduce(
          (sum, { insideRadiusMm: r, thicknessMm: t, fromMm, toMm }) =>
            sum + Math.PI * ((r + t) ** 2 - r * r) * (toMm - fromMm),
          0,
        );
        expect(foam / (made.solidMm3 - made.coreMm3 + made.sandMm3 - made.fillMm3)).toBeCloseTo(1, 9);
        if (rule === 'sand') expect(made.fillMm3 + made.fillDepthMm).toBeCloseTo(0, 6);
        if (rule === 'fill') expect(made.sandMm3).toBeLessThan(0.1);
      }
  });

  it('stand proud everywhere, and lie where it is needed alone', () => {
    const made = expectOk(makeBuildUp(wish({ profile: DUMBBELL })));
    for (const span of profileOf(DUMBBELL))
      for (let k = 0; k <= 40; k += 1) {
        const x = span.from + ((span.to - span.from) * (k + 0.5)) / 41;
        const over = made.layers.filter(({ fromMm, toMm }) => fromMm <= x && toMm >= x);
        const top = Math.max(16, ...over.map(({ insideRadiusMm, thicknessMm }) => insideRadiusMm + thicknessMm));
        expect(top).toBeGreaterThan(radiusAt(span, x) - 1e-9);
        // One sheet over another, without a gap.
        expect(over.reduce((sum, { thicknessMm }) => sum + thicknessMm, 16)).toBeCloseTo(top, 9);
      }
    // Both ends of the dumbbell have sheets of their own.
    const [left, right] = [
      made.layers.filter(({ toMm }) => toMm <= 100),
      made.layers.filter(({ fromMm }) => fromMm >= 160),
    ];
    expect(left.length > 0 && right.length > left.length).toBe(true);
  });

  it('leave of a frustum what one cylinder is more: closed form', () => {
    const only = wish({
      profile: corners([
        [0, 18],
        [90, 21],
      ]),
      sheets: [{ thicknessMm: 6, neutralFraction: 0.5 }],
    });
    const made = expectOk(makeBuildUp(only));
    expect(made.sandMm3).toBeCloseTo(Math.PI * 22 ** 2 * 90 - frustum(18, 21, 90), 6);
    expect(made.sandDepthMm).toBeCloseTo(4, 9);
    const [{ aroundMm }] = made.layers;
    expect(aroundMm).toBeCloseTo(Math.PI * (32 + 2 * 0.5 * 6), 9);
    const [taper] = made.tapers;
    expect(taper.slopeDeg).toBeCloseTo((Math.atan(3 / 90) * 180) / Math.PI, 9);
    expect(taper.sandMm3).toBeCloseTo(made.sandMm3, 6);
  });

  it('have seams that stand 60 degrees and more apart, whatever the turn', () => {
    for (const seamTurnDeg of [60, 120, 137.5, 180]) {
      const { layers } = expectOk(makeBuildUp(wish({ profile: DUMBBELL, seamTurnDeg })));
      for (const one of layers)
        for (const under of layers)
          if (under.depth === one.depth - 1 && under.fromMm < one.toMm && under.toMm > one.fromMm)
            for (const a of one.seamsDeg)
              for (const b of under.seamsDeg) expect(apartDeg(a, b)).toBeGreaterThan(60 - 1e-9);
    }
    expectProblem(makeBuildUp(wish({ profile: DUMBBELL, seamTurnDeg: 45 })), 'core/choice');
  });

  it('come in parts where the sheet is small, joints one beside the other', () => {
    const sheets = [{ thicknessMm: 2, neutralFraction: 0.5, sizeMm: [300, 200] as const }];
    const made = expectOk(
      makeBuildUp(
        wish({
          profile: corners([
            [0, 20],
            [800, 20],
          ]),
          sheets,
        }),
      ),
    );
    const ends = made.layers.map(({ number }) =>
      made.work.pieces
        .filter(({ name }) => name.startsWith(`layer ${number} `))
        .map(({ outline }) => outline.find(({ name }) => name === 'seam')?.lengthMm ?? 0),
    );
    expect(ends[0]).toHaveLength(3);
    expect(ends[1]).toHaveLength(4);
    for (const list of ends) expect(list.reduce((sum, one) => sum + one, 0)).toBeCloseTo(800, 9);
  });

  it('make pieces, a form and steps that are whole', () => {
    const full: Partial<BuildUpWish> = {
      core: {
        ...wish().core,
        startCap: { kind: 'discs', sheetMm: 10, count: 2 },
        endCap: { kind: 'bought', standsOffMm: 4 },
        places: [
          { name: 'head', fromMm: 700, toMm: 860, on: 'core' },
          { name: 'ring', fromMm: 0, toMm: 20, on: 'foam' },
        ],
      },
      profile: DUMBBELL,
      windings: [winding({ toMm: 60, thicknessMm: 2 })],
    };
    const made = expectOk(makeBuildUp(wish(full)));
    expect(made.core.cutMm).toBe(876);
    expect(made.core.seats.map(({ name, holeMm }) => [name, holeMm])).toEqual([
      ['ring', 48.6],
      ['head', 32.6],
    ]);
    for (const piece of made.work.pieces) checkPlainDraft(piece);
    const keys = made.work.pieces.map(({ key }) => key);
    expect(new Set(keys).size).toBe(keys.length);
    expect(new Set(made.work.steps.flatMap(({ pieces }) => pieces))).toEqual(new Set(keys));
    const { form } = made.work;
    if (form === null) throw new Error('no form');
    checkMesh(form);
    for (const { points } of made.sideView) for (const [x, y] of points) expect(Number.isFinite(x + y)).toBe(true);
  });
});

describe('what cannot be built', () => {
  const refused = (change: Partial<BuildUpWish>, code: string): string =>
    expectProblem(makeBuildUp(wish(change)), code).text;
  const core = wish().core;
  it('is refused with what to change', () => {
    expect(
      refused(
        {
          profile: corners([
            [0, 10],
            [300, 20],
          ]),
        },
        'core/inside-core',
      ),
    ).toContain('radius is 16 mm');
    refused(
      {
        profile: corners([
          [-5, 20],
          [300, 20],
        ]),
      },
      'core/profile',
    );
    refused(
      {
        profile: corners([
          [300, 20],
          [0, 20],
        ]),
      },
      'core/profile',
    );
    refused(
      {
        profile: corners([
          [0, 20],
          [0, 24],
          [0, 28],
          [9, 20],
        ]),
      },
      'core/profile',
    );
    refused(
      {
        profile: corners([
          [0, NaN],
          [300, 20],
        ]),
      },
      'core/profile',
    );
    refused(
      {
        profile: corners([
          [0, 20],
          [901, 20],
        ]),
      },
      'core/profile',
    );
    expect(refused({ core: { ...core, overallMm: 20_001 } }, 'core/size')).toContain('20 m');
    for (const overallMm of [-1, 0, NaN, Infinity]) refused({ core: { ...core, overallMm } }, 'core/size');
    refused({ core: { ...core, diameterMm: 0 } }, 'core/size');
    refused({ core: { ...core, overallMm: 20, startCap: { kind: 'discs', sheetMm: 10, count: 2 } } }, 'core/cap');
    refused({ profile: CONE, sheets: [] }, 'core/sheets');
    refused({ profile: CONE, sheets: [{ thicknessMm: -2, neutralFraction: 0.5 }] }, 'core/sheets');
    refused(
      {
        profile: corners([
          [0, 1900],
          [300, 1900],
        ]),
      },
      'core/layers',
    );
    const many = [1.01, 1.07, 1.13, 1.19, 1.31, 1.43, 1.61, 1.87].map((thicknessMm) => ({
      thicknessMm,
      neutralFraction: 0.5,
    }));
    refused(
      { profile: corners(Array.from({ length: 180 }, (_, i) => [i * 5, i % 2 === 0 ? 20 : 110])), sheets: many },
      'core/ways',
    );
    for (const by of [{ pitchMm: 0 }, { pitchMm: -3 }, { pitchMm: NaN }, { overlapMm: 20 }])
      refused({ windings: [winding({ by })] }, 'core/choice');
    refused({ windings: [winding({ toMm: 901 })] }, 'core/choice');
    refused({ windings: [winding({ starts: 2.5 })] }, 'core/choice');
  });

  it('and two things in one place', () => {
    const places = [
      { name: 'head', fromMm: 700, toMm: 860, on: 'core' as const },
      { name: 'ring', fromMm: 850, toMm: 880, on: 'core' as const },
    ];
    expect(refused({ core: { ...core, places } }, 'core/clash')).toBe(
      'head and ring both take up the core from 850.0 to 860.0 mm: move one by 10.0 mm.',
    );
    expect(
      refused(
        {
          core: { ...core, places: [places[0]] },
          profile: corners([
            [600, 20],
            [800, 20],
          ]),
        },
        'core/clash',
      ),
    ).toContain('bare core');
    refused({ core: { ...core, places: [{ ...places[0], toMm: 950 }] } }, 'core/place');
  });
});
