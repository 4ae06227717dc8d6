import { describe, expect, it } from 'vitest';
import { ringArea } from '../../../src/geom/ring.ts';
import { nestOnSheets, type NestPiece } from '../../../src/steps/nest/nest-on-sheets.ts';
import { simplifiedOutward } from '../../../src/steps/nest/outward.ts';
import { turnOf, turnRing } from '../../../src/steps/nest/shape.ts';
import { laidOutFaults } from '../../bench/laid-out-check.ts';

const QUARTERS = [0, 1, 2, 3].map((k) => ({ turnRad: (k * Math.PI) / 2, isFlipped: false }));
const SHEET = { lengthMm: 900, breadthMm: 600, borderMm: 10, gapMm: 5 };
const box = (w: number, h: number, quantity = 1): NestPiece => ({
  outline: Float64Array.of(0, 0, w, 0, w, h, 0, h),
  quantity,
  stances: QUARTERS,
});

describe('pieces on sheets', () => {
  it('keep their gap and border, on as few sheets as they need, and the same every time', () => {
    const pieces = [box(400, 280, 5), box(100, 60, 3)];
    const made = nestOnSheets(pieces, SHEET, 300, 1);
    expect(made.sheets).toBe(2);
    expect(nestOnSheets(pieces, SHEET, 300, 1)).toEqual(made);
    const boxes = made.places.map(({ piece, stance, sheet, x, y }) => {
      const ring = turnRing(pieces[piece].outline, turnOf(stance));
      const [xs, ys] = [0, 1].map((k) => [...ring].filter((_, i) => i % 2 === k));
      return {
        sheet,
        x0: Math.min(...xs) + x,
        x1: Math.max(...xs) + x,
        y0: Math.min(...ys) + y,
        y1: Math.max(...ys) + y,
      };
    });
    expect(boxes).toHaveLength(8);
    for (const [i, a] of boxes.entries()) {
      expect(Math.min(a.x0, a.y0, 900 - a.x1, 600 - a.y1)).toBeGreaterThanOrEqual(10 - 1e-3);
      for (const b of boxes.slice(i + 1)) {
        const apart = Math.max(a.x0 - b.x1, b.x0 - a.x1, a.y0 - b.y1, b.y0 - a.y1);
        if (a.sheet === b.sheet) expect(apart).toBeGreaterThanOrEqual(5 - 1e-3);
      }
    }
  });

  it('names what fits no sheet, and lays the rest', () => {
    const made = nestOnSheets([box(881, 10), box(100, 100), box(880, 570)], SHEET, 0, 1);
    expect(made.tooLarge).toEqual([0]);
    expect(made.places.map(({ piece }) => piece).sort()).toEqual([1, 2]);
  });
});

describe('a simplified outline', () => {
  it('has few corners, covers the true one grown, and nothing far from it', () => {
    const round = Float64Array.from({ length: 1000 }, (_, k) => {
      const angle = (2 * Math.PI * (k >> 1)) / 500;
      return 100 * (k % 2 === 0 ? Math.cos(angle) : Math.sin(angle));
    });
    const simple = simplifiedOutward(round, 3, 0.25);
    expect(simple.length / 2).toBeLessThan(80);
    for (let i = 0; i < simple.length; i += 2) {
      const j = (i + 2) % simple.length;
      const [ax, ay, bx, by] = [simple[i], simple[i + 1], simple[j], simple[j + 1]];
      expect(Math.abs(ax * by - ay * bx) / Math.hypot(bx - ax, by - ay)).toBeGreaterThan(103 - 0.01);
      expect(Math.hypot(ax, ay)).toBeLessThan(103.5 + 0.01);
    }
    expect(ringArea(simple)).toBeGreaterThan(0);
  });
});

describe('the check of a strip from outside', () => {
  const task = {
    strip_height: 10,
    items: [
      {
        id: 0,
        demand: 2,
        allowed_orientations: [0],
        shape: {
          data: [
            [0, 0],
            [4, 0],
            [4, 4],
            [0, 4],
          ],
        },
      },
    ],
  } as const;
  const laid = (x: number, y: number, turnDeg = 0) => ({
    length: 8,
    places: [
      { item: 0, copy: 0, turnDeg: 0, x: 0, y: 0 },
      { item: 0, copy: 1, turnDeg, x, y },
    ],
  });

  it('lets pieces touch, and finds what overlaps, sticks out, is turned or has another density', () => {
    expect(laidOutFaults(task, laid(4, 0), 40)).toEqual([]);
    expect(laidOutFaults(task, laid(0, 4), 40)).toEqual([]);
    expect(laidOutFaults(task, laid(3.999, 3.999), 40)).toEqual(['pieces 0 and 1 overlap']);
    expect(laidOutFaults(task, laid(0, 6.001), 40)).toEqual(['piece 1 is outside the strip']);
    expect(laidOutFaults(task, laid(8, 4, 90), 40)).toEqual(['item 0 is turned by 90']);
    expect(laidOutFaults(task, laid(4, 0), 41)).toEqual(['the density is 40.000 %']);
  });
});
