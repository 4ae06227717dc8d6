import { describe, expect, it } from 'vitest';
import { ringArea } from '../../../src/geom/ring.ts';
import { simplifiedOutward } from '../../../src/steps/nest/outward.ts';
import { laidOutFaults } from '../../bench/laid-out-check.ts';

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
