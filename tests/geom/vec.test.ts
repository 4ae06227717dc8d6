import { describe, expect, it } from 'vitest';
import * as vec from '../../src/geom/vec.ts';

const [a3, b3] = [vec.vec3(1, 2, 3), vec.vec3(7, -5, 11)];
const [a2, b2] = [vec.vec2(3, 4), vec.vec2(-2, 5)];

describe('vectors of the plane', () => {
  it('are taken from each other, made longer, measured', () => {
    expect(vec.sub2(a2, b2)).toEqual({ x: 5, y: -1 });
    expect(vec.scale2(a2, -3)).toEqual({ x: -9, y: -12 });
    expect(vec.length2(a2)).toBe(5);
    expect(vec.pointAt2([9, 9, 3, 4], 1)).toEqual(a2);
  });

  it('turn counter-clockwise from the first to the second where their cross product is positive', () => {
    expect(vec.cross2(a2, b2)).toBe(15 + 8);
    expect(vec.cross2(vec.vec2(1, 0), vec.vec2(0, 1))).toBe(1);
  });
});

describe('vectors in space', () => {
  it('are added, taken from each other, made longer, measured', () => {
    expect(vec.add3(a3, b3)).toEqual({ x: 8, y: -3, z: 14 });
    expect(vec.sub3(a3, b3)).toEqual({ x: -6, y: 7, z: -8 });
    expect(vec.scale3(a3, -2)).toEqual({ x: -2, y: -4, z: -6 });
    expect(vec.length3(vec.vec3(2, -3, 6))).toBe(7);
    expect(vec.pointAt3([0, 0, 0, 1, 2, 3], 1)).toEqual(a3);
  });

  it('have the products of the books', () => {
    expect(vec.dot3(a3, b3)).toBe(7 - 10 + 33);
    expect(vec.cross3(a3, b3)).toEqual({ x: 22 + 15, y: 21 - 11, z: -5 - 14 });
  });

  it('of length 1 keep their way, and none stays none', () => {
    expect(vec.unit3(vec.vec3(0, -8, 0))).toEqual({ x: 0, y: -1, z: 0 });
    expect(vec.length3(vec.unit3(b3))).toBeCloseTo(1, 15);
    const none = vec.vec3(0, 0, 0);
    expect(vec.unit3(none)).toBe(none);
  });
});

describe('angles', () => {
  it('come from degrees and go back', () => {
    expect(vec.rad(180)).toBe(Math.PI);
    expect(vec.rad(-30)).toBeCloseTo(-Math.PI / 6, 15);
    expect(vec.deg(Math.PI / 2)).toBe(90);
  });
});
