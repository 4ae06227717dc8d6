import { describe, expect, it } from 'vitest';
import { chordAt, lengthOf, pointAlong, readableAngle, walkedLine } from '../../../src/steps/foam/edge-places.ts';
import { drawingsApart, type DrawnLine } from '../../../src/steps/foam/line-distance.ts';

/** 5 mm up to the right, 12 mm to the right, then straight down 8 mm. */
const LINE = walkedLine(Float64Array.of(0, 0, 3, 4, 15, 4, 15, -4));

describe('a line that is walked along', () => {
  it('knows its length up to each point', () => {
    expect([...LINE.stations]).toEqual([0, 5, 17, 25]);
    expect(lengthOf(LINE)).toBe(25);
  });

  it.each([
    [-3, 0, 0],
    [0, 0, 0],
    [2.5, 1.5, 2],
    [5, 3, 4],
    [8, 6, 4],
    [17, 15, 4],
    [19, 15, 2],
    [25, 15, -4],
    [40, 15, -4],
  ])('is after %d mm at %d, %d', (s, x, y) => {
    const point = pointAlong(LINE, s);
    expect(point.x).toBeCloseTo(x, 12);
    expect(point.y).toBeCloseTo(y, 12);
  });

  it('is seen as a chord from half its width before a place to half after, its right on the right', () => {
    // From 1.8, 2.4 to 5, 4.
    const chord = chordAt(LINE, 5, 4);
    expect(chord?.middle).toEqual({ x: 3, y: 4 });
    const [dx, dy] = [5 - 1.8, 4 - 2.4];
    const length = Math.hypot(dx, dy);
    expect(chord?.along.x).toBeCloseTo(dx / length, 12);
    expect(chord?.along.y).toBeCloseTo(dy / length, 12);
    expect(chord?.right.x).toBeCloseTo(dy / length, 12);
    expect(chord?.right.y).toBeCloseTo(-dx / length, 12);
  });

  it('has no chord where it has no length', () => {
    expect(chordAt(walkedLine(Float64Array.of(2, 3, 2, 3)), 0, 4)).toBeNull();
  });
});

describe('words along a direction', () => {
  const angleOf = (deg: number): number => {
    const rad = (deg * Math.PI) / 180;
    return (readableAngle({ x: Math.cos(rad), y: Math.sin(rad) }) * 180) / Math.PI;
  };

  it.each([
    [0, 0],
    [30, 30],
    [89, 89],
    [90, 90],
    [91, -89],
    [180, 0],
    [225, 45],
    [270, 90],
    [271, -89],
    [330, -30],
  ])('of %d degrees are turned to %d: they read from below or from the right', (deg, read) => {
    expect(angleOf(deg)).toBeCloseTo(read, 9);
  });

  it('that are upright but for a hair still read from the right', () => {
    expect(angleOf(90 + 1e-5)).toBeCloseTo(90, 3);
    expect(angleOf(-90 + 1e-5)).toBeCloseTo(90, 3);
  });
});

describe('how far two drawings are apart', () => {
  const line = (closed: boolean, ...xy: readonly number[]): DrawnLine => ({ points: Float64Array.from(xy), closed });

  it('is the farthest that a corner or a middle of either lies off the other', () => {
    const level = line(false, 0, 0, 100, 0);
    expect(drawingsApart([level], [level])).toBe(0);
    expect(drawingsApart([level], [line(false, 0, 3, 100, 7)])).toBeCloseTo(7, 9);
    // A bump in one of them alone, told whichever comes first.
    const bump = line(false, 0, 0, 40, 0, 45, 9, 50, 0, 100, 0);
    expect(drawingsApart([level], [bump])).toBeCloseTo(9, 9);
    expect(drawingsApart([bump], [level])).toBeCloseTo(9, 9);
    // Corners lie on the other's corners here; only the middle tells.
    const bow = line(false, 0, 0, 50, 30, 100, 0);
    expect(drawingsApart([level], [bow])).toBeCloseTo(30, 9);
  });

  it('counts the side that closes a ring', () => {
    const [x0, y0, x1, y1] = [0, 0, 60, 0];
    const open = line(false, x0, y0, x1, y1, 60, 80);
    const closed = line(true, x0, y0, x1, y1, 60, 80);
    // The middle of the slanting side, 30, 40, is 30 mm from the upright one.
    expect(drawingsApart([open], [closed])).toBeCloseTo(30, 9);
    expect(drawingsApart([closed], [open])).toBeCloseTo(30, 9);
  });

  it('is without end where only one has lines, and none where neither has', () => {
    expect(drawingsApart([], [])).toBe(0);
    expect(drawingsApart([line(false, 0, 0, 1, 0)], [])).toBe(Infinity);
    expect(drawingsApart([], [line(false, 0, 0, 1, 0)])).toBe(Infinity);
  });
});
