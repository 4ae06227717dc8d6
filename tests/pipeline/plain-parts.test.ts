import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { foamId, partId } from '../../src/base/ids.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { IN_PLACE } from '../../src/geom/matrix4.ts';
import { ringArea } from '../../src/geom/ring.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import { isWhole, shopPlanSteps } from '../../src/pipeline/shop-plan.ts';
import { runAtOnce } from '../../src/base/stepwise.ts';
import { addPlain, changePlain, removePlain } from '../../src/project/plain-commands.ts';
import { readProjectFile, writeProjectFile } from '../../src/project/project-file.ts';
import type { Project } from '../../src/project/project.ts';
import type { ShapePart } from '../../src/project/plain-part.ts';
import { expectOk, expectProblem } from '../support/expect-ok.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { sampleProject } from '../support/run-sample.ts';

const SCHEMA = JSON.parse(readFileSync('shared/project.schema.json', 'utf8')) as Schema;

const wrap: Omit<ShapePart, 'id'> = {
  kind: 'shape',
  name: 'Grip',
  transform: IN_PLACE,
  copies: 2,
  foams: [foamId('eva-6')],
  shape: 'pipe_wrap',
  sizes: { diameter: '32 mm', length: '120 mm' },
};

describe('parts of other kinds beside a sculpt', async () => {
  const { project, pipeline } = await sampleProject('maul-head');
  const withGrip = addPlain(wrap).apply(project);
  const outcome = await pipeline.run(withGrip, QUIET_WORK);

  it('are numbered on from its pieces, and have a template and places on sheets and pages', () => {
    const [{ pieces }] = outcome.plain;
    const sculptPieces = outcome.pieces ?? [];
    expect(pieces.map(({ number }) => number)).toEqual([sculptPieces.length + outcome.strips.length + 1]);
    const [grip] = pieces;
    expect(grip.name).toBe('Grip wrap');
    expect(grip.quantity).toBe(2);
    // Round the pipe on the neutral surface: pi (D + 2 k t), handbook layout of a cylinder.
    expect(grip.areaMm2).toBeCloseTo(Math.PI * (32 + 6) * 120, 6);
    expect(outcome.templates?.at(-1)?.piece).toBe(grip.id);
    const laid = outcome.sheets?.sheets
      .flatMap(({ placements }) => placements)
      .filter(({ piece }) => piece === grip.id);
    expect(laid).toHaveLength(2);
    expect(outcome.paper?.pages.some((page) => page.pieces.includes(grip.id))).toBe(true);
    expect(outcome.templates?.at(-1)?.foamRings?.reduce((sum, ring) => sum + ringArea(ring), 0)).toBeCloseTo(
      grip.areaMm2,
      0,
    );
  });

  it('leave the pieces of the sculpt as they were, and are found again by identity', async () => {
    const alone = await pipeline.run(project, QUIET_WORK);
    expect(alone.pieces).toBe(outcome.pieces);
    expect(alone.plain).toEqual([]);
    const again = await pipeline.run(withGrip, QUIET_WORK);
    expect(again.plain).toEqual(outcome.plain);
    expect(again.templates).toBe(outcome.templates);
  });

  it('are in the cut list, the foam to buy and the glue', () => {
    expect(isWhole(outcome)).toBe(true);
    const plan = runAtOnce(shopPlanSteps(outcome));
    expect(plan.cutRows.at(-1)).toMatchObject({ name: outcome.plain[0].pieces[0].name, quantity: 2 });
    // Its one butt seam, brushed on both edges, twice: 120 mm of 6 mm foam.
    expect(outcome.plain[0].work?.steps.reduce((sum, { glueMm2 }) => sum + glueMm2, 0)).toBeCloseTo(2 * 120 * 6, 6);
  });

  it('that cannot be made say why, and the rest is made all the same', async () => {
    const bad = changePlain<ShapePart>(outcome.plain[0].part.id, { sizes: { diameter: '-3' } }).apply(withGrip);
    const told = await pipeline.run(bad, QUIET_WORK);
    expect(told.plain[0].work).toBeNull();
    expect(told.findings.find(({ where }) => where.part === told.plain[0].part.id)).toMatchObject({
      severity: 'error',
    });
    expect(told.sheets?.sheets.length).toBeGreaterThan(0);
  });

  it('are not made larger by where they stand: that is told', async () => {
    const twice = [2, 0, 0, 0, 0, 2, 0, 0, 0, 0, 2, 0, 0, 0, 0, 1];
    const bad = changePlain<ShapePart>(outcome.plain[0].part.id, { transform: twice }).apply(withGrip);
    const told = await pipeline.run(bad, QUIET_WORK);
    expect(told.plain[0].work).toBeNull();
    expect(told.findings.find(({ code }) => code === 'assembly/scaled')?.where.part).toBe(told.plain[0].part.id);
  });

  it('are kept in the project file and gone when they are taken away', async () => {
    const sources = new Map(
      withGrip.parts.map(({ source }) => [
        source.hash,
        { fileName: source.fileName, bytes: pipeline.sourceOf(source.hash)!.bytes },
      ]),
    );
    const text = writeProjectFile(withGrip, sources);
    expect(schemaFaults(SCHEMA, JSON.parse(text))).toEqual([]);
    expect(expectOk(await readProjectFile(text, 'kit.json')).project).toEqual(withGrip);
    expect(removePlain(partId('part-2')).apply(withGrip)).toEqual(project);
  });
});

it('a project without a sculpt is made of its other parts alone', async () => {
  const { project } = await sampleProject('maul-head');
  const alone: Project = addPlain(wrap).apply({ ...project, parts: [] });
  const outcome = await new Pipeline().run(alone, QUIET_WORK);
  expect(outcome).toMatchObject({ part: null, stopped: null, pieces: [], seams: [] });
  expect(outcome.paper?.pages.length).toBeGreaterThan(1);
  expect(isWhole(outcome)).toBe(true);
  expect(runAtOnce(shopPlanSteps(outcome)).quantities.foams[0].sheets).toBe(1);
  const text = writeProjectFile(alone, new Map());
  expect(expectOk(await readProjectFile(text, 'grip.json')).project).toEqual(alone);
  const [grip] = alone.plain ?? [];
  const mirrored = changePlain<ShapePart>(grip.id, { mirrored: { count: 3, ownHand: 'left' } }).apply(alone);
  expectProblem(await readProjectFile(writeProjectFile(mirrored, new Map()), 'grip.json'), 'project/broken');
});
