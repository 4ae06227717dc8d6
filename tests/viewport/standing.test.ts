import { Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { standOnBench } from '../../src/viewport/standing.ts';

// A box from (10, 20, 30) to (110, 220, 330).
const points = Float32Array.of(10, 20, 30, 110, 220, 330);

describe('a sculpt on the bench', () => {
  it('stands on it with its middle over the origin', () => {
    for (const [up, size] of [
      ['y', [100, 200, 300]],
      ['z', [100, 300, 200]],
      ['x', [200, 100, 300]],
    ] as const) {
      const { matrix, box } = standOnBench([points], up, true);
      expect(box.getSize(new Vector3()).toArray()).toEqual(size.map((x): unknown => expect.closeTo(x, 4)));
      expect(box.min.y).toBeCloseTo(0, 4);
      expect(box.min.x + box.max.x).toBeCloseTo(0, 4);
      expect(box.min.z + box.max.z).toBeCloseTo(0, 4);
      expect(matrix.determinant()).toBeCloseTo(1, 6);
      const axis = { x: new Vector3(1, 0, 0), y: new Vector3(0, 1, 0), z: new Vector3(0, 0, 1) }[up];
      expect(axis.transformDirection(matrix).y).toBeCloseTo(1, 9);
    }
  });

  it('hangs over it where another part reaches farther down, its middle over the origin', () => {
    const handle = Float32Array.of(500, -80, 30, 510, 20, 40);
    const { matrix, box } = standOnBench([points], 'y', true, [handle]);
    expect(box.min.y).toBeCloseTo(100, 4);
    expect(box.min.x + box.max.x).toBeCloseTo(0, 4);
    expect(new Vector3(500, -80, 30).applyMatrix4(matrix).y).toBeCloseTo(0, 4);
    expect(standOnBench([points], 'y', true, [points]).box.min.y).toBeCloseTo(0, 4);
  });

  it('fits the picture while its size is unknown', () => {
    const tiny = points.map((x) => x / 1000);
    const { box } = standOnBench([tiny], 'y', false);
    expect(box.getSize(new Vector3()).z).toBeCloseTo(300, 3);
    expect(box.min.y).toBeCloseTo(0, 4);
  });
});
