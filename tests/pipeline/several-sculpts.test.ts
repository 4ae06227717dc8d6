import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { foamId, partId } from '../../src/base/ids.ts';
import { runAtOnce } from '../../src/base/stepwise.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { IN_PLACE, move4, type Matrix4 } from '../../src/geom/matrix4.ts';
import { vec3 } from '../../src/geom/vec.ts';
import type { FoamPiece } from '../../src/model/foam-piece.ts';
import { cutterOf, machineFiles } from '../../src/pipeline/machine-files.ts';
import { stoppedIn, type Outcome } from '../../src/pipeline/outcome.ts';
import { shopFile, shopPaperSteps } from '../../src/pipeline/shop-files.ts';
import { isWhole, shopPlanSteps } from '../../src/pipeline/shop-plan.ts';
import { reportOf } from '../../src/pipeline/write-files.ts';
import { addColour, newColour, setBaseColour } from '../../src/project/finish-commands.ts';
import { addPlain, workOn } from '../../src/project/plain-commands.ts';
import { readProjectFile, writeProjectFile } from '../../src/project/project-file.ts';
import type { Project, SculptPart } from '../../src/project/project.ts';
import { BenchUpdater } from '../../src/worker/bench-update.ts';
import { expectOk } from '../support/expect-ok.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { kitOf } from '../support/kit-of.ts';
import { sampleProject, testFont } from '../support/run-sample.ts';
import { block, inSheets, solidProject } from '../support/run-solid.ts';

const faultsOf = (name: string, text: string): readonly string[] =>
  schemaFaults(JSON.parse(readFileSync(`shared/${name}.schema.json`, 'utf8')) as Schema, JSON.parse(text));

/** All of a piece but its number, what follows from that, and what its seams are called. */
const unnamed = ({ number: _, revision: __, name: ___, findings: ____, ...piece }: FoamPiece): unknown =>
  JSON.parse(
    JSON.stringify(piece, (key, value: unknown) =>
      ['letter', 'seam', 'seams', 'pieces'].includes(key)
        ? undefined
        : ArrayBuffer.isView(value)
          ? Array.from(value as Float64Array)
          : value,
    ),
  );

const piecesOf = ({ pieces }: Pick<Outcome, 'pieces'>): readonly FoamPiece[] => pieces ?? expect.fail();

describe('a helm and a bracer in one project', async () => {
  const kit = kitOf([await sampleProject('helm'), await sampleProject('bracer')], ['Helm', 'Bracer']);
  const { project } = kit;
  let outcome: Outcome;
  beforeAll(async () => {
    outcome = await kit.newPipeline().run(project, QUIET_WORK);
  });

  it('have the pieces that each has by itself, numbered on', async () => {
    for (const [i, own] of kit.alone.entries()) {
      const single = await kit.newPipeline().run(own, QUIET_WORK);
      expect(piecesOf(outcome.sculpts[i]).map(unnamed)).toEqual(piecesOf(single).map(unnamed));
    }
    expect(piecesOf(outcome).map(({ number }) => number)).toEqual([...Array(15).keys()].map((i) => i + 1));
    expect(outcome.templates).toHaveLength(15 + outcome.strips.length);
    expect(isWhole(outcome)).toBe(true);
  });

  it('have seams that none takes for one of the other', () => {
    const seams = outcome.seams ?? [];
    expect(new Set(seams.map(({ id }) => id)).size).toBe(seams.length);
    const letters = seams.map(({ letter }) => letter).filter((letter) => letter !== '');
    expect(new Set(letters).size).toBe(letters.length);
    expect(outcome.sculpts[1].seams?.filter(({ letter }) => letter !== '').map(({ letter }) => letter)).toEqual([
      '2A',
      '2B',
    ]);
  });
});

/** A cube of 80 mm, and a box of 60 x 40 x 30 mm in a wall of two sheets, 300 mm aside; both have sheets of the same id. */
async function boxes(): Promise<ReturnType<typeof kitOf>> {
  const cube = await solidProject(block([0, 0, 0], [80, 80, 80]));
  const small = await solidProject(block([0, 0, 0], [60, 40, 30]), (part) => ({
    ...inSheets(part, 4, 4),
    transform: move4(vec3(300, 0, 0)),
    copies: 3,
  }));
  return kitOf([cube, small], ['Plinth', 'Stud']);
}

describe('two boxes in one project', async () => {
  const { project, newPipeline } = await boxes();
  const pipeline = newPipeline();
  const outcome = await pipeline.run(project, QUIET_WORK, { date: '2026-01-01' });
  const plan = runAtOnce(shopPlanSteps(outcome));

  it('leave each other alone: what is done to one makes nothing of the other new', async () => {
    const [cube, small] = project.parts;
    const thicker: SculptPart = { ...cube, layers: [{ ...cube.layers[0], thicknessMm: 5 }] };
    const after = await pipeline.run({ ...project, parts: [thicker, small] }, QUIET_WORK, { date: '2026-01-01' });
    expect(after.madeNew).toContain('shell');
    expect(after.sculpts[1].pieces).toBe(outcome.sculpts[1].pieces);
    expect(after.sculpts[0].pieces).not.toBe(outcome.sculpts[0].pieces);
    const again = await pipeline.run(project, QUIET_WORK, { date: '2026-01-01' });
    expect(again.madeNew).toEqual([]);
    expect(again.templates).toBe(outcome.templates);
    expect(again.sheets).toBe(outcome.sheets);
    expect(again.paper).toBe(outcome.paper);
    expect(again.assembly).toBe(outcome.assembly);
  });

  it('are kept in a project file, sheets of the same id in both', async () => {
    const sources = new Map(project.parts.map(({ source: { hash } }) => [hash, pipeline.sourceOf(hash)!]));
    const kept = expectOk(await readProjectFile(writeProjectFile(project, sources), 'boxes.json'));
    expect(kept.project).toEqual(project);
    const [cube] = project.parts;
    const doubled = { ...project, parts: [{ ...cube, layers: [cube.layers[0], cube.layers[0]] }] };
    expect(await readProjectFile(writeProjectFile(doubled, sources), 'boxes.json')).toMatchObject({ ok: false });
  });

  it('are cut as often as they are wanted', () => {
    expect(outcome.sculpts.map(({ pieces }) => pieces?.length)).toEqual([6, 12]);
    const laid = outcome.sheets?.sheets.flatMap(({ placements }) => placements) ?? [];
    for (const { id, part } of piecesOf(outcome))
      expect(laid.filter(({ piece }) => piece === id)).toHaveLength(part === partId('part-2') ? 3 : 1);
    expect(plan.cutRows.map(({ quantity }) => quantity)).toEqual([
      ...Array<number>(6).fill(1),
      ...Array<number>(12).fill(3),
    ]);
  });

  it('stand in their places when they are measured', () => {
    // From the far corner of the cube to that of the box: Euclid, Elements I 47.
    expect(plan.quantities.longestMm).toBeCloseTo(Math.hypot(360, 80, 80), 6);
    expect(plan.quantities.sizeMm[0]).toBeCloseTo(360, 9);
    // Outside of the cube once, of the box three times.
    const outside = 6 * 80 ** 2 + 3 * 2 * (60 * 40 + 60 * 30 + 40 * 30);
    expect(plan.finish.plan.outsideMm2).toBeCloseTo(outside, 6);
  });

  it('are glued one after the other, each named', () => {
    const { steps, batches } = plan.gluing;
    const names = steps.map(({ sculpt }) => sculpt?.name);
    expect(names).toEqual([...names].sort());
    expect(new Set(batches.map(({ sculpt }) => sculpt?.name))).toEqual(new Set(['Plinth', 'Stud']));
    const units = new Map<number, string | undefined>();
    for (const { makes, sculpt } of steps) {
      if (makes.unit === undefined) continue;
      expect(units.get(makes.unit) ?? sculpt?.name).toBe(sculpt?.name);
      units.set(makes.unit, sculpt?.name);
    }
    const glued = steps.flatMap(({ runs }) => runs.map(({ seam }) => seam));
    expect(new Set(glued)).toEqual(new Set(outcome.seams?.map(({ id }) => id)));
  });

  it('are on one build sheet with a picture of every step, and in every file', async () => {
    const coloured = [addColour(newColour('Brass', '#b58a3c')), setBaseColour('colour-1')].reduce(
      (changed, command) => command.apply(changed),
      project,
    );
    const painted = await pipeline.run(coloured, QUIET_WORK, { date: '2026-01-01' });
    const { pages } = expectOk(runAtOnce(shopPaperSteps(painted, '2026-01-01')));
    const words = pages.flatMap(({ drawing }) => drawing.words.map(({ text }) => text));
    expect(words.some((text) => /^Batch 1, Plinth: /.test(text))).toBe(true);
    expect(words.some((text) => /^Batch \d+, Stud: /.test(text))).toBe(true);
    const font = testFont();
    const gluing = expectOk(await shopFile('gluing', outcome, { font, date: '2026-01-01' }, QUIET_WORK));
    expect(faultsOf('gluing', String(gluing))).toEqual([]);
    const report = reportOf(outcome, [], plan);
    expect(faultsOf('report', report)).toEqual([]);
    expect(JSON.parse(report)).toMatchObject({
      sculpts: [
        { part: 'part-1', name: 'Plinth', layers: [{ thicknessMm: 6 }] },
        { part: 'part-2', name: 'Stud', layers: [{ thicknessMm: 4 }, { thicknessMm: 4 }] },
      ],
    });
    const made = expectOk(machineFiles(outcome, { models: { stl: true }, cutter: cutterOf('blade', undefined) }, font));
    expect([...made.keys()]).toEqual([
      'prop.stl',
      'prop-sculpt-1.stl',
      'prop-sculpt-2.stl',
      'prop-sheet-1.stl',
      'prop-sheet-2.stl',
    ]);
  });

  it('stand beside each other as they do in the prop, whichever of them is worked on', async () => {
    const [cube, box] = project.parts;
    const placed = (transform: Matrix4): Project => ({ ...project, parts: [cube, { ...box, transform }] });
    const apart = placed(move4(vec3(300, 0, -40)));
    const seen = async (one: Project) => {
      const update = new BenchUpdater().next(await pipeline.run(one, QUIET_WORK), 0);
      const [other, ...more] = update.sculptsBeside ?? expect.fail();
      expect(more).toEqual([]);
      const middle = (points: ArrayLike<number>) =>
        [0, 1, 2].map((k) => {
          const along = Array.from(points).filter((_, i) => i % 3 === k);
          return (Math.min(...along) + Math.max(...along)) / 2;
        });
      const own = middle(update.sculpt?.positions ?? expect.fail());
      return { part: other.part, way: middle(other.form).map((x, k) => x - own[k]) };
    };
    const [first, second] = [await seen(apart), await seen(workOn(partId('part-2')).apply(apart))];
    expect([first.part, second.part]).toEqual(['part-2', 'part-1']);
    // There and back.
    first.way.forEach((x, k) => expect(x + second.way[k]).toBeCloseTo(0, 3));
    const atHome = await seen(placed(IN_PLACE));
    expect(first.way.map((x, k) => x - atHome.way[k])).toEqual([300, 0, -40].map((x): unknown => expect.closeTo(x, 3)));
  });

  it('show on the bench the one that is worked on, with the others on the sheets', async () => {
    const updater = new BenchUpdater();
    const first = updater.next(outcome, 0);
    const second = updater.next(await pipeline.run(workOn(partId('part-2')).apply(project), QUIET_WORK), first.number);
    expect(first.pieces?.pieces.map(({ part }) => part)).toEqual(Array(6).fill('part-1'));
    expect(first.pieces?.others?.map(({ part }) => part)).toEqual(Array(12).fill('part-2'));
    expect(second.pieces?.pieces.map(({ part }) => part)).toEqual(Array(12).fill('part-2'));
    expect(second.pieces?.benchPatches).toBe(6);
    for (const { pieces } of [first, second]) {
      const view = pieces ?? expect.fail();
      expect(view.templates.map(({ piece }) => piece)).toEqual(
        [...view.pieces, ...(view.others ?? [])].map(({ id }) => id),
      );
      view.pieces.forEach(({ patch }, i) => expect(view.patches[patch].piece).toBe(i));
    }
    expect(second.findings.every(({ where }) => where.part === 'part-2' || where.triangles === undefined)).toBe(true);
  });
});

describe('a sculpt that cannot be made', async () => {
  const { project, newPipeline } = await boxes();
  const [cube, box] = project.parts;
  const unsized: Project = { ...project, parts: [cube, { ...box, scale: null }] };

  it('leaves the others as they are, and is told with its name', async () => {
    const outcome = await newPipeline().run(unsized, QUIET_WORK);
    expect(outcome).toMatchObject({ stopped: null });
    expect(piecesOf(outcome)).toHaveLength(6);
    expect(outcome.paper?.pages.length).toBeGreaterThan(1);
    const told = outcome.findings.find(({ code }) => code === 'size/unknown');
    expect(told).toMatchObject({ severity: 'error', where: { part: 'part-2' } });
    expect(told?.text).toMatch(/^Stud: /);
    // Templates that leave out a part of the prop would mislead.
    expect(isWhole(outcome)).toBe(false);
    expect(stoppedIn(outcome)?.problem.text).toMatch(/^Stud: /);
  });

  it('is told by the step it stopped at where it is worked on, and what is beside it is made', async () => {
    const grip = addPlain({
      kind: 'shape',
      name: 'Grip',
      transform: IN_PLACE,
      copies: 1,
      foams: [foamId('eva-6')],
      shape: 'pipe_wrap',
      sizes: { diameter: '32 mm', length: '120 mm' },
    });
    const outcome = await newPipeline().run(grip.apply(workOn(partId('part-2')).apply(unsized)), QUIET_WORK);
    expect(outcome.stopped?.problem.code).toBe('size/unknown');
    expect(outcome.layers).toEqual([]);
    expect(piecesOf(outcome)).toHaveLength(6);
    expect(outcome.plain[0].pieces.map(({ number }) => number)).toEqual([7]);
    const view = new BenchUpdater().next(outcome, 0).pieces;
    expect(view).toMatchObject({ pieces: [], benchPatches: 0 });
    expect(view?.others).toHaveLength(6);
    expect(view?.templates).toHaveLength(7);
  });
});
