import { describe, expect, it } from 'vitest';
import { rodClearance } from '../../../src/steps/wear/rod-clearance.ts';
import { forAll } from '../../support/for-all.ts';
import { boxMesh, meshOf, tubeMesh } from '../../support/meshes.ts';

const UP = { x: 0, y: 0, z: 1 };

describe('clearance to a rod', () => {
  it('is the apothem of a many-sided tube less the radius, not what its corners keep', () => {
    const { positions, triangles } = tubeMesh(8, 30, 100);
    const { tightest, atVertices, pierced } = rodClearance(positions, triangles, {
      point: { x: 0, y: 0, z: 50 },
      direction: { x: 0, y: 0, z: -3 },
      radiusMm: 25,
      lengthMm: Infinity,
    });
    expect(tightest?.clearanceMm).toBeCloseTo(30 * Math.cos(Math.PI / 8) - 25, 12);
    expect(atVertices[3]).toBeCloseTo(5, 5);
    expect(pierced).toBe(0);
  });

  it('says by how much it stands in the foam when it sits off the middle', () => {
    const { positions, triangles } = boxMesh(40, 40, 100);
    const { tightest } = rodClearance(positions, triangles, {
      point: { x: 12, y: 20, z: 50 },
      direction: UP,
      radiusMm: 15,
      lengthMm: 90,
    });
    expect(tightest?.clearanceMm).toBeCloseTo(-3, 12);
    expect(tightest?.point.x).toBeCloseTo(0, 12);
    expect(tightest?.point.y).toBeCloseTo(20, 12);
  });

  it('counts foam along its length alone, and tells where the axis runs through', () => {
    const { positions, triangles } = boxMesh(40, 40, 100);
    const rod = { point: { x: 20, y: 20.5, z: 50 }, direction: UP, radiusMm: 5 };
    const through = rodClearance(positions, triangles, { ...rod, lengthMm: Infinity });
    expect(through.pierced).toBe(2);
    expect(through.tightest?.clearanceMm).toBe(-5);
    expect([0, 100]).toContain(through.tightest?.point.z);
    expect(rodClearance(positions, triangles, { ...rod, lengthMm: 99 }).tightest?.clearanceMm).toBeCloseTo(14.5, 12);
    const beyond = rodClearance(positions, triangles, { ...rod, point: { x: 20, y: 20, z: 200 }, lengthMm: 10 });
    expect(beyond.tightest).toBeNull();
    expect(beyond.atVertices.every(Number.isNaN)).toBe(true);
  });

  it('agrees with a fine sampling of single triangles', async () => {
    await forAll(
      (rand) => Array.from({ length: 3 }, () => [60 * rand() - 20, 60 * rand() - 30, 60 * rand() - 30] as const),
      (corners) => {
        const { positions, triangles } = meshOf(corners, [[0, 1, 2]]);
        const rod = { point: { x: 0, y: 0, z: 0 }, direction: UP, radiusMm: 10, lengthMm: 30 };
        const found = rodClearance(positions, triangles, rod).tightest?.clearanceMm ?? Infinity;
        let sampled = Infinity;
        const n = 120;
        for (let i = 0; i <= n; i += 1)
          for (let j = 0; i + j <= n; j += 1) {
            const [x, y, z] = [0, 1, 2].map(
              (axis) => (i * corners[0][axis] + j * corners[1][axis] + (n - i - j) * corners[2][axis]) / n,
            );
            if (Math.abs(z) <= 15) sampled = Math.min(sampled, Math.hypot(x, y) - 10);
          }
        if (sampled === Infinity) return;
        expect(found).toBeLessThanOrEqual(sampled + 1e-9);
        expect(found).toBeGreaterThan(sampled - 1.2);
      },
      { runs: 40 },
    );
  });
});
