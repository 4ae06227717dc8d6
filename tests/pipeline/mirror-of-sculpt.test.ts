import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { contentHash } from '../../src/base/hash.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { boxOfPoints3 } from '../../src/mesh/measure.ts';
import { clearSeams } from '../../src/project/commands.ts';
import { setMirror } from '../../src/project/mirror-commands.ts';
import type { Project, SculptPart } from '../../src/project/project.ts';
import { BenchUpdater } from '../../src/worker/bench-update.ts';
import { sampleProject } from '../support/run-sample.ts';

describe('the mirror in the chain', () => {
  it('is found, told, and sent to the bench once', async () => {
    const { project, pipeline } = await sampleProject('shoulder-plate');
    const outcome = await pipeline.run(project, QUIET_WORK);
    expect(outcome.mirror?.share).toBe(1);
    const told = outcome.findings.find(({ code }) => code === 'mirror/found');
    expect(told).toMatchObject({ severity: 'note', value: 100, unit: '%' });
    expect(told?.text).toMatch(
      /^The sculpt mirrors itself from left to right, 100 % of its surface within 0\.\d+ mm\.$/,
    );
    const updater = new BenchUpdater();
    const { mirror, number } = updater.next(outcome, 0);
    expect(mirror?.partnerOfFile).toHaveLength(outcome.sculpt?.mesh.vertexOfFile.length ?? 0);
    mirror?.partnerOfFile.forEach((b, a) => expect(mirror.partnerOfFile[b]).toBe(a));
    const again = await pipeline.run(project, QUIET_WORK);
    expect(again.mirror).toBe(outcome.mirror);
    expect('mirror' in updater.next(again, number)).toBe(false);
    await pipeline.run(project, QUIET_WORK);
  });

  it('is found before there are seams, put away, or set by the maker', async () => {
    const { project, pipeline } = await sampleProject('shoulder-plate');
    const run = async (change: (project: Project) => Project) => await pipeline.run(change(project), QUIET_WORK);
    expect((await run((p) => clearSeams().apply(p))).mirror?.share).toBe(1);
    const off = await run((p) => setMirror({ by: 'off' }).apply(p));
    expect(off.mirror).toBeNull();
    expect(off.findings.filter(({ code }) => code.startsWith('mirror/'))).toEqual([]);
    const plane = { by: 'plane', pointInFile: [4, 0, 0], normal: [3, 0, 0] } as const;
    const set = await run((p) => setMirror(plane).apply(p));
    expect(set.mirror?.plane).toEqual({ normal: { x: 1, y: 0, z: 0 }, at: 4 });
    expect(set.findings.find(({ code }) => code === 'mirror/poor')?.severity).toBe('warning');
    // Numbers of the file: in another size the plane lies elsewhere in mm.
    const { min, max } = boxOfPoints3(set.sculpt?.mesh.positions ?? new Float64Array());
    const mm = 1.5 * Math.max(max.x - min.x, max.y - min.y, max.z - min.z);
    const larger = await run((p) => ({
      ...p,
      parts: setMirror(plane)
        .apply(p)
        .parts.map((part) => ({ ...part, scale: { by: 'size', axis: 'longest', mm } as const })),
    }));
    expect(larger.mirror?.plane.at).toBeCloseTo(6, 9);
  });
});

// Turned by 25 degrees about y no axis of the file is square to the mirror any more.
it('makes twins across the found plane, however the sculpt stands', async () => {
  const [c, s] = [Math.cos(0.436), Math.sin(0.436)];
  const turned = readFileSync(new URL('../../samples/shoulder-plate.obj', import.meta.url), 'utf8').replace(
    /^v (\S+) (\S+) (\S+)/gm,
    (_, x: string, y: string, z: string) => `v ${c * +x + s * +z} ${y} ${c * +z - s * +x}`,
  );
  const bytes = new TextEncoder().encode(turned);
  const hash = await contentHash(bytes);
  const { project, pipeline } = await sampleProject('shoulder-plate');
  pipeline.putSource(hash, { fileName: 'turned.obj', bytes });
  const source = { hash, fileName: 'turned.obj', format: 'obj' } as const;
  const twinsOf = async (change: Partial<SculptPart>): Promise<number> => {
    const outcome = await pipeline.run({ ...project, parts: [{ ...project.parts[0], ...change }] }, QUIET_WORK);
    return (outcome.pieces ?? []).filter(({ twinOf }) => twinOf !== undefined).length;
  };
  const upright = await twinsOf({});
  expect(upright).toBeGreaterThan(0);
  expect(await twinsOf({ source })).toBe(upright);
  expect(await twinsOf({ source, mirror: { by: 'off' } })).toBe(0);
});
