import { describe, expect, it } from 'vitest';
import {
  composed4,
  handOf4,
  IN_PLACE,
  mirror4,
  move4,
  placed4,
  placedPoints4,
  turned4,
  turnRound4,
  turnUpTo4,
  undone4,
  type Matrix4,
} from '../../src/geom/matrix4.ts';
import { vec3 } from '../../src/geom/vec.ts';
import { forAll } from '../support/for-all.ts';
import { near } from '../support/near-numbers.ts';

const ORIGIN = vec3(0, 0, 0);
const SLANTED = vec3(1, 2, 2);
/** A quarter turn round 1, 2, 2, times nine. */
const QUARTER_NINTHS = [1, 8, -4, 0, -4, 4, 7, 0, 8, 1, 4, 0];
const ninths = (numbers: readonly number[]): number[] => near([...numbers.map((value) => value / 9), 0, 0, 0, 1]);
const numbersOf = ({ x, y, z }: { x: number; y: number; z: number }): number[] => [x, y, z];

describe('turnRound4', () => {
  it('turns counter-clockwise as seen from where the axis points to', () => {
    expect(turnRound4(ORIGIN, vec3(0, 0, 3), 90)).toEqual(near([0, 1, 0, 0, -1, 0, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1]));
    expect(turnRound4(ORIGIN, SLANTED, 90)).toEqual(ninths(QUARTER_NINTHS));
    expect(turnRound4(ORIGIN, SLANTED, 180)).toEqual(ninths([-7, 4, 4, 0, 4, -1, 8, 0, 4, 8, -1, 0]));
    const [h, r] = [0.5, Math.sqrt(3) / 2];
    expect(turnRound4(ORIGIN, vec3(1, 0, 0), 30)).toEqual(near([1, 0, 0, 0, 0, r, h, 0, 0, -h, r, 0, 0, 0, 0, 1]));
  });

  it('takes angles over a whole turn and negative ones', () => {
    const [half, up] = [-0.5, Math.sqrt(3) / 2];
    expect(numbersOf(turned4(turnRound4(ORIGIN, vec3(0, 0, 1), 480), vec3(1, 0, 0)))).toEqual(near([half, up, 0]));
    expect(numbersOf(turned4(turnRound4(ORIGIN, vec3(0, 0, 1), -120), vec3(1, 0, 0)))).toEqual(near([half, -up, 0]));
  });

  it('leaves the points of its axis where they are', () => {
    expect(numbersOf(placed4(turnRound4(vec3(1, 2, 0), vec3(0, 0, 1), 90), vec3(3, 2, 5)))).toEqual([1, 4, 5]);
    const turn = turnRound4(vec3(3, -1, 4), SLANTED, 77);
    expect(numbersOf(placed4(turn, vec3(3, -1, 4)))).toEqual(near([3, -1, 4]));
    expect(numbersOf(placed4(turn, vec3(5, 3, 8)))).toEqual(near([5, 3, 8]));
  });

  it('is exact in quarters, however often round', () => {
    const x = (angle: number): number[] => numbersOf(turned4(turnRound4(ORIGIN, vec3(0, 0, 1), angle), vec3(1, 0, 0)));
    const quarters = [-450, -270, -90, 0, 90, 180, 270, 360, 450].map((angle) => x(angle).map((value) => value + 0));
    expect(quarters).toEqual(
      [
        [0, -1],
        [0, 1],
        [0, -1],
        [1, 0],
        [0, 1],
        [-1, 0],
        [0, -1],
        [1, 0],
        [0, 1],
      ].map((p) => [...p, 0]),
    );
  });

  it('wants a direction', () => {
    expect(() => turnRound4(ORIGIN, ORIGIN, 10)).toThrow(new RangeError('an axis without direction'));
    expect(() => turnRound4(ORIGIN, vec3(NaN, 0, 0), 10)).toThrow(RangeError);
  });
});

describe('mirror4', () => {
  it('brings a point as far behind its plane as it stood before it', () => {
    const mirror = mirror4(vec3(1, 1, 1), SLANTED);
    expect(mirror).toEqual(near([7, -4, -4, 0, -4, 1, -8, 0, -4, -8, 1, 0, 10, 20, 20, 9].map((value) => value / 9)));
    expect(numbersOf(placed4(mirror4(vec3(1, 50, 60), vec3(2, 0, 0)), vec3(5, 7, 8)))).toEqual([-3, 7, 8]);
  });

  it('wants a direction', () => {
    expect(() => mirror4(ORIGIN, ORIGIN)).toThrow(new RangeError('a plane without direction'));
  });
});

describe('turnUpTo4', () => {
  it('brings z to a direction by the shortest turn', () => {
    // About -n.y, n.x: the axis stays where it is.
    const thirds = [11 / 5, 2 / 5, -2, 0, 2 / 5, 14 / 5, 1, 0, 2, -1, 2, 0].map((value) => value / 3);
    expect(turnUpTo4(vec3(4, -2, 4))).toEqual(near([...thirds, 0, 0, 0, 1]));
    const downThirds = [-1, 2, -2, 0, 2, 2, 1, 0, 2, -1, -2, 0].map((value) => value / 3);
    expect(turnUpTo4(vec3(2, -1, -2))).toEqual(near([...downThirds, 0, 0, 0, 1]));
    expect(turnUpTo4(vec3(3, 4, 0))).toEqual(
      near([0.64, -0.48, -0.6, 0, -0.48, 0.36, -0.8, 0, 0.6, 0.8, 0, 0, 0, 0, 0, 1]),
    );
  });

  it('stays as it is for z and goes half round x for -z', () => {
    expect(turnUpTo4(vec3(0, 0, 7))).toEqual(IN_PLACE);
    expect(turnUpTo4(vec3(0, 0, -7))).toEqual([1, 0, 0, 0, 0, -1, 0, 0, 0, 0, -1, 0, 0, 0, 0, 1]);
    expect(turnUpTo4(vec3(0, 2, 0))).toEqual(near([1, 0, 0, 0, 0, 0, -1, 0, 0, 1, 0, 0, 0, 0, 0, 1]));
    expect(turnUpTo4(vec3(2, 0, 0))).toEqual(near([0, 0, -1, 0, 0, 1, 0, 0, 1, 0, 0, 0, 0, 0, 0, 1]));
  });

  it('is a turn to the last digit next to -z too', () => {
    const turn = turnUpTo4(vec3(1e-9, 2e-9, -1));
    expect(handOf4(turn)).toBeCloseTo(1, 14);
    expect(composed4(turn, undone4(turn))).toEqual(near(IN_PLACE, 14));
  });

  it('wants a direction', () => {
    expect(() => turnUpTo4(ORIGIN)).toThrow(new RangeError('a direction without length'));
  });
});

describe('one after the other', () => {
  it('multiplies column by column', () => {
    const outer: Matrix4 = [1, 2, 3, 0, 4, 5, 6, 0, 7, 8, 10, 0, 11, 12, 13, 1];
    expect(composed4(outer, move4(vec3(1, 10, 100)))).toEqual([1, 2, 3, 0, 4, 5, 6, 0, 7, 8, 10, 0, 752, 864, 1076, 1]);
    expect(composed4(move4(vec3(1, 10, 100)), outer)).toEqual([1, 2, 3, 0, 4, 5, 6, 0, 7, 8, 10, 0, 12, 22, 113, 1]);
    expect(numbersOf(turned4(outer, vec3(1, 10, 100)))).toEqual([741, 852, 1063]);
    expect(numbersOf(placed4(outer, vec3(1, 10, 100)))).toEqual([752, 864, 1076]);
    expect([...placedPoints4(outer, [0, 0, 0, 1, 10, 100])]).toEqual([11, 12, 13, 752, 864, 1076]);
  });

  it('goes back the way it came', async () => {
    const gen = (rand: () => number) => Array.from({ length: 10 }, () => 10 * rand() - 5);
    await forAll(gen, (n) => {
      const turn = turnRound4(vec3(n[0], n[1], n[2]), vec3(n[3], n[4], n[5]), 70 * n[6]);
      const mirror = mirror4(vec3(n[2], n[0], n[1]), vec3(n[7], n[8], n[9]));
      const whole = composed4(turn, mirror);
      expect(composed4(undone4(whole), whole)).toEqual(near(IN_PLACE));
      expect([handOf4(turn), handOf4(mirror), handOf4(whole)]).toEqual(near([1, -1, -1]));
    });
  });

  it('tells the volume of three columns with its sign', () => {
    expect(handOf4([2, 0, 0, 0, 5, 3, 0, 0, 6, 7, 4, 0, 9, 9, 9, 1])).toBe(24);
    expect(handOf4([1, 2, 3, 0, 4, 5, 6, 0, 7, 8, 10, 0, 0, 0, 0, 1])).toBe(-3);
  });
});
