import { describe, expect, it } from 'vitest';
import { boxOfPoints, ringArea } from '../../../src/geom/ring.ts';
import type { Drawing, Stroke } from '../../../src/model/template.ts';
import { drawnOutline, drawnOutlines } from '../../../src/steps/tile/drawn-outline.ts';
import { handMadeWords, straight } from '../../support/hand-made-templates.ts';

const closed = (...xy: readonly number[]): Stroke => ({ role: 'cut', points: Float64Array.from(xy), closed: true });
const drawingOf = (...strokes: readonly Stroke[]): Drawing => ({ strokes, words: [] });

/** A plate of 100 × 60 mm, and a second one of 20 × 20 mm 50 mm to its right. */
const PLATE = closed(0, 0, 100, 0, 100, 60, 0, 60);
const SMALL = closed(150, 10, 170, 10, 170, 30, 150, 30);

const areas = (drawing: Drawing): readonly number[] => drawnOutlines(drawing).map((ring) => +ringArea(ring).toFixed(3));

describe('the outlines of what is drawn', () => {
  it('are those of closed lines, the largest first, counter-clockwise whichever way they are drawn', () => {
    const clockwise = closed(150, 30, 170, 30, 170, 10, 150, 10);
    expect(areas(drawingOf(SMALL, PLATE))).toEqual([6000, 400]);
    expect(areas(drawingOf(clockwise, PLATE))).toEqual([6000, 400]);
  });

  it('have no holes: what lies inside another is taken with it', () => {
    const hole = closed(20, 20, 20, 40, 50, 40, 50, 20);
    expect(areas(drawingOf(PLATE, hole, closed(30, 30, 31, 30, 31, 31)))).toEqual([6000]);
  });

  it('take an open line as a strip 0.4 mm to all sides', () => {
    const [ring, ...others] = drawnOutlines(drawingOf(straight('leader', 10, 10, 40, 50)));
    expect(others).toEqual([]);
    // 50 mm long.
    expect(ringArea(ring)).toBeCloseTo(50.8 * 0.8, 2);
    const level = drawnOutlines(drawingOf(straight('leader', 10, 5, 30, 5)))[0];
    const { minX, minY, maxX, maxY } = boxOfPoints(level);
    [minX, minY, maxX, maxY].forEach((mm, i) => expect(mm).toBeCloseTo([9.6, 4.6, 30.4, 5.4][i], 3));
    // An angle of two straight parts is no triangle.
    const bent = drawnOutlines(drawingOf(straight('leader', 0, 0, 40, 0, 40, 40)))[0];
    expect(ringArea(bent)).toBeCloseTo(2 * 40.8 * 0.8 - 0.64, 2);
  });

  it('take words as the box round them', () => {
    const words = [handMadeWords('rim', 30, 20, { heightMm: 4 })];
    const { minY, maxY } = boxOfPoints(drawnOutlines({ strokes: [], words })[0]);
    expect(minY).toBeCloseTo(20 - 1.32, 3);
    expect(maxY).toBeCloseTo(24.4, 3);
  });

  it('bear a point and a line without length', () => {
    expect(areas(drawingOf(PLATE, straight('mark', 200, 200), straight('mark', 300, 300, 300, 300)))).toEqual([6000]);
  });
});

describe('the one outline of what is drawn', () => {
  it('joins parts to the largest by a thin bridge between their nearest corners', () => {
    const ring = drawnOutline(drawingOf(SMALL, PLATE));
    const { minX, maxX, minY, maxY } = boxOfPoints(ring);
    // Half its width it stands over the lower edge where it begins.
    [minX, minY, maxX, maxY].forEach((mm, i) =>
      expect(mm).toBeCloseTo([0, (-0.4 * (10 + 50)) / Math.hypot(50, 10), 170, 60][i], 3),
    );
    // From 100, 0 to 150, 10, 51 mm, 0.8 mm wide.
    expect(ringArea(ring)).toBeGreaterThan(6400 + 39);
    expect(ringArea(ring)).toBeLessThan(6400 + 43);
  });

  it('joins parts that touch in a corner alone', () => {
    const ring = drawnOutline(drawingOf(PLATE, closed(100, 60, 130, 60, 130, 90, 100, 90)));
    expect(ringArea(ring)).toBeGreaterThanOrEqual(6900 - 0.01);
    expect(ringArea(ring)).toBeLessThan(6900 + 60);
  });

  it('is the only one where all hangs together', () => {
    expect(ringArea(drawnOutline(drawingOf(PLATE, straight('mark', 100, 30, 110, 30))))).toBeCloseTo(
      6000 + 10.4 * 0.8,
      2,
    );
  });
});
