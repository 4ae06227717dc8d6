import { describe, expect, it } from 'vitest';
import { distanceToSegment } from '../../src/geom/distance-to-segment.ts';
import { distanceToTriangle } from '../../src/geom/distance-to-triangle.ts';
import { isInRings } from '../../src/geom/in-rings.ts';
import { placed4, placedPoints4, turnRound4 } from '../../src/geom/matrix4.ts';
import { vec3 } from '../../src/geom/vec.ts';
import { forAll } from '../support/for-all.ts';

describe('distanceToTriangle', () => {
  // The triangle asked for is the second: 0 0, 4 0, 0 3, flat at z = 1.
  const positions = [9, 9, 9, 0, 0, 1, 4, 0, 1, 0, 3, 1];
  const far = (x: number, y: number, z: number): number =>
    distanceToTriangle(positions, Uint32Array.of(0, 0, 0, 1, 2, 3), 1, vec3(x, y, z));

  it('goes straight down inside', () => {
    expect(far(1, 1, 6)).toBeCloseTo(5, 12);
    expect(far(1, 1, -6)).toBeCloseTo(7, 12);
    expect(far(1, 1, 1)).toBeCloseTo(0, 12);
  });

  it('goes to the nearest side', () => {
    expect(far(2, -3, 5)).toBeCloseTo(5, 12);
    expect(far(-4, 2, -2)).toBeCloseTo(5, 12);
    // 5 beyond the middle of the long side, whose way off is 3, 4 over 5.
    expect(far(2 + 3, 1.5 + 4, 1)).toBeCloseTo(5, 12);
    expect(far(2 + 3, 1.5 + 4, 13)).toBeCloseTo(13, 12);
  });

  it('goes to the nearest corner', () => {
    expect(far(-3, -4, 1)).toBeCloseTo(5, 12);
    expect(far(8, 0, -2)).toBeCloseTo(5, 12);
    expect(far(7, -4, 1)).toBeCloseTo(5, 12);
    expect(far(-3, 7, 1)).toBeCloseTo(5, 12);
    expect(far(0, 6, 5)).toBeCloseTo(5, 12);
  });

  it('is that of the plane for a triangle of any form, turned anyhow', async () => {
    const gen = (rand: () => number) => Array.from({ length: 15 }, () => 20 * rand() - 10);
    await forAll(
      gen,
      (n) => {
        const [ax, ay, bx, by, cx, cy, x, y, z] = n;
        const turn = turnRound4(vec3(n[9], n[10], n[11]), vec3(n[12], n[13], n[14]), 30 * z);
        const corners = placedPoints4(turn, [ax, ay, 0, bx, by, 0, cx, cy, 0]);
        const inPlane = isInRings([[ax, ay, bx, by, cx, cy]], x, y)
          ? 0
          : Math.min(
              distanceToSegment(x, y, ax, ay, bx, by),
              distanceToSegment(x, y, bx, by, cx, cy),
              distanceToSegment(x, y, cx, cy, ax, ay),
            );
        const found = distanceToTriangle(corners, Uint32Array.of(0, 1, 2), 0, placed4(turn, vec3(x, y, z)));
        expect(found).toBeCloseTo(Math.hypot(inPlane, z), 9);
      },
      { runs: 200 },
    );
  });
});
