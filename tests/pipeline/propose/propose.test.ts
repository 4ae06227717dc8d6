import { describe, expect, it } from 'vitest';
import { topologyOf } from '../../../src/mesh/topology.ts';
import { QUIET_WORK } from '../../../src/base/work.ts';
import { propose } from '../../../src/pipeline/propose/propose.ts';
import { REFERENCE_LIMITS, type Proposal } from '../../../src/pipeline/propose/proposal.ts';
import { boxMesh, meshOf } from '../../support/meshes.ts';
import { edgesOf, seek, shape, wishFor } from './seek.ts';

describe('a proposal', () => {
  it('lays a box flat as one piece: seams along a tree over its eight corners, seven edges', async () => {
    const { last } = await seek({ mesh: boxMesh(10) }, 300);
    expect(last.feasible).toBe(true);
    expect(last.pieces).toBe(1);
    expect(last.lengthMm).toBeCloseTo(70, 9);
    expect(last.perPiece[0].stretch99).toBeLessThan(1e-6);
  });

  it('opens a tube by one cut along its side', async () => {
    const { last } = await seek({ mesh: shape('bracer_cone') }, 60);
    expect(last.feasible).toBe(true);
    expect([last.pieces, last.dartCount]).toEqual([1, 0]);
    expect(last.lengthOverRootArea).toBeLessThanOrEqual(0.86);
  });

  it('tells better and better answers that hold every limit, the last of which it returns', async () => {
    const { last, all } = await seek({ mesh: shape('helmet_low') }, 120);
    expect(all.length).toBeGreaterThan(1);
    all.forEach((one, i) => {
      expect(one.feasible).toBe(true);
      expect(one.reasons).toEqual([]);
      if (i > 0) expect(one.sum.total).toBeLessThan(all[i - 1].sum.total);
    });
    expect(last.sum.total).toBe(all[all.length - 1].sum.total);
  });

  it('is the same for the same seed and number of moves', async () => {
    const [one, other] = [await seek({ mesh: shape('helmet_low') }, 60), await seek({ mesh: shape('helmet_low') }, 60)];
    expect(other.last.edges).toEqual(one.last.edges);
    expect(other.last.perPiece[0].flat?.uv).toEqual(one.last.perPiece[0].flat?.uv);
  });

  it('adds nothing where nothing is allowed, and says which limit that breaks and where', async () => {
    const mesh = shape('helmet_low');
    const weights = new Float64Array(topologyOf(mesh).edgeCount).fill(Infinity);
    const { last } = await seek({ mesh, weights }, 100);
    expect(last.feasible).toBe(false);
    expect(last.edges).toEqual([]);
    expect(last.reasons.map(({ limit }) => limit)).toContain('squash');
    expect(last.reasons[0].defectRad).toBeGreaterThan(3);
  });

  it('leaves locked seams and edges as they are', async () => {
    const mesh = boxMesh(10);
    // A ring round one side of the box stays, and so does the fold opposite.
    const ring = edgesOf(mesh, [
      [0, 1],
      [1, 3],
      [3, 2],
      [2, 0],
    ]);
    const fold = edgesOf(mesh, [[4, 5]]);
    const locked = ring.map((value, e) => value | fold[e]);
    const { last } = await seek({ mesh, start: { isSeam: ring, count: 4 }, locked }, 300);
    expect(last.feasible).toBe(true);
    expect(last.pieces).toBe(2);
    ring.forEach((value, e) => {
      if (value === 1) expect(last.seams.isSeam[e]).toBe(1);
      if (fold[e] === 1) expect(last.seams.isSeam[e]).toBe(0);
    });
    // The open box of five sides needs four more edges at least.
    expect(last.lengthMm).toBeCloseTo(80, 9);
  });

  it('leaves a piece that is held as it is, and tells what limit that one breaks', async () => {
    const mesh = shape('helmet_low');
    const { twin, halfedgeOfEdge, edgeCount } = topologyOf(mesh);
    const fixedTriangles = Uint8Array.from({ length: mesh.triangles.length / 3 }, (_, t) =>
      mesh.positions[3 * mesh.triangles[3 * t]] > 0 ? 1 : 0,
    );
    const isSeam = Uint8Array.from({ length: edgeCount }, (_, e) => {
      const h = halfedgeOfEdge[e];
      return twin[h] >= 0 && fixedTriangles[Math.floor(h / 3)] !== fixedTriangles[Math.floor(twin[h] / 3)] ? 1 : 0;
    });
    const { last, all } = await seek({ mesh, start: { isSeam, count: 1 }, fixedTriangles }, 60);
    expect(all.length).toBeGreaterThan(0);
    last.perPiece.forEach(({ patch, isFeasible }) => {
      expect(isFeasible).toBe(fixedTriangles[patch.meshTriangles[0]] === 0);
    });
    isSeam.forEach((value, e) => {
      const h = halfedgeOfEdge[e];
      const sides = twin[h] < 0 ? [h] : [h, twin[h]];
      if (sides.some((side) => fixedTriangles[Math.floor(side / 3)] === 1)) expect(last.seams.isSeam[e]).toBe(value);
    });
    expect(last.reasons.map(({ limit }) => limit)).toContain('squash');
  });

  it('keeps both sides of a mirror alike', async () => {
    const mesh = boxMesh(10);
    const topology = topologyOf(mesh);
    // Across the middle of x: corner numbers are x + 2 y + 4 z.
    const mirror = Int32Array.from({ length: topology.edgeCount }, (_, e) =>
      topology.edgeBetween(topology.edgeVertices[2 * e] ^ 1, topology.edgeVertices[2 * e + 1] ^ 1),
    );
    const { last } = await seek({ mesh, mirror }, 300);
    expect(last.feasible).toBe(true);
    mirror.forEach((partner, e) => {
      if (partner >= 0) expect(last.seams.isSeam[partner]).toBe(last.seams.isSeam[e]);
    });
  });

  it('parts a strip that is longer than the sheet, and keeps what is too narrow from being made', async () => {
    const points = Array.from({ length: 22 }, (_, i) => [10 * (i >> 1), 20 * (i & 1), 0] as const);
    const mesh = meshOf(
      points,
      Array.from({ length: 10 }, (_, i) => [2 * i, 2 * i + 2, 2 * i + 3, 2 * i + 1]),
    );
    const limits = { ...REFERENCE_LIMITS, sheet: { widthMm: 60, heightMm: 30 } };
    const { last } = await seek({ mesh, limits }, 200);
    expect([last.feasible, last.pieces]).toEqual([true, 2]);
    expect(last.lengthMm).toBeCloseTo(20, 9);
    const small = await seek({ mesh, limits: { ...limits, sheet: { widthMm: 5, heightMm: 5 } } }, 60);
    expect(small.last.feasible).toBe(false);
    expect(small.last.reasons[0].limit).toBe('sheet');
  });

  it('tells a part that is narrower than may be, and does not make slivers of it', async () => {
    const points = Array.from({ length: 22 }, (_, i) => [20 * (i >> 1), 10 * (i & 1), 0] as const);
    const mesh = meshOf(
      points,
      Array.from({ length: 10 }, (_, i) => [2 * i, 2 * i + 2, 2 * i + 3, 2 * i + 1]),
    );
    const { last } = await seek({ mesh, limits: { ...REFERENCE_LIMITS, leastWidthMm: 18 } }, 60);
    expect([last.feasible, last.pieces]).toEqual([true, 1]);
    expect(last.reasons.map(({ limit }) => limit)).toEqual(['width']);
    expect(last.reasons[0].share).toBeCloseTo(1.8, 9);
    expect(last.sum.slivers).toBeGreaterThan(0);
  });

  it('parts two lobes that hang together by a thread', async () => {
    // Two fields of 40 mm and a neck of 2 mm between them, all in one plane.
    const mesh = meshOf(
      [
        [0, 0, 0],
        [40, 0, 0],
        [40, 19, 0],
        [40, 21, 0],
        [40, 40, 0],
        [0, 40, 0],
        [42, 0, 0],
        [82, 0, 0],
        [82, 40, 0],
        [42, 40, 0],
        [42, 21, 0],
        [42, 19, 0],
      ],
      [
        [0, 1, 2, 3, 4, 5],
        [2, 11, 10, 3],
        [6, 7, 8, 9, 10, 11],
      ],
    );
    const { all } = await seek({ mesh, limits: { ...REFERENCE_LIMITS, leastWidthMm: 18 } }, 12);
    expect(all[0].pieces).toBe(1);
    expect(all[all.length - 1].pieces).toBe(2);
    expect(all[all.length - 1].lengthMm).toBeCloseTo(2, 9);
  });

  it('is dropped in the midst of a change when time is up, and the best so far is told', async () => {
    const wish = wishFor({ mesh: shape('helmet_low') });
    const all: Proposal[] = [];
    let asked = 0;
    const isLate = (): boolean => all.length > 1 && (asked += 1) > 5;
    const never = (): boolean => false;
    const last = await propose(wish, QUIET_WORK, (better) => all.push(better), never, isLate);
    expect(asked).toBe(6);
    expect(last.edges).toEqual(all[all.length - 1].edges);
  });

  it('makes more pieces with fewer darts where simple ones are asked for', async () => {
    const few = await seek({ mesh: shape('helmet_low'), dial: 'few' }, 60);
    const simple = await seek({ mesh: shape('helmet_low'), dial: 'simple' }, 60);
    expect(few.last.pieces).toBe(1);
    expect(simple.last.feasible).toBe(true);
    expect(simple.last.pieces).toBeGreaterThan(few.last.pieces);
    expect(simple.last.dartCount).toBeLessThan(few.last.dartCount);
  });
});
