// How soon a call-off is heard: npm run bench:cancel [-- rounds=7 most=124000]
// The whole pipeline on a dome of eight panels, then what the window is sent of it: time, and the longest stretch between two pauses, by
// phase. Each round begins with a pipeline that remembers nothing; the first one, whose code is cold, stands by itself. Then call-offs at
// moments spread over the whole job, as the worker hears them: how long after its moment each was answered.
import { contentHash } from '../../src/base/hash.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import { reportOf, svgOf } from '../../src/pipeline/write-files.ts';
import { BenchUpdater } from '../../src/worker/bench-update.ts';
import { PipelineWorkshop } from '../../src/worker/workshop.ts';
import { domeProject } from '../support/dome-project.ts';
import { readBenchWords } from './bench-words.ts';
import { StretchClock, type PhaseStretches } from './stretch-clock.ts';
import { textTable } from './text-table.ts';
import { median, msText, timesText } from './times.ts';

const TRIANGLES = 124_000;
const CALL_OFFS = 32;

const { rounds, most } = readBenchWords(process.argv.slice(2), ['dome'], ['dome']);
const { project, bytes } = await domeProject(Math.min(most, TRIANGLES));
const { source } = project.parts[0];

async function timedRun(): Promise<{ phases: ReadonlyMap<string, PhaseStretches>; outcome: Outcome }> {
  const pipeline = new Pipeline();
  pipeline.putSource(source.hash, { fileName: source.fileName, bytes });
  const clock = new StretchClock();
  const outcome = await pipeline.run(project, clock);
  clock.pause(1, 'telling the window');
  new BenchUpdater().next(outcome, 0);
  clock.pause(1);
  return { phases: clock.phases, outcome };
}

/** Time from the moment of a call-off, ms after the job was begun, to its answer; null when the job was done before. */
async function answeredAfter(moment: number): Promise<number | null> {
  const workshop = new PipelineWorkshop(() => Promise.reject(new Error('no font is needed here')));
  await workshop.putSource(bytes, source.fileName);
  const due = performance.now() + moment;
  setTimeout(() => void workshop.cancel(), moment);
  const reply = await workshop.compute(project, 0, () => undefined);
  return reply.cancelled ? Math.max(0, performance.now() - due) : null;
}

const cold = await timedRun();
const warm: ReadonlyMap<string, PhaseStretches>[] = [];
for (let round = 0; round < rounds; round += 1) warm.push((await timedRun()).phases);

const rows = [...cold.phases].map(([phase, first]) => {
  const found = warm.map((phases) => phases.get(phase)).filter((stretches) => stretches !== undefined);
  return [
    phase,
    msText(median(found.map(({ ms }) => ms))),
    String(first.pauses),
    msText(first.longestMs),
    timesText(found.map(({ longestMs }) => longestMs)),
  ];
});
const { outcome } = cold;
const total = median(warm.map((phases) => [...phases.values()].reduce((sum, { ms }) => sum + ms, 0)));
const made = [reportOf(outcome), svgOf(outcome), JSON.stringify([outcome.findings, outcome.sheets, outcome.paper])];
const hash = await contentHash(new TextEncoder().encode(made.join('\n')));
const answers: number[] = [];
for (let i = 0; i < CALL_OFFS; i += 1) {
  const answer = await answeredAfter((total * (i + 0.5)) / CALL_OFFS);
  if (answer !== null) answers.push(answer);
}
process.stdout
  .write(`A dome of ${outcome.sculpt?.mesh.faceCount ?? 0} triangles in eight panels, ms; longest: the longest stretch without a pause
${textTable(['phase', 'time', 'pauses', 'longest, first', `longest, of ${rounds}`], rows)}
in all ${msText(total)} ms; checksum of report, templates, findings, sheets and pages ${hash.slice(0, 16)}
${answers.length} call-offs all through the job answered within, ms: ${timesText(answers)}
`);
