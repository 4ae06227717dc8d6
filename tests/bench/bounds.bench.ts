// What models of growing size ask of a machine: npm run bench:bounds [-- sizes=1000,10000,100000,1000000]
// A dome of eight panels goes from its file to the PDF that was read back, each size in a process of its own. Told for each phase: time, the
// longest stretch between two pauses, the most memory the process had, and what was held when it was over; then what is left once the outcome
// is let go. A size that is refused is told with its sentence. The figure of the machine beside: how many times slower than the usual one.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { runWithPauses } from '../../src/base/stepwise.ts';
import { besideOf, type Outcome } from '../../src/pipeline/outcome.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import { reportOf } from '../../src/pipeline/write-files.ts';
import { shopPlanSteps } from '../../src/pipeline/shop-plan.ts';
import { readPdf } from '../../src/steps/read-back/read-pdf.ts';
import { checkPaper } from '../../src/steps/read-back/check-paper.ts';
import { writePdf } from '../../src/steps/write/pdf.ts';
import { wantedPaper } from '../../src/pipeline/wanted-paper.ts';
import { domeProject } from '../support/dome-project.ts';
import { slowness } from './calibration.ts';
import { heldMb, MemoryClock } from './memory-clock.ts';
import { textTable } from './text-table.ts';

const SIZES = '1000,10000,100000,1000000';
const HEAD = ['phase', 'ms', 'cpu ms', 'longest ms', 'pauses', 'peak MB', 'held MB'];
const DATE = '2026-01-01';

const words = new Map(process.argv.slice(2).map((word) => word.split('=') as [string, string]));
const only = words.get('only');
if (only === undefined) askEach((words.get('sizes') ?? SIZES).split(',').map(Number));
else await tell(Number(only));

/** Memory of one size must not lie beside that of another. */
function askEach(sizes: readonly number[]): void {
  const runner = fileURLToPath(new URL('../../scripts/run-ts.mjs', import.meta.url));
  const own = fileURLToPath(import.meta.url);
  process.stdout.write(
    `This machine is ${slowness().times.toFixed(2)} times slower than the usual one before the runs`,
  );
  process.stdout.write(`, ${slowness().times.toFixed(2)} times in a second look.\n`);
  for (const size of sizes) {
    const child = spawnSync(process.execPath, ['--expose-gc', runner, own, `only=${size}`], { encoding: 'utf8' });
    process.stdout.write(child.stdout);
    if (child.status !== 0) {
      const fault = /(?:JavaScript heap out of memory|RangeError.*|Error:.*)/.exec(child.stderr)?.[0];
      process.stdout.write(
        `A dome of ${size}: ended with ${String(child.signal ?? child.status)}. ${fault ?? child.stderr.slice(-300)}\n\n`,
      );
    }
  }
}

async function tell(size: number): Promise<void> {
  const { project, bytes } = await domeProject(size);
  const { source } = project.parts[0];
  const before = heldMb();
  let pipeline: Pipeline | null = new Pipeline();
  pipeline.putSource(source.hash, { fileName: source.fileName, bytes });
  const clock = new MemoryClock();
  let outcome: Outcome | null = await pipeline.run(project, clock);
  const stopped = outcome.stopped?.problem.text;
  if (outcome.stopped === null) await toPaper(outcome, clock);
  clock.pause(1, 'over');
  const facts = [outcome.sculpt?.mesh.faceCount ?? 0, outcome.pieces?.length ?? 0, outcome.paper?.pages.length ?? 0];
  const with_ = heldMb();
  outcome = null;
  pipeline = null;
  await new Promise((resolve) => setTimeout(resolve, 50));
  const after = heldMb();
  const rows = [...clock.phases].map(([phase, of]) => [
    phase,
    ...[of.ms, of.cpuMs, of.longestMs, of.pauses, of.peakMb, of.heldMb].map((figure) => figure.toFixed(0)),
  ]);
  const all = [...clock.phases.values()];
  const sum = (of: (one: (typeof all)[number]) => number): string =>
    all.reduce((total, one) => total + of(one), 0).toFixed(0);
  const most = (of: (one: (typeof all)[number]) => number): string => Math.max(...all.map(of)).toFixed(0);
  rows.push([
    'in all',
    sum(({ ms }) => ms),
    sum(({ cpuMs }) => cpuMs),
    most(({ longestMs }) => longestMs),
    sum(({ pauses }) => pauses),
    most(({ peakMb }) => peakMb),
    '',
  ]);
  const [triangles, pieces, pages] = facts;
  process.stdout.write(
    `A dome of ${triangles || size} triangles (${(bytes.length / 2 ** 20).toFixed(1)} MB of OBJ), ${pieces} pieces, ${pages} pages\n${textTable(HEAD, rows)}` +
      `held before ${before.toFixed(0)} MB, with the outcome ${with_.toFixed(0)} MB, once it was let go ${after.toFixed(0)} MB\n` +
      `${stopped === undefined ? '' : `stopped: ${stopped}\n`}\n`,
  );
}

/** Report, PDF and its reading back, as the window and the command line make them. */
async function toPaper(outcome: Outcome, clock: MemoryClock): Promise<void> {
  const { paper, pieces, project } = outcome;
  if (paper === null || pieces === null) return;
  clock.pause(1, 'the report');
  reportOf(outcome, [], await runWithPauses(shopPlanSteps(outcome), () => clock.pause(1)));
  clock.pause(1, 'writing the PDF');
  const font = new Uint8Array(
    readFileSync(new URL('../../node_modules/dejavu-fonts-ttf/ttf/DejaVuSans.ttf', import.meta.url)),
  );
  const bytes = await writePdf(
    paper.pages,
    {
      font,
      title: project.name,
      date: DATE,
      revision: project.revision,
      bookmarks: [],
    },
    clock,
  );
  clock.pause(1, 'reading the PDF back');
  const read = await readPdf(bytes, clock);
  clock.pause(1, 'comparing it with the pieces');
  const faults = checkPaper(read, wantedPaper(project, paper, pieces, besideOf(outcome)));
  if (faults.length > 0) throw new Error(`the paper is not what it should be: ${JSON.stringify(faults[0])}`);
}
