import { describe, expect, it } from 'vitest';
import { Slivers } from '../../../src/pipeline/propose/slivers.ts';
import { REFERENCE_LIMITS } from '../../../src/pipeline/propose/proposal.ts';
import { cutPatches } from '../../../src/steps/cut/cut-patches.ts';
import { meshOf } from '../../support/meshes.ts';
import { edgesOf, seek } from './seek.ts';

/** A strip of `count` fields, each `long` by `wide` mm, and past its end one more `last` mm long. */
function strip(count: number, long: number, wide: number, last = long) {
  const xs = [...Array.from({ length: count + 1 }, (_, i) => long * i), long * count + last];
  return meshOf(
    xs.flatMap((x) => [[x, 0, 0] as const, [x, wide, 0] as const]),
    Array.from({ length: count + 1 }, (_, i) => [2 * i, 2 * i + 2, 2 * i + 3, 2 * i + 1]),
  );
}

const across = (i: number) => [[2 * i, 2 * i + 1]] as const;

describe('a sliver', () => {
  const areaOf = (last: number, leastWidthMm: number): number => {
    const mesh = strip(10, 10, 20, last);
    const seams = { isSeam: edgesOf(mesh, across(10)), count: 1 };
    const { patches } = cutPatches(mesh, seams, mesh.positions);
    return new Slivers(mesh.positions, 20 * (100 + last), leastWidthMm).of(patches[1]);
  };

  it('is a piece under a hundredth of the area, the more the smaller it is', () => {
    expect(areaOf(2, 0)).toBe(0);
    expect(areaOf(1, 0)).toBeGreaterThan(0.6);
    expect(areaOf(0.1, 0)).toBeGreaterThan(areaOf(1, 0));
    expect(areaOf(0.1, 0)).toBeLessThanOrEqual(1);
  });

  it('is one too where it is narrower than may be', () => {
    expect(areaOf(4, 6)).toBe(0);
    expect(areaOf(2.5, 6)).toBeGreaterThan(0);
  });
});

describe('a proposal with slivers', () => {
  it('makes them one with a neighbour, though nothing is asked between moves', async () => {
    const mesh = strip(10, 10, 20, 1);
    const { last } = await seek({ mesh, start: { isSeam: edgesOf(mesh, across(10)), count: 1 } }, 0);
    expect([last.pieces, last.sum.slivers]).toEqual([1, 0]);
  });

  it('leaves them where a limit would break', async () => {
    const mesh = strip(10, 10, 20, 1);
    const limits = { ...REFERENCE_LIMITS, sheet: { widthMm: 100.5, heightMm: 20.5 } };
    const { last } = await seek({ mesh, limits, start: { isSeam: edgesOf(mesh, across(10)), count: 1 } }, 0);
    expect([last.feasible, last.pieces]).toEqual([true, 2]);
    expect(last.sum.slivers).toBeGreaterThan(0);
  });

  it('leaves those of pieces that stay', async () => {
    const mesh = strip(10, 10, 20, 1);
    const fixedTriangles = Uint8Array.from({ length: mesh.triangles.length / 3 }, (_, t) => (t >= 20 ? 1 : 0));
    const start = { isSeam: edgesOf(mesh, across(10)), count: 1 };
    const { last } = await seek({ mesh, fixedTriangles, start }, 0);
    expect([last.pieces, last.sum.slivers]).toEqual([2, 0]);
  });
});
