import { describe, expect, it } from 'vitest';
import { chainGap, chainLength, chainSweep } from '../../../src/geom/outline.ts';
import { isSimpleArea } from '../../../src/geom/ring-simple.ts';
import { chainRing } from '../../../src/geom/outline.ts';
import type { StrapWish } from '../../../src/model/trim.ts';
import { makeStrap } from '../../../src/steps/trim/strap.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';

const WISH: StrapWish = {
  girthMm: 300,
  widthMm: 30,
  thicknessMm: 4,
  overlapMm: 90,
  holes: { count: 5, spacingMm: 20, diameterMm: 5 },
  tip: { kind: 'pointed', lengthMm: 20 },
  buckle: { barMm: 4, tabMm: 40, slotWidthMm: 5 },
  keeperWidthMm: 12,
  isReinforced: true,
};

describe('straps', () => {
  it('has the length and area of its parts, worked out by hand', () => {
    const { pieces } = expectOk(makeStrap(WISH, 0.5));
    const [strap, keeper, second] = pieces;
    // Tab 40, fold pi (2 + 2), from its middle 300 to the middle hole, 90 on, then a point of 20.
    const straight = 40 + 2 * Math.PI + 300 + 90;
    expect(strap.outline[0].lengthMm).toBeCloseTo(straight, 9);
    const slotLong = 4 * Math.PI + 4;
    const slot = (slotLong - 5) * 5 + Math.PI * 2.5 ** 2;
    expect(strap.areaMm2).toBeCloseTo(straight * 30 + (20 * 30) / 2 - 5 * Math.PI * 2.5 ** 2 - slot, 6);
    expect(keeper.areaMm2).toBeCloseTo((2 * (30 + 8) + 2 * Math.PI * 2) * 12, 9);
    expect(second.key).toBe('reinforcement');
    expect(strap.holes.slice(0, 5).map(([one]) => one.segments[0].kind)).toEqual(Array(5).fill('arc'));
  });

  it('keeps round tips as arcs, and every ring is closed, simple and wound right', () => {
    for (const tip of [{ kind: 'rounded' } as const, WISH.tip]) {
      for (const piece of expectOk(makeStrap({ ...WISH, tip }, 0.4)).pieces) {
        const rings = [piece.outline, ...piece.holes].map((ring) => ring.flatMap(({ segments }) => segments));
        for (const ring of rings) expect(chainGap(ring)).toBeLessThan(1e-9);
        expect(rings.reduce((sum, ring) => sum + chainSweep(ring), 0)).toBeCloseTo(piece.areaMm2, 9);
        expect(isSimpleArea(rings.map((ring) => chainRing(ring)))).toBe(true);
      }
    }
    const [{ outline }] = expectOk(makeStrap({ ...WISH, tip: { kind: 'rounded' } }, 0.5)).pieces;
    expect(chainLength(outline[1].segments)).toBeCloseTo(Math.PI * 15, 9);
  });

  it('says what is impossible', () => {
    expectProblem(makeStrap({ ...WISH, girthMm: Number.NaN }, 0.5), 'trim/strap');
    expectProblem(makeStrap({ ...WISH, holes: { ...WISH.holes, diameterMm: 20 } }, 0.5), 'trim/strap-holes');
    expectProblem(makeStrap({ ...WISH, overlapMm: 20 }, 0.5), 'trim/strap-overlap');
    expectProblem(makeStrap({ ...WISH, girthMm: 60 }, 0.5), 'trim/strap-short');
    expectProblem(makeStrap({ ...WISH, buckle: { ...WISH.buckle, slotWidthMm: 40 } }, 0.5), 'trim/strap-slot');
  });
});
