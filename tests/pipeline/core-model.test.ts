import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { contentHash } from '../../src/base/hash.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { CoreModel } from '../../src/model/clearance.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import { projectFileOf, reportOf } from '../../src/pipeline/write-files.ts';
import { History } from '../../src/project/history.ts';
import { readProjectFile } from '../../src/project/project-file.ts';
import type { Project } from '../../src/project/project.ts';
import { removeCore, setCore } from '../../src/project/wear-commands.ts';
import { expectOk } from '../support/expect-ok.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { boxMesh } from '../support/meshes.ts';
import { sampleProject } from '../support/run-sample.ts';

const schemaOf = (name: string): Schema =>
  JSON.parse(readFileSync(new URL(`../../shared/${name}.schema.json`, import.meta.url), 'utf8')) as Schema;

/** A box about 0 as the text of an OBJ file. */
function boxFile(x: number, y: number, z: number): Uint8Array {
  const { positions, triangles } = boxMesh(x, y, z);
  const corners = Array.from({ length: 8 }, (_, v) => [0, 1, 2].map((k) => positions[3 * v + k] - [x, y, z][k] / 2));
  const faces = Array.from({ length: 12 }, (_, t) => [0, 1, 2].map((k) => triangles[3 * t + k] + 1));
  return new TextEncoder().encode(
    [...corners.map((p) => `v ${p.join(' ')}`), ...faces.map((f) => `f ${f.join(' ')}`), ''].join('\n'),
  );
}

describe('a core from a model file', () => {
  let pipeline: Pipeline;
  let bare: Project;
  let middle: readonly [number, number, number];
  const run = (project: Project, by = pipeline): Promise<Outcome> =>
    by.run(project, QUIET_WORK, { date: '2026-01-01' });
  const put = async (bytes: Uint8Array, more: Partial<CoreModel> = {}): Promise<Project> => {
    const hash = await contentHash(bytes);
    pipeline.putSource(hash, { fileName: 'arm.obj', bytes });
    const source = { hash, fileName: 'arm.obj', format: 'obj' } as const;
    const core: CoreModel = {
      kind: 'model',
      id: 'core-1',
      name: 'Arm',
      source,
      unit: 'mm',
      pointInFile: middle,
      ...more,
    };
    return setCore(core).apply(bare);
  };
  const codes = ({ findings }: Outcome): readonly string[] =>
    findings.map(({ code }) => code).filter((code) => code.startsWith('wear/'));

  beforeAll(async () => {
    ({ project: bare, pipeline } = await sampleProject('bracer'));
    const { facts } = (await run(bare)).sculpt!;
    middle = facts.boxMin.map((x, i) => x + facts.boxSize[i] / 2) as [number, number, number];
  });

  it('has its room told, in the report and by a finding where it is less than wanted', async () => {
    const plain = await run(await put(boxFile(10, 10, 10)));
    const [fit] = plain.bodyFit!.cores;
    expect(fit).toMatchObject({ stand: 'inside', openEdges: 0, pierced: 0 });
    expect(fit.tightest!.clearanceMm).toBeGreaterThan(5);
    expect(codes(plain)).toEqual([]);
    expect(schemaFaults(schemaOf('report'), JSON.parse(reportOf(plain)))).toEqual([]);
    const asked = await run(await put(boxFile(10, 10, 10), { roomMm: fit.tightest!.clearanceMm + 3 }));
    expect(codes(asked)).toEqual(['wear/core-too-tight']);
    const moved = asked.bodyFit!.cores[0].moveMm;
    expect(moved).toBeGreaterThan(2.9);
  });

  it('grows with the sculpt where its numbers are the sculpt’s', async () => {
    const own = await run(await put(boxFile(10, 10, 10), { unit: 'cm' }));
    const { mmPerUnit } = own.sculpt!;
    expect(mmPerUnit).toBe(1);
    expect(own.bodyFit!.cores[0].tightest!.clearanceMm).toBeLessThan(
      (await run(await put(boxFile(10, 10, 10), { unit: 'sculpt' }))).bodyFit!.cores[0].tightest!.clearanceMm,
    );
  });

  it('is told of where it stands outside, or cannot be read, or is not here; the rest is made all the same', async () => {
    expect(codes(await run(await put(boxFile(10, 10, 10), { pointInFile: [1e6, 0, 0] })))).toEqual([
      'wear/core-misses',
    ]);
    for (const text of ['', 'v 0 nan 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n']) {
      const broken = await run(await put(new TextEncoder().encode(text)));
      expect(codes(broken)).toEqual(['wear/core-file']);
      expect(broken.stopped).toBeNull();
      expect(schemaFaults(schemaOf('report'), JSON.parse(reportOf(broken)))).toEqual([]);
    }
    const lost = await put(boxFile(10, 10, 10), {
      source: { hash: 'a'.repeat(64), fileName: 'gone.stl', format: 'stl' },
    });
    const outcome = await run(lost);
    expect(outcome.findings.find(({ code }) => code === 'wear/core-file')?.text).toContain('gone.stl is not here');
    expect(
      expectOk(
        await readProjectFile(
          projectFileOf(outcome, (hash) => pipeline.sourceOf(hash)),
          'a',
        ),
      ).project,
    ).toEqual(lost);
  });

  it('comes back from the project file with its bytes, and is put in and out as steps of the history', async () => {
    const bytes = boxFile(12, 10, 14);
    const project = await put(bytes, { turnDeg: [0, 0, 30], roomMm: 2 });
    const outcome = await run(project);
    const text = projectFileOf(outcome, (hash) => pipeline.sourceOf(hash));
    expect(schemaFaults(schemaOf('project'), JSON.parse(text))).toEqual([]);
    const opened = expectOk(await readProjectFile(text, 'p.foamloft.json'));
    expect(opened.project).toEqual(project);
    expect(opened.sources.get(await contentHash(bytes))?.bytes).toEqual(bytes);
    const again = new Pipeline();
    for (const [hash, source] of opened.sources) again.putSource(hash, source);
    expect((await run(opened.project, again)).bodyFit!.cores[0].tightest).toEqual(outcome.bodyFit!.cores[0].tightest);
    const history = new History(project);
    history.run(removeCore('core-1'));
    expect(history.project.parts[0].core).toEqual([]);
    history.undo();
    expect(history.project).toBe(project);
  });
});
