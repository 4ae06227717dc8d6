import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../../src/base/work.ts';
import { topologyOf } from '../../../src/mesh/topology.ts';
import { easePiece } from '../../../src/pipeline/propose/ease-piece.ts';
import { propose } from '../../../src/pipeline/propose/propose.ts';
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
