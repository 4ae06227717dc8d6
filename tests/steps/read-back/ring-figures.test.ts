import { expect, it } from 'vitest';
import { seededRandom } from '../../../src/base/random.ts';
import { movePoints } from '../../../src/geom/turn-and-move.ts';
import { isSameRing } from '../../../src/steps/read-back/check-paper.ts';
import { ringFigures } from '../../../src/steps/read-back/ring-figures.ts';

it('has the figures of a rectangle that handbooks give', () => {
  // Polar second moment of a rectangle about its middle: b h (b² + h²) / 12 (Roark's Formulas for Stress and Strain, table A.1).
  const [b, h] = [60, 20];
  const figures = ringFigures(Float64Array.of(5, 7, 5 + b, 7, 5 + b, 7 + h, 5, 7 + h))!;
  expect(figures.areaMm2).toBeCloseTo(b * h, 9);
  expect(figures.spread).toBeCloseTo((b * b + h * h) / (12 * b * h), 12);
  expect(figures.slender).toBeCloseTo((b * b - h * h) / (12 * b * h), 12);
  expect(figures.lopsided).toBeCloseTo(0, 12);
  // What is its own mirror image is known however it is rounded.
  const rounded = ringFigures(Float64Array.of(0, 0, h + 1e-7, 0, h, b, 1e-7, b + 1e-7))!;
  expect(isSameRing(rounded, figures)).toBe(true);
});

it('knows a ring that was moved and turned, either way round, and tells it from its mirror image', () => {
  const random = seededRandom(7);
  for (let i = 0; i < 50; i += 1) {
    const count = 5 + Math.floor(20 * random());
    const ring = Float64Array.from({ length: 2 * count }, (_, k) => {
      const angle = (2 * Math.PI * (k >> 1)) / count;
      return (k % 2 === 0 ? Math.cos(angle) : Math.sin(angle)) * 80;
    }).map((mm) => mm * (0.4 + 0.6 * random()));
    const own = ringFigures(ring)!;
    const moved = movePoints(ring, { x: 900, y: -400, turnRad: 6 * random() });
    const back = moved.map((_, k) => moved[moved.length - 2 - 2 * (k >> 1) + (k & 1)]);
    expect(isSameRing(ringFigures(moved)!, own)).toBe(true);
    expect(isSameRing(ringFigures(back)!, own)).toBe(true);
    expect(isSameRing(ringFigures(ring.map((mm, k) => (k % 2 === 0 ? -mm : mm)))!, own)).toBe(false);
    expect(isSameRing(ringFigures(ring.map((mm, k) => (k === 4 ? mm + 2 : mm)))!, own)).toBe(false);
    expect(isSameRing(ringFigures(ring.map((mm) => 1.001 * mm))!, own)).toBe(false);
  }
});

it('knows a cut without width by its length alone, however it was rounded', () => {
  const slit = (offMm: number, mm = 40): Float64Array => Float64Array.of(0, 0, mm, 0.3, mm / 2, 0.15 + offMm);
  const own = ringFigures(slit(0))!;
  expect(own.isSlit).toBe(true);
  for (const offMm of [1e-5, -1e-5, 3e-4]) expect(isSameRing(ringFigures(slit(offMm))!, own)).toBe(true);
  expect(isSameRing(ringFigures(slit(0, 41))!, own)).toBe(false);
  expect(isSameRing(ringFigures(slit(2))!, own)).toBe(false);
});

it('knows a long thin piece again whose lines were rounded', () => {
  const strip = (offMm: number): Float64Array =>
    Float64Array.of(0, 0, 180, 0, 180, 0.3 + offMm, 90, 0.2, 0, 0.3 - offMm);
  expect(isSameRing(ringFigures(strip(3e-4))!, ringFigures(strip(0))!)).toBe(true);
  expect(isSameRing(ringFigures(strip(0.05))!, ringFigures(strip(0))!)).toBe(false);
});

it('has none for a line without a length', () => {
  expect(ringFigures(Float64Array.of(3, 4, 3, 4, 3, 4))).toBeNull();
});
