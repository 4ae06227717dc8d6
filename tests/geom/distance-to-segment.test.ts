import { expect, it } from 'vitest';
import { distanceToSegment } from '../../src/geom/distance-to-segment.ts';

it('counts to the side of a straight part, to its ends beyond them, and to a point where it has no length', () => {
  expect(distanceToSegment(3, 2, 0, 0, 10, 0)).toBe(2);
  expect(distanceToSegment(-3, 4, 0, 0, 10, 0)).toBe(5);
  expect(distanceToSegment(13, -4, 0, 0, 10, 0)).toBe(5);
  expect(distanceToSegment(4, 5, 1, 1, 1, 1)).toBe(5);
});
