import { describe, expect, it } from 'vitest';
import { textWidthMm } from '../../src/geom/text-width.ts';
import { placeOfWords } from '../../src/geom/words-place.ts';

describe('placeOfWords', () => {
  const words = { text: 'Page', at: { x: 30, y: 70 }, angleRad: 0, heightMm: 10, align: 'left' } as const;
  const half = textWidthMm('Page', 10) / 2;

  it('reaches from the tail of a p to the accent of an É', () => {
    // 3.3 under the baseline and 11 over it.
    const box = placeOfWords(words);
    expect(box).toEqual({
      x: 30 + half,
      y: expect.closeTo(70 + 3.85, 12) as number,
      halfWidth: half,
      halfHeight: expect.closeTo(7.15, 12) as number,
      angleRad: 0,
    });
  });

  it('begins, stands midway or ends where the words are set', () => {
    expect(placeOfWords({ ...words, align: 'centre' }).x).toBe(30);
    expect(placeOfWords({ ...words, align: 'right' }).x).toBe(30 - half);
  });

  it('turns with them and grows with bold ones', () => {
    const up = placeOfWords({ ...words, angleRad: Math.PI / 2, wide: 1.5 });
    expect([up.x, up.y]).toEqual([expect.closeTo(30 - 3.85, 12), expect.closeTo(70 + 1.5 * half, 12)]);
    expect([up.halfWidth, up.angleRad]).toEqual([expect.closeTo(1.5 * half, 12), Math.PI / 2]);
    const aslant = placeOfWords({ ...words, angleRad: Math.PI / 6, align: 'right' });
    const [c, s] = [Math.sqrt(3) / 2, 0.5];
    expect(aslant.x).toBeCloseTo(30 - c * half - s * 3.85, 12);
    expect(aslant.y).toBeCloseTo(70 - s * half + c * 3.85, 12);
  });
});
