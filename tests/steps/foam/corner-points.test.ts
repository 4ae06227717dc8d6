import { describe, expect, it } from 'vitest';
import type { CornerShare } from '../../../src/geom/corner-cone.ts';
import type { Vec3 } from '../../../src/geom/vec.ts';
import { cornerPoints } from '../../../src/steps/foam/corner-points.ts';
import type { PanelCorner } from '../../../src/steps/foam/panel-corners.ts';

const at = (x: number, y: number, z: number): Vec3 => ({ x, y, z });

/** The edge that leaves its second point runs along 0.6, 0.8. */
const RING = Float64Array.of(0, 0, 10, 0, 13, 4, 0, 20);

/** The panel's edge runs along z and its outside lies towards y; x is its normal and does not show on the flat piece. */
function cornerWith(share: Partial<CornerShare>, change: Partial<PanelCorner> = {}): PanelCorner {
  const mitre = at(0.1, 0.2, 0.3);
  return {
    loop: 0,
    at: 1,
    vertex: 4,
    place: at(0, 0, 0),
    along: at(0, 0, 1),
    outward: at(0, 1, 0),
    share: { mitre, inner: [mitre], outer: [mitre], ...share },
    ...change,
  };
}

const always = (): boolean => true;

describe('corners of a skin', () => {
  it('that a panel that is no neighbour trims have a point for each end of the trimming, seen from the neutral surface', () => {
    const corner = cornerWith({ inner: [at(-0.1, -0.2, -0.3), at(0.4, 0.5, 0.6)] });
    const [points] = cornerPoints([RING], [corner], -10, -5, always);
    // The ends lie 10 times as far: -1, -2, -3 and 4, 5, 6, seen from -5 mitres at -0.5, -1, -1.5: -1 out and -1.5 along, 6 out and 7.5 along.
    const [first, second, ...others] = points.get(1) ?? [];
    expect(others).toEqual([]);
    expect(first.x).toBeCloseTo(10 + 7.5 * 0.6 + 6 * 0.8, 9);
    expect(first.y).toBeCloseTo(7.5 * 0.8 - 6 * 0.6, 9);
    expect(second.x).toBeCloseTo(10 - 1.5 * 0.6 - 1 * 0.8, 9);
    expect(second.y).toBeCloseTo(-1.5 * 0.8 + 1 * 0.6, 9);
  });

  it('over the sculpt are told by the ends outward, under it by those inward', () => {
    const corner = cornerWith({ outer: [at(0, 0.7, 0.3)], inner: [at(-0.1, -0.2, -0.3)] });
    const [points] = cornerPoints([RING], [corner], 10, 0, always);
    // 7 out, 3 along.
    expect(points.get(1)).toHaveLength(1);
    expect(points.get(1)?.[0].x).toBeCloseTo(10 + 3 * 0.6 + 7 * 0.8, 9);
    expect(points.get(1)?.[0].y).toBeCloseTo(3 * 0.8 - 7 * 0.6, 9);
    // Inward the edges meet there by themselves.
    expect(cornerPoints([RING], [corner], -10, 0, always)[0].size).toBe(0);
  });

  it('are left to where their edges meet if that is the place', () => {
    const corner = cornerWith({ outer: [at(0.1, 0.2, 0.3)] });
    expect(cornerPoints([RING], [corner], 10, 2, always)[0].size).toBe(0);
    for (const axis of ['x', 'y', 'z'] as const) {
      const off = cornerWith({ outer: [{ ...at(0.1, 0.2, 0.3), [axis]: 0.35 }] });
      expect(cornerPoints([RING], [off], 10, 2, always)[0].size).toBe(1);
    }
  });

  it('with an edge that is not cut on the plane that halves its fold are left alone', () => {
    const corner = cornerWith({ outer: [at(0, 0.7, 0.3)] });
    const asked: (readonly number[])[] = [];
    const [points] = cornerPoints([RING], [corner], 10, 0, (loop, place) => {
      asked.push([loop, place]);
      return false;
    });
    expect(points.size).toBe(0);
    expect(asked).toEqual([[0, 1]]);
  });

  it('are sorted by ring, and the last point of a ring goes on to its first', () => {
    const hole = Float64Array.of(5, 5, 5, 8, 9, 5);
    const corner = cornerWith({ outer: [at(0, 0.7, 0.3)] }, { loop: 1, at: 2 });
    const [outer, inner] = cornerPoints([RING, hole], [corner], 10, 0, always);
    expect(outer.size).toBe(0);
    // From 9, 5 to 5, 5: along is -1, 0 and outward 0, 1.
    expect([...inner.keys()]).toEqual([2]);
    expect(inner.get(2)?.[0].x).toBeCloseTo(6, 9);
    expect(inner.get(2)?.[0].y).toBeCloseTo(12, 9);
  });
});
