// Seams found on the command line, beside what research prototypes and a general-purpose chart generator reached:
//   npm run build && npm run bench:propose [-- shapes|models] [names…] [--times 2,10,60] [--foam] [--pieces simple] [--cli PATH] [--out DIR]
// Each time is a run of its own, counted from the start of the process; every result is recomputed by tests/reference/recompute/check-proposal.mjs.
// What is under way goes to stderr, the tables to stdout once a group is done.
import { existsSync, readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { fileURLToPath } from 'node:url';
import { contentHash } from '../../src/base/hash.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { REFERENCE_LIMITS } from '../../src/pipeline/propose/proposal.ts';
import { seamGround } from '../../src/pipeline/seam-ground.ts';
import { newProject } from '../../src/project/new-project.ts';
import type { CheckedProposal } from '../reference/recompute/check-proposal.mjs';
import { generatedCharts } from './generated-charts.ts';
import { runProposal, type ProposeRun } from './propose-run.ts';
import { textTable } from './text-table.ts';

const fileOf = (path: string): string => fileURLToPath(new URL(`../${path}`, import.meta.url));

/** What prototypes reached at the same constraint: pieces, and seam length over the root of the area. */
interface Best {
  readonly pieces: number;
  readonly length: number;
}

const SHAPES: Readonly<Record<string, Best>> = {
  bracer_cone: { pieces: 1, length: 0.86 },
  hammer: { pieces: 1, length: 3.27 },
  greave: { pieces: 1, length: 0.96 },
  pauldron: { pieces: 1, length: 1.13 },
  horn: { pieces: 1, length: 2.9 },
  helmet_low: { pieces: 1, length: 2.86 },
  helmet: { pieces: 1, length: 3.39 },
  breastplate: { pieces: 1, length: 0.42 },
};

/** Real models, made 300 mm long. */
const MODELS = [
  ...['angle_block.STL', 'barrel_large.obj', 'cornell_box.obj', 'goathead.obj', 'hand_lowres.obj', 'moon_ascii.stl'],
  ...['plate_holes.STL', 'quadknot.obj', 'spot_control_mesh.obj', 'spot_low_resolution.obj', 'wingnut.obj'],
  'hammer.obj',
];

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    times: { type: 'string' },
    foam: { type: 'boolean', default: false },
    pieces: { type: 'string', default: 'few' },
    cli: { type: 'string', default: fileURLToPath(new URL('../../dist/cli.js', import.meta.url)) },
    out: { type: 'string', default: '/tmp/proposals' },
  },
});
if (!existsSync(values.cli)) throw new Error(`${values.cli} is not built: npm run build`);
const names = positionals.filter((word) => word !== 'shapes' && word !== 'models');
const isAsked = (group: string, name: string): boolean =>
  (!positionals.some((word) => word === 'shapes' || word === 'models') || positionals.includes(group)) &&
  (names.length === 0 || names.includes(name.replace(/\.\w+$/, '')));
const limits = values.foam ? ['--limits', 'foam'] : ['--limits', 'reference'];
const common = [...limits, '--pieces', values.pieces];
const timesOr = (usual: string): number[] => (values.times ?? usual).split(',').map(Number);

const [shapes, models] = [
  Object.keys(SHAPES).filter((name) => isAsked('shapes', name)),
  MODELS.filter((file) => isAsked('models', file)),
];
if (shapes.length + models.length === 0)
  throw new Error(`nothing is called ${names.join(', ')}: take ${[...Object.keys(SHAPES), ...MODELS].join(', ')}`);
await benchShapes(timesOr('2,10,60'));
benchModels(timesOr('10,60'));

async function benchShapes(times: readonly number[]): Promise<void> {
  const rows: string[][] = [];
  for (const name of shapes) {
    const best = SHAPES[name];
    tellBegun(name, times);
    const model = fileOf(`reference/seam-shapes/${name}.obj`);
    const runs = times.map((seconds) => runTimed(model, `${name}-${seconds}`, seconds, ['--unit', 'cm']));
    const charts = values.foam ? ['', ''] : await chartsText(model);
    const first = runs.map((run) => ('refused' in run ? null : run.firstSeconds)).find((s) => s !== null);
    rows.push([
      name,
      `${best.pieces} / ${best.length.toFixed(2)}`,
      first === undefined || first === null ? 'none' : first.toFixed(2),
      ...runs.flatMap((run) => [runText(run), againstText(run, best)]),
      ...charts,
    ]);
    process.stderr.write(`${(rows.at(-1) ?? []).join('  ')}\n`);
  }
  if (rows.length === 0) return;
  const head = [
    ...['shape', 'prototypes', 'first at s'],
    ...times.flatMap((seconds) => [`${seconds} s`, 'of prototypes']),
    ...['charts as they come', 'charts that hold'],
  ];
  process.stdout.write(`Shapes${words()}
Pieces / seam length over the root of the area, (darts), as recomputed; ! is not feasible, ? a report that does not agree
Of prototypes: length over theirs, where the pieces are no more
${textTable(head, rows)}
`);
}

function benchModels(times: readonly number[]): void {
  const rows: string[][] = [];
  for (const file of models) {
    const name = file.replace(/\.\w+$/, '');
    tellBegun(name, times);
    const model = fileOf(`reference/meshes/${file}`);
    const runs = times.map((seconds) =>
      runTimed(model, `model-${name}-${seconds}`, seconds, ['--size', 'longest=300']),
    );
    const first = runs.map((run) => ('refused' in run ? null : run.firstSeconds)).find((s) => s !== null);
    rows.push([
      name,
      first === undefined || first === null ? 'none' : first.toFixed(2),
      ...runs.flatMap((run) => [runText(run), pctText(run), wallText(run)]),
    ]);
    process.stderr.write(`${(rows.at(-1) ?? []).join('  ')}\n`);
  }
  if (rows.length === 0) return;
  const head = ['model', 'first at s', ...times.flatMap((seconds) => [`${seconds} s`, 'p99 %', 'wall s'])];
  process.stdout.write(`Real models, 300 mm long${words()}
Pieces / seam length over the root of the area, (darts), as recomputed; ! is not feasible, ? a report that does not agree
${textTable(head, rows)}
`);
}

/** The tables come at the very end, and a group takes minutes: what is under way is told beside them. */
function tellBegun(name: string, times: readonly number[]): void {
  process.stderr.write(`${name}, ${times.join(' s, ')} s …\n`);
}

function words(): string {
  return ` at ${values.foam ? '6 mm foam and its limits' : '5 %, no thickness'}, ${values.pieces} pieces`;
}

function runTimed(model: string, name: string, seconds: number, size: readonly string[]) {
  const run = runProposal(values.cli, model, values.out, name, [...common, ...size, '--seconds', String(seconds)]);
  if (!('refused' in run)) for (const fault of run.faults.slice(0, 5)) process.stderr.write(`${name}: ${fault}\n`);
  return run;
}

type Run = ProposeRun | { readonly refused: string };

function runText(run: Run): string {
  if ('refused' in run) return run.refused;
  const { figures, darts, isFeasible, faults } = run;
  const mark = faults.length > 0 ? ' ?' : isFeasible ? '' : ' !';
  return `${figures.pieces} / ${figures.lengthOverRootArea.toFixed(2)} (${darts})${mark}`;
}

function againstText(run: Run, best: Best): string {
  if ('refused' in run || !run.isFeasible || run.figures.pieces > best.pieces) return '-';
  return (run.figures.lengthOverRootArea / best.length).toFixed(2);
}

function pctText(run: Run): string {
  if ('refused' in run) return '';
  const { stretch99Pct, squash99Pct } = run.figures;
  return `${stretch99Pct.toFixed(2)} ${squash99Pct.toFixed(2)}`;
}

function wallText(run: Run): string {
  return 'refused' in run ? '' : run.wallSeconds.toFixed(1);
}

/** What the chart generator reaches: as it comes, and the first of its finer answers that holds. */
async function chartsText(model: string): Promise<string[]> {
  const bytes = new Uint8Array(readFileSync(model));
  const fileName = model.replace(/^.*\//, '');
  const hash = await contentHash(bytes);
  const project = newProject(fileName, { hash, fileName, format: 'obj' });
  const sized = {
    ...project,
    parts: project.parts.map((part) => ({ ...part, scale: { by: 'unit', unit: 'cm' } as const })),
  };
  const ground = await seamGround(sized, new Map([[hash, { fileName, bytes }]]), { kind: 'reference' }, QUIET_WORK);
  if (!ground.ok) return [ground.problem.text, ''];
  const { mesh, mmPerUnit } = ground.value.sculpt;
  const charts = await generatedCharts(bytes, mesh, fileName, mmPerUnit ?? 1, REFERENCE_LIMITS);
  if ('missing' in charts) return [charts.missing, ''];
  return [chartText(charts.first), charts.held === null ? 'none' : chartText(charts.held)];
}

function chartText({ figures, pieces }: CheckedProposal): string {
  const mark = pieces.every(({ passes }) => passes) ? '' : ' !';
  return `${figures.pieces} / ${figures.lengthOverRootArea.toFixed(2)}${mark}`;
}
