import { Matrix4 } from 'three';
import { describe, expect, it } from 'vitest';
import { runAtOnce } from '../../src/base/stepwise.ts';
import { slabSteps, type Slab, type SlabTriangles } from '../../src/viewport/sheet-slab.ts';

const slabTriangles = (slabs: readonly Slab[]): SlabTriangles => runAtOnce(slabSteps(slabs));

const ring = (x: number, y: number, w: number, h: number): number[] => [x, y, x + w, y, x + w, y + h, x, y + h];

/** Volume by the divergence theorem: right only for a closed surface whose triangles all look outwards. */
function volume({ positions: p }: { positions: Float32Array }): number {
  let sum = 0;
  for (let i = 0; i < p.length; i += 9) {
    sum +=
      p[i] * (p[i + 4] * p[i + 8] - p[i + 5] * p[i + 7]) +
      p[i + 1] * (p[i + 5] * p[i + 6] - p[i + 3] * p[i + 8]) +
      p[i + 2] * (p[i + 3] * p[i + 7] - p[i + 4] * p[i + 6]);
  }
  return sum / 6;
}

describe('a sheet with holes', () => {
  const outer = { upper: ring(0, 0, 200, 100), lower: ring(0, 0, 200, 100) };

  it('has the volume of the sheet less its holes, whichever way these run', () => {
    const square = { upper: ring(20, 20, 50, 30), lower: ring(20, 20, 50, 30) };
    const turned = { upper: [...ring(100, 20, 40, 40)], lower: [...ring(100, 20, 40, 40)] };
    turned.upper.reverse();
    turned.lower.reverse();
    for (let i = 0; i < turned.upper.length; i += 2) {
      [turned.upper[i], turned.upper[i + 1]] = [turned.upper[i + 1], turned.upper[i]];
      [turned.lower[i], turned.lower[i + 1]] = [turned.lower[i + 1], turned.lower[i]];
    }
    const slab: Slab = { outer, holes: [square, turned], thickness: 8, place: new Matrix4() };
    expect(volume(slabTriangles([slab]))).toBeCloseTo((200 * 100 - 50 * 30 - 40 * 40) * 8, 1);
  });

  it('has leaning walls where the cut leans', () => {
    const hole = { upper: ring(20, 20, 50, 30), lower: ring(25, 25, 40, 20) };
    const slab: Slab = { outer, holes: [hole], thickness: 6, place: new Matrix4() };
    // A frustum by the prismatoid rule.
    const gone = (6 / 6) * (50 * 30 + 4 * 45 * 25 + 40 * 20);
    expect(volume(slabTriangles([slab]))).toBeCloseTo(200 * 100 * 6 - gone, 1);
  });

  it('tells cut faces from skins', () => {
    const { isCut, normals } = slabTriangles([{ outer, holes: [], thickness: 8, place: new Matrix4() }]);
    for (let i = 0; i < isCut.length; i += 1)
      expect(Math.abs(normals[3 * i + 2])).toBeCloseTo(isCut[i] === 1 ? 0 : 1, 6);
    expect([...isCut].filter((cut) => cut === 1)).toHaveLength(4 * 6);
  });
});
