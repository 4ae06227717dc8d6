import { beforeAll, describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { SteepWay } from '../../src/model/steep-join.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import { reportOf } from '../../src/pipeline/write-files.ts';
import { setScale, setSeams, setThickness, type Command } from '../../src/project/commands.ts';
import { newProject } from '../../src/project/new-project.ts';
import type { Project } from '../../src/project/project.ts';
import { setSeamJoin } from '../../src/project/seam-commands.ts';

/** Two panels of 100 by 60 mm that meet on a ridge of 120 degrees: edges that lean 60. */
const RIDGE = `v 0 0 0
v 100 0 0
v 0 60 0
v 100 60 0
v 0 30 -51.961524227066
v 100 30 -51.961524227066
f 1 2 4 3
f 3 4 6 5
`;
const HASH = 'b'.repeat(64);

describe('a seam beyond the blade, through the chain', () => {
  const pipeline = new Pipeline();
  let project: Project = newProject('ridge', { hash: HASH, fileName: 'ridge.obj', format: 'obj' });
  const run = (...commands: Command[]): Promise<Outcome> => {
    project = commands.reduce((before, command) => command.apply(before), project);
    return pipeline.run(project, QUIET_WORK, { date: '2026-11-25' });
  };
  const choose = (steep?: SteepWay): Promise<Outcome> =>
    run(setSeamJoin([[2, 3]], { kind: 'butt', allowanceMm: 0, ...(steep === undefined ? {} : { steep }) }));
  const codes = ({ findings }: Outcome): string[] => findings.map(({ code }) => code);
  const fitOf = ({ dryFit }: Outcome) => dryFit?.perSeam[0];
  let plain: Outcome;

  beforeAll(async () => {
    pipeline.putSource(HASH, { fileName: 'ridge.obj', bytes: new TextEncoder().encode(RIDGE) });
    plain = await run(setScale({ by: 'unit', unit: 'mm' }), setSeams({ edges: [[2, 3]], paths: [] }), setThickness(10));
  });

  it('is warned of until the maker chooses', () => {
    expect(plain.stopped).toBeNull();
    expect(codes(plain)).toContain('foam/bevel-steep');
  });

  it.each<SteepWay>(['split', 'fill', 'trim'])(
    'closes in the dry fit with %s, whose room counts as filled',
    async (way) => {
      const outcome = await choose(way);
      expect(codes(outcome)).not.toContain('foam/bevel-steep');
      expect(codes(outcome)).toContain('foam/steep-built');
      expect(codes(outcome).filter((code) => code.startsWith('dryfit'))).toEqual([]);
      expect(fitOf(outcome)?.worstGapMm).toBeLessThan(1e-9);
      expect(fitOf(outcome)?.worstOverlapMm).toBeLessThan(1e-9);
      // Edges no longer lean 60 degrees, and the saw cuts them all.
      expect(outcome.pieces?.every(({ saw }) => saw?.byHand.length === 0)).toBe(true);
      const [seam] = (JSON.parse(reportOf(outcome)) as { seams: { steep?: Record<string, unknown> }[] }).seams;
      expect(seam.steep?.way).toBe(way);
      expect(seam.steep).not.toHaveProperty('room');
    },
  );

  it('is open by what is to be filled where the edges are measured without it', async () => {
    const outcome = await choose('fill');
    // 2 t (tan 60 - tan 45) of face lacks in both plates: what the outlines are shorter by.
    const lengths = [plain, outcome].map(({ pieces }) => pieces?.map(({ outline }) => heightOf(outline)) ?? []);
    const lack = lengths[0].reduce((sum, before, i) => sum + before - lengths[1][i], 0);
    expect(lack).toBeCloseTo(20 * (Math.sqrt(3) - 1), 9);
    const { steep } = outcome.seams?.[0] ?? {};
    // 2 (10 / cos 45) sin 15.
    expect(steep?.way === 'fill' && steep.gapMm).toBeCloseTo(7.320508, 6);
  });

  it('is as before when the choice is taken back, and laid flat no more than once', async () => {
    const outcome = await choose();
    expect(project.parts[0].seamSettings).toEqual([]);
    expect(outcome.pieces).toEqual(plain.pieces);
    expect((await choose('trim')).madeNew).not.toContain('flatten');
  });
});

function heightOf(ring: Float64Array): number {
  const ys = ring.filter((_, i) => i % 2 === 1);
  const xs = ring.filter((_, i) => i % 2 === 0);
  // Panels are 100 mm long: the other side of each is what a bevel changes.
  return Math.min(Math.max(...ys) - Math.min(...ys), Math.max(...xs) - Math.min(...xs));
}
