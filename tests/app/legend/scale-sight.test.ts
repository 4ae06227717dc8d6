import { describe, expect, it } from 'vitest';
import { STRETCH_STOPS, stretchColour } from '../../../src/viewport/stretch-colours.ts';
import { differenceOf, lightnessOf, type Blindness } from '../../support/colour-sight.ts';

const at = (share: number) => stretchColour(share, 1);
const BLIND: readonly Blindness[] = ['protanopia', 'deuteranopia', 'tritanopia'];

describe('the scale of every legend', () => {
  it('measures differences as published: red and green of sRGB, and how little of it deuteranopes see', () => {
    // CIE L*a*b* of sRGB red is 53.24, 80.09, 67.20 and of green 87.73, -86.18, 83.18 (Lindbloom, D65).
    expect(lightnessOf([1, 0, 0])).toBeCloseTo(53.24, 1);
    expect(differenceOf([1, 0, 0], [0, 1, 0])).toBeCloseTo(170.6, 0);
  });

  it('grows darker all the way from the middle to each end, by what is seen in a grey print', () => {
    for (const sign of [-1, 1]) {
      const greys = Array.from({ length: 21 }, (_, i) => lightnessOf(at((sign * i) / 20)));
      for (let i = 1; i < greys.length; i += 1) expect(greys[i - 1] - greys[i]).toBeGreaterThan(1);
    }
  });

  it('tells both sides apart from a fifth of the limit on, whatever eyes look', () => {
    for (const share of [0.2, 0.4, 0.6, 0.8, 1]) {
      expect(differenceOf(at(-share), at(share))).toBeGreaterThan(30);
      for (const blindness of BLIND) expect(differenceOf(at(-share), at(share), blindness)).toBeGreaterThan(17);
    }
  });

  it('tells each of its eleven colours from the next, whatever eyes look', () => {
    for (let i = 1; i < STRETCH_STOPS.length; i += 1) {
      const [one, next] = [at(STRETCH_STOPS[i - 1].at), at(STRETCH_STOPS[i].at)];
      for (const blindness of [undefined, ...BLIND]) expect(differenceOf(one, next, blindness)).toBeGreaterThan(10);
    }
  });
});
