import { describe, expect, it } from 'vitest';
import { vec3 } from '../../../src/geom/vec.ts';
import type { TravelWish } from '../../../src/model/travel.ts';
import { extentAlong, planTravel } from '../../../src/steps/assembly/travel-joints.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';
import { forAll } from '../../support/for-all.ts';
import { boxMesh } from '../../support/meshes.ts';

const strap: TravelWish = { lengthMm: 1500, bagMm: 700, joint: { kind: 'strap' } };
const peg = (over: Partial<TravelWish> = {}): TravelWish => ({
  ...strap,
  joint: { kind: 'peg', diameterMm: 25 },
  ...over,
});
const places = (wish: TravelWish): number[] => expectOk(planTravel(wish)).joints.map(({ atMm }) => atMm);
const codes = (wish: TravelWish): string[] => expectOk(planTravel(wish)).findings.map(({ code }) => code);

describe('planTravel', () => {
  it('parts evenly into as few as go into the bag, and only says to ask the event', () => {
    expect(places(strap).map(Math.round)).toEqual([500, 1000]);
    expect(places({ ...strap, bagMm: 750 })).toEqual([750]);
    expect(places({ ...strap, bagMm: 1500 })).toEqual([]);
    expect(codes(strap)).toEqual(['travel/ask-event']);
  });
  it('counts the peg that stands out of each piece but the last', () => {
    // (1500 + 2 * 50) / 3 in the bag each; without pegs 750 would do in two.
    const { joints, pieces } = expectOk(planTravel(peg({ bagMm: 770 })));
    expect(joints.length).toBe(2);
    pieces.forEach(({ packedMm }) => expect(packedMm).toBeCloseTo(1600 / 3, 5));
    expect(joints[0]).toMatchObject({ engagementMm: 50, count: 0 });
    const loose = expectOk(planTravel(peg({ bagMm: 770, joint: { kind: 'peg', diameterMm: 25, isLoose: true } })));
    expect(loose.joints.map(({ atMm }) => Math.round(atMm))).toEqual([750]);
    expect(loose.pegsMm).toEqual([100]);
  });
  it('keeps joints and pegs out of what must stay whole', () => {
    const whole = [{ name: 'the lamp', fromMm: 450, toMm: 800 }];
    const [first, second] = places({ ...strap, whole });
    expect(second).toBeGreaterThanOrEqual(800);
    expect(first).toBeLessThanOrEqual(450);
    expect(1500 - second).toBeLessThanOrEqual(700);
    const withPegs = expectOk(planTravel(peg({ whole, bagMm: 800 })));
    for (const { atMm } of withPegs.joints) expect(atMm <= 400 || atMm >= 850).toBe(true);
    // A stretch that begins where another ends still leaves the place between: one joint alone fits there.
    expect(
      places({
        ...strap,
        bagMm: 800,
        whole: [
          { name: 'a', fromMm: 0, toMm: 760 },
          { name: 'b', fromMm: 760, toMm: 1500 },
        ],
      }),
    ).toEqual([760]);
    expectProblem(planTravel({ ...strap, whole: [{ name: 'all', fromMm: -1, toMm: 1501 }] }), 'travel/no-place');
  });
  it('is as few and as short as trying every place on a coarse grid', () =>
    forAll(
      (rand) => ({
        bag: 3 + Math.floor(8 * rand()),
        whole: Array.from({ length: 3 }, () => {
          const fromMm = Math.floor(20 * rand());
          return { name: 'x', fromMm, toMm: fromMm + Math.floor(5 * rand()) };
        }),
      }),
      ({ bag, whole }) => {
        const length = 20;
        const isFree = (x: number): boolean => whole.every(({ fromMm, toMm }) => x <= fromMm || x >= toMm);
        // Ends of stretches lie on the grid, and so does some best plan for the number of pieces.
        const fewest = new Array<number>(length + 1).fill(Infinity);
        fewest[0] = 0;
        for (let x = 1; x <= length; x += 1)
          for (let y = Math.max(0, x - bag); y < x; y += 1)
            if (x === length || isFree(x)) fewest[x] = Math.min(fewest[x], fewest[y] + 1);
        const plan = planTravel({ lengthMm: length, bagMm: bag, whole, joint: { kind: 'strap' } });
        expect(plan.ok ? plan.value.pieces.length : Infinity).toBe(fewest[length]);
        if (!plan.ok) return;
        for (const { packedMm } of plan.value.pieces) expect(packedMm).toBeLessThanOrEqual(bag + 1e-6);
        for (const { atMm } of plan.value.joints)
          expect(whole.every(({ fromMm, toMm }) => atMm <= fromMm + 1e-9 || atMm >= toMm - 1e-9)).toBe(true);
      },
    ));
  it('counts magnets by the moment they hold about the rim of the joint', () => {
    // 1.5 kg on 1500 mm, 700 mm out past the joint at 800: 0.7 kg at 350 mm, a moment of 0.7 * 9.80665 * 350 = 2402.6 N mm; rim at 30 mm: 80.1 N; three times over.
    const wish: TravelWish = {
      lengthMm: 1500,
      bagMm: 800,
      whole: [{ name: 'x', fromMm: 0, toMm: 800 }],
      joint: { kind: 'magnets', pullN: 25, acrossMm: 60 },
      massKg: 1.5,
      gripMm: 400,
    };
    const plan = expectOk(planTravel(wish));
    expect(plan.joints.map(({ atMm, count }) => [Math.round(atMm), count])).toEqual([
      [800, Math.ceil((3 * 80.087) / 25)],
    ]);
    expect(codes({ ...wish, joint: { kind: 'magnets', pullN: 5, acrossMm: 60 } })).toContain('travel/many-magnets');
  });
  it('warns of a short peg', () => {
    expect(codes(peg({ joint: { kind: 'peg', diameterMm: 25, engagementMm: 30 } }))).toContain('travel/short-peg');
    expect(codes(peg())).not.toContain('travel/short-peg');
  });
  it('refuses what is no length', () => {
    for (const bad of [
      { lengthMm: 0 },
      { bagMm: NaN },
      { bagMm: -5 },
      { lengthMm: Infinity },
      { gripMm: 2000 },
      { whole: [{ name: 'x', fromMm: 5, toMm: 1 }] },
    ])
      expectProblem(planTravel({ ...strap, ...bad }), 'travel/wish');
    expectProblem(planTravel(peg({ joint: { kind: 'peg', diameterMm: 0 } })), 'travel/wish');
    expectProblem(planTravel({ ...strap, joint: { kind: 'magnets', pullN: 5, acrossMm: 60 } }), 'travel/wish');
    expectProblem(planTravel({ ...strap, bagMm: 1 }), 'travel/no-place');
    expectProblem(planTravel(peg({ bagMm: 60 })), 'travel/no-place');
  });
});

describe('extentAlong', () => {
  it('reaches from the lowest to the highest place', () => {
    expect(extentAlong(boxMesh(10, 20, 30).positions, vec3(0, 0, 7))).toEqual({ fromMm: 0, toMm: 30 });
  });
});
