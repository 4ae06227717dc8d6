import { describe, expect, it } from 'vitest';
import { signedStretch, STRETCH_STOPS, stretchColour } from '../../src/viewport/stretch-colours.ts';

const bytes = (rgb: readonly number[]): number[] => rgb.map((c) => Math.round(255 * c));
/** Relative luminance of sRGB (WCAG 2.2). */
function luminance(rgb: readonly number[]): number {
  const [r, g, b] = rgb.map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

describe('the colours of stretch', () => {
  it('are the published ones at the ends, in the middle and between', () => {
    expect(bytes(stretchColour(0, 8))).toEqual([247, 247, 247]);
    expect(bytes(stretchColour(8, 8))).toEqual([127, 59, 8]);
    expect(bytes(stretchColour(-8, 8))).toEqual([45, 0, 75]);
    expect(bytes(stretchColour(3.2, 8))).toEqual([253, 184, 99]);
    expect(bytes(stretchColour(0.8, 8))).toEqual([251, 236, 215]);
  });

  it('keep the colour of the end beyond the limit', () => {
    expect(stretchColour(50, 8)).toEqual(stretchColour(8, 8));
    expect(stretchColour(-50, 8)).toEqual(stretchColour(-8, 8));
  });

  it('grow darker to both ends, so that grey print shows how much', () => {
    for (const sign of [1, -1]) {
      const greys = [0, 1, 2, 3, 4, 5].map((i) => luminance(stretchColour((sign * i) / 5, 1)));
      for (let i = 1; i < greys.length; i += 1) expect(greys[i]).toBeLessThan(greys[i - 1]);
    }
  });

  it('lie at even steps from squash to stretch', () => {
    expect(STRETCH_STOPS.map(({ at }) => Math.round(10 * at) / 10)).toEqual([
      -1, -0.8, -0.6, -0.4, -0.2, 0, 0.2, 0.4, 0.6, 0.8, 1,
    ]);
    for (const { at, rgb } of STRETCH_STOPS) expect(bytes(stretchColour(5 * at, 5))).toEqual([...rgb]);
  });

  it('refuse a scale without length', () => expect(() => stretchColour(1, 0)).toThrow(RangeError));
});

describe('the figure that is coloured', () => {
  it('is the larger of both, squash negative', () => {
    expect(signedStretch(3, 1)).toBe(3);
    expect(signedStretch(1, 3)).toBe(-3);
    expect(signedStretch(2, 2)).toBe(2);
  });
});
