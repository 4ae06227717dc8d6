import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../../src/base/work.ts';
import { topologyOf } from '../../../src/mesh/topology.ts';
import { easePiece } from '../../../src/pipeline/propose/ease-piece.ts';
import { propose } from '../../../src/pipeline/propose/propose.ts';
import { seamCosts } from '../../../src/pipeline/propose/seam-costs.ts';
import { boxMesh } from '../../support/meshes.ts';
import { edgesOf, shape, wishFor } from './seek.ts';

describe('easing a piece', () => {
  it('offers up to three places, least cost first, each of which is enough when it is cut', async () => {
    const mesh = shape('helmet_low');
    const topology = topologyOf(mesh);
    const { offers, reasons } = await easePiece(wishFor({ mesh }), 0, QUIET_WORK);
    expect(reasons.map(({ limit }) => limit)).toContain('stretch');
    expect(offers.length).toBeGreaterThan(0);
    expect(offers.length).toBeLessThanOrEqual(3);
    const enough = offers.filter(({ isEnough }) => isEnough);
    expect(enough.length).toBeGreaterThan(0);
    expect(offers[0].isEnough).toBe(true);
    for (const { edges, stretch99, squash99, parts, pieces, mends, reasons: left } of enough) {
      expect(parts).toHaveLength(pieces);
      expect(new Set(mends)).toEqual(new Set(reasons.map(({ limit }) => limit)));
      expect(left).toEqual([]);
      expect(Math.max(stretch99, squash99)).toBeLessThanOrEqual(5);
      const isSeam = edgesOf(mesh, edges);
      // Held as they are: every piece is good without another change.
      const locked = new Uint8Array(topology.edgeCount).fill(1);
      const wish = wishFor({ mesh, start: { isSeam, count: edges.length }, locked });
      const same = await propose(
        wish,
        QUIET_WORK,
        () => undefined,
        () => true,
      );
      expect(same.feasible).toBe(true);
      expect(same.seams.isSeam).toEqual(isSeam);
    }
  });

  it('says which limit stops it where no seam may be added', async () => {
    const mesh = shape('helmet_low');
    const weights = new Float64Array(topologyOf(mesh).edgeCount).fill(Infinity);
    const { offers, reasons } = await easePiece(wishFor({ mesh, weights }), 0, QUIET_WORK);
    expect(offers).toEqual([]);
    expect(reasons[0].share).toBeGreaterThan(1);
    expect(reasons[0].triangle).toBeLessThan(mesh.triangles.length / 3);
  });

  it('offers nothing for a piece that keeps its limits', async () => {
    const mesh = boxMesh(10);
    const start = { isSeam: new Uint8Array(topologyOf(mesh).edgeCount).fill(1), count: 18 };
    expect(await easePiece(wishFor({ mesh, start }), 2, QUIET_WORK)).toEqual({ reasons: [], offers: [] });
    await expect(easePiece(wishFor({ mesh, start }), 99, QUIET_WORK)).rejects.toThrow(RangeError);
  });
});

describe('what it costs to remove a seam', () => {
  it('tells of a box in two that every fold between two sides is free, and the last ring is not', async () => {
    const mesh = boxMesh(10);
    // A lid apart from five sides that hang together on four folds of the bottom.
    const pairs = [
      [4, 5],
      [5, 7],
      [7, 6],
      [6, 4],
      [0, 4],
      [1, 5],
      [2, 6],
      [3, 7],
    ] as const;
    const isSeam = edgesOf(mesh, pairs);
    const costs = await seamCosts(wishFor({ mesh, start: { isSeam, count: 8 } }), QUIET_WORK);
    expect(costs).toHaveLength(8);
    const lid = costs.filter(({ joins }) => joins);
    expect(lid).toHaveLength(4);
    for (const cost of lid) {
      expect(cost.feasible).toBe(true);
      expect(cost.lengthMm).toBeCloseTo(10, 9);
    }
    // Closing an upright corner leaves two corners of the box inside the foam.
    for (const cost of costs.slice(4)) {
      expect(cost.joins).toBe(false);
      expect(cost.feasible).toBe(false);
      expect(cost.share).toBeGreaterThan(2);
      expect(cost.reasons[0].defectRad).toBeGreaterThan(1.5);
    }
    const shares = costs.slice(4).map(({ share }) => share);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
  });

  it('says nothing of locked seams', async () => {
    const mesh = boxMesh(10);
    const isSeam = edgesOf(mesh, [
      [0, 1],
      [1, 3],
    ]);
    expect(await seamCosts(wishFor({ mesh, start: { isSeam, count: 2 }, locked: isSeam }), QUIET_WORK)).toEqual([]);
  });
});
