import { describe, expect, it } from 'vitest';
import { layerId } from '../../src/base/ids.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { boxOfPoints3 } from '../../src/mesh/measure.ts';
import type { Project } from '../../src/project/project.ts';
import { layerPlans } from '../../src/pipeline/layer-plan.ts';
import { reportOf } from '../../src/pipeline/write-files.ts';
import { BenchUpdater } from '../../src/worker/bench-update.ts';
import { makeSample, runSample } from '../support/run-sample.ts';

/** A wall of two sheets, the inner one `innerMm` thick and the outer one `outerMm`. */
function twoSheets(project: Project, innerMm: number, outerMm: number): Project {
  const [part] = project.parts;
  const [layer] = part.layers;
  const inner = { ...layer, id: layerId('layer-2'), thicknessMm: innerMm };
  return { ...project, parts: [{ ...part, layers: [inner, { ...layer, thicknessMm: outerMm }] }] };
}

describe('where the sheets of a wall lie', () => {
  const layer = (id: string, thicknessMm: number) => ({
    id: layerId(id),
    foam: 'f' as never,
    thicknessMm,
    neutralFraction: 0.5,
    allowForShrinkage: false,
  });

  it.each([
    ['face', -16, -10],
    ['middle', -8, -2],
    ['back', 0, 6],
  ] as const)('the model is the %s', (modelIs, innerMm, outerMm) => {
    const plans = layerPlans({ modelIs, layers: [layer('in', 6), layer('out', 10)] });
    expect(plans.map(({ choice, sheet, backMm }) => [choice.id, sheet, backMm])).toEqual([
      ['out', 1, outerMm],
      ['in', 2, innerMm],
    ]);
  });

  it('leaves a single sheet to be the whole wall', () => {
    expect(layerPlans({ modelIs: 'face', layers: [layer('only', 6)] })[0].backMm).toBeUndefined();
  });
});

describe('a wall of two sheets', () => {
  const wall = makeSample('bracer', (project) => twoSheets(project, 6, 2));

  it('is one shell outside the other, each with pieces of its own size, numbers, names and letters', async () => {
    const { outcome } = await wall;
    const [outer, inner] = outcome.layers.map(({ cut }) => cut?.shell);
    if (outer === undefined || inner === undefined) throw new Error('two sheets expected');
    // The back of the outer sheet is the face of the inner one.
    outer.backPositions.forEach((x, i) => expect(Math.abs(x - inner.facePositions[i])).toBeLessThan(1e-9));
    const [first, second] = outcome.layers.map(({ pieces }) => pieces ?? []);
    expect(outcome.pieces).toEqual([...first, ...second]);
    expect(outcome.pieces?.map(({ number }) => number)).toEqual([...(outcome.pieces ?? [])].map((_, i) => i + 1));
    second.forEach((piece, i) => {
      expect(piece.name).toBe(`${first[i].name}, sheet 2`);
      expect(piece.surfaceAreaMm2).toBeLessThan(first[i].surfaceAreaMm2);
      expect(piece.thicknessMm).toBe(6);
    });
    const letters = outcome.seams?.filter(({ kind }) => kind !== 'open').map(({ letter }) => letter) ?? [];
    expect(new Set(letters).size).toBe(letters.length);
    expect(new Set(outcome.pieces?.map(({ id }) => id)).size).toBe(outcome.pieces?.length);
    expect(new Set(outcome.seams?.map(({ id }) => id)).size).toBe(outcome.seams?.length);
  });

  it('has in each sheet the pieces that sheet has by itself where it lies', async () => {
    const { outcome: both } = await wall;
    const alone = await runSample('bracer', (project) => ({
      ...project,
      parts: [{ ...project.parts[0], layers: project.parts[0].layers.map((own) => ({ ...own, thicknessMm: 2 })) }],
    }));
    const outer = both.layers[0].pieces ?? [];
    expect(outer.map(({ revision }) => revision)).toEqual(alone.pieces?.map(({ revision }) => revision));
  });

  it('closes in every sheet, and tells all of them', async () => {
    const { outcome } = await wall;
    const { dryFit, layers } = outcome;
    expect(dryFit?.perSeam.length).toBe(layers.reduce((sum, layer) => sum + (layer.dryFit?.perSeam.length ?? 0), 0));
    expect(dryFit?.worstGapMm).toBeLessThan(0.05);
    const report = JSON.parse(reportOf(outcome)) as { layers: { id: string; backMm: number }[]; pieces: unknown[] };
    expect(report.layers.map(({ id, backMm }) => [id, backMm])).toEqual([
      ['layer-2', -8],
      [layers[0].plan.choice.id, -2],
    ]);
    expect(report.pieces.length).toBe(outcome.pieces?.length);
  });

  it('gives the body the back of the innermost sheet', async () => {
    const tape = { id: 't', name: 'forearm', normal: [0, 1, 0] as const };
    const { project, pipeline, outcome } = await wall;
    const { min, max } = boxOfPoints3(outcome.sculpt?.mesh.positions ?? new Float64Array());
    const pointInFile = [(min.x + max.x) / 2, (min.y + max.y) / 2, (min.z + max.z) / 2] as const;
    const taped = ({ parts: [part] }: Project) =>
      pipeline.run({ ...project, parts: [{ ...part, tapes: [{ ...tape, pointInFile }] }] }, QUIET_WORK);
    const two = await taped(project);
    const [part] = project.parts;
    const one = await taped({ ...project, parts: [{ ...part, layers: [{ ...part.layers[0], thicknessMm: 8 }] }] });
    const girth = (outcome: typeof two) => outcome.bodyFit?.tapes[0].back?.girthMm ?? NaN;
    expect(Math.abs(girth(two) - girth(one))).toBeLessThan(1e-9);
  });

  it('makes nothing anew in the other sheet when one is changed', async () => {
    const { project, pipeline } = await wall;
    const before = await pipeline.run(project, QUIET_WORK);
    const after = await pipeline.run({ ...project }, QUIET_WORK);
    expect(after.madeNew).toEqual([]);
    expect(after.dryFit).toBe(before.dryFit);
    const [part] = project.parts;
    const [inner, outer] = part.layers;
    const layers = [{ ...inner, thicknessMm: 10 }, outer];
    const thicker = await pipeline.run({ ...project, parts: [{ ...part, layers }] }, QUIET_WORK);
    expect(thicker.layers[0].flats?.every((flat, i) => flat === before.layers[0].flats?.[i])).toBe(true);
    expect(thicker.layers[1].flats?.some((flat, i) => flat === before.layers[1].flats?.[i])).toBe(false);
  });

  it('shows the sheet that is asked for on the bench, and the pieces of all', async () => {
    const { outcome } = await wall;
    const updater = new BenchUpdater();
    const first = updater.next(outcome, 0);
    const second = updater.next(outcome, first.number, 2);
    const [outer, inner] = outcome.layers.map(({ cut, pieces }) => ({ shell: cut?.shell, pieces: pieces ?? [] }));
    expect(first.shell?.thicknessMm).toBe(2);
    expect(second.shell?.thicknessMm).toBe(6);
    expect('sculpt' in second || 'sheets' in second).toBe(false);
    expect(Array.from(second.shell?.facePositions ?? []).slice(0, 3)).toEqual(
      Array.from(new Float32Array(inner.shell?.facePositions ?? [])).slice(0, 3),
    );
    for (const [update, own] of [
      [first, outer],
      [second, inner],
    ] as const) {
      const view = update.pieces;
      if (view === null || view === undefined) throw new Error('pieces expected');
      expect(view.patches.length).toBe(outer.pieces.length + inner.pieces.length);
      // Every piece finds its own patch, and those on the bench are of the sheet that was asked for.
      view.pieces.forEach((piece, i) => expect(view.patches[piece.patch].piece).toBe(i));
      const onBench = view.patches.slice(0, view.benchPatches).map(({ piece }) => view.pieces[piece].id);
      expect(onBench).toEqual(own.pieces.map(({ id }) => id));
    }
    // A sheet that was taken away is no longer asked for.
    expect(updater.next(outcome, 0, 3).pieces?.sheet).toBe(1);
  });
});
