import { describe, expect, it } from 'vitest';
import { Cancelled, QUIET_WORK } from '../../../src/base/work.ts';
import { seededRandom } from '../../../src/base/random.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { flattenPatch } from '../../../src/steps/flatten/flatten-patch.ts';
import { expectProblem } from '../../support/expect-ok.ts';
import { boxMesh, meshOf, tubeMesh } from '../../support/meshes.ts';
import { checkFlatPiece } from '../../../src/steps/flatten/check-flat-piece.ts';
import { fingerprint, flatten, onePatch, referencePatch } from './flatten-support.ts';
import { needleDisc } from './needle-disc.ts';

describe('flattenPatch against the reference program (tests/reference/flatten/SOURCES.md)', () => {
  it.each([
    ['cylinder120-500', 4.0],
    ['cylinder120-2k', 4.0],
    ['frustum360-500', 4.0],
    ['frustum360-2k', 4.0],
    ['annulus-frustum-2k', 4.553204],
    ['hemisphere-500', 4.145927],
    ['hemisphere-2k', 4.141877],
    ['cap30-2k', 4.001599],
    ['cap45-2k', 4.0082],
    ['spot-flank', 4.706108],
    ['mask-1k', 4.088615],
    ['mask-5k', 4.093245],
  ])('%s reaches %f without a flip', async (name, best) => {
    const flat = await flatten(referencePatch(name));
    expect(flat.energy).toBeLessThan(best + 6e-5); /* the table is rounded to half of 1e-4 */
    expect(flat.flipped).toBe(0);
    expect(flat.solve.converged).toBe(true);
  });

  it('lays a mask full of needle and empty triangles flat without a flip, as near as the reference at true lengths', async () => {
    const flat = await flatten(referencePatch('mask-collapsed-1k'));
    expect(flat.flipped).toBe(0);
    expect(flat.energy).toBeLessThan(4.09006 + 1e-5);
    expect(flat.solve.converged).toBe(true);
  });

  it.each([
    ['cap30-2k', 30],
    ['cap45-2k', 45],
  ])("never undercuts Milnor's bound on %s", async (name, degrees) => {
    const flat = await flatten(referencePatch(name));
    const x = (degrees * Math.PI) / 180;
    const ratio = Math.max(...flat.major) / Math.min(...flat.minor);
    expect(ratio).toBeGreaterThan((x / Math.sin(x)) * 0.995);
  });
});

describe('flattenPatch on developable shapes', () => {
  it('rolls a tube out to the perimeter of its own polygon', async () => {
    const sides = 128;
    const flat = await flatten(tubeMesh(sides, 50, 200, 3), [
      [0, 128],
      [128, 256],
      [256, 384],
    ]);
    const perimeter = sides * 2 * 50 * Math.sin(Math.PI / sides);
    const xs = flat.uv.filter((_, i) => i % 2 === 0);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(perimeter, 9);
    expect(flat.solve.method).toBe('unfolded');
    expect(flat.stretchPct.max).toBeLessThan(1e-9);
  });

  it('reaches the same by minimising where the tube is a little out of true', async () => {
    const rand = seededRandom(3);
    const tube = tubeMesh(32, 50, 100, 4);
    const rough: Mesh = { ...tube, positions: tube.positions.map((x) => x + 1e-5 * (rand() - 0.5)) };
    const seam = [0, 1, 2, 3].map((j) => [32 * j, 32 * (j + 1)] as const);
    const flat = await flatten(rough, seam);
    expect(flat.solve.method).toBe('minimised');
    expect(flat.stretchPct.max).toBeLessThan(1e-3);
  });
});

describe('flattenPatch, whatever the input', () => {
  const cap = referencePatch('hemisphere-500');

  it('gives the same shape after a move, a turn and a renumbering', async () => {
    const rand = seededRandom(11);
    const count = cap.positions.length / 3;
    const order = Array.from({ length: count }, (_, i) => i).sort(
      (a, b) => (Math.sin(a * 12.9898) % 1) - (Math.sin(b * 12.9898) % 1),
    );
    const newNumber = new Map(order.map((old, i) => [old, i]));
    const turned = order.map((v) => {
      const [x, y, z] = cap.positions.subarray(3 * v, 3 * v + 3);
      return [0.6 * x - 0.8 * y + 40, 0.8 * x + 0.6 * y - 7, z + rand() * 0 + 3] as const;
    });
    const faces = Array.from({ length: cap.triangles.length / 3 }, (_, t) =>
      [0, 1, 2].map((k) => newNumber.get(cap.triangles[3 * t + k]) ?? -1),
    );
    const [a, b] = [await flatten(cap), await flatten(meshOf(turned, faces.reverse()))];
    const [fa, fb] = [fingerprint(a.uv), fingerprint(b.uv)];
    fa.forEach((r, i) => expect(Math.abs(r - fb[i])).toBeLessThan(1e-6));
  });

  it('gives the mirror image for a mirrored patch', async () => {
    const mask = referencePatch('mask-1k');
    const mirrored: Mesh = {
      ...mask,
      positions: mask.positions.map((x, i) => (i % 3 === 0 ? -x : x)),
      triangles: mask.triangles.map((_, h) => mask.triangles[h % 3 === 0 ? h : h % 3 === 1 ? h + 1 : h - 1]),
    };
    const [a, b] = [await flatten(mask), await flatten(mirrored)];
    expect(b.energy).toBeCloseTo(a.energy, 10);
    const [fa, fb] = [fingerprint(a.uv), fingerprint(b.uv)];
    fa.forEach((r, i) => expect(Math.abs(r - fb[i])).toBeLessThan(1e-6));
  });

  it('is true to scale: twice the size gives twice the pattern and the same stretch', async () => {
    const double: Mesh = { ...cap, positions: cap.positions.map((x) => 2 * x) };
    const [a, b] = [await flatten(cap), await flatten(double)];
    expect(b.stretchPct.max).toBeCloseTo(a.stretchPct.max, 6);
    expect(Math.max(...b.uv)).toBeCloseTo(2 * Math.max(...a.uv), 5);
  });

  it('finds the same from an earlier result', async () => {
    const cold = await flatten(cap);
    const warm = await flattenPatch(onePatch(cap), cap.positions, { start: cold.uv }, QUIET_WORK);
    expect(warm.ok && warm.value.solve.steps).toBeLessThanOrEqual(1);
    expect(warm.ok && warm.value.energy).toBeCloseTo(cold.energy, 12);
  });

  it('leaves no flip in random discs full of needles and empty triangles, and settles', async () => {
    for (let seed = 1; seed <= 25; seed += 1) {
      const mesh = needleDisc(seededRandom(seed));
      const patch = onePatch(mesh);
      const result = await flattenPatch(patch, mesh.positions, {}, QUIET_WORK);
      expect(result.ok && result.value.solve.converged, `seed ${seed}`).toBe(true);
      if (result.ok) checkFlatPiece(patch, result.value);
    }
  });

  it('survives crumpled patches with needles without a flip', async () => {
    for (let seed = 1; seed <= 12; seed += 1) {
      const flat = await flatten(crumpledSheet(seed));
      expect(flat.flipped, `seed ${seed}`).toBe(0);
      expect([...flat.uv].every(Number.isFinite), `seed ${seed}`).toBe(true);
    }
  });

  it('says that a closed surface has to be parted first', async () => {
    const result = await flattenPatch(onePatch(boxMesh(10)), boxMesh(10).positions, {}, QUIET_WORK);
    expectProblem(result, 'flatten/not-flat-able');
  });

  it('refuses a piece without any area', async () => {
    const line = meshOf(
      [
        [0, 0, 0],
        [1, 0, 0],
        [2, 0, 0],
      ],
      [[0, 1, 2]],
    );
    expectProblem(await flattenPatch(onePatch(line), line.positions, {}, QUIET_WORK), 'flatten/no-area');
  });

  it('stops when it is called off', async () => {
    let pauses = 0;
    const work = {
      pause: () => {
        pauses += 1;
        if (pauses > 3) throw new Cancelled();
        return undefined;
      },
    };
    await expect(flattenPatch(onePatch(cap), cap.positions, {}, work)).rejects.toThrow(Cancelled);
  });

  it('tells that more than one turn of a helix folds over itself although nothing stretches', async () => {
    const turns = 1.3;
    const steps = 60;
    const points: [number, number, number][] = [];
    for (let i = 0; i <= steps; i += 1) {
      const angle = (2 * Math.PI * turns * i) / steps;
      for (const r of [40, 60]) points.push([r * Math.cos(angle), r * Math.sin(angle), 0.002 * i]);
    }
    const faces = Array.from({ length: steps }, (_, i) => [2 * i, 2 * i + 1, 2 * i + 3, 2 * i + 2]);
    const flat = await flatten(meshOf(points, faces));
    expect(flat.stretchPct.max).toBeLessThan(0.01);
    expect(flat.overlaps.length).toBeGreaterThan(10);
  });

  it('does not call a full disc cut open along one radius folded over', async () => {
    const sides = 48;
    const points: [number, number, number][] = [[0, 0, 0]];
    for (let i = 0; i < sides; i += 1)
      points.push([70 * Math.cos((2 * Math.PI * i) / sides), 70 * Math.sin((2 * Math.PI * i) / sides), 0]);
    const faces = Array.from({ length: sides }, (_, i) => [0, 1 + i, 1 + ((i + 1) % sides)]);
    expect((await flatten(meshOf(points, faces), [[0, 1]])).overlaps).toEqual([]);
  });
});

/** A sheet of random bumps whose inner rows are squeezed into needles. */
function crumpledSheet(seed: number): Mesh {
  const rand = seededRandom(seed);
  const n = 12;
  const points: [number, number, number][] = [];
  for (let j = 0; j <= n; j += 1) {
    for (let i = 0; i <= n; i += 1) {
      const squeeze = j % 3 === 1 ? 1e-5 : 1;
      points.push([i * 10 + 3 * rand(), (j - 1) * 10 + (j % 3 === 1 ? -10 + 10 * squeeze : 0) + 10, 12 * rand()]);
    }
  }
  const faces: number[][] = [];
  for (let j = 0; j < n; j += 1) {
    for (let i = 0; i < n; i += 1) {
      const a = j * (n + 1) + i;
      faces.push([a, a + 1, a + n + 2, a + n + 1]);
    }
  }
  return meshOf(points, faces);
}
