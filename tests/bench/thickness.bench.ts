// How soon pieces are new after a change of thickness: npm run bench:thickness [-- rounds=5]
// The sample helm split to 24k triangles, its face the sculpt. Each round begins with a pipeline that remembers nothing: the first run in
// 6 mm, then 10 mm, 8 mm and 6 mm again. Told for each: time, how much of it passed before the pieces were flat, the longest stretch without
// a pause, what was made anew, and how many of the patches, flat shapes and pieces are other objects than before.
import { contentHash } from '../../src/base/hash.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import { newProject } from '../../src/project/new-project.ts';
import type { Project, SculptPart } from '../../src/project/project.ts';
import { readBenchWords } from './bench-words.ts';
import { helmModel } from './helm-model.ts';
import { StretchClock } from './stretch-clock.ts';
import { textTable } from './text-table.ts';
import { median, msText, timesText } from './times.ts';

/** Triangles along each side of an old one: 23,800 in all. */
const PARTS = 5;
const THICKNESSES_MM = [6, 10, 8, 6];

const { rounds } = readBenchWords(process.argv.slice(2), ['helm'], ['helm']);
const { obj, seams, triangles } = await helmModel(PARTS);
const bytes = new TextEncoder().encode(obj);
const hash = await contentHash(bytes);
const fresh = newProject('helm', { hash, fileName: 'helm.obj', format: 'obj' });

const part: SculptPart = { ...fresh.parts[0], scale: { by: 'unit', unit: 'mm' }, seams: { edges: seams, paths: [] } };

/** What does not change stays the same object, as a command leaves it. */
const inFoam = (thicknessMm: number): Project => ({
  ...fresh,
  parts: [{ ...part, layers: [{ ...part.layers[0], thicknessMm }] }],
});

interface Step {
  readonly ms: number;
  /** Of the processor, which other programs do not lengthen much. */
  readonly ownMs: number;
  readonly clock: StretchClock;
  readonly outcome: Outcome;
  readonly anew: string;
}

/** How many of a list are other objects than those in the same places before. */
const othersOf = (now: readonly unknown[] | null | undefined, before: readonly unknown[] | null | undefined): string =>
  `${(now ?? []).filter((one, i) => one !== before?.[i]).length} of ${now?.length ?? 0}`;

async function round(): Promise<readonly Step[]> {
  const pipeline = new Pipeline();
  pipeline.putSource(hash, { fileName: 'helm.obj', bytes });
  const steps: Step[] = [];
  for (const thicknessMm of THICKNESSES_MM) {
    const clock = new StretchClock();
    const before = steps.at(-1)?.outcome;
    const used = process.cpuUsage();
    const start = performance.now();
    const outcome = await pipeline.run(inFoam(thicknessMm), clock);
    const ms = performance.now() - start;
    const { user, system } = process.cpuUsage(used);
    const anew = [
      othersOf(outcome.cut?.patches, before?.cut?.patches),
      othersOf(outcome.flats, before?.flats),
      othersOf(outcome.pieces, before?.pieces),
    ];
    steps.push({ ms, ownMs: (user + system) / 1000, clock, outcome, anew: anew.join(', ') });
  }
  return steps;
}

const all: (readonly Step[])[] = [];
for (let i = 0; i < rounds; i += 1) all.push(await round());

const rows = THICKNESSES_MM.map((thicknessMm, i) => {
  const steps = all.map((round) => round[i]);
  const stretches = (step: Step) => [...step.clock.phases].map(([phase, { longestMs }]) => ({ phase, ms: longestMs }));
  const longest = steps.map((step) => stretches(step).reduce((most, one) => (one.ms > most.ms ? one : most)));
  const [first] = steps;
  return [
    `${thicknessMm} mm`,
    timesText(steps.map(({ ms }) => ms)),
    timesText(steps.map(({ ownMs }) => ownMs)),
    timesText(longest.map(({ ms }) => ms)),
    longest[0].phase,
    first.anew,
    first.outcome.madeNew.join(' '),
  ];
});
const phases = THICKNESSES_MM.map((thicknessMm, i) => {
  const names = [...all[0][i].clock.phases.keys()];
  const told = names
    .map((name) => ({ name, ms: median(all.map((round) => round[i].clock.phases.get(name)?.ms ?? 0)) }))
    .filter(({ ms }) => ms >= 1)
    .sort((a, b) => b.ms - a.ms);
  return `${thicknessMm} mm: ${told.map(({ name, ms }) => `${name} ${msText(ms)}`).join(' · ')}`;
});
const sum = all[0].map(({ outcome }) => (outcome.flats ?? []).reduce((total, flat) => total + (flat?.energy ?? 0), 0));
process.stdout.write(`The helm in ${triangles} triangles, ${all[0][0].outcome.pieces?.length ?? 0} pieces, ms
${textTable(['foam', 'time', 'processor', 'longest stretch', 'while', 'patches, flat shapes, pieces anew', 'made anew'], rows)}
by phase, medians
${phases.join('\n')}
checksums of the energies ${sum.map((energy) => energy.toFixed(9)).join(' ')}
`);
