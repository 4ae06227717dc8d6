import { describe, expect, it } from 'vitest';
import { foamId, layerId } from '../../src/base/ids.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { setShrinkage, setAllowForShrinkage } from '../../src/project/commands.ts';
import { setPieceFoam } from '../../src/project/piece-commands.ts';
import type { Project } from '../../src/project/project.ts';
import { BenchUpdater } from '../../src/worker/bench-update.ts';
import { makeSample, SAMPLE_RUN } from '../support/run-sample.ts';

const THICK = foamId('eva-10');

/** A polygon of the file in the first piece of an outcome. */
function firstFace({ cut }: Outcome): number {
  if (cut === null) throw new Error('not parted');
  return cut.mesh.faceOfTriangle[cut.patches[0].meshTriangles[0]];
}

const thickOne = (before: Outcome, project: Project): Project =>
  setPieceFoam([firstFace(before)], THICK).apply(project);

describe('a piece of another foam than its sheet', () => {
  const bracer = makeSample('bracer');
  const thick = bracer.then(({ project, pipeline, outcome }) => pipeline.run(thickOne(outcome, project), QUIET_WORK));

  it('is laid flat on surfaces of its own, its face where that of its neighbours is, and no other piece is made anew', async () => {
    const { outcome: before } = await bracer;
    const after = await thick;
    const [own, ...others] = after.pieces ?? [];
    expect([own.foam, own.thicknessMm]).toEqual(['eva-10', 10]);
    expect(others.every(({ thicknessMm }) => thicknessMm === 6)).toBe(true);
    const [shell, sheet] = [after.cut?.shells[0], after.cut?.shell];
    expect(shell?.backMm).toBe(-10);
    shell?.facePositions.forEach((x, i) => expect(Math.abs(x - (sheet?.facePositions[i] ?? NaN))).toBeLessThan(1e-9));
    expect(after.flats?.map((flat, i) => flat === before.flats?.[i])).toEqual([false, ...others.map(() => true)]);
    // Rolled inside its neighbours' middle it is the smaller.
    expect(own.surfaceAreaMm2).toBeLessThan(before.pieces?.[0].surfaceAreaMm2 ?? 0);
  });

  it('lies on a sheet of its own foam, in the list and in the report', async () => {
    const after = await thick;
    const onSheets = (after.sheets?.sheets ?? []).flatMap(({ foam, placements }) =>
      placements.map(({ piece }) => [piece, foam]),
    );
    expect(Object.fromEntries(onSheets)).toEqual(
      Object.fromEntries((after.pieces ?? []).map(({ id }, i) => [id, i === 0 ? 'eva-10' : 'eva-6'])),
    );
  });

  it('is taken back without making anything', async () => {
    const { project, pipeline, outcome: before } = await bracer;
    await thick;
    const back = await pipeline.run(project, QUIET_WORK, SAMPLE_RUN);
    expect(back.madeNew).toEqual([]);
    expect(back.pieces).toBe(before.pieces);
  });

  it('shrinks as its own foam does', async () => {
    const { project, pipeline, outcome: before } = await bracer;
    const shrinking = [setShrinkage(THICK, { alongPct: 3, acrossPct: 1 }), setAllowForShrinkage(true)].reduce(
      (changed, command) => command.apply(changed),
      thickOne(before, project),
    );
    const { pieces } = await pipeline.run(shrinking, QUIET_WORK);
    expect(pieces?.map(({ shrinkage }) => shrinkage?.alongPct)).toEqual([
      3,
      ...(pieces ?? []).slice(1).map(() => undefined),
    ]);
  });

  it('belongs to the outermost sheet of a wall alone, and stands out of it', async () => {
    const { project, pipeline } = await bracer;
    const [part] = project.parts;
    const [layer] = part.layers;
    const wall = { ...project, parts: [{ ...part, layers: [{ ...layer, id: layerId('inner') }, layer] }] };
    const before = await pipeline.run(wall, QUIET_WORK);
    const after = await pipeline.run(thickOne(before, wall), QUIET_WORK);
    const [outer, inner] = after.layers.map(({ cut }) => cut?.shells ?? []);
    expect(outer.map(({ backMm, thicknessMm }) => [backMm, thicknessMm])).toEqual(
      outer.map((_, i) => [-6, i === 0 ? 10 : 6]),
    );
    expect(inner.every(({ thicknessMm }) => thicknessMm === 6)).toBe(true);
  });

  it('is drawn with its own thickness on the bench', async () => {
    const after = await thick;
    const [own, ...others] = new BenchUpdater().next(after, 0).pieces?.patches ?? [];
    expect(others.some((patch) => 'skins' in patch)).toBe(false);
    const { skins, meshVertices } = own;
    const { face, back } = skins ?? {};
    if (face === undefined || back === undefined) throw new Error('no skins of its own');
    expect(face.length).toBe(3 * meshVertices.length);
    // As deep as its foam is where it stands on folds; seams are cut by the surface behind the facets, which is a little off them.
    const [shell] = after.cut?.shells ?? [];
    const away = (p: ArrayLike<number>, q: ArrayLike<number>, i: number, j: number): number =>
      Math.hypot(...[0, 1, 2].map((k) => p[3 * i + k] - q[3 * j + k]));
    meshVertices.forEach((v, i) => {
      const depth = away(shell.facePositions, shell.backPositions, v, v);
      expect(depth).toBeGreaterThan(9.99);
      expect(Math.abs(away(face, back, i, i) - depth)).toBeLessThan(0.1);
    });
  });
});
