import { describe, expect, it } from 'vitest';
import { throughHomography } from '../../../src/geom/homography.ts';
import type { Vec2 } from '../../../src/geom/vec.ts';
import type { KnownPlace } from '../../../src/model/picture-trace.ts';
import { rectanglePlaces, straightPhoto } from '../../../src/steps/artwork/photo-straight.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { sheetCamera } from '../../support/sheet-camera.ts';

const [WIDTH, HEIGHT] = [800, 600];
const camera = sheetCamera({ widthPx: WIDTH, heightPx: HEIGHT, focalPx: 900 });
const corners = (
  [
    [0, 200],
    [300, 200],
    [300, 0],
    [0, 0],
  ] as const
).map(([x, y]) => camera({ x, y }));
const four = corners as unknown as [Vec2, Vec2, Vec2, Vec2];
const fault = (places: readonly KnownPlace[]): string => {
  const made = straightPhoto(places, WIDTH, HEIGHT);
  return made.ok ? 'made' : made.problem.code;
};

describe('a photograph of a rectangle', () => {
  it('is set straight everywhere, and its camera is found', () => {
    const { mmFromPx, report } = expectOk(straightPhoto(rectanglePlaces(four, 300, 200), WIDTH, HEIGHT));
    for (const mm of [
      { x: 150, y: 100 },
      { x: 20, y: 180 },
      { x: 290, y: 3 },
    ]) {
      const found = throughHomography(mmFromPx, camera(mm));
      expect(Math.hypot(found.x - mm.x, found.y - mm.y)).toBeLessThan(1e-8);
    }
    expect(report.isExact).toBe(true);
    expect(report.rmsMm).toBeLessThan(1e-9);
    expect(report.camera?.focalPx).toBeCloseTo(900, 6);
    expect(report.camera?.impliedAspect).toBeCloseTo(1.5, 9);
    expect(report.camera?.aspectDeviation).toBeLessThan(0.03);
  });

  it('shows a wrong size by the shape that a camera would have seen', () => {
    const { camera: check } = expectOk(straightPhoto(rectanglePlaces(four, 250, 200), WIDTH, HEIGHT)).report;
    expect(check?.givenAspect).toBeCloseTo(1.25, 12);
    expect(check?.impliedAspect).toBeCloseTo(1.5, 9);
  });

  it('tells the shape without perspective too', () => {
    const flat = [
      { x: 100, y: 100 },
      { x: 400, y: 100 },
      { x: 400, y: 300 },
      { x: 100, y: 300 },
    ] as const;
    const { camera: check } = expectOk(straightPhoto(rectanglePlaces([...flat], 300, 210), WIDTH, HEIGHT)).report;
    expect(check?.impliedAspect).toBeCloseTo(1.5, 9);
    expect(check?.focalPx).toBeNull();
  });

  it('shows what more places leave over', () => {
    const places = Array.from({ length: 6 }, (_, i) => ({ x: 150 * (i % 3), y: 200 * Math.floor(i / 3) })).map(
      (mm, i) => {
        const px = camera(mm);
        return { mm, px: i === 4 ? { x: px.x + 3, y: px.y } : px };
      },
    );
    const { report } = expectOk(straightPhoto(places, WIDTH, HEIGHT));
    expect(report.isExact).toBe(false);
    const residuals = report.places.map(({ residualPx }) => residualPx);
    expect(Math.max(...residuals)).toBe(residuals[4]);
    expect(residuals[4]).toBeGreaterThan(0.5);
    expect(report.rmsMm).toBeGreaterThan(0.1);
    expect(report.rmsMm).toBeCloseTo(
      Math.sqrt(report.places.reduce((sum, { residualMm }) => sum + residualMm ** 2, 0) / 6),
      12,
    );
  });

  it('refuses what does not settle it', () => {
    const [a, b, c, d] = four;
    expect(fault(rectanglePlaces(four, 300, 200).slice(1))).toBe('artwork/photo-few');
    expect(fault(rectanglePlaces([a, c, b, d], 300, 200))).toBe('artwork/photo-crossing');
    expect(fault(rectanglePlaces([b, a, d, c], 300, 200))).toBe('artwork/photo-mirrored');
    expect(fault(rectanglePlaces([a, b, { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, d], 300, 200))).toBe(
      'artwork/photo-line',
    );
    expect(fault(rectanglePlaces([a, a, c, d], 300, 200))).toBe('artwork/photo-line');
    expect(fault(rectanglePlaces([a, b, c, { x: 900, y: 10 }], 300, 200))).toBe('artwork/photo-outside');
  });
});
