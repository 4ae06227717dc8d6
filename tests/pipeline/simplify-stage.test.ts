import { describe, expect, it } from 'vitest';
import { runAtOnce } from '../../src/base/stepwise.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { checkMesh } from '../../src/mesh/check-mesh.ts';
import { triangleCount } from '../../src/mesh/mesh.ts';
import { addRegion } from '../../src/project/commands.ts';
import type { Project, SculptPart, SimplifyChoice } from '../../src/project/project.ts';
import { setSimplify } from '../../src/project/simplify-commands.ts';
import { Run } from '../../src/pipeline/run.ts';
import { borderVertices, keepsOf } from '../../src/pipeline/simplify-keeps.ts';
import { SimplifyStage } from '../../src/pipeline/simplify-stage.ts';
import { crossingSteps } from '../../src/steps/read/self-crossing.ts';
import { boxMesh } from '../support/meshes.ts';
import { sampleProject } from '../support/run-sample.ts';
import { solidProject } from '../support/run-solid.ts';

const AREA = Array.from({ length: 24 }, (_, i) => 100 + i);

async function made(choice: Omit<SimplifyChoice, 'keep'>) {
  const { project, pipeline } = await sampleProject('bracer');
  const painted = addRegion('Patch', AREA, 'normal', 'clear').apply(project);
  const sculpt = await pipeline.sculptOf(painted, QUIET_WORK);
  if (sculpt === null) throw new Error('no sculpt');
  const simpler: Project = setSimplify({ ...choice, keep: keepsOf(sculpt.mesh, painted.parts[0]) }).apply(painted);
  const outcome = await pipeline.run(simpler, QUIET_WORK);
  if (outcome.stopped !== null) throw new Error(outcome.stopped.problem.text);
  const told = outcome.findings.find(({ code }) => code.startsWith('simplify/'));
  return { pipeline, simpler, full: sculpt.mesh, outcome, told };
}

describe('a sculpt made simpler in the chain', () => {
  it('parts along the same seams, keeps areas and the mirror, and tells how far it moved', async () => {
    const { pipeline, simpler, full, outcome, told } = await made({ triangles: 240 });
    const mesh = outcome.sculpt?.mesh;
    if (mesh === undefined || outcome.sculpt?.model === undefined) throw new Error('no sculpt');
    checkMesh(mesh);
    expect(triangleCount(mesh)).toBeLessThan(triangleCount(full));
    // Corners are where they were, under the numbers they had.
    mesh.fileVertex.forEach((number, v) => {
      const was = full.vertexOfFile[number];
      expect([...mesh.positions.subarray(3 * v, 3 * v + 3)]).toEqual([
        ...full.positions.subarray(3 * was, 3 * was + 3),
      ]);
    });
    expect(outcome.findings.filter(({ code }) => code === 'seams/lost' || code.startsWith('wish/'))).toEqual([]);
    expect(outcome.mirror?.pairedShare).toBe(1);
    // The area has the border it had, corner by corner.
    const { regions } = simpler.parts[0];
    const border = (of: typeof mesh): number[] =>
      [...borderVertices(of, regions)].map((v) => of.fileVertex[v]).sort((a, b) => a - b);
    expect(border(mesh)).toEqual(border(full));
    expect(told).toMatchObject({ code: 'simplify/done', severity: 'note', unit: 'mm' });
    expect(told?.text).toContain(`from ${triangleCount(full)} to ${triangleCount(mesh)} triangles`);
    const again = await pipeline.run(simpler, QUIET_WORK);
    expect(again.sculpt).toBe(outcome.sculpt);
    const back = await pipeline.run(setSimplify(null).apply(simpler), QUIET_WORK);
    expect(back.sculpt?.mesh).toBe(full);
    expect(back.findings.some(({ code }) => code.startsWith('simplify/'))).toBe(false);
  });

  it('keeps the corners that marks, names and picked places stand on', () => {
    const mesh = boxMesh(30);
    const part = {
      seams: { edges: [[0, 1]], paths: [] },
      seamSettings: [],
      edgeWishes: [],
      pieceSettings: [],
      regions: [],
      scale: null,
    };
    const keeps = (said: Partial<SculptPart>): readonly number[] => keepsOf(mesh, { ...part, ...said } as SculptPart);
    expect(keeps({})).toEqual([0, 1]);
    expect(keeps({ edgeWishes: [{ edge: [4, 2], straight: true }] })).toEqual([0, 1, 2, 4]);
    expect(keeps({ pieceSettings: [{ face: 1, name: 'x' }] })).toEqual([0, 1, 4, 5, 6, 7]);
    expect(keeps({ scale: { by: 'points', from: 7, to: 3, mm: 9 } })).toEqual([0, 1, 3, 7]);
    expect(keeps({ regions: [{ id: 'a', name: 'a', faces: [3], give: 'normal' }] })).toEqual([0, 1, 2, 3, 6, 7]);
  });

  it('moves no farther than is allowed', async () => {
    const { full, outcome, told } = await made({ deviationMm: 0.5 });
    expect(triangleCount(outcome.sculpt?.mesh ?? full)).toBeLessThan(triangleCount(full));
    expect(told?.value).toBeLessThanOrEqual(0.5);
    expect(told?.limit).toBe(0.5);
  });

  it('stays finer where two walls lie so close together that they would run through each other', async () => {
    // Two bowls, one 0.6 mm inside the other: with so few triangles a facet of either would sag through the other.
    const [rings, sides] = [10, 30];
    const corners: [number, number, number][] = [];
    const faces: number[][] = [];
    for (const [radius, turn] of [
      [50, 0],
      [49.4, 0.4],
    ]) {
      const first = corners.length;
      for (let j = 1; j <= rings; j += 1)
        for (let i = 0; i < sides; i += 1) {
          const [down, round] = [(j / rings) * 1.2 + 0.004 * ((7 * i + 3 * j) % 5), (2 * Math.PI * (i + turn)) / sides];
          const flat = radius * Math.sin(down);
          corners.push([flat * Math.cos(round), flat * Math.sin(round), radius * Math.cos(down)]);
        }
      const at = (j: number, i: number): number => first + (j - 1) * sides + (i % sides);
      for (let j = 1; j < rings; j += 1)
        for (let i = 0; i < sides; i += 1) faces.push([at(j, i), at(j + 1, i), at(j + 1, i + 1), at(j, i + 1)]);
    }
    const { project, pipeline } = await solidProject({ corners, faces, seams: [] });
    const sculpt = await pipeline.sculptOf(project, QUIET_WORK);
    if (sculpt === null) throw new Error('no sculpt');
    const simpler = setSimplify({ triangles: 60, keep: [] }).apply(project);
    const run = new Run(simpler, {}).needAtWork();
    run.sculpt = sculpt;
    await new SimplifyStage().make(run, QUIET_WORK);
    const { mesh } = run.needSculpt();
    expect(runAtOnce(crossingSteps(sculpt.mesh)).pairs).toBe(0);
    expect(runAtOnce(crossingSteps(mesh)).pairs).toBe(0);
    expect(run.findings.map(({ code }) => code)).toEqual(['simplify/done']);
    expect(triangleCount(mesh)).toBeLessThan(triangleCount(sculpt.mesh));
    expect(triangleCount(mesh)).toBeGreaterThan(60);
  });

  it('is taken as it is where nothing can go', async () => {
    const { full, outcome, told } = await made({ deviationMm: 1e-9 });
    expect(outcome.sculpt?.mesh).toBe(full);
    expect(told?.code).toBe('simplify/nothing');
  });
});
