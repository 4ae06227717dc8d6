import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import type { Pipeline } from '../../src/pipeline/pipeline.ts';
import { projectFileOf, reportOf } from '../../src/pipeline/write-files.ts';
import { setThickness, type Command } from '../../src/project/commands.ts';
import { readProjectFile } from '../../src/project/project-file.ts';
import type { Project } from '../../src/project/project.ts';
import {
  removeCore,
  removeJoint,
  removeTape,
  setCore,
  setJoint,
  setOff,
  setTape,
  setWorn,
  sizeBy,
} from '../../src/project/wear-commands.ts';
import { expectOk } from '../support/expect-ok.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { sampleProject } from '../support/run-sample.ts';

const schemaOf = (name: string): Schema =>
  JSON.parse(readFileSync(new URL(`../../shared/${name}.schema.json`, import.meta.url), 'utf8')) as Schema;

const after = (project: Project, ...commands: Command[]): Project =>
  commands.reduce((before, command) => command.apply(before), project);
const codes = (outcome: Outcome): readonly string[] =>
  outcome.findings.filter(({ code }) => code.startsWith('wear/')).map(({ code }) => code);

describe('a bracer on an arm', () => {
  let pipeline: Pipeline;
  let bare: Project;
  let plain: Outcome;
  const run = (project: Project): Promise<Outcome> => pipeline.run(project, QUIET_WORK, { date: '2026-01-01' });
  /** Square to the long axis, through the middle of the box. */
  const place = () => {
    const { boxMin, boxSize } = plain.sculpt!.facts;
    const axis = boxSize.indexOf(Math.max(...boxSize));
    const along = (i: number): readonly [number, number, number] => [i === 0 ? 1 : 0, i === 1 ? 1 : 0, i === 2 ? 1 : 0];
    const middle = boxMin.map((x, i) => x + boxSize[i] / 2) as [number, number, number];
    return { middle, along: along(axis), longest: Math.max(...boxSize) * plain.sculpt!.mmPerUnit! };
  };
  const tape = (bodyGirthMm: number) => {
    const { middle, along } = place();
    return { id: 'tape-1', name: 'Forearm', pointInFile: middle, normal: along, bodyGirthMm, easeMm: 10 };
  };
  beforeAll(async () => {
    ({ project: bare, pipeline } = await sampleProject('bracer'));
    plain = await run(bare);
  });

  it('says nothing of a body nobody asked about', () => {
    expect(plain.bodyFit).toBeNull();
    expect(codes(plain)).toEqual([]);
  });

  it('makes nothing anew for a tape, and says what is missing', async () => {
    const outcome = await run(after(bare, setTape(tape(2000))));
    expect(outcome.madeNew).toEqual([]);
    const [fit] = outcome.bodyFit!.tapes;
    expect(fit.back!.girthMm).toBeLessThan(fit.face!.girthMm);
    expect(fit.missingMm).toBeCloseTo(2010 - fit.back!.girthMm, 9);
    expect(fit.clearanceMm).toBeCloseTo((fit.back!.girthMm - 2000) / (2 * Math.PI), 9);
    expect(codes(outcome)).toContain('wear/too-tight');
    expect((await run(after(bare, setTape(tape(2000))))).bodyFit!.tapes[0].tape.bodyGirthMm).toBe(2000);
  });

  it('has the girth that Cauchy’s formula gives for all places where sides cross the plane', async () => {
    const { back } = (await run(after(bare, setTape(tape(260))))).bodyFit!.tapes[0];
    const { shell } = plain.cut!;
    const { triangles } = plain.sculpt!.mesh;
    const axis = place().along.indexOf(1);
    const height = place().middle[axis] * plain.sculpt!.mmPerUnit!;
    const crossings: [number, number][] = [];
    for (let h = 0; h < triangles.length; h += 1) {
      const [p, q] = [triangles[h], triangles[h % 3 === 2 ? h - 2 : h + 1]].map((v) =>
        shell.backPositions.subarray(3 * v, 3 * v + 3),
      );
      if (p[axis] > height === q[axis] > height) continue;
      const share = (height - p[axis]) / (q[axis] - p[axis]);
      const [x, y] = [0, 1, 2].filter((i) => i !== axis).map((i) => p[i] + share * (q[i] - p[i]));
      crossings.push([x, y]);
    }
    // The length of a convex line is the integral of its width over half a turn (Cauchy 1832).
    const directions = 4000;
    let sum = 0;
    for (let i = 0; i < directions; i += 1) {
      const angle = (Math.PI * (i + 0.5)) / directions;
      const along = crossings.map(([x, y]) => x * Math.cos(angle) + y * Math.sin(angle));
      sum += ((Math.max(...along) - Math.min(...along)) * Math.PI) / directions;
    }
    expect(back!.girthMm).toBeCloseTo(sum, 3);
  });

  it('comes to body and ease once it is sized, in one step that can be undone, whatever the foam', async () => {
    for (const thickness of [2, 10]) {
      const taped = after(bare, setThickness(thickness), setTape(tape(260)));
      const { sizeFactor } = (await run(taped)).bodyFit!.tapes[0];
      const sized = after(taped, sizeBy(sizeFactor!, place().longest));
      const outcome = await run(sized);
      expect(outcome.bodyFit!.tapes[0].back!.girthMm).toBeCloseTo(270, 6);
      expect(codes(outcome)).not.toContain('wear/too-tight');
      expect(outcome.bodyFit!.tapes[0].sizeFactor).toBeCloseTo(1, 8);
    }
  });

  it('comes to body and ease once the foam is moved off the sculpt, as thick as before, and back again', async () => {
    const taped = after(bare, setTape(tape(260)));
    const { moveMm } = (await run(taped)).bodyFit!.tapes[0];
    const moved = after(taped, setOff(moveMm!));
    const outcome = await run(moved);
    expect(outcome.bodyFit!.tapes[0].back!.girthMm).toBeCloseTo(270, 6);
    expect(outcome.bodyFit!.tapes[0].moveMm).toBeCloseTo(0, 8);
    expect(outcome.sculpt!.mmPerUnit).toBe(plain.sculpt!.mmPerUnit);
    const { shell } = outcome.cut!;
    expect(shell.thicknessMm).toBe(plain.cut!.shell.thicknessMm);
    expect(shell.backMm).toBeCloseTo(moveMm! - shell.thicknessMm, 12);
    const text = projectFileOf(outcome, (hash) => pipeline.sourceOf(hash));
    expect(schemaFaults(schemaOf('project'), JSON.parse(text))).toEqual([]);
    expect(expectOk(await readProjectFile(text, 'p')).project.parts[0].offMm).toBe(moveMm);
    expect(schemaFaults(schemaOf('report'), JSON.parse(reportOf(outcome)))).toEqual([]);
    expect(after(moved, setOff(0)).parts[0]).toEqual(taped.parts[0]);
    expect(() => setOff(201)).toThrow(RangeError);
  });

  it('tells how a fist gets in, or which seams must open', async () => {
    const easy = await run(after(bare, setTape(tape(200)), setWorn({ girthMm: 50 })));
    expect(easy.bodyFit!.puttingOn!.goesOn).toBe(true);
    const tight = await run(after(bare, setTape(tape(200)), setWorn({ girthMm: 900 })));
    expect(tight.bodyFit!.puttingOn!.goesOn).toBe(false);
    expect(tight.bodyFit!.puttingOn!.openings[0].slitMm).toBeCloseTo(8.42, 1);
    expect(codes(tight)).toContain('wear/does-not-go-on');
    const told = tight.findings.find(({ code }) => code === 'wear/does-not-go-on')?.text ?? '';
    expect(told).toContain('open up the side by 8.4');
  });

  it('asks for sight and air where it covers the face, until openings are said to give them', async () => {
    const blind = await run(after(bare, setWorn({ coversFace: true })));
    expect(codes(blind)).toEqual(['wear/no-sight', 'wear/no-air']);
    const { openings } = blind.bodyFit!.puttingOn!;
    expect(openings.length).toBeGreaterThan(0);
    const vertex = blind.sculpt!.mesh.fileVertex[openings[0].vertices[1]];
    const seeing = after(bare, setWorn({ coversFace: true, openings: [{ vertex, use: 'sight' }] }));
    const outcome = await run(seeing);
    expect(codes(outcome)).toEqual(['wear/no-air']);
    expect(outcome.bodyFit!.puttingOn!.openings[0].use).toBe('sight');
    const text = projectFileOf(outcome, (hash) => pipeline.sourceOf(hash));
    expect(schemaFaults(schemaOf('project'), JSON.parse(text))).toEqual([]);
    expect(expectOk(await readProjectFile(text, 'x')).project.parts[0].worn).toEqual(seeing.parts[0].worn);
    const report = JSON.parse(reportOf(outcome)) as { fit: { puttingOn: { lacks: string[] } } };
    expect(schemaFaults(schemaOf('report'), report)).toEqual([]);
    expect(report.fit.puttingOn.lacks).toEqual(['air']);
  });

  it('tells that a bracer in one piece is no joint, and keeps what was asked', async () => {
    const { middle } = place();
    const joint = {
      id: 'joint-1',
      name: 'Elbow',
      pointInFile: middle,
      axis: [1, 0, 0],
      towards: [0, 1, 0],
      bendDeg: -90,
    } as const;
    const project = after(bare, setJoint(joint));
    const outcome = await run(project);
    expect(codes(outcome)).toEqual(['wear/joint-hangs-together']);
    const text = projectFileOf(outcome, (hash) => pipeline.sourceOf(hash));
    expect(schemaFaults(schemaOf('project'), JSON.parse(text))).toEqual([]);
    expect(expectOk(await readProjectFile(text, 'x')).project.parts[0].joints).toEqual([joint]);
    expect(schemaFaults(schemaOf('report'), JSON.parse(reportOf(outcome)))).toEqual([]);
    expect(after(project, removeJoint('joint-1')).parts[0].joints).toEqual([]);
  });

  it('keeps all of it in the project file and tells it in the report, both as their schemas say', async () => {
    const { middle, along } = place();
    const core = { id: 'core-1', name: 'Pole', pointInFile: middle, direction: along, diameterMm: 32, roomMm: 1 };
    const project = after(bare, setTape(tape(260)), setCore(core), setWorn({ girthMm: 250, breadthMm: 90 }));
    const outcome = await run(project);
    const text = projectFileOf(outcome, (hash) => pipeline.sourceOf(hash));
    expect(schemaFaults(schemaOf('project'), JSON.parse(text))).toEqual([]);
    expect(expectOk(await readProjectFile(text, 'x')).project.parts[0]).toEqual(project.parts[0]);
    const report = JSON.parse(reportOf(outcome)) as { fit: { tapes: object[]; cores: object[] } };
    expect(schemaFaults(schemaOf('report'), report)).toEqual([]);
    expect(report.fit.tapes[0]).toMatchObject({
      bodyGirthMm: 260,
      back: { girthMm: outcome.bodyFit!.tapes[0].back!.girthMm },
    });
    expect(report.fit.cores[0]).toMatchObject({ diameterMm: 32, pierced: 0 });
  });

  it.each([
    [{ tapes: [{ id: 'a', name: 'A', pointInFile: [0, 0, 0], normal: [0, 0, 0] }] }],
    [{ tapes: [{ id: 'a', name: 'A', pointInFile: [0, 0], normal: [0, 0, 1] }] }],
    [{ tapes: [{ id: 'a', name: 'A', pointInFile: [0, 0, 0], normal: [0, 0, 1], bodyGirthMm: 0 }] }],
    [{ core: [{ id: 'a', name: 'A', pointInFile: [0, 0, 0], direction: [0, 0, 1], diameterMm: -1 }] }],
    [
      {
        core: ['a', 'a'].map((id) => ({ id, name: 'A', pointInFile: [0, 0, 0], direction: [0, 0, 1], diameterMm: 9 })),
      },
    ],
    [{ joints: [{ id: 'a', name: 'A', pointInFile: [0, 0, 0], axis: [0, 0, 1], towards: [1, 0, 0], bendDeg: 0 }] }],
    [{ worn: { girthMm: 0 } }],
    [{ worn: { openings: [{ vertex: 3, use: 'hearing' }] } }],
  ])('refuses a project file with %j', async (broken) => {
    const text = projectFileOf(plain, (hash) => pipeline.sourceOf(hash));
    const file = JSON.parse(text) as { project: { parts: object[] } };
    Object.assign(file.project.parts[0], broken);
    const read = await readProjectFile(JSON.stringify(file), 'x');
    expect(read).toMatchObject({ ok: false, problem: { code: 'project/broken' } });
  });

  it('forgets what is taken away', () => {
    const project = after(bare, setTape(tape(260)), setWorn({ girthMm: 250 }));
    const gone = after(project, removeTape('tape-1'), removeCore('core-1'), setWorn(null));
    expect(gone.parts[0].tapes).toEqual([]);
    expect(gone.parts[0]).not.toHaveProperty('worn');
    expect(after(gone, removeTape('tape-1'))).toBe(gone);
  });
});
