import { describe, expect, it } from 'vitest';
import { runAtOnce } from '../../src/base/stepwise.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { propSteps } from '../../src/pipeline/prop.ts';
import { reportOf } from '../../src/pipeline/write-files.ts';
import { setStagger } from '../../src/project/layer-commands.ts';
import type { Project, SculptPart } from '../../src/project/project.ts';
import { readProjectFile, writeProjectFile } from '../../src/project/project-file.ts';
import type { Solid } from '../reference/handbook/polygon-solids.ts';
import { BenchUpdater } from '../../src/worker/bench-update.ts';
import { runSample, sampleProject } from '../support/run-sample.ts';
import { inSheets, outcomeOf, solidProject } from '../support/run-solid.ts';

/** The inner of two sheets 6 and 2 mm thick with its seams so far beside those of the outer one. */
function staggeredPart(part: SculptPart, staggerMm: number): SculptPart {
  const [inner, outer] = inSheets(part, 6, 2).layers;
  return { ...part, layers: [{ ...inner, staggerMm }, outer] };
}

const staggered = (project: Project, staggerMm: number): Project => ({
  ...project,
  parts: [staggeredPart(project.parts[0], staggerMm)],
});

/** An open tube of 48 sides round z with one slit along x, mm. */
function slitTube(r: number, height: number): Solid {
  const sides = 48;
  const ring = (z: number) =>
    Array.from({ length: sides }, (_, i): [number, number, number] => {
      const angle = (2 * Math.PI * i) / sides;
      return [r * Math.cos(angle), r * Math.sin(angle), z];
    });
  const faces = Array.from({ length: sides }, (_, i) => {
    const next = (i + 1) % sides;
    return [i, next, sides + next, sides + i];
  });
  return { corners: [...ring(0), ...ring(height)], faces, seams: [[0, sides]] };
}

describe('a wall of two sheets with staggered seams', () => {
  it('turns the slit of the inner sheet of a tube by the distance, and leaves its piece as large', async () => {
    const tube = slitTube(60, 100);
    const plain = await outcomeOf(tube, (part) => inSheets(part, 6, 2));
    const turned = await outcomeOf(tube, (part) => staggeredPart(part, 20));
    expect(turned.stopped).toBeNull();
    const cut = turned.layers[1].cut;
    const slit = cut?.chains.find(({ kind }) => kind === 'butt');
    const at = cut?.mesh.positions.subarray(3 * (slit?.vertices[0] ?? 0)) ?? [];
    // Along the 48 sides of the sculpt, each 2 R sin(pi / 48) long: two whole ones, and a share of the third.
    const side = 120 * Math.sin(Math.PI / 48);
    const share = 20 / side - 2;
    const [from, to] = [2, 3].map((i) => [60 * Math.cos((i * Math.PI) / 24), 60 * Math.sin((i * Math.PI) / 24)]);
    expect(at[0]).toBeCloseTo(from[0] + share * (to[0] - from[0]), 9);
    expect(Math.abs(at[1])).toBeCloseTo(from[1] + share * (to[1] - from[1]), 9);
    turned.layers.forEach(({ pieces }, sheet) => {
      expect(pieces?.length).toBe(1);
      const before = plain.layers[sheet].pieces ?? [];
      // On the prop, not as cut: a slit on a flat side is cut square, one on a corner with a bevel.
      expect((pieces?.[0].surfaceAreaMm2 ?? 0) / before[0].surfaceAreaMm2).toBeCloseTo(1, 9);
    });
    expect(turned.dryFit?.worstGapMm).toBeLessThan(0.01);
  });

  it('fits dry on the shoulder plate, sides of seams as long as each other, and shows and writes all of it', async () => {
    const outcome = await runSample('shoulder-plate', (project) => staggered(project, 15));
    const [outer, inner] = outcome.layers;
    expect(inner.pieces?.length).toBe(outer.pieces?.length);
    expect(inner.dryFit?.worstGapMm).toBeLessThan(0.7);
    expect(inner.dryFit?.worstOverlapMm).toBeLessThan(0.7);
    for (const { differenceMm } of inner.seams ?? []) expect(Math.abs(differenceMm)).toBeLessThan(0.1);
    expect(new Set(outcome.seams?.map(({ id }) => id)).size).toBe(outcome.seams?.length);
    // Every place that is told is one of the sculpt.
    const mesh = outcome.sculpt?.mesh;
    if (mesh === undefined) throw new Error('a sculpt expected');
    for (const { where } of outcome.findings) {
      for (const t of where.triangles ?? []) expect(t).toBeLessThan(mesh.triangles.length / 3);
      for (const v of [...(where.vertices ?? []), ...(where.edges ?? []).flat()])
        expect(v).toBeLessThan(mesh.positions.length / 3);
    }
    // What lies on the bench is the sheet's own surface, with corners of the sculpt under their numbers.
    const view = new BenchUpdater().next(outcome, 0, 2);
    expect(view.sculpt?.triangles.length).toBe(inner.cut?.mesh.triangles.length);
    expect(view.seams?.chainOfEdge.filter((chain) => chain >= 0).length).toBe(
      inner.cut?.chains.reduce((all, { vertices }) => all + vertices.length - 1, 0),
    );
    expect(view.sculpt?.positions.subarray(0, mesh.positions.length)).toEqual(new Float32Array(mesh.positions));
    expect(() => JSON.parse(reportOf(outcome)) as unknown).not.toThrow();
    expect(runAtOnce(propSteps(outcome))?.plates.length).toBe(outcome.pieces?.length);
  });

  it('leaves the sheet that is seen as it is, and makes only the other anew', async () => {
    const { project, pipeline } = await sampleProject('shoulder-plate');
    const before = await pipeline.run(staggered(project, 15), QUIET_WORK);
    const again = await pipeline.run(staggered(project, 15), QUIET_WORK);
    expect(again.madeNew).toEqual([]);
    const other = await pipeline.run(staggered(project, 12), QUIET_WORK);
    expect(other.layers[0].cut?.chains).toBe(before.layers[0].cut?.chains);
    expect(other.layers[0].pieces).toBe(before.layers[0].pieces);
    expect(other.layers[1].pieces).not.toBe(before.layers[1].pieces);
  });

  it('means nothing for the sheet that is seen', async () => {
    const tube = slitTube(60, 100);
    const [plain, told] = await Promise.all(
      [0, 20].map((mm) =>
        outcomeOf(tube, (part) => {
          const wall = inSheets(part, 6, 2);
          return {
            ...wall,
            layers: wall.layers.map((one, i) => (i === 1 && mm > 0 ? { ...one, staggerMm: mm } : one)),
          };
        }),
      ),
    );
    expect(told.pieces?.map(({ revision }) => revision)).toEqual(plain.pieces?.map(({ revision }) => revision));
  });
});

describe('how far seams are staggered', () => {
  it('is kept in the project file, and undone by 0', async () => {
    const { project, pipeline } = await solidProject(slitTube(60, 100), (part) => inSheets(part, 6, 2));
    const [{ id }] = project.parts[0].layers;
    const set = setStagger(id, -20).apply(project);
    expect(set.parts[0].layers[0].staggerMm).toBe(-20);
    const { hash } = project.parts[0].source;
    const source = pipeline.sourceOf(hash);
    if (source === undefined) throw new Error('a source expected');
    const read = await readProjectFile(writeProjectFile(set, new Map([[hash, source]])), 'tube');
    expect(read.ok && read.value.project.parts[0].layers[0].staggerMm).toBe(-20);
    expect('staggerMm' in setStagger(id, 0).apply(set).parts[0].layers[0]).toBe(false);
  });

  it.each([1e-3, 0.5, 201, Infinity, NaN])('is refused at %d mm', async (mm) => {
    const { project, pipeline } = await solidProject(slitTube(60, 100), (part) => inSheets(part, 6, 2));
    const [layer] = project.parts[0].layers;
    expect(setStagger(layer.id, mm).apply(project)).toBe(project);
    const { hash } = project.parts[0].source;
    const source = pipeline.sourceOf(hash);
    if (source === undefined) throw new Error('a source expected');
    const text = writeProjectFile(setStagger(layer.id, 20).apply(project), new Map([[hash, source]]));
    const word = Number.isFinite(mm) ? String(mm) : 'null';
    const broken = text.replace(/"staggerMm": ?20/, `"staggerMm":${word}`);
    expect(broken).not.toBe(text);
    expect((await readProjectFile(broken, 'tube')).ok).toBe(false);
  });
});
