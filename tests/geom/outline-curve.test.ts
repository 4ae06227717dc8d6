import { describe, expect, it } from 'vitest';
import { curve, curveSums } from '../../src/geom/outline-curve.ts';
import { CURVE_DEVIATION_MM } from '../../src/geom/outline.ts';
import type { Vec2 } from '../../src/geom/vec.ts';

const parabola = (t: number): Vec2 => ({ x: t, y: t * t });
const circle = (t: number): Vec2 => ({ x: 40 + 10 * Math.cos(t), y: 30 + 10 * Math.sin(t) });

describe('curve', () => {
  it('is as long as the curve itself and not as its chords', () => {
    // From 0 to 1: (2 sqrt 5 + asinh 2) / 4; the ray sweeps the integral of t² / 2.
    const { lengthMm, sweptMm2 } = curve(parabola, 0, 1);
    expect(lengthMm).toBeCloseTo((2 * Math.sqrt(5) + Math.asinh(2)) / 4, 11);
    expect(sweptMm2).toBeCloseTo(1 / 6, 12);
    const back = curve(parabola, 1, 0);
    expect([back.lengthMm, back.sweptMm2]).toEqual([expect.closeTo(lengthMm, 11), expect.closeTo(-1 / 6, 12)]);
  });

  it('sweeps a circle that does not stand at the origin', () => {
    const whole = curve(circle, 0, 2 * Math.PI);
    expect(whole.lengthMm).toBeCloseTo(20 * Math.PI, 9);
    expect(whole.sweptMm2).toBeCloseTo(100 * Math.PI, 9);
  });

  it('has points on the curve, its ends among them, as near as promised and not much nearer', () => {
    const whole = curve(circle, 0, 2 * Math.PI);
    expect(whole.kind).toBe('curve');
    expect(whole.deviationMm).toBe(CURVE_DEVIATION_MM);
    expect(whole.from).toEqual(circle(0));
    expect(whole.to).toEqual(circle(2 * Math.PI));
    expect(whole.points[0]).toBe(whole.from);
    expect(whole.points.at(-1)).toBe(whole.to);
    for (const { x, y } of whole.points) expect(Math.hypot(x - 40, y - 30)).toBeCloseTo(10, 12);
    // 10 (1 - cos(pi / n)) is 0.012 with 64 chords and 0.003 with 128.
    expect(whole.points).toHaveLength(129);
    const rise = Math.max(
      ...whole.points
        .slice(1)
        .map(({ x, y }, i) => 10 - Math.hypot((x + whole.points[i].x) / 2 - 40, (y + whole.points[i].y) / 2 - 30)),
    );
    expect(rise).toBeLessThanOrEqual(CURVE_DEVIATION_MM);
  });

  it('takes few points where it is straight and many where it turns', () => {
    expect(curve((t) => ({ x: 3 * t, y: 4 * t }), 0, 100).points).toHaveLength(17);
    expect(curve((t) => ({ x: 3 * t, y: 4 * t }), 0, 100).lengthMm).toBeCloseTo(500, 9);
    expect(curve(parabola, -20, 20).points.length).toBeGreaterThan(33);
    expect(curve(() => ({ x: 1, y: 2 }), 0, 1).lengthMm).toBe(0);
  });

  it('sees a wave that comes back to the chord', () => {
    // Its middle lies on the chord of each first stretch, its quarters do not.
    const wave = curve((t) => ({ x: t, y: Math.sin(2 * Math.PI * t) }), 0, 16);
    expect(Math.max(...wave.points.map(({ y }) => y))).toBeGreaterThan(0.99);
  });

  it('has a point at each corner', () => {
    const tent = (t: number): Vec2 => ({ x: t, y: t < 1 ? 7 * t : 7 * (2 - t) });
    const { points, lengthMm, sweptMm2 } = curve(tent, 0, 2, [1]);
    expect(points).toHaveLength(33);
    expect(points[16]).toEqual({ x: 1, y: 7 });
    expect(lengthMm).toBeCloseTo(2 * Math.sqrt(50), 10);
    expect(sweptMm2).toBeCloseTo(-7, 10);
  });

  it('parts a jump no finer than it can be told from a line', () => {
    // The stretch of 1 / 16 that holds it is halved three times: 1 / 128 is under the deviation.
    expect(curve((t) => ({ x: t, y: t < 0.3 ? 0 : 50 }), 0, 1).points).toHaveLength(20);
  });
});

describe('curveSums', () => {
  it('agrees with closed forms to many digits', () => {
    // A logarithmic spiral e^(t/2): length sqrt(5) (e - 1), swept area (e² - 1) / 2 over 0 to 2.
    const spiral = (t: number): Vec2 => ({ x: Math.exp(t / 2) * Math.cos(t), y: Math.exp(t / 2) * Math.sin(t) });
    const { length, swept } = curveSums(spiral, 0, 2);
    expect(length).toBeCloseTo(Math.sqrt(5) * (Math.E - 1), 10);
    expect(swept).toBeCloseTo((Math.E ** 2 - 1) / 2, 10);
  });

  it('asks no more often than it needs', () => {
    let asked = 0;
    curveSums((t) => ((asked += 1), { x: t, y: 0 }), 0, 1);
    expect(asked).toBe(17 + 33 + 65 + 129);
  });
});
