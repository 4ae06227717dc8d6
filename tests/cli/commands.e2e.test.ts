import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import packageFile from '../../package.json' with { type: 'json' };
import { cone, objOf } from '../reference/handbook/polygon-solids.ts';
import { recompute } from '../reference/recompute.mjs';
import type { Report } from '../reference/report-shape.ts';
import { runCli, sample, scratchFiles, scratchFolder, type CliRun } from './run-cli.ts';

const { model, seams } = sample('bracer');
const MAKE = ['make', model, '--seams', seams, '--unit', 'mm', '--date', '2026-03-01'];
const FILES = [
  'build-sheet.pdf',
  'cut-list.csv',
  'files.json',
  'gluing.json',
  'pieces.svg',
  'project.foamloft.json',
  'report.json',
  'templates.pdf',
  'timings.json',
];
/** Files that are promised to have the same bytes. */
const PROMISED = FILES.filter((name) => name !== 'timings.json');

const CUBE = `v 0 0 0
v 10 0 0
v 10 10 0
v 0 10 0
v 0 0 10
v 10 0 10
v 10 10 10
v 0 10 10
f 1 4 3 2
f 5 6 7 8
f 1 2 6 5
f 2 3 7 6
f 3 4 8 7
f 4 1 5 8
`;

/** Three faces round a corner: lies flat without a seam, and takes little time where it is not the sculpt that counts. */
const TRAY = CUBE.split('\n')
  .filter((line) => !/^f (5|2|3)/.test(line))
  .join('\n');

const reportIn = (folder: string): Report => JSON.parse(readFileSync(join(folder, 'report.json'), 'utf8')) as Report;

describe('help', () => {
  it('is told', () => {
    const { status, stdout, stderr } = runCli('make', '--help');
    expect(status).toBe(0);
    expect(stderr).toBe('');
    for (const word of [
      'inspect MODEL',
      'make MODEL|PROJECT',
      '--out',
      '--seams',
      '--thickness',
      '--model-is',
      '--neutral',
    ])
      expect(stdout).toContain(word);
    for (const word of ['--seam-price', '--squash-price', '--even-out', '--keep-apart', '--shrink'])
      expect(stdout).toContain(word);
    for (const word of ['--unit', '--size', '--paper', '--margin', '--overlap', '--date', '--json'])
      expect(stdout).toContain(word);
    expect(Math.max(...stdout.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
  });

  it('tells the version', () => {
    expect(runCli('--version')).toEqual({ status: 0, stdout: `${packageFile.version}\n`, stderr: '' });
  });
});

it('wrong usage is told in one sentence, with another exit code', () => {
  const { status, stdout, stderr } = runCli('unfold', model);
  expect(stderr).toMatch(/^.*no command unfold.* See --help\.\n$/);
  expect([status, stdout]).toEqual([2, '']);
});

describe('inspect', () => {
  it('tells a sample in words', () => {
    const { status, stdout, stderr } = runCli('inspect', model);
    expect(status).toBe(0);
    expect(stderr).toBe('');
    expect(stdout).toMatch(/^bracer\.obj/);
    for (const word of ['vertices', 'faces', 'edges', 'Euler number', 'shells', 'open loops', 'area', 'size', 'mirror'])
      expect(stdout).toContain(word);
  });

  it('tells the same as JSON, and what the file holds', () => {
    const facts = JSON.parse(runCli('inspect', model, '--json').stdout) as Record<string, number>;
    const rows = readFileSync(model, 'utf8').split('\n');
    const faces = rows.filter((row) => row.startsWith('f ')).map((row) => row.trim().split(/\s+/).length - 1);
    expect(facts.vertices).toBe(rows.filter((row) => row.startsWith('v ')).length);
    expect(facts.faces).toBe(faces.length);
    expect(facts.triangles).toBe(faces.reduce((sum, corners) => sum + corners - 2, 0));
    expect(facts.mirror).toMatchObject({ normal: [1, 0, 0], share: 1 });
    expect(facts.euler).toBe(facts.vertices - facts.edges + facts.faces);
    expect(runCli('inspect', model).stdout).toContain(String(facts.triangles));
  });
});

describe('seams', () => {
  it('are found, and parted along', () => {
    const folder = scratchFolder();
    const file = join(folder, 'seams.json');
    const found = runCli('seams', model, '--unit', 'mm', '--moves', '20', '--out', file);
    expect(found.stderr).toBe('');
    expect(found.status).toBe(0);
    const [, pieces] = /^(\d+) pieces?, .*written to/m.exec(found.stdout) ?? [];
    const made = runCli('make', model, '--seams', file, '--unit', 'mm', '--out', join(folder, 'out'));
    expect(made.status).toBe(0);
    expect(made.stdout).toMatch(new RegExp(`^${pieces} pieces?, `));
  });

  it('are refused in one sentence', () => {
    const { status, stderr } = runCli('seams', '/nowhere/helm.obj', '--out', 'x.json');
    expect(status).toBe(1);
    expect(stderr).toMatch(/^\/nowhere\/helm\.obj: there is no such file.*\n$/);
  });
});

describe('make', () => {
  const folder = mkdtempSync(join(tmpdir(), 'foamloft-cli-'));
  /** The bracer as most of the tests below look at it. */
  const first = join(folder, 'new', 'folder');
  let run: CliRun;
  beforeAll(() => {
    run = runCli(...MAKE, '--out', first);
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('writes all files of a sample, and a report that can be recomputed', () => {
    expect(run.stderr).toBe('');
    expect(run.status).toBe(0);
    expect(run.stdout).toMatch(/^\d+ pieces?, \d+ pages, written to /);
    expect(readdirSync(first).sort()).toEqual(FILES);
    expect(readFileSync(join(first, 'templates.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
    expect(recompute(readFileSync(model), reportIn(first)).faults).toEqual([]);
  });

  it('gives the handbook’s cone the area of its triangles', () => {
    const [sides, radius, height] = [128, 100, 240];
    const solid = cone(sides, radius, height);
    const [file, cuts] = scratchFiles({
      'cone.obj': objOf(solid),
      'cone.seams.json': JSON.stringify({ version: 1, edges: solid.seams }),
    });
    const out = join(scratchFolder(), 'out');
    const { status, stderr } = runCli(
      ...['make', file, '--seams', cuts, '--out', out, '--unit', 'mm', '--thickness', '10'],
      ...['--model-is', 'middle', '--neutral', '0.5'],
    );
    expect(stderr).toBe('');
    expect(status).toBe(0);
    const slant = Math.hypot(radius, height);
    const turn = 2 * Math.asin((radius * Math.sin(Math.PI / sides)) / slant);
    const area = (sides / 2) * slant * slant * Math.sin(turn);
    const { pieces } = reportIn(out);
    expect(pieces).toHaveLength(1);
    expect(Math.abs(pieces[0].flatAreaMm2 / area - 1)).toBeLessThan(1e-6);
    expect(recompute(readFileSync(file), reportIn(out)).faults).toEqual([]);
  });

  it('gives the same bytes for the same input and date', () => {
    const [second, later] = ['b', 'c'].map((name) => join(scratchFolder(), name));
    runCli(...MAKE, '--out', second);
    runCli(...MAKE, '--out', later, '--date', '2026-03-02');
    for (const name of PROMISED)
      expect(readFileSync(join(first, name)).equals(readFileSync(join(second, name))), name).toBe(true);
    expect(readFileSync(join(first, 'templates.pdf')).equals(readFileSync(join(later, 'templates.pdf')))).toBe(false);
    expect(readFileSync(join(first, 'report.json')).equals(readFileSync(join(later, 'report.json')))).toBe(true);
  });

  it('opens a project it wrote and makes the same of it', () => {
    const [first, second] = ['a', 'b'].map((name) => join(scratchFolder(), name));
    runCli(...MAKE, '--thickness', '8', '--model-is', 'back', '--neutral', '0.4', '--paper', 'A3', '--out', first);
    const again = runCli('make', join(first, 'project.foamloft.json'), '--out', second, '--date', '2026-03-01');
    expect(again.stderr).toBe('');
    for (const name of PROMISED)
      expect(readFileSync(join(first, name)).equals(readFileSync(join(second, name))), name).toBe(true);
  });

  it('changes what the command line says of a project, and nothing else', () => {
    const second = join(scratchFolder(), 'b');
    runCli('make', join(first, 'project.foamloft.json'), '--thickness', '10', '--paper', 'Letter', '--out', second);
    const [before, after] = [reportIn(first), reportIn(second)];
    expect(after.pages.paper).toBe('Letter');
    expect(after.pieces.map((piece) => piece.id)).toEqual(before.pieces.map((piece) => piece.id));
    expect(after.pieces[0].surfaceAreaMm2).toBeLessThan(before.pieces[0].surfaceAreaMm2);
  });

  it('keeps what it is told of laying flat and of shrinkage, in the project and in the report', () => {
    const [first, second] = ['a', 'b'].map((name) => join(scratchFolder(), name));
    const wishes = ['--seam-price', '10', '--squash-price', '4', '--even-out', '--keep-apart', '--shrink', '2,1'];
    const { status, stderr } = runCli(...MAKE, ...wishes, '--out', first);
    expect(stderr).toBe('');
    expect(status).toBe(0);
    const report = reportIn(first);
    expect(report.parts[0].flatten).toEqual({ seamPrice: 10, squashPrice: 4, evenOut: true, keepApart: true });
    expect(report.layers[0].shrinkage).toEqual({ alongPct: 2, acrossPct: 1 });
    expect(report.pieces.every((piece) => piece.cutOutlineMm !== undefined)).toBe(true);
    expect(recompute(readFileSync(model), report).faults).toEqual([]);
    runCli('make', join(first, 'project.foamloft.json'), '--out', second, '--date', '2026-03-01');
    for (const name of PROMISED)
      expect(readFileSync(join(first, name)).equals(readFileSync(join(second, name))), name).toBe(true);
  });

  it('offers a cut for a closed surface, and the cut is enough', () => {
    const [model] = scratchFiles({ 'cube.obj': CUBE });
    const refused = runCli('make', model, '--unit', 'mm', '--out', join(scratchFolder(), 'out'));
    expect(refused.status).toBe(1);
    const offered = /"edges":(\[(?:\[\d+,\d+\],?)+\])\.\n$/.exec(refused.stderr)?.[1];
    const [cut] = scratchFiles({ 'cut.json': `{"version":1,"edges":${offered}}` });
    const out = join(scratchFolder(), 'out');
    expect(runCli('make', model, '--unit', 'mm', '--seams', cut, '--out', out).status).toBe(0);
    expect(reportIn(out).pieces).toHaveLength(1);
  });

  it('takes the numbers as millimetres when nothing is said, and says so', () => {
    const out = scratchFolder();
    const [tray] = scratchFiles({ 'tray.obj': TRAY });
    const { status, stdout } = runCli('make', tray, '--out', out);
    expect(status).toBe(0);
    expect(stdout).toMatch(/taken as millimetres/);
    expect(reportIn(out).findings.map((finding) => finding.code)).toContain('size/assumed');
  });

  it('leaves a folder as it was when it fails', () => {
    const out = scratchFolder();
    writeFileSync(join(out, 'notes.txt'), 'mine');
    const [broken] = scratchFiles({ 'broken.seams.json': '{"version":1,"edges":[[0,999999]]}' });
    const { status, stderr } = runCli('make', model, '--seams', broken, '--out', out);
    expect(status).toBe(1);
    expect(stderr).toMatch(/broken\.seams\.json/);
    expect(readdirSync(out)).toEqual(['notes.txt']);
  });

  it('does not write over what it reads', () => {
    const marked = '{"version":1,"edges":[]}';
    const [odd] = scratchFiles({ 'timings.json': marked });
    const [tray] = scratchFiles({ 'tray.obj': TRAY });
    const { status, stderr } = runCli('make', tray, '--seams', odd, '--unit', 'mm', '--out', join(odd, '..'));
    expect(stderr).toMatch(/timings\.json: --out would write over the file that is read; choose another place\.\n$/);
    expect(status).toBe(1);
    expect(readFileSync(odd, 'utf8')).toBe(marked);
    expect(readdirSync(join(odd, '..'))).toEqual(['timings.json']);
  });

  it('writes all files or none, and keeps those of the last run', () => {
    const out = scratchFolder();
    mkdirSync(join(out, 'report.json'));
    writeFileSync(join(out, 'templates.pdf'), 'the last run');
    const [tray] = scratchFiles({ 'tray.obj': TRAY });
    const { status, stderr } = runCli('make', tray, '--unit', 'mm', '--out', out);
    expect(status).toBe(1);
    expect(stderr).toMatch(/--out/);
    expect(readdirSync(out).sort()).toEqual(['report.json', 'templates.pdf']);
    expect(readFileSync(join(out, 'templates.pdf'), 'utf8')).toBe('the last run');
  });
});
