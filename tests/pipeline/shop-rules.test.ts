import { beforeAll, describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import { setScale, setSeams, setThickness, type Command } from '../../src/project/commands.ts';
import { newProject } from '../../src/project/new-project.ts';
import type { Project } from '../../src/project/project.ts';
import { setRule } from '../../src/project/shop-rules.ts';

/** A trough of two panels at 60 degrees beside a third at 60: one seam, one fold inside. */
const TROUGH = `v 0 0 0
v 100 0 0
v 0 60 0
v 100 60 0
v 0 90 -51.961524227066
v 100 90 -51.961524227066
v 0 60 -103.923048454133
v 100 60 -103.923048454133
f 1 2 4 3
f 3 4 6 5
f 5 6 8 7
`;
const HASH = 'a'.repeat(64);

describe('rules of the shop through the chain', () => {
  const pipeline = new Pipeline();
  let project: Project = newProject('trough', { hash: HASH, fileName: 'trough.obj', format: 'obj' });
  const { foam } = project.parts[0].layers[0];
  const run = (...commands: Command[]): Promise<Outcome> => {
    project = commands.reduce((before, command) => command.apply(before), project);
    return pipeline.run(project, QUIET_WORK, { date: '2026-11-25' });
  };
  const codes = ({ findings }: Outcome): string[] => findings.map(({ code }) => code);
  const grooveOf = ({ pieces }: Outcome) => pieces?.flatMap(({ folds }) => folds).find(({ groove }) => groove)?.groove;
  let usual: Outcome;

  beforeAll(async () => {
    pipeline.putSource(HASH, { fileName: 'trough.obj', bytes: new TextEncoder().encode(TROUGH) });
    usual = await run(setScale({ by: 'unit', unit: 'mm' }), setSeams({ edges: [[2, 3]], paths: [] }), setThickness(10));
  });

  it('are the usual ones at first: a seam of 30 degrees is cut, a fold of 60 is grooved to 1.5 mm', () => {
    expect(usual.stopped).toBeNull();
    expect(codes(usual)).not.toContain('foam/bevel-steep');
    expect(grooveOf(usual)?.hingeMm).toBe(1.5);
  });

  it('say when the saw leans less', async () => {
    const outcome = await run(setRule(foam, 'bevelLimitDeg', 25));
    const steep = outcome.findings.find(({ code }) => code === 'foam/bevel-steep');
    expect(steep?.limit).toBe(25);
    expect(steep?.value).toBeCloseTo(30, 9);
    expect(outcome.madeNew).not.toContain('flatten');
  });

  it('leave a thicker hinge: the groove is shallower, its piece laid flat again on the middle of it', async () => {
    const outcome = await run(setRule(foam, 'hingeMm', 3));
    // 2 (10 - 3) tan 30 degrees.
    expect(grooveOf(outcome)).toMatchObject({ hingeMm: 3, depthMm: 7, widthMm: expect.closeTo(8.0829, 3) as number });
    expect(outcome.madeNew).toContain('flatten');
    const fraction = outcome.cut?.shells.map(({ neutralFraction }) => neutralFraction);
    expect(fraction).toContain(1 - 3 / 20);
  });

  it('groove no fold that is flatter than is said', async () => {
    const outcome = await run(setRule(foam, 'foldLimitDeg', 70));
    expect(grooveOf(outcome)).toBeUndefined();
    expect(outcome.pieces?.every(({ bendStyle }) => bendStyle === 'rolled')).toBe(true);
    // Rolled over facets 60 mm wide its skins give by 8.7 per cent: 10 / (2 * 57.3).
    expect(codes(outcome)).not.toContain('foam/bend-tight');
    const stricter = await run(setRule(foam, 'bendNoticePct', 5));
    expect(stricter.findings.find(({ code }) => code === 'foam/bend-tight')).toMatchObject({ limit: 5, unit: '%' });
  });

  it('are forgotten with the same result as before', async () => {
    project = { ...project, foams: newProject('x', project.parts[0].source).foams };
    const again = await run();
    expect(again.pieces).toEqual(usual.pieces);
  });
});
