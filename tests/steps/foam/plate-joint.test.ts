import { describe, expect, it } from 'vitest';
import { deg, rad } from '../../../src/geom/vec.ts';
import {
  halvedCut,
  sharedCut,
  standingCut,
  throughCut,
  type Plate,
  type PlateCut,
} from '../../../src/steps/foam/plate-joint.ts';
import { forAll } from '../../support/for-all.ts';

/** A sheet with its face on the sculpt, or elsewhere. */
const plate = (thicknessMm: number, k = 0.5, faceMm = 0): Plate => ({
  faceMm,
  neutralMm: faceMm - (1 - k) * thicknessMm,
  backMm: faceMm - thicknessMm,
});

/** How far out an edge runs from the seam on the sculpt: the neutral line stands `height tan(fold / 2)` out from it. */
function fromSeam(fold: number, own: Plate, cut: PlateCut): { face: number; back: number } {
  const neutral = own.neutralMm * Math.tan(fold / 2);
  return { face: neutral + cut.faceMm, back: neutral + cut.backMm };
}

/** A point of the left plate, `x` out and `height` over it, and one of the right plate, which is turned about the seam by the fold. */
const onLeft = (x: number, height: number) => ({ x, y: height });
const onRight = (fold: number, x: number, height: number) => ({
  x: -x * Math.cos(fold) + height * Math.sin(fold),
  y: x * Math.sin(fold) + height * Math.cos(fold),
});

const anyFold = (rand: () => number, least: number, most: number): number =>
  rad(least + (most - least) * rand()) * (rand() < 0.5 ? -1 : 1);

describe('two thicknesses that share a fold', () => {
  it('lean as the formula of the trade says, and together as much as the fold', () => {
    // tan(bevel1) = (t2 - t1 cos fold) / (t1 sin fold); sheets of 6 and 10 mm on a right angle: atan(10/6) and atan(6/10).
    const [thin, thick] = [plate(6), plate(10)];
    expect(deg(sharedCut(rad(90), thin, thick).bevel)).toBeCloseTo(59.03624, 5);
    expect(deg(sharedCut(rad(90), thick, thin).bevel)).toBeCloseTo(30.96376, 5);
    const [a, b] = [sharedCut(rad(70), thin, thick).bevel, sharedCut(rad(70), thick, thin).bevel];
    expect(Math.tan(a)).toBeCloseTo((10 - 6 * Math.cos(rad(70))) / (6 * Math.sin(rad(70))), 12);
    expect(a + b).toBeCloseTo(rad(70), 12);
  });

  it('touch along the whole cut, wherever their surfaces lie', () =>
    forAll(
      (rand) => ({
        fold: anyFold(rand, 20, 150),
        left: plate(2 + 13 * rand(), rand(), 6 * rand() - 3),
        right: plate(2 + 13 * rand(), rand(), 6 * rand() - 3),
      }),
      ({ fold, left, right }) => {
        const a = fromSeam(fold, left, sharedCut(fold, left, right));
        const b = fromSeam(fold, right, sharedCut(fold, right, left));
        for (const [p, q] of [
          [onLeft(a.face, left.faceMm), onRight(fold, b.face, right.faceMm)],
          [onLeft(a.back, left.backMm), onRight(fold, b.back, right.backMm)],
        ])
          expect(Math.hypot(p.x - q.x, p.y - q.y)).toBeLessThan(1e-9);
      },
    ));

  it('of one thickness are cut on the plane that halves the fold', () =>
    forAll(
      (rand) => ({ fold: anyFold(rand, 1, 140), own: plate(2 + 13 * rand(), rand(), 4 * rand()) }),
      ({ fold, own }) => {
        const [shared, halved] = [sharedCut(fold, own, own), halvedCut(fold / 2, own)];
        expect(shared.bevel).toBeCloseTo(fold / 2, 9);
        expect(shared.faceMm).toBeCloseTo(halved.faceMm, 8);
        expect(shared.backMm).toBeCloseTo(halved.backMm, 8);
      },
    ));
});

describe('a plate that stands on another', () => {
  it.each([
    [6, 10],
    [10, 6],
  ])('is shorter by the other sheet at a right angle: %i mm on %i mm', (own, other) => {
    const [standing, through] = [plate(own), plate(other)];
    const cut = standingCut(rad(90), standing, through);
    const edges = fromSeam(rad(90), standing, cut);
    expect(cut.bevel).toBeCloseTo(0, 12);
    expect(edges.face).toBeCloseTo(-other, 12);
    expect(edges.back).toBeCloseTo(-other, 12);
    const on = throughCut(rad(90), through, standing);
    expect(on.bevel).toBeCloseTo(0, 12);
    expect(fromSeam(rad(90), through, on).face).toBeCloseTo(0, 12);
    expect(fromSeam(rad(90), through, on).back).toBeCloseTo(0, 12);
  });

  it('ends on the inner side of the other, which ends flush with its outer side', () =>
    forAll(
      (rand) => ({
        fold: anyFold(rand, 45, 135),
        left: plate(2 + 13 * rand(), rand(), 6 * rand() - 3),
        right: plate(2 + 13 * rand(), rand(), 6 * rand() - 3),
      }),
      ({ fold, left, right }) => {
        const stands = fromSeam(fold, right, standingCut(fold, right, left));
        const inner = fold > 0 ? left.backMm : left.faceMm;
        expect(onRight(fold, stands.face, right.faceMm).y).toBeCloseTo(inner, 9);
        expect(onRight(fold, stands.back, right.backMm).y).toBeCloseTo(inner, 9);
        const runs = fromSeam(fold, left, throughCut(fold, left, right));
        const outer = fold > 0 ? right.faceMm : right.backMm;
        for (const { x, y } of [onLeft(runs.face, left.faceMm), onLeft(runs.back, left.backMm)])
          expect(x * Math.sin(fold) + y * Math.cos(fold)).toBeCloseTo(outer, 9);
        // Both lean by what the fold is off a right angle.
        const off = fold > 0 ? fold - Math.PI / 2 : fold + Math.PI / 2;
        expect(standingCut(fold, right, left).bevel).toBeCloseTo(off, 9);
        expect(throughCut(fold, left, right).bevel).toBeCloseTo(off, 9);
      },
    ));
});
