// Random seams on twelve sculpts, each set run from the file to pages and held against the promise of every record:
//   npm run hostile -- sets=10000 seed=1 mesh=all minutes=60 pages=1 pdf=53
// One set alone, as a fault names it: npm run hostile -- mesh=ball only=1234567
// Times are those of the processor.
// sets: how many in all; seed: where chance begins; mesh: one of the twelve by its name; pages: every so many are laid on sheets and pages, the others
// end in templates and dry fit; pdf: of every so many of all the finished PDF too, where they are laid; 0: of none.
import { SEAM_MESHES } from './seam-meshes.ts';
import { fileFaults, outcomeFaults } from './outcome-faults.ts';
import { openMesh, runTrial, seamTrial, type OpenedMesh } from './seam-sets.ts';
import { testFont } from '../support/run-sample.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import type { Project } from '../../src/project/project.ts';
import { runToPieces } from './run-to-pieces.ts';
import { Tally } from './tally.ts';

const words = new Map(process.argv.slice(2).map((word) => word.split('=', 2) as [string, string]));
const figure = (name: string, usual: number): number => {
  const value = Number(words.get(name) ?? usual);
  if (!Number.isFinite(value)) throw new Error(`${name} is no number`);
  return value;
};

const font = testFont();
const wanted = words.get('mesh') ?? 'all';
const meshes = SEAM_MESHES.filter(({ name }) => wanted === 'all' || name === wanted);
if (meshes.length === 0) throw new Error(`no mesh ${wanted}: ${SEAM_MESHES.map(({ name }) => name).join(', ')}`);
const opened = await Promise.all(meshes.map(openMesh));
const [sets, seed] = [figure('sets', 240), figure('seed', 1)];
// With the twelve in turn, a prime number reaches all of them.
const [pages, pdf] = [figure('pages', 1), figure('pdf', 53)];
const end = performance.now() + 60_000 * figure('minutes', 600);
const tallies = new Map(opened.map((mesh) => [mesh, new Tally(mesh.name)]));
const say = (text: string): void => void process.stdout.write(`${text}\n`);
/** Time of the processor, which other work on the machine does not lengthen, ms. */
const cpuMs = (): number => process.cpuUsage().user / 1000;
let faulty = 0;

async function trial(mesh: OpenedMesh, own: number, isLaid: boolean, withPdf: boolean): Promise<void> {
  const { name, project } = seamTrial(mesh, own);
  const which = `mesh=${mesh.name} only=${own}`;
  const start = cpuMs();
  const told: string[] = [];
  let stop: string | null = 'thrown';
  const faults: string[] = [];
  try {
    const outcome = isLaid ? await runTrial(mesh, { name, project }) : await toPieces(mesh, project);
    const ms = cpuMs() - start;
    stop = outcome.stopped?.problem.code ?? null;
    told.push(...outcome.findings.map(({ code }) => code));
    faults.push(...outcomeFaults(outcome));
    if (withPdf && isLaid) faults.push(...(await fileFaults(outcome, font)));
    tallies.get(mesh)?.add(`${which}, ${name}`, ms, stop, told);
    if (words.has('only')) say(`${name}: ${stop ?? 'in pieces'}, ${ms.toFixed(0)} ms\n${outcome.findings.map(({ code, text }) => `  ${code}: ${text}`).join('\n')}`);
  } catch (error) {
    tallies.get(mesh)?.add(`${which}, ${name}`, cpuMs() - start, stop, told);
    faults.push(`thrown: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
  }
  if (faults.length === 0) return;
  faulty += 1;
  say(`FAULT ${which} (${name}; ${faults.length}): ${faults.slice(0, words.has('only') ? 100 : 3).join(' | ').slice(0, 2000)}`);
}

const toPieces = ({ bytes, hash }: OpenedMesh, project: Project): Promise<Outcome> =>
  runToPieces(project, new Map([[hash, { fileName: 'sculpt.obj', bytes }]]));

let count = 0;
if (words.has('only')) {
  for (const mesh of opened) await trial(mesh, figure('only', 0), true, true);
} else {
  for (; count < sets && performance.now() < end; count += 1) {
    // Seeds far apart, so that runs with neighbouring seeds share no trial.
    await trial(opened[count % opened.length], 1_000_003 * seed + count, pages > 0 && count % pages === 0, pdf > 0 && count % pdf === 0);
    if (count % 100 === 99) say(`… ${count + 1} sets, ${faulty} at fault, ${(cpuMs() / (count + 1)).toFixed(0)} ms each, ${(process.memoryUsage().rss / 2 ** 20).toFixed(0)} MB`);
  }
  for (const tally of tallies.values()) say(String(tally));
  const all = [...tallies.values()];
  const sum = (of: (tally: Tally) => number): number => all.reduce((total, tally) => total + of(tally), 0);
  say(`${sum((t) => t.runs)} sets, ${sum((t) => t.made)} in pieces, ${faulty} at fault, peak memory ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB`);
}
process.exitCode = faulty > 0 ? 1 : 0;
