import { describe, expect, it } from 'vitest';
import { clayLayers, wetVolume } from '../../../src/model/clay.ts';
import { filletAlong, filletDepthMm, filletSectionMm2, liftedVolumeMm3 } from '../../../src/steps/shop/clay-volumes.ts';

describe('clay along a seam', () => {
  it('fills a right angle by what a quarter circle leaves of its square', () => {
    // 10 mm: 100 - 25 π = 21.460 mm²; from the corner to the arc √2 r - r.
    expect(filletSectionMm2(Math.PI / 2, 10)).toBeCloseTo(100 - 25 * Math.PI, 10);
    expect(filletDepthMm(Math.PI / 2, 10)).toBeCloseTo(10 * (Math.SQRT2 - 1), 12);
  });

  it('is the area between two faces and an arc, counted point by point', () => {
    for (const fold of [0.3, 1, 2, 2.6]) {
      const half = (Math.PI - fold) / 2;
      const reach = 7 / Math.tan(half);
      // The arc's middle stands 7 mm over both faces, on the line half-way between them, which runs along x.
      const middle = 7 / Math.sin(half);
      const strips = 4000;
      let area = 0;
      for (let i = 0; i < strips; i += 1) {
        const x = ((i + 0.5) / strips) * reach * Math.cos(half);
        const wedge = x * Math.tan(half);
        const arc = 7 ** 2 - (x - middle) ** 2;
        area += ((2 * (wedge - (arc > 0 && x < middle ? Math.sqrt(arc) : 0))) / strips) * reach * Math.cos(half);
      }
      expect(filletSectionMm2(fold, 7)).toBeCloseTo(area, 2);
    }
  });

  it('lies only where the seam is hollow and no slit', () => {
    const right = -Math.PI / 2;
    const made = filletAlong([right, 0.4, right, -0.01, -3.1], [30, 50, 20, 40, 5], 6);
    expect(made.lengthMm).toBe(50);
    expect(made.volumeMm3).toBeCloseTo(50 * 36 * (1 - Math.PI / 4), 9);
    expect(made.deepestMm).toBeCloseTo(6 * (Math.SQRT2 - 1), 12);
    expect(filletAlong([0.5], [100], 6).volumeMm3).toBe(0);
  });
});

describe('clay over an area', () => {
  /** A cap of a sphere as bands of triangles, from the pole to an angle. */
  function cap(radius: number, angle: number, bands: number, sectors: number) {
    const at = (i: number, j: number): number[] => {
      const [polar, turn] = [(angle * i) / bands, (2 * Math.PI * j) / sectors];
      return [Math.sin(polar) * Math.cos(turn), Math.sin(polar) * Math.sin(turn), Math.cos(polar)];
    };
    const ways: number[] = [];
    for (let i = 0; i < bands; i += 1) {
      for (let j = 0; j < sectors; j += 1) {
        if (i > 0) ways.push(...at(i, j), ...at(i + 1, j), ...at(i, j + 1));
        ways.push(...at(i + 1, j), ...at(i + 1, j + 1), ...at(i, j + 1));
      }
    }
    return { moves: Float64Array.from(ways), corners: Float64Array.from(ways, (x) => radius * x) };
  }

  it('is that between two caps of one middle', () => {
    const [radius, angle, height] = [40, 0.9, 9];
    const { corners, moves } = cap(radius, angle, 60, 240);
    const between = ((2 * Math.PI) / 3) * (1 - Math.cos(angle)) * ((radius + height) ** 3 - radius ** 3);
    const made = liftedVolumeMm3(corners, moves, height);
    expect(Math.abs(made / between - 1)).toBeLessThan(3e-4);
    // And by the face's area: A h (1 + h/R + h²/3R²).
    const area = liftedVolumeMm3(corners, new Float64Array(corners.length), 1);
    expect(made / (area * height * (1 + height / radius + height ** 2 / (3 * radius ** 2)))).toBeCloseTo(1, 12);
  });

  it('takes whole layers, and more of it wet than dry', () => {
    expect([0, 3, 6, 6.01, 12].map((mm) => clayLayers(mm, 6))).toEqual([0, 1, 1, 2, 2]);
    // 3 × 0.1 is a little over 0.3 as it is counted.
    expect(clayLayers(3 * 0.1, 0.1)).toBe(3);
    expect(wetVolume(100, 2)).toBeCloseTo(100 / 0.98 ** 3, 12);
  });
});
