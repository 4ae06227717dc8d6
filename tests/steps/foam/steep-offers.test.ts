import { describe, expect, it } from 'vitest';
import { deg, rad } from '../../../src/geom/vec.ts';
import { steepOffers } from '../../../src/steps/foam/steep-offers.ts';
import { forAll } from '../../support/for-all.ts';
import { foamOf, hingeMesh, partedAlong } from './support.ts';

interface Point {
  readonly x: number;
  readonly y: number;
}

const turn = ({ x, y }: Point, angle: number): Point => ({
  x: x * Math.cos(angle) - y * Math.sin(angle),
  y: x * Math.sin(angle) + y * Math.cos(angle),
});

/**
 * Distance between the far ends of two cut edges that touch at the origin: a left and a right panel, face up, lie flat and are then turned by
 * the fold about it. Convex they touch at their backs and are open at the face, concave the other way round; either way the far ends of the
 * cuts stand beyond the origin before the turn.
 */
function mouthOf(fold: number, lean: number, t: number): number {
  const left = { x: t * Math.tan(lean), y: fold > 0 ? t : -t };
  const right = turn({ x: -left.x, y: left.y }, -fold);
  return Math.hypot(left.x - right.x, left.y - right.y);
}

describe('a fold of 100 degrees in foam of 6 mm', () => {
  const offers = steepOffers(rad(50), rad(45), 6);

  it('is two folds of 50 with a strip of 11.596 mm on the face and 6 on the back, its edges at 25 degrees', () => {
    // 6 + 2 * 6 * tan 25 = 6 + 12 * 0.466308 = 11.595692
    expect(offers.split.seams).toBe(2);
    expect(deg(offers.split.bevel)).toBeCloseTo(25, 9);
    expect(offers.split.faceMm).toBeCloseTo(11.595692, 6);
    expect(offers.split.backMm).toBe(6);
  });

  it('is open by 1.479 mm at the face when both edges are cut at 45', () => {
    // Each cut is 6 / cos 45 = 8.485281 long; they stand 100 - 90 = 10 degrees apart: 2 * 8.485281 * sin 5 = 16.970563 * 0.0871557
    expect(offers.fill.gapMm).toBeCloseTo(1.479082, 5);
    expect(offers.fill.openOn).toBe('face');
    expect(offers.trimMm).toBeCloseTo(13.479082, 5);
  });

  it('is open at the back, with a strip wider on the back, when it is concave', () => {
    const concave = steepOffers(rad(-50), rad(45), 6);
    expect(deg(concave.split.bevel)).toBeCloseTo(-25, 9);
    expect([concave.split.faceMm, concave.fill.openOn]).toEqual([6, 'back']);
    expect(concave.split.backMm).toBeCloseTo(11.595692, 6);
    expect(concave.fill.gapMm).toBeCloseTo(1.479082, 5);
  });

  it('is told with its finding', () => {
    const { findings } = foamOf(partedAlong(hingeMesh(rad(100)), [[0, 1]], { thicknessMm: 6 }));
    expect(findings.find(({ code }) => code === 'foam/bevel-steep')?.text).toBe(
      'Seam A is so sharp that its edges lean 50° from square, and a blade or saw table leans at most 45°: ' +
        'spread the fold over two seams with a strip between them 11.6 mm wide on the face and 6 mm on the back, which leaves bevels of 25°; ' +
        'or cut both edges at 45°, glue them where they touch and fill the gap, 1.5 mm wide at the face; ' +
        'or cover that gap with a thin trim strip 13.5 mm wide.',
    );
  });
});

describe('folds beyond the blade', () => {
  it('leave the gap that two panels leave when they are put together', async () => {
    await forAll(
      (rand) => ({ limit: rad(20 + 30 * rand()), over: rand(), t: 2 + 13 * rand(), sign: rand() < 0.5 ? -1 : 1 }),
      ({ limit, over, t, sign }) => {
        const bevel = sign * (limit + (rad(89) - limit) * over + 1e-6);
        const { fill } = steepOffers(bevel, limit, t);
        expect(fill.gapMm).toBeCloseTo(mouthOf(2 * bevel, limit, t), 9);
      },
    );
  });

  it('are spread until every edge is within the blade, and the strips fit the seams', async () => {
    await forAll(
      (rand) => ({ limit: rad(15 + 30 * rand()), over: rand(), t: 2 + 13 * rand() }),
      ({ limit, over, t }) => {
        const bevel = limit + (rad(89.9) - limit) * over + 1e-6;
        const { split } = steepOffers(bevel, limit, t);
        expect(split.bevel).toBeLessThanOrEqual(limit + 1e-12);
        expect(2 * split.seams * split.bevel).toBeCloseTo(2 * bevel, 9);
        expect((split.faceMm - split.backMm) / 2).toBeCloseTo(t * Math.tan(split.bevel), 9);
      },
    );
  });

  it('are no matter of a bevel within the limit', () => {
    expect(() => steepOffers(rad(45), rad(45), 6)).toThrow(RangeError);
  });
});
