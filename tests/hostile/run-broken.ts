// Broken sculpts, run from the file as far as they go and held against the promise of every record:
//   npm run hostile:broken -- runs=2000 seed=1 kind=all minutes=60 pages=1 pdf=19
// One alone, as a fault names it: npm run hostile:broken -- kind="many shells" only=1234567
// One of so many triangles, with its time and memory: npm run hostile:broken -- triangles=2000000
import { contentHash } from '../../src/base/hash.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import { domeProject } from '../support/dome-project.ts';
import { testFont } from '../support/run-sample.ts';
import { BROKEN } from './broken-solids.ts';
import { brokenTrial, runBroken, sourcesOf } from './broken-trials.ts';
import { runToPieces } from './run-to-pieces.ts';
import { fileFaults } from './outcome-faults.ts';
import { say, Trials, Words } from './trials.ts';

const words = new Words();
const trials = new Trials(words.has('only'));

if (words.has('triangles')) await large(words.figure('triangles', 2_000_000));
else await broken();

async function broken(): Promise<void> {
  const font = testFont();
  const wanted = words.text('kind', 'all');
  const kinds = Object.keys(BROKEN).filter((name) => wanted === 'all' || name === wanted);
  if (kinds.length === 0) throw new Error(`no kind ${wanted}: ${Object.keys(BROKEN).join(', ')}`);
  const [runs, seed] = [words.figure('runs', 460), words.figure('seed', 1)];
  const [pages, pdf] = [words.figure('pages', 1), words.figure('pdf', 19)];
  const end = performance.now() + 60_000 * words.figure('minutes', 600);
  const trial = async (kind: string, own: number, isLaid: boolean, withPdf: boolean): Promise<void> => {
    const made = await brokenTrial(kind, own);
    await trials.run(
      kind,
      `kind="${kind}" only=${own}`,
      () => (isLaid ? runBroken(made) : runToPieces(made.project, sourcesOf(made))),
      (outcome) => (withPdf && isLaid ? fileFaults(outcome, font) : Promise.resolve([])),
    );
  };
  if (words.has('only')) return trial(kinds[0], words.figure('only', 0), true, true);
  for (let i = 0; i < runs && performance.now() < end; i += 1)
    await trial(kinds[i % kinds.length], 1_000_003 * seed + i, i % pages === 0, pdf > 0 && i % pdf === 0);
  trials.finish();
}

/** One sculpt of so many triangles, sound by itself: is it gone through, or refused, and at what cost? */
async function large(triangles: number): Promise<void> {
  const start = performance.now();
  const { project, bytes } = await domeProject(triangles);
  const hash = await contentHash(bytes);
  const seconds = (): string => `${((performance.now() - start) / 1000).toFixed(1)} s`;
  const memory = (): string =>
    `${(process.memoryUsage().rss / 2 ** 20).toFixed(0)} MB now, ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB at most`;
  say(`${triangles} triangles, a file of ${(bytes.length / 2 ** 20).toFixed(0)} MB, made in ${seconds()}, ${memory()}`);
  const pipeline = new Pipeline();
  pipeline.putSource(hash, { fileName: 'dome.obj', bytes });
  const told = {
    pause(_done: number, text?: string): undefined {
      if (text !== undefined) say(`  ${seconds()}: ${text}; ${memory()}`);
    },
  };
  try {
    const { stopped, pieces, findings } = await pipeline.run(project, words.has('quiet') ? QUIET_WORK : told);
    say(`${stopped === null ? `${pieces?.length} pieces` : `${stopped.step} stops: ${stopped.problem.text}`}`);
    for (const { code, text } of findings.slice(0, 20)) say(`  ${code}: ${text}`);
  } catch (error) {
    say(`thrown: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
    process.exitCode = 1;
  }
  say(`${seconds()} in all, ${memory()}`);
}
