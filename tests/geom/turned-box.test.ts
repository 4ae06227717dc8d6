import { describe, expect, it } from 'vitest';
import { SegmentGrid } from '../../src/geom/segment-grid.ts';
import {
  cornersOf,
  doTurnedBoxesMeet,
  doesSegmentMeetBox,
  uprightBox,
  type TurnedBox,
} from '../../src/geom/turned-box.ts';

const box = (x: number, y: number, halfWidth: number, halfHeight: number, angleRad = 0): TurnedBox => ({
  x,
  y,
  halfWidth,
  halfHeight,
  angleRad,
});

describe('turned boxes', () => {
  it('know their corners and the upright box round them', () => {
    const turned = box(10, 0, 4, 3, Math.PI / 2);
    expect(cornersOf(turned)[0].x).toBeCloseTo(13, 12);
    expect(cornersOf(turned)[0].y).toBeCloseTo(-4, 12);
    expect(uprightBox(turned).maxX).toBeCloseTo(13, 12);
    expect(uprightBox(turned).maxY).toBeCloseTo(4, 12);
  });

  it('meet by a corner, not by a border, not past a corner that only the upright boxes share', () => {
    expect(doTurnedBoxesMeet(box(0, 0, 2, 2), box(3, 3, 2, 2))).toBe(true);
    expect(doTurnedBoxesMeet(box(0, 0, 2, 2), box(4, 0, 2, 2))).toBe(false);
    expect(doTurnedBoxesMeet(box(0, 0, 2, 2), box(3.5, 3.5, 2, 2, Math.PI / 4))).toBe(false);
    expect(doTurnedBoxesMeet(box(0, 0, 5, 1, 0.3), box(0, 0, 0.1, 0.1))).toBe(true);
  });

  it('are met by segments through them, into them and inside them only', () => {
    const slanted = box(0, 0, 5, 1, Math.PI / 4);
    expect(doesSegmentMeetBox(-5, 5, 5, -5, slanted)).toBe(true);
    expect(doesSegmentMeetBox(0, 0, 0.1, 0, slanted)).toBe(true);
    expect(doesSegmentMeetBox(0, 0, 100, 0, slanted)).toBe(true);
    expect(doesSegmentMeetBox(-5, -2, 2, 5, slanted)).toBe(false);
    expect(doesSegmentMeetBox(2, 0, 2, -9, box(0, 0, 1, 1))).toBe(false);
  });
});

describe('SegmentGrid', () => {
  it('offers what lies in a box and not what is far', () => {
    const grid = new SegmentGrid(5);
    grid.addLine([0, 0, 100, 0, 100, 100], false);
    const near = (x: number, y: number): number[] => {
      const found: number[] = [];
      grid.some({ minX: x - 1, minY: y - 1, maxX: x + 1, maxY: y + 1 }, (ax, ay) => {
        found.push(ax, ay);
        return false;
      });
      return found;
    };
    expect(near(50, 0).slice(0, 2)).toEqual([0, 0]);
    expect(near(100, 50).slice(0, 2)).toEqual([100, 0]);
    expect(near(50, 50)).toEqual([]);
    grid.addLine([0, 0, 10, 0, 10, 10], true);
    let count = 0;
    grid.forEach(() => (count += 1));
    expect(count).toBe(5);
  });
});
