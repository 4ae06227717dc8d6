import { describe, expect, it } from 'vitest';
import { cornerShares } from '../../src/geom/corner-cone.ts';
import { dot3, scale3, sub3, unit3, vec3, type Vec3 } from '../../src/geom/vec.ts';

const near = ({ x, y, z }: Vec3) => ({
  x: expect.closeTo(x, 12) as number,
  y: expect.closeTo(y, 12) as number,
  z: expect.closeTo(z, 12) as number,
});

/** Corner (1, 1, 0) of a cuboctahedron, counter-clockwise from outside: square, triangle below, square, triangle above. */
const CUBOCTAHEDRON = [vec3(1, 0, 0), unit3(vec3(1, 1, -1)), vec3(0, 1, 0), unit3(vec3(1, 1, 1))];

describe('panels round a corner', () => {
  it('meet in one point where their planes do', () => {
    const cube = [vec3(1, 0, 0), vec3(0, 1, 0), vec3(0, 0, 1)];
    for (const { mitre, inner, outer } of cornerShares(cube, true) ?? []) {
      expect(mitre).toEqual(near(vec3(1, 1, 1)));
      expect(inner).toEqual([near(vec3(-1, -1, -1))]);
      expect(outer).toEqual([near(vec3(1, 1, 1))]);
    }
  });

  it('part the inside of a cuboctahedron between its squares, and the outside between its triangles', () => {
    const [square, triangle] = cornerShares(CUBOCTAHEDRON, true) ?? [];
    // Moved in by 1 the squares meet in the edge x = y = -1, and |z| = 2 - sqrt 3 where the triangles cut it off.
    const z = 2 - Math.sqrt(3);
    expect(square.inner).toEqual([near(vec3(-1, -1, z)), near(vec3(-1, -1, -z))]);
    expect(triangle.inner).toEqual([near(vec3(-1, -1, -z))]);
    expect(square.outer).toHaveLength(1);
    expect(triangle.outer).toEqual([near(vec3(1, Math.sqrt(3) - 1, 0)), near(vec3(Math.sqrt(3) - 1, 1, 0))]);
    expect(square.mitre).toEqual(near(vec3(1, Math.sqrt(3) - 1, 0)));
  });

  it('part a hollow corner the other way round', () => {
    const hollow = CUBOCTAHEDRON.map((normal) => scale3(normal, -1)).toReversed();
    const shares = cornerShares(hollow, false) ?? [];
    expect(shares.map(({ inner }) => inner.length).sort()).toEqual([1, 1, 2, 2]);
    for (const [i, { inner, outer }] of shares.entries()) {
      for (const [level, ends] of [
        [-1, inner],
        [1, outer],
      ] as const) {
        for (const end of ends) {
          expect(dot3(hollow[i], end)).toBeCloseTo(level, 12);
          // The lower one of all planes: no other has passed it.
          for (const rival of hollow) expect(dot3(sub3(rival, hollow[i]), end)).toBeGreaterThan(-1e-9);
        }
      }
    }
  });

  it('say nothing of panels in one run, or of a needle', () => {
    expect(cornerShares([vec3(1, 0, 0), vec3(1, 0, 0), vec3(0, 1, 0), vec3(0, 0, 1)], true)).toBeNull();
    const needle = [0, 1, 2, 3].map((i) => unit3(vec3(Math.cos((i * Math.PI) / 2), Math.sin((i * Math.PI) / 2), 0.05)));
    expect(cornerShares(needle, true)).toBeNull();
  });
});
