// Time to full quality beside a general C++ library and beside the same chain of methods in C++, in pairs within one run.
import { BenchFolder, splitPatch, type BenchPatch } from './bench-patches.ts';
import type { BenchWords } from './bench-words.ts';
import { layFlat, type OurRun } from './lay-flat.ts';
import { runReference, type ReferenceResult } from './reference-program.ts';
import { textTable } from './text-table.ts';
import { median, medianRatio, timesText } from './times.ts';

/** Name of a reference patch, parts of each side, runs in a row of which the median counts as one. */
const PATCHES = [
  { from: 'mask-1k', parts: 1, runs: 7 },
  { from: 'mask-5k', parts: 1, runs: 5 },
  { from: 'hemisphere-500', parts: 3, runs: 5 },
  { from: 'mask-5k', parts: 2, runs: 3 },
  { from: 'hemisphere-500', parts: 6, runs: 3 },
  { from: 'mask-5k', parts: 4, runs: 1 },
  { from: 'hemisphere-2k', parts: 7, runs: 1 },
] as const;

/** Runs before any is timed: the compiler of the engine takes its time with small patches. */
const WARM_RUNS = { small: 20, large: 2 } as const;
const SMALL = 10_000;

/** Local-global ARAP with sparse LU, as a general C++ library has it; and ten of its steps, then Newton, in C++ with Eigen. */
const LIBRARY = 'cgal-arap1000';
const CHAIN = 'arap10-newton';

const MOST_OF_LIBRARY = 0.4;
const MOST_OF_CHAIN = 1.3;
/** From this size on, a time that is at most the chain's. */
const LARGE = 50_000;
const ENERGY_SLACK = 1e-4;

interface Round {
  readonly ourMs: number;
  readonly libraryMs: number;
  readonly chainMs: number;
}

/** @param program  the reference program, or null for our times alone */
export async function timeTable(program: string | null, { rounds, most }: BenchWords<string>): Promise<string> {
  const folder = new BenchFolder();
  const rows: string[][] = [];
  for (const { from, parts, runs } of PATCHES) {
    const mesh = splitPatch(from, parts);
    if (mesh.triangles.length / 3 > most) continue;
    rows.push(await rowOf(folder.patchOf(`${from}-in-${parts}`, mesh), from, runs, program, rounds));
  }
  const head = [
    'patch',
    'triangles',
    'ours',
    'C++ library',
    'C++ chain',
    'ours/library',
    'ours/chain',
    'energy',
    'chain’s',
    'holds',
    'checksum',
  ];
  return `Time to full quality, ms: median (least-most) of ${rounds} rounds, ours and theirs by turns; ratios are medians of the rounds' own
Holds: at most ${MOST_OF_LIBRARY} of the library, ${MOST_OF_CHAIN} of the chain and 1.0 from ${LARGE} triangles, the chain's energy or less, no flip
${textTable(head, rows)}`;
}

async function rowOf(
  patch: BenchPatch,
  name: string,
  runs: number,
  program: string | null,
  rounds: number,
): Promise<string[]> {
  const { mesh } = patch;
  const count = mesh.triangles.length / 3;
  let run = await layFlat(mesh, []);
  for (let i = 1; i < (count < SMALL ? WARM_RUNS.small : WARM_RUNS.large); i += 1) run = await layFlat(mesh, []);
  let chainEnergy = Infinity;
  const times: Round[] = [];
  for (let i = 0; i < rounds; i += 1) {
    const ourMs = await ourTime(patch, runs, run);
    if (program === null) {
      times.push({ ourMs, libraryMs: NaN, chainMs: NaN });
      continue;
    }
    const found = runReference(program, { objPath: patch.objPath, methods: [LIBRARY, CHAIN], reps: runs });
    const chain = named(found, CHAIN);
    chainEnergy = chain.energy ?? Infinity;
    times.push({ ourMs, libraryMs: named(found, LIBRARY).ms, chainMs: chain.ms });
  }
  const [ours, library, chain] = [
    times.map((t) => t.ourMs),
    times.map((t) => t.libraryMs),
    times.map((t) => t.chainMs),
  ];
  const { figures, checksum } = run;
  const first = [name, String(count), timesText(ours)];
  if (program === null) return [...first, '', '', '', '', figures.energy.toFixed(7), '', '', checksum];
  const [ofLibrary, ofChain] = [medianRatio(ours, library), medianRatio(ours, chain)];
  const isFast = ofLibrary <= MOST_OF_LIBRARY && ofChain <= (count >= LARGE ? 1 : MOST_OF_CHAIN);
  const isGood = figures.energy <= chainEnergy + ENERGY_SLACK && figures.flips === 0 && figures.converged;
  return [
    ...first,
    timesText(library),
    timesText(chain),
    ofLibrary.toFixed(3),
    ofChain.toFixed(3),
    figures.energy.toFixed(7),
    chainEnergy.toFixed(7),
    isFast && isGood ? 'yes' : 'NO',
    checksum,
  ];
}

/** Median of a few runs in a row, each of which must give the same result to the last digit. */
async function ourTime({ mesh }: BenchPatch, runs: number, expected: OurRun): Promise<number> {
  const ms: number[] = [];
  for (let i = 0; i < runs; i += 1) {
    const run = await layFlat(mesh, []);
    if (run.checksum !== expected.checksum) throw new Error(`checksum ${run.checksum} after ${expected.checksum}`);
    ms.push(run.ms);
  }
  return median(ms);
}

function named(results: readonly ReferenceResult[], method: string): ReferenceResult {
  const result = results.find((candidate) => candidate.method === method);
  if (result === undefined) throw new Error(`the reference program told nothing of ${method}`);
  return result;
}
