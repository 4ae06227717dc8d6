import { describe, expect, it } from 'vitest';
import { contentHash } from '../../src/base/hash.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { topologyOf } from '../../src/mesh/topology.ts';
import type { SeamMarks, SeamPath } from '../../src/model/seams.ts';
import { seamGround } from '../../src/pipeline/seam-ground.ts';
import { searchSurface } from '../../src/pipeline/search-surface.ts';
import { newProject } from '../../src/project/new-project.ts';
import type { SculptPart } from '../../src/project/project.ts';
import { DrawnLines } from '../../src/pipeline/drawn-lines.ts';
import { Run } from '../../src/pipeline/run.ts';
import { expectOk } from '../support/expect-ok.ts';

/** A plate of two squares side by side, 0 1 2 below and 3 4 5 above, each of one polygon. */
const PLATE = 'v 0 0 0\nv 10 0 0\nv 20 0 0\nv 0 10 0\nv 10 10 0\nv 20 10 0\nf 1 2 5 4\nf 2 3 6 5\n';
/** From the middle of the left side straight across both squares: through the middle of the edge from 1 to 4. */
const ACROSS: SeamPath = {
  kind: 'butt',
  points: [
    { face: 0, bary: [0.5, 0, 0, 0.5] },
    { face: 1, bary: [0, 0.5, 0.5, 0] },
  ],
};

async function ground(seams: SeamMarks, change: Partial<SculptPart> = {}) {
  const bytes = new TextEncoder().encode(PLATE);
  const hash = await contentHash(bytes);
  const project = newProject('plate', { hash, fileName: 'plate.obj', format: 'obj' });
  const [first] = project.parts;
  const part: SculptPart = { ...first, scale: { by: 'unit', unit: 'mm' }, seams, ...change };
  const marked = { ...project, parts: [part] };
  const made = await seamGround(
    marked,
    new Map([[hash, { fileName: 'plate.obj', bytes }]]),
    { kind: 'foam' },
    QUIET_WORK,
  );
  return { ...expectOk(made), project: marked, part };
}

describe('the surface seams are sought on', () => {
  it('is the sculpt where no path is drawn', async () => {
    const { surface, sculpt } = await ground({ edges: [[4, 1]], paths: [] });
    expect(surface.mesh).toBe(sculpt.mesh);
    const isSeam = new Uint8Array(topologyOf(sculpt.mesh).edgeCount);
    isSeam[topologyOf(sculpt.mesh).edgeBetween(1, 4)] = 1;
    expect(surface.marksOf(isSeam)).toEqual({ edges: [[1, 4]], paths: [] });
  });

  it('is cut along paths, which stay, and has no seam along edges that only the cutting made', async () => {
    const { surface, sculpt, seams, wishes } = await ground({ edges: [[1, 4]], paths: [ACROSS] });
    const { mesh } = surface;
    expect(mesh.positions.length).toBeGreaterThan(sculpt.mesh.positions.length);
    const { edgeCount, edgeVertices } = topologyOf(mesh);
    const before = topologyOf(sculpt.mesh);
    const at = (v: number): readonly [number, number] => [mesh.positions[3 * v], mesh.positions[3 * v + 1]];
    const lines = Array.from({ length: before.edgeCount }, (_, e) =>
      [2 * e, 2 * e + 1].map((i) => at(before.edgeVertices[i])),
    );
    for (let e = 0; e < edgeCount; e += 1) {
      const ends = [2 * e, 2 * e + 1].map((i) => at(edgeVertices[i]));
      const isAcross = ends.every(([, y]) => Math.abs(y - 5) < 1e-9);
      const isOfSculpt = lines.some(([[ax, ay], [bx, by]]) =>
        ends.every(([x, y]) => Math.abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) < 1e-9),
      );
      expect(wishes.locked?.[e], `locked ${ends.join(' to ')}`).toBe(isAcross ? 1 : 0);
      if (!isAcross) expect(wishes.weights?.[e] === Infinity, `weight ${ends.join(' to ')}`).toBe(!isOfSculpt);
    }
    expect(surface.marksOf(seams.isSeam)).toEqual({ edges: [[1, 4]], paths: [ACROSS] });
  });

  it('tells half an edge as a path, from which the same seams come', async () => {
    const first = await ground({ edges: [], paths: [ACROSS] });
    const { surface, seams } = first;
    const topology = topologyOf(surface.mesh);
    const { positions } = surface.mesh;
    const middle = Array.from({ length: positions.length / 3 }, (_, v) => v).find(
      (v) => positions[3 * v] === 10 && Math.abs(positions[3 * v + 1] - 5) < 1e-9,
    );
    const half = seams.isSeam.slice();
    half[topology.edgeBetween(1, middle ?? -1)] = 1;
    const marks = surface.marksOf(half);
    expect(marks.edges).toEqual([]);
    expect(marks.paths).toHaveLength(2);
    const again = await ground(marks);
    expect(again.surface.mesh.positions).toEqual(surface.mesh.positions);
    expect(again.seams.isSeam).toEqual(half);
    expect(again.surface.marksOf(again.seams.isSeam)).toEqual(marks);
  });

  it('lets go of paths that do not stay', async () => {
    const { sculpt, project, part } = await ground({ edges: [[1, 4]], paths: [ACROSS] });
    const run = new Run(project, {}).needAtWork();
    run.sculpt = sculpt;
    const { surface: drawn } = await new DrawnLines().of(run, QUIET_WORK);
    const surface = searchSurface(sculpt, part, drawn, ({ locked }) => locked === true);
    const { edgeCount } = topologyOf(surface.mesh);
    const wishes = surface.withPaths({});
    expect(wishes.locked?.includes(1)).toBe(false);
    expect(wishes.weights?.filter((weight) => weight === Infinity).length).toBeGreaterThan(2);
    expect(surface.marksOf(new Uint8Array(edgeCount))).toEqual({ edges: [], paths: [] });
  });

  it('brings what is opposite and what is held to parts and whole edges', async () => {
    const { surface, sculpt, wishes } = await ground({ edges: [[1, 4]], paths: [ACROSS] }, { heldSeams: [[1, 4]] });
    const [before, after] = [topologyOf(sculpt.mesh), topologyOf(surface.mesh)];
    const opposite = new Int32Array(before.edgeCount).fill(-1);
    opposite[before.edgeBetween(0, 1)] = before.edgeBetween(1, 2);
    opposite[before.edgeBetween(1, 4)] = before.edgeBetween(1, 4);
    const found = surface.edgesOnMesh(opposite);
    expect(found[after.edgeBetween(0, 1)]).toBe(after.edgeBetween(1, 2));
    expect(found.filter((e) => e >= 0)).toHaveLength(1);
    // Two halves of the edge that is held, and the path.
    const along = [...(wishes.locked ?? [])].flatMap((value, e) => (value === 1 ? [e] : []));
    const upright = along.filter((e) => [0, 1].every((k) => surface.mesh.positions[3 * after.edgeVertices[2 * e + k]] === 10)); // prettier-ignore
    expect(upright).toHaveLength(2);
  });
});
