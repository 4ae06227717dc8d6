import { expect, it } from 'vitest';
import { composed4, move4, placed4, placedPoints4, turnRound4 } from '../../src/geom/matrix4.ts';
import { unit3, vec3 } from '../../src/geom/vec.ts';
import { outwardOf, setOn } from '../../src/project/set-on-sculpt.ts';

/** A plate of 60 x 90 x 6 mm with a corner at its nought, as a drawing is read. */
const PLATE = [0, 60].flatMap((x) => [0, 90].flatMap((y) => [0, 6].flatMap((z) => [x, y, z])));

it('lays the middle of the back on the place, the face outward and its top up', () => {
  const before = composed4(move4(vec3(144, -90, 26)), turnRound4(vec3(0, 0, 0), vec3(1, 0, 0), -90));
  const place = { point: [10, 20, 30], outward: [1, 0, 0], up: [0.3, 1, 0] } as const;
  const ground = composed4(move4(vec3(5, 0, 0)), turnRound4(vec3(0, 0, 0), vec3(0, 0, 1), 90));
  const after = setOn(before, placedPoints4(before, PLATE), place, ground);
  const near = ({ x, y, z }: { x: number; y: number; z: number }, to: readonly number[]): void =>
    [x, y, z].forEach((value, i) => expect(value).toBeCloseTo(to[i], 9));
  // The ground turns x to y and y to -x, and moves by 5: the place comes to (5 - 20, 10, 30).
  near(placed4(after, vec3(30, 45, 0)), [-15, 10, 30]);
  near(placed4(after, vec3(30, 45, 6)), [-15, 16, 30]);
  near(placed4(after, vec3(30, 90, 0)), [-60, 10, 30]);
});

it('tells outward from a triangle whose corners run counter-clockwise', () => {
  const points = [0, 0, 0, 2, 0, 0, 0, 2, 2];
  const { x, y, z } = unit3(vec3(0, -1, 1));
  outwardOf(points, [0, 1, 2]).forEach((value, i) => expect(value).toBeCloseTo([x, y, z][i], 12));
});
