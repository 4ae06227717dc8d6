import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/base/random.ts';
import { graphOfTriangles } from '../../../src/geom/sparse-graph.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { restShapes } from '../../../src/steps/flatten/rest-shapes.ts';
import { angleDefect, unfold } from '../../../src/steps/flatten/unfold.ts';
import { cone, tube } from '../../reference/handbook/polygon-solids.ts';
import { meshOf, tubeMesh } from '../../support/meshes.ts';
import { flatten, onePatch, referencePatch } from './flatten-support.ts';

/** Greatest share by which a side of a triangle changes its length. */
function worstSide(mesh: Mesh, seams: readonly (readonly [number, number])[], uv: Float64Array): number {
  const { triangles, meshVertices } = onePatch(mesh, seams);
  let worst = 0;
  for (let h = 0; h < triangles.length; h += 1) {
    const [v, w] = [triangles[h], triangles[h % 3 === 2 ? h - 2 : h + 1]];
    const [p, q] = [3 * meshVertices[v], 3 * meshVertices[w]];
    const flat = Math.hypot(uv[2 * w] - uv[2 * v], uv[2 * w + 1] - uv[2 * v + 1]);
    const { positions: x } = mesh;
    worst = Math.max(worst, Math.abs(flat / Math.hypot(x[q] - x[p], x[q + 1] - x[p + 1], x[q + 2] - x[p + 2]) - 1));
  }
  return worst;
}

const unfoldedOf = (mesh: Mesh, seams: readonly (readonly [number, number])[] = []) => {
  const patch = onePatch(mesh, seams);
  return unfold(restShapes(patch, mesh.positions), graphOfTriangles(patch.meshVertices.length, patch.triangles));
};

describe('unfolding', () => {
  it('lays a cone of base radius 100 and height 240 out as its own fan: sides 260 long, angles as in space', async () => {
    const sides = 128;
    const { corners, faces, seams } = cone(sides, 100, 240);
    const mesh = meshOf(corners, faces);
    const flat = await flatten(mesh, seams);
    expect(flat.solve.method).toBe('unfolded');
    expect(worstSide(mesh, seams, flat.uv)).toBeLessThan(1e-12);
    const apex = onePatch(mesh, seams).meshVertices.indexOf(sides);
    const rim = [...onePatch(mesh, seams).meshVertices.keys()].filter((v) => v !== apex);
    const angles = rim
      .map((v) => Math.atan2(flat.uv[2 * v + 1] - flat.uv[2 * apex + 1], flat.uv[2 * v] - flat.uv[2 * apex]))
      .sort((a, b) => a - b);
    const gaps = angles.map((angle, i) =>
      i === 0 ? angle + 2 * Math.PI - angles[angles.length - 1] : angle - angles[i - 1],
    );
    const fan = 2 * sides * Math.asin((100 * Math.sin(Math.PI / sides)) / 260);
    expect(2 * Math.PI - Math.max(...gaps)).toBeCloseTo(fan, 12);
    // The round cone's sector of 138.461538 degrees, less what 128 sides fall short by.
    expect((fan * 180) / Math.PI).toBeCloseTo(138.461538, 1);
  });

  it('lays a nearly cylindrical frustum out with the arc height of its large end true', async () => {
    const { corners, faces, seams } = tube(256, 60, 58, () => 300);
    const mesh = meshOf(corners, faces);
    const flat = await flatten(mesh, seams);
    expect(flat.solve.method).toBe('unfolded');
    expect(worstSide(mesh, seams, flat.uv)).toBeLessThan(1e-11);
    const ys = flat.uv.filter((_, i) => i % 2 === 1);
    const xs = flat.uv.filter((_, i) => i % 2 === 0);
    const slant = 300.006667;
    const height = Math.min(Math.max(...ys) - Math.min(...ys), Math.max(...xs) - Math.min(...xs));
    // Slant height and the sagitta of the lower arc (1.973805 for the round frustum) less that of the upper arc's chord.
    expect(height).toBeGreaterThan(slant);
    expect(height).toBeLessThan(slant + 1.98);
  });

  it('keeps every side of a long crumpled strip to 1e-9 of its length', async () => {
    const rand = seededRandom(21);
    const points: [number, number, number][] = [];
    for (let i = 0; i < 2000; i += 1) points.push([4 * i + rand(), 10 * (i % 2) + 4 * rand(), 6 * rand()]);
    const faces = Array.from({ length: 1998 }, (_, i) => (i % 2 === 0 ? [i, i + 2, i + 1] : [i, i + 1, i + 2]));
    const mesh = meshOf(points, faces);
    const flat = await flatten(mesh);
    expect(flat.solve.method).toBe('unfolded');
    expect(worstSide(mesh, [], flat.uv)).toBeLessThan(1e-9);
  });

  it('survives slivers: triangles 300 mm long and a hundredth wide', async () => {
    const sides = 4000;
    const tubes = tubeMesh(sides, 6, 300);
    const flat = await flatten(tubes, [[0, sides]]);
    expect(flat.solve.method).toBe('unfolded');
    expect(worstSide(tubes, [[0, sides]], flat.uv)).toBeLessThan(1e-9);
  });

  it('goes over long hinges first: rows of needles in a tilted plate do not turn rounding into slant', async () => {
    const n = 14;
    const along = (i: number): number => 8 * i - (i % 3 === 1 ? 8 - 1e-4 : 0);
    const points = Array.from({ length: n * n }, (_, k): [number, number, number] => {
      const [x, y] = [along(k % n), along(Math.floor(k / n))];
      return [0.6 * x - 0.48 * y, 0.8 * x + 0.36 * y, 0.8 * y];
    });
    const faces: number[][] = [];
    for (let j = 0; j + 1 < n; j += 1)
      for (let i = 0; i + 1 < n; i += 1) faces.push([j * n + i, j * n + i + 1, j * n + n + i + 1, j * n + n + i]);
    const mesh = meshOf(points, faces);
    const { gap } = unfoldedOf(mesh);
    expect(gap).toBeLessThan(1e-13);
    expect((await flatten(mesh)).solve.method).toBe('unfolded');
  });

  it('lays out a bent plate with a window in it', async () => {
    const n = 12;
    const points: [number, number, number][] = [];
    for (let j = 0; j <= n; j += 1) {
      for (let i = 0; i <= n; i += 1) points.push([50 * Math.sin(i / 8), 8 * j, 50 * Math.cos(i / 8)]);
    }
    const faces: number[][] = [];
    for (let j = 0; j < n; j += 1) {
      for (let i = 0; i < n; i += 1) {
        if (Math.abs(i - 5) < 2 && Math.abs(j - 6) < 3) continue;
        const a = j * (n + 1) + i;
        faces.push([a, a + 1, a + n + 2, a + n + 1]);
      }
    }
    const flat = await flatten(meshOf(points, faces));
    expect(flat.solve.method).toBe('unfolded');
    expect(flat.overlaps).toEqual([]);
  });

  it('tells by how much a dome misses', () => {
    expect(unfoldedOf(referencePatch('cap30-2k')).gap).toBeGreaterThan(1e-3);
    expect(unfoldedOf(referencePatch('cylinder120-500')).gap).toBeLessThan(1e-6);
  });
});

describe('angleDefect', () => {
  const defect = (mesh: Mesh, seams: readonly (readonly [number, number])[] = []): number => {
    const patch = onePatch(mesh, seams);
    return angleDefect(restShapes(patch, mesh.positions), patch.loops);
  };

  it('is what the ends turn round less than a full turn: 2 pi (1 - cos x) for a cap of half-angle x', () => {
    // Border vertices of the mesh stand outside; half a row of triangles is missing from the sum.
    expect(defect(referencePatch('hemisphere-2k'))).toBeGreaterThan(0.93 * 2 * Math.PI);
    expect(defect(referencePatch('hemisphere-2k'))).toBeLessThan(2 * Math.PI);
    expect(defect(referencePatch('cap30-2k'))).toBeLessThan(2 * Math.PI * (1 - Math.cos(Math.PI / 6)));
  });

  it('is 0 for a tube and for a cone slit to its apex', () => {
    expect(
      defect(
        tubeMesh(40, 30, 80, 5),
        [0, 1, 2, 3, 4].map((j) => [40 * j, 40 * (j + 1)] as const),
      ),
    ).toBeLessThan(1e-11);
    const { corners, faces, seams } = cone(64, 50, 70);
    expect(defect(meshOf(corners, faces), seams)).toBe(0);
  });
});
