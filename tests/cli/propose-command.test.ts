import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import { Refused } from '../../src/cli/exit.ts';
import { changePart, openInput, seamsFrom } from '../../src/cli/open-input.ts';
import { proposeCommand } from '../../src/cli/propose-command.ts';
import type { ProposeChoices } from '../../src/cli/propose-options.ts';
import { readInput } from '../../src/cli/read-input.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import type { ProposalReport } from '../../src/pipeline/proposal-files.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { checkProposal } from '../reference/recompute/check-proposal.mjs';
import { ROOT, scratchFiles, scratchFolder } from './run-cli.ts';

const HAMMER = join(ROOT, 'tests/reference/seam-shapes/hammer.obj');
const BRACER = join(ROOT, 'tests/reference/seam-shapes/bracer_cone.obj');

const SCHEMA = JSON.parse(readFileSync(join(ROOT, 'shared/proposal.schema.json'), 'utf8')) as Schema;

interface Run {
  readonly out: string;
  readonly report: string;
  readonly lines: readonly string[];
  readonly said: string;
}

async function run(input: string, change: Partial<ProposeChoices> = {}): Promise<Run> {
  const folder = scratchFolder();
  const [out, report] = [join(folder, 'seams.json'), join(folder, 'report.json')];
  const lines: string[] = [];
  const said = await proposeCommand(
    {
      input,
      out,
      report,
      scale: { by: 'unit', unit: 'cm' },
      kind: 'reference',
      pieces: 'few',
      isMirrored: false,
      end: { moves: 40 },
      seed: 1,
      ...change,
    },
    (line) => lines.push(line),
  );
  return { out, report, lines, said };
}

/** How many pieces `make` parts a model into along a seam file. */
async function piecesOf(model: string, seamFile: string): Promise<number | undefined> {
  const scale = { by: 'unit', unit: 'cm' } as const;
  const { project, sources } = await openInput(await readInput(model), scale);
  const pipeline = new Pipeline();
  for (const [hash, source] of sources) pipeline.putSource(hash, source);
  const marked = changePart(project, { scale, ...(await seamsFrom(seamFile, project)) });
  return (await pipeline.run(marked, QUIET_WORK, { strictSeams: true })).cut?.patches.length;
}

const json = (path: string): unknown => JSON.parse(readFileSync(path, 'utf8'));
const reportOf = ({ report }: Run): ProposalReport => json(report) as ProposalReport;

describe('seams found from a terminal', () => {
  it('are what the check from outside finds, piece by piece', async () => {
    const made = await run(HAMMER);
    const { faults, pieces, figures } = checkProposal(readFileSync(HAMMER), json(made.out), json(made.report));
    expect(faults).toEqual([]);
    expect(schemaFaults(SCHEMA, json(made.report))).toEqual([]);
    const fewer = { ...reportOf(made), pieces: reportOf(made).pieces.map(({ uvMm: _, ...rest }) => rest) };
    expect(schemaFaults(SCHEMA, fewer)).not.toEqual([]);
    expect(pieces.length).toBe(reportOf(made).pieceCount);
    expect(pieces.every(({ passes }) => passes)).toBe(true);
    expect(made.said).toContain(`(${figures.lengthOverRootArea.toFixed(3)} of the root of the area)`);
    expect(made.said.split('\n').filter((line) => line.startsWith('piece '))).toHaveLength(pieces.length);
  });

  it('are told as they get better, and are the same every time', async () => {
    const [first, again] = [await run(HAMMER), await run(HAMMER)];
    expect(first.lines.length).toBeGreaterThan(0);
    expect(first.lines).toEqual(again.lines);
    expect(first.lines[0]).toMatch(/^\d+ moves: \d+ pieces?(, \d+ darts?)?, seams [\d.]+ mm .*\n$/);
    expect(readFileSync(first.out)).toEqual(readFileSync(again.out));
    expect(readFileSync(first.report)).toEqual(readFileSync(again.report));
  });

  it('of a cone are one seam along it', async () => {
    const made = await run(BRACER, { end: { moves: 5 } });
    expect(made.said).toMatch(/^1 piece, seams 2\d\d\.\d mm/);
    expect(reportOf(made).lengthOverRootArea).toBeLessThan(0.87);
  });

  it('are not sought for longer than there is something to try', async () => {
    const [model] = scratchFiles({ 'one.obj': 'v 0 0 0\nv 10 0 0\nv 0 10 0\nf 1 2 3\n' });
    const made = await run(model, { end: { seconds: 3600 } });
    expect(made.said).toMatch(/^1 piece, seams 0\.0 mm/);
  });

  it('begin from a seam file, and keep it where nothing is tried', async () => {
    const first = await run(HAMMER);
    const kept = await run(HAMMER, { from: first.out, end: { moves: 0 } });
    expect(reportOf(kept).lengthOverRootArea).toBeCloseTo(reportOf(first).lengthOverRootArea, 9);
  });

  it.each<[string, Partial<ProposeChoices>]>([
    ['as research measures', { kind: 'reference', limitPct: 1 }],
    ['in foam', { kind: 'foam', thicknessMm: 6, limitPct: 4 }],
  ])('keep paths across faces they begin from, %s, and part as many pieces when made', async (_, wish) => {
    const across = [{ points: [{ vertex: 0 }, { vertex: 18 }], kind: 'butt' }];
    const [from] = scratchFiles({ 'from.json': JSON.stringify({ version: 1, paths: across }) });
    const made = await run(HAMMER, { ...wish, from, end: { moves: 60 } });
    const seams = json(made.out) as { edges: [number, number][]; paths: typeof across };
    expect(seams.edges.length).toBeGreaterThan(0);
    expect(seams.paths[0]).toEqual(across[0]);
    expect(await piecesOf(HAMMER, made.out)).toBe(reportOf(made).pieceCount);
    // And from its own answer it goes on.
    const again = await run(HAMMER, { ...wish, from: made.out, end: { moves: 0 } });
    expect(reportOf(again).pieceCount).toBe(reportOf(made).pieceCount);
    expect(reportOf(again).seamLengthMm).toBeCloseTo(reportOf(made).seamLengthMm, 3);
  });

  it('are alike on both sides where that is wished', async () => {
    const model = join(ROOT, 'samples/bracer.obj');
    const wish = { kind: 'foam', scale: { by: 'unit', unit: 'mm' }, limitPct: 1.5, isMirrored: true } as const;
    const made = await run(model, wish);
    const corners = readFileSync(model, 'utf8')
      .split('\n')
      .filter((line) => line.startsWith('v '))
      .map((line) => line.split(' ').slice(1).map(Number));
    const ends = (json(made.out) as { edges: [number, number][] }).edges;
    const lines = (side: number): string[] =>
      ends
        .map((pair) =>
          pair.map((v) => corners[v].map((x, k) => Math.round(1000 * (k === 0 ? side * x : x)) + 0).join(' ')),
        )
        .map((pair) => pair.sort().join(' to '))
        .sort();
    expect(ends.length).toBeGreaterThan(0);
    expect(lines(-1)).toEqual(lines(1));
  });

  it('are held against the templates made along them: grooved pieces lie on their hinges', async () => {
    // The bracer's large panel in 10 mm: 2.859 % on the foam's own surface, 2.876 % on its hinges.
    const [model, from] = ['bracer.obj', 'bracer.seams.json'].map((name) => join(ROOT, 'samples', name));
    const wish = { kind: 'foam', scale: { by: 'unit', unit: 'mm' }, thicknessMm: 10, from, end: { moves: 0 } } as const;
    const [held, beyond] = [await run(model, wish), await run(model, { ...wish, limitPct: 2.87 })];
    expect(reportOf(held).pieces[1].stretch99Pct).toBeCloseTo(2.876, 3);
    expect(reportOf(held).pieces[1].hingedMm).toHaveLength(reportOf(held).pieces[1].triangles.length);
    for (const { said } of [held, beyond]) expect(said).not.toMatch(/grooves/);
    expect(reportOf(beyond).pieces[1].isFeasible).toBe(false);
  });

  it('say which limit cannot be held', async () => {
    const made = await run(BRACER, {
      kind: 'foam',
      thicknessMm: 6,
      limitPct: 8,
      scale: { by: 'size', axis: 'longest', mm: 5000 },
    });
    expect(reportOf(made).feasible).toBe(false);
    expect(made.said).toMatch(/beyond a limit/);
    expect(made.said).toMatch(/warning: piece 1: It is larger than the sheet\./);
    const { faults, pieces } = checkProposal(readFileSync(BRACER), json(made.out), json(made.report));
    expect(faults).toEqual([]);
    expect(pieces.some(({ passes }) => !passes)).toBe(true);
  });

  it('lie on the surface of the foam, on its sheet', async () => {
    const made = await run(BRACER, { kind: 'foam', thicknessMm: 10 });
    const report = reportOf(made);
    expect(report).toMatchObject({
      thicknessMm: 10,
      limits: { stretchPct: 8, leastWidthMm: 30, sheetMm: [1000, 2000] },
    });
    const { faults } = checkProposal(readFileSync(BRACER), json(made.out), report);
    expect(faults).toEqual([]);
  });
});

describe('refused in one sentence', () => {
  it.each<[string, () => Promise<Run>, RegExp]>([
    ['a file that is not there', () => run('/nowhere/helm.obj'), /there is no such file/],
    ['a file that is no model', () => run(scratchFiles({ 'a.txt': 'nothing' })[0]), /a\.txt/],
    ['seams of no JSON', () => run(HAMMER, { from: scratchFiles({ 's.json': '{' })[0] }), /s\.json is not valid JSON/],
    [
      'seams that are no edges',
      () => run(HAMMER, { from: scratchFiles({ 's.json': '{"version":1,"edges":[[0,6]]}' })[0] }),
      /s\.json: .*not joined by an edge/,
    ],
    [
      'a path that names no place of the model',
      () =>
        run(HAMMER, {
          from: scratchFiles({ 's.json': '{"version":1,"paths":[{"points":[{"vertex":0},{"vertex":99999}]}]}' })[0],
        }),
      /s\.json: Point 2 of path 1 is corner 99999/,
    ],
    [
      'seams of another model',
      () => run(HAMMER, { from: scratchFiles({ 's.json': `{"version":1,"modelHash":"${'0'.repeat(64)}"}` })[0] }),
      /another version of hammer\.obj/,
    ],
    [
      'a place that cannot be written',
      () => {
        const [blocked] = scratchFiles({ blocked: '' });
        return run(BRACER, { out: join(blocked, 'seams.json'), end: { moves: 0 } });
      },
      /blocked: this is a file, and nothing can be written into it/,
    ],
  ])('%s', async (_, made, sentence) => {
    await expect(made()).rejects.toThrow(Refused);
    await expect(made()).rejects.toThrow(sentence);
  });

  it('writes nothing where the input is refused', async () => {
    const folder = join(scratchFolder(), 'new');
    mkdirSync(folder);
    writeFileSync(join(folder, 'seams.json'), 'old');
    await expect(run('/nowhere/helm.obj', { out: join(folder, 'seams.json') })).rejects.toThrow(Refused);
    expect(readFileSync(join(folder, 'seams.json'), 'utf8')).toBe('old');
  });
});
